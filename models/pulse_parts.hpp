#pragma once
// The pressure at one place taken apart: what runs forward along the duct, what runs back, and how to find a rise in it.

#include <vector>

#include "models/records.hpp"

namespace pulsewright {

struct WaveParts {
  Series forward, backward;  // Pa, absolute; each is the cycle mean where no wave of its kind passes
};

/// Parts of the record at a place.
WaveParts wave_parts(const PlaceRecord& place);

/// One rise of a periodic series (720 degrees), from a low point to a peak.
struct Rise {
  double deg;           // where it first has 10 % of the rise, degrees (may pass 720)
  double steepest_deg;  // where it climbs fastest
  double foot, peak;    // values
  double height() const { return peak - foot; }
};

/// The rise that follows `from_deg`: peak = first maximum after it that stands at least a tenth of the series' swing above its
/// foot and above what follows; foot = lowest value in the 90 degrees before the peak, but no earlier than before_deg before from_deg.
Rise next_rise(const Series& series, double from_deg, double before_deg = 90);

/// A periodic series at any crank angle, linear between its samples.
double at_degree(const Series& series, double deg);

double mean(const Series& series);

}  // namespace pulsewright
