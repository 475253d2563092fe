#pragma once
// Writes one engine cycle down against crank angle while the network steps through it: every cell of every duct, and
// any number of gauges. Steps are shorter than half a degree or longer; values between them are linear in time.

#include <functional>
#include <string>
#include <vector>

#include "models/plan.hpp"
#include "models/records.hpp"
#include "solver/network.hpp"

namespace pulsewright {

class CycleRecorder {
 public:
  /// The cycle starts at the network's present time, which is crank angle 0.
  CycleRecorder(const Network& network, double rpm);

  /// A number to be written down; read now and after every step. Returns its number.
  std::size_t add_gauge(std::function<double()> read);

  /// Call after every step.
  void after_step();

  const std::vector<DuctRecord>& ducts() const { return ducts_; }
  const Series& gauge(std::size_t i) const { return series_[i]; }

 private:
  struct Lanes {
    Lane p, u, T, Y, c;
  };
  void copy_now(Lanes& lanes) const;
  void write(std::size_t sample, double part);

  const Network& network_;
  double start_, seconds_per_sample_;
  double last_time_;
  std::size_t next_ = 0;  // sample to be written
  Lanes before_, now_;
  std::vector<DuctRecord> ducts_;
  std::vector<std::function<double()>> gauges_;
  std::vector<double> gauge_before_, gauge_now_;
  std::vector<Series> series_;
};

/// Gas at a place of its duct, linear between cell centres; u changes sign where the user drew it the other way.
PlaceRecord place_record(std::string name, const std::vector<DuctRecord>& ducts, const PlanPlace& spot, const Gas& gas);

}  // namespace pulsewright
