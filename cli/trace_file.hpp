#pragma once
// A result file as trace reads it: where a name lies in the ducts, and the gas there.

#include <filesystem>
#include <string>
#include <vector>

#include "models/plan.hpp"
#include "shared/results.hpp"

namespace pulsewright {

/// One duct's gas: [instant * cells + cell], SI.
struct TracedDuct {
  std::size_t cells;
  double dx;
  std::vector<double> bore, pressure, temperature, velocity, density, burned;
};

class TraceFile {
 public:
  /// layout: "A", "B" ... of a comparison. Throws Error (file) where the file is none of ours, Error (usage) where layout or rpm are not in it; rpm 0:
  /// the only one there is.
  TraceFile(const std::filesystem::path& path, const std::string& layout, double rpm);

  bool engine() const { return engine_; }
  double rpm() const { return rpm_; }
  const std::vector<double>& instants() const { return instants_; }  // s in a rig, degrees in an engine
  const ManifoldPlan& names() const { return plan_; }                // its names alone
  TracedDuct duct(int number) const;

 private:
  void choose_speed(double rpm);

  ResultReader reader_;
  std::string at_, gas_at_;  // groups of the layout and of its gas
  bool engine_ = false;
  double rpm_ = 0;
  std::vector<double> instants_;
  ManifoldPlan plan_;
};

}  // namespace pulsewright
