#pragma once
// A compressor's map: lines of one speed, each from surge to choke, with pressure ratio and efficiency over flow. From a
// flow and a pressure ratio it tells speed and efficiency, and where the point lies outside. Beyond its edges the nearest
// edge stands in, and the answer says so.

#include <optional>
#include <string>
#include <vector>

#include "models/map_file.hpp"

namespace pulsewright {

struct CompressorMapPoint {
  double flow;            // corrected, kg/s
  double pressure_ratio;  // total to total
  double efficiency;      // isentropic, total to total
};

/// One speed: flows rise from surge, its first point, to choke, its last.
struct CompressorMapLine {
  double speed;  // corrected: of the tip, m/s, or of the shaft, rev/s
  std::vector<CompressorMapPoint> points;
};

struct CompressorMapTable {
  MapReference reference;                // of the corrected figures
  bool tip_speeds = false;               // else shaft speeds
  std::vector<CompressorMapLine> lines;  // slowest first
};

/// Names of the columns; the speed by one of two.
extern const std::vector<std::string> compressor_map_columns;

/// Lines from the file's columns. Nothing after a fault.
std::optional<CompressorMapTable> compressor_map_table(const MapFile& file, const MapFault& fault);

/// Air before the wheel, at rest.
struct CompressorInlet {
  double temperature, pressure;  // K, Pa
};

/// Where a point stands on a map.
struct CompressorMapAnswer {
  double corrected_flow;  // kg/s
  double tip_speed;       // of the exducer, m/s, as it is and not corrected
  double efficiency;
  bool surge = false;      // left of the first point of its speed
  bool choke = false;      // right of the last
  bool overspeed = false;  // above the fastest line
  bool too_slow = false;   // below the slowest line
  bool inside() const { return !(surge || choke || overspeed || too_slow); }
};

class CompressorMap {
 public:
  /// exducer: of the wheel, m; not used by a map of tip speeds. Lines and points as compressor_map_table leaves them.
  CompressorMap(CompressorMapTable table, double exducer);

  /// air_flow kg/s through this compressor; pressure_ratio over it.
  CompressorMapAnswer at(const CompressorInlet& inlet, double air_flow, double pressure_ratio) const;

  const CompressorMapTable& table() const { return table_; }
  double best_efficiency() const;

 private:
  struct Line;  // at a speed between two of the table
  Line line_at(double speed) const;
  double ratio_on(const Line& line, double flow) const;
  double efficiency_on(const Line& line, double flow) const;
  double speed_for(double flow, double ratio) const;

  CompressorMapTable table_;
  double tip_per_speed_;  // exducer's circumference, or 1
};

}  // namespace pulsewright
