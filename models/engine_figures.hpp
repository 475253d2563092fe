#pragma once
// From a settled model and the record of its last cycle to the figures of a speed.

#include "models/arrivals.hpp"
#include "models/cycle_recorder.hpp"
#include "models/engine_model.hpp"
#include "models/results.hpp"

namespace pulsewright {

/// Everything that is counted up since the start; figures come from differences over a cycle.
struct EngineBooks {
  Content held, left;          // of the whole network
  double duct_heat = 0;        // taken from duct walls, J
  CylinderTotals cylinders;    // all together
  std::vector<Content> gates;  // passed
  std::vector<TurbineTotals> turbines;
  Content to_air{};  // through ends, turbines without a downpipe and gates
};
EngineBooks read_books(const EngineModel& model);
EngineBooks operator-(const EngineBooks& a, const EngineBooks& b);

/// One entry of a turbine: the scroll's port, and the plane where its volute begins.
struct TurbineEntry {
  std::string name;  // "turbine", "turbine.a"
  std::size_t turbine, scroll;
  RayTarget plane;
  bool forward;  // gas runs toward the duct's finish
};
std::vector<TurbineEntry> turbine_entries(const EngineCase& engine);

/// The exhaust port of each cylinder: its valve seat.
std::vector<PortPlace> port_places(const EngineModel& model);

/// What the recorder is asked to write down besides the ducts, and where it stands there.
class RecordedGauges {
 public:
  RecordedGauges(const EngineModel& model, CycleRecorder& recorder);

  struct OfCylinder {
    std::size_t p, T, volume, exhaust, intake;  // exhaust and intake: mass since the start
  };
  struct OfJoint {
    std::string name;
    std::size_t p, T;
  };
  struct OfEntry {
    std::size_t flow, available, shaft;
  };
  std::vector<OfCylinder> cylinders;
  std::vector<OfJoint> joints;
  std::vector<OfEntry> entries;  // in the order of turbine_entries
};

/// Adds places, cylinders, joints and turbines to the record, and every figure to the result. cycle: the books over the
/// recorded cycle.
void fill_figures(SpeedResult& result, const EngineModel& model, const CycleRecorder& recorder,
                  const RecordedGauges& gauges, const EngineBooks& cycle);

}  // namespace pulsewright
