#pragma once
// An engine case: one engine with one manifold and its turbine, every value resolved, SI. What the case left open comes
// from the table of assumed values and stands in `assumed`.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "models/assumed.hpp"
#include "models/burn.hpp"
#include "models/compressor_map.hpp"
#include "models/crank.hpp"
#include "models/friction.hpp"
#include "models/nozzle_pair.hpp"
#include "models/outside_heat.hpp"
#include "models/plan.hpp"
#include "models/turbine_housing.hpp"
#include "models/turbine_map.hpp"
#include "models/valve_lift.hpp"
#include "shared/case_file.hpp"
#include "shared/range.hpp"
#include "solver/fuel.hpp"

namespace pulsewright {

struct ValveCase {
  ValveShape shape;
  CamCard card;                       // angles on the cylinder's own scale: 0 at its firing top dead centre
  std::optional<double> seat_load{};  // that the springs press one shut valve on its seat with, N
};

struct PortCase {
  std::optional<CrossSection> exit;  // none: matched to the bore of each primary
  double length, roughness, wall_temperature;
};

struct EngineParts {
  std::string arrangement;            // empty where the case gives cylinders
  std::vector<int> firing_order;      // cylinder numbers from 1
  std::vector<CrankAngle> firing_at;  // of cylinder 1, 2, ...; the first is 0
  std::vector<int> bank;              // of cylinder 1, 2, ...: 0, 1
  CrankDimensions crank;
  double redline;  // revolutions per minute
  Fuel fuel;
  bool diesel = false;
  bool port_injection = false;  // fuel comes with the charge, not at intake closing
  double lambda;
  BurnTiming burn;        // at the boost of the charge
  double burn_later = 0;  // its centre moves by that much with boost, rad/Pa; 0 where the centre is given
  double burn_efficiency;
  FrictionLaw friction;
  double piston_temperature, head_temperature, liner_temperature;  // K
  ValveCase exhaust, intake;
  PortCase port;

  int cylinders() const { return static_cast<int>(firing_at.size()); }
  double displacement() const { return cylinders() * SliderCrank(crank).displacement(); }  // of all, m3
};

struct ChargeCase {
  double boost_gauge;  // target, Pa above ambient
  double temperature;  // at the intake ports at the target, K
  double compressor_efficiency;
  double work_coefficient;                     // compressor work over the square of its tip speed
  double cooler_drop = 0;                      // pressure that the cooler costs at full_flow, Pa
  std::shared_ptr<const CompressorMap> map;    // none: one efficiency at every point
  CompressorInlet inlet{293, 101325};          // air before the compressors
  int compressors = 1;                         // that share the air
  std::optional<double> cooler_effectiveness;  // where the temperature is not given
  double full_flow = 0;                        // air at redline, the target and volumetric efficiency 0.95, kg/s
};

struct AmbientCase {
  double pressure, temperature;  // Pa, K
};

/// What a turbine's flow is known from.
enum class TurbineSource { assumed_point, point, housing, housing_and_point, map };

struct TurbineCase {
  std::string name;
  Place place;
  TurbineSource source = TurbineSource::assumed_point;
  std::optional<TurbineHousing> housing;  // given by A/R
  CapacityPoint capacity;                 // given, or what the areas below pass at an expansion ratio of 2
  std::shared_ptr<const TurbineMap> map;  // then the areas are those where it passes most
  TurbineAreas areas;
  int scrolls = 1;
  double peak_efficiency, mechanical_efficiency;
  double volute_length;                    // m
  double roughness, wall_temperature;      // of the volute, m, K
  std::optional<TubeMetal> metal;          // of the housing, where its temperature is computed
  double tongue_leak;                      // share of one scroll's throat; 0 with one scroll
  double wheel_ratio;                      // compressor exducer over turbine inducer
  std::optional<double> inducer, exducer;  // of the wheel, m
  std::optional<double> inertia;           // kg m2; needs the wheel's size
};

struct SilencerCase {
  bool fitted = true;
  double pressure_drop;  // Pa
  double mass_flow = 0;  // at which it costs that: of redline, target boost, volumetric efficiency 0.95; kg/s
};

/// Who sets the boost: the user; the gates at the target; the shaft's balance of power, gates shut until the target is
/// reached; or that balance after a load step from little boost.
enum class BoostMode { given, hold, balanced, step };

inline constexpr Range rpm_range{300, 25000};  // revolutions per minute that can be computed

struct RunCase {
  std::vector<double> rpm;  // revolutions per minute
  double cell;              // m
  double wall_heat_factor;
  double warm_up = 0;  // of a cold manifold, to be computed after each settled speed, s; 0: not asked for
  BoostMode boost = BoostMode::given;
  double step_from = 0;  // mode step: share of the target's boost before the step
};

struct EngineCase {
  std::string title;
  EngineParts engine;
  ChargeCase charge;
  AmbientCase ambient;
  std::vector<TurbineCase> turbines;  // one, or several on one plenum
  SilencerCase silencer;
  EngineBay bay;  // what the tubes see
  RunCase run;
  ManifoldPlan plan;
  std::vector<AssumedEntry> assumed;
};

/// `cell` and `rpm` overrule those of the case where they are given. Throws Error (case_file) with every fault.
EngineCase read_engine_case(CaseFile& file, double cell = 0, const std::vector<double>& rpm = {});

}  // namespace pulsewright
