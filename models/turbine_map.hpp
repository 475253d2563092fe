#pragma once
// A turbine's map: flow and efficiency over wheel speed and expansion ratio, as measured on a stand with all scrolls fed
// alike. The turbine stays two nozzles; at every point of the map both nozzles are scaled so that they pass its flow, and
// the parabola of the efficiency so that it has its efficiency. Between the points the scales are interpolated, beyond
// them the nearest scale stays: whoever asks is told that he is outside.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "models/map_file.hpp"
#include "models/nozzle_pair.hpp"

namespace pulsewright {

struct TurbineMapPoint {
  double speed;       // of the shaft over the root of the total temperature before the wheel, rev/(s sqrt K)
  double ratio;       // total before over static behind
  double flow;        // mass flow times sqrt(T0)/p0, kg sqrt(K)/(s Pa)
  double efficiency;  // total to static
};

/// As read: in order of speed, then of ratio. A map without a column for speed is one line at speed 0.
struct TurbineMapTable {
  bool has_speed = false, has_efficiency = false;
  std::vector<TurbineMapPoint> points;
};

/// Names of the columns; flow and speed each by one of two.
extern const std::vector<std::string> turbine_map_columns;

/// Points from the file's columns. Nothing after a fault.
std::optional<TurbineMapTable> turbine_map_table(const MapFile& file, const MapFault& fault);

class TurbineMap {
 public:
  struct Answer {
    double area;        // on both nozzles
    double efficiency;  // on the parabola of peak 1; the peak itself where the map has none
    bool inside;
  };

  /// inducer: of the wheel, m; not used by a map without speeds. peak_efficiency: for a map without efficiencies.
  TurbineMap(const TurbineMapTable& table, double rotor_over_throat, int scrolls, double inducer,
             double peak_efficiency, const Gas& gas);

  /// The pair of nozzles where the map passes most: what `area` of 1 means.
  const TurbineAreas& areas() const { return areas_; }

  /// tip_speed m/s, T0 total temperature before the wheel K, ratio total to static.
  Answer at(double tip_speed, double T0, double ratio) const;

  double best_efficiency() const { return best_; }

 private:
  struct Line {
    double speed;  // of the wheel's tip over sqrt(T0), m/(s sqrt K)
    std::vector<double> ratio, area, efficiency;
  };
  Answer on(const Line& line, double ratio) const;

  std::vector<Line> lines_;
  TurbineAreas areas_{};
  double best_ = 0;
  bool has_speed_ = false;
};

}  // namespace pulsewright
