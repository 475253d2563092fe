// The table itself. Where a row names no source, the figure is common practice in the trade or from memory, and says
// so.

#include <algorithm>
#include <cmath>
#include <numbers>

#include "models/assumed.hpp"
#include "models/burn.hpp"

namespace pulsewright {
namespace {

using Facts = EngineFacts;
using Kind = AssumedRange::Kind;

constexpr double mm = 1e-3, kelvin = 1, bar = 1e5, deg = std::numbers::pi / 180, plain = 1, kilopascal = 1e3;
constexpr double root_of_1_2 = 1.0954451150103322, root_of_1_5 = 1.2247448713915890;
constexpr AssumedRange no_range{};
constexpr AssumedRange between(double low, double high) { return {Kind::between, low, high}; }
constexpr AssumedRange times(double low, double high) { return {Kind::times, low, high}; }
constexpr AssumedRange within(double change) { return {Kind::added, -change, change}; }

// What the numbers of the rows multiply. A fact still unknown (NaN) must come through: so it stands first in min and
// max.
double one(const Facts&) { return 1; }
double stroke(const Facts& f) { return f.stroke; }
double bore(const Facts& f) { return f.bore; }
double exhaust_head(const Facts& f) { return f.exhaust_head; }
double intake_head(const Facts& f) { return f.intake_head; }
double primary_bore(const Facts& f) { return f.primary_bore; }
double turbine_inducer(const Facts& f) { return f.turbine_inducer; }
double turbine_exducer(const Facts& f) { return f.turbine_exducer; }
double wastegate_bore(const Facts& f) { return f.wastegate_bore; }
double wastegate_spring(const Facts& f) { return f.wastegate_spring; }
double gate_bore_for_size(const Facts& f) { return std::sqrt(f.displacement / 2.0e-3); }
double rotor_size_to_the_fifth(const Facts& f) { return std::pow(f.turbine_exducer / 0.060, 5); }
double burn_centre(const Facts& f) { return 12 * deg + assumed_burn_later * std::max(f.boost_gauge, 0.0); }
double largest_primary_bore(const Facts& f) { return f.largest_primary_bore; }

double heat_set_free(const Facts& f) { return f.heat_set_free; }

// Swallowing capacity of a turbine that suits the engine: grows with displacement, redline and boost.
double turbine_for_engine(const Facts& f) {
  return f.displacement / 2.0e-3 * f.redline / 7500 * (1 + f.boost_gauge / bar) / 2;
}

// Standard atmosphere, troposphere (ISO 2533): 6.5 K per km; at sea level the plain 101.3 kPa and 293 K of the table,
// carried up by the same law so that altitude 0 and no altitude are one thing.
double lapse(const Facts& f) { return 1 - 0.0065 * f.altitude / 288.15; }
double atmosphere_pressure(const Facts& f) { return std::pow(lapse(f), 5.25588); }
double atmosphere_temperature(const Facts& f) { return lapse(f); }

constexpr std::string_view valve_count_why =
    "four valves a cylinder is the usual build of such an engine; common practice, no source";
constexpr std::string_view head_range_why = "usual share of the bore in a four-valve head; common practice, no source";
constexpr std::string_view cam_why =
    "a mild fast-road cam; read your cam card, this moves every pulse; common practice, no source";
constexpr std::string_view stated_why =
    "cards state angles at a checking lift that differs by maker; common practice, no source";
constexpr std::string_view lift_curve_why =
    "smooth lift curve through the card's angles; its shoulders are not on a card; assumed form";
constexpr std::string_view lift_why = "lift at which the curtain reaches the throat's area; common practice, no source";
constexpr std::string_view throat_why = "seat insert bore, less a stem of 0.2 of the head; common practice, no source";
constexpr std::string_view flow_coefficient_why =
    "poppet valve on its curtain area, falling with lift as the throat takes over; typical flow bench shape, from "
    "memory";
constexpr std::string_view flow_coefficient_words =
    "0.70 at lift/head 0.05 falling to 0.60 at 0.25, on the curtain area";
constexpr std::string_view wall_why =
    "metal of a bare or lightly wrapped runner near full load; sets how much pulse energy is lost to the wall; assumed";

constexpr AssumedRow only(AssumedFor fuel, AssumedRow row) {
  row.fuel = fuel;
  return row;
}

constexpr AssumedRow rows[] = {
    {"ambient.pressure", 101.3 * kilopascal, atmosphere_pressure, no_range, "kPa", kilopascal,
     "sea level, or the standard atmosphere (ISO 2533) at the altitude given"},
    {"ambient.temperature", 293, atmosphere_temperature, no_range, "K", kelvin,
     "a mild day at sea level, cooled by 6.5 K per km of altitude (ISO 2533)"},
    {"ambient.surroundings", 330, one, between(300, 400), "K", kelvin,
     "air under a bonnet, and what the tubes radiate to; assumed"},
    {"ambient.air_speed", 0, one, between(0, 5), "m/s", plain,
     "air that blows across the tubes: still, the worst for the metal; assumed"},
    only(AssumedFor::petrol, {"engine.lambda", 0.85, one, between(0.78, 0.95), "", plain,
                              "a boosted petrol engine is run rich at load; common practice, no source"}),
    only(AssumedFor::diesel, {"engine.lambda", 1.4, one, between(1.2, 1.8), "", plain,
                              "a diesel at its smoke limit; common practice, no source"}),
    {"engine.rod", 1.7, stroke, between(1.5, 2.0), "mm", mm,
     "1.7 strokes, the middle of what is built; common practice, no source"},
    only(AssumedFor::petrol, {"engine.compression_ratio", 9.0, one, within(1), "", plain,
                              "usual for a boosted petrol engine; common practice, no source"}),
    only(AssumedFor::diesel, {"engine.compression_ratio", 16.5, one, within(1), "", plain,
                              "usual for a turbocharged diesel; common practice, no source"}),
    only(AssumedFor::petrol, {"engine.burn.centre", 1, burn_centre, within(6 * deg), "deg after tdc", deg,
                              "half burned; 8 deg optimum delayed by knock, later with boost; from memory"}),
    only(AssumedFor::petrol, {"engine.burn.duration", 25 * deg, one, within(7 * deg), "deg", deg,
                              "from 10 to 90 % burned; typical of a boosted petrol engine, from memory"}),
    only(AssumedFor::diesel, {"engine.burn.centre", 14 * deg, one, within(6 * deg), "deg after tdc", deg,
                              "half burned, at full load; set by injection, not by knock; from memory"}),
    only(AssumedFor::diesel, {"engine.burn.duration", 40 * deg, one, within(10 * deg), "deg", deg,
                              "from 10 to 90 % burned: as the spray mixes; from memory"}),
    {"engine.burn.wiebe_a", 6.908, one, no_range, "", plain, "99.9 % burned at the end of the curve: ln 1000"},
    only(AssumedFor::petrol, {"engine.burn.wiebe_m", 2, one, no_range, "", plain,
                              "usual shape of the burn curve; from memory (Heywood 1988)"}),
    only(AssumedFor::diesel,
         {"engine.burn.wiebe_m", 1, one, no_range, "", plain, "a diesel burns soonest after it begins; from memory"}),
    {"engine.burn.efficiency", 0.98, heat_set_free, within(0.02), "", plain,
     "0.98 of what the air can burn: rich, carbon monoxide and hydrogen stay (atom balance, water-gas equilibrium)"},
    {"engine.friction_mean_pressure", 1, one, times(0.75, 1.25), "", plain,
     "form after Chen and Flynn (SAE 650733), constants from memory; torque only, the gas does not feel it",
     "0.4 bar + 0.005 peak pressure + 0.09 bar per m/s of mean piston speed + 0.0009 bar per (m/s)^2",
     "x 0.75 to x 1.25"},
    {"engine.piston_temperature", 550, one, within(50), "K", kelvin, "piston crown at load; from memory"},
    {"engine.head_temperature", 550, one, within(50), "K", kelvin, "combustion chamber roof at load; from memory"},
    {"engine.liner_temperature", 420, one, within(50), "K", kelvin,
     "bore wall a little above the coolant; from memory"},

    {"exhaust_valve.count", 2, one, no_range, "", plain, valve_count_why},
    {"exhaust_valve.head", 0.34, bore, between(0.31, 0.37), "mm", mm, head_range_why},
    {"exhaust_valve.opens", 54 * deg, one, within(10 * deg), "deg before bdc", deg, cam_why},
    {"exhaust_valve.closes", 18 * deg, one, within(10 * deg), "deg after tdc", deg, cam_why},
    {"exhaust_valve.stated_at", 0.1 * mm, one, between(0.1 * mm, 1.27 * mm), "mm", mm, stated_why},
    {"exhaust_valve.lift_exponent", 2, one, between(1.6, 2.4), "", plain, lift_curve_why,
     "lift x cos^2 over the half duration", "exponent 1.6 to 2.4"},
    {"exhaust_valve.lift", 0.25, exhaust_head, between(0.22, 0.32), "mm", mm, lift_why},
    {"exhaust_valve.throat", 0.87, exhaust_head, between(0.84, 0.90), "mm", mm, throat_why},
    {"exhaust_valve.flow_coefficient", 1, one, times(0.9, 1.1), "", plain, flow_coefficient_why, flow_coefficient_words,
     "x 0.9 to x 1.1"},
    {"intake_valve.count", 2, one, no_range, "", plain, valve_count_why},
    {"intake_valve.head", 0.40, bore, between(0.37, 0.43), "mm", mm, head_range_why},
    {"intake_valve.opens", 14 * deg, one, within(10 * deg), "deg before tdc", deg, cam_why},
    {"intake_valve.closes", 50 * deg, one, within(10 * deg), "deg after bdc", deg, cam_why},
    {"intake_valve.stated_at", 0.1 * mm, one, between(0.1 * mm, 1.27 * mm), "mm", mm, stated_why},
    {"intake_valve.lift_exponent", 2, one, between(1.6, 2.4), "", plain, lift_curve_why,
     "lift x cos^2 over the half duration", "exponent 1.6 to 2.4"},
    {"intake_valve.lift", 0.25, intake_head, between(0.22, 0.32), "mm", mm, lift_why},
    {"intake_valve.throat", 0.87, intake_head, between(0.84, 0.90), "mm", mm, throat_why},
    {"intake_valve.flow_coefficient", 1, one, times(0.9, 1.1), "", plain, flow_coefficient_why, flow_coefficient_words,
     "x 0.9 to x 1.1"},
    {"exhaust_port.length", 70 * mm, one, between(50 * mm, 110 * mm), "mm", mm,
     "valve seat to head face, on the centre line; common practice, no source"},
    {"exhaust_port.exit", 1, primary_bore, no_range, "mm", mm,
     "matched to the bore of its primary; measure the flange of your head"},
    {"exhaust_port.wall_temperature", 500, one, within(80), "K", kelvin, "port wall backed by coolant; from memory"},

    {"each_primary.transition", 30 * mm, one, between(0, 60 * mm), "mm", mm,
     "oval port to round tube in the first stretch; common practice, no source"},
    {"primary.bends", 120 * deg, one, between(60 * deg, 240 * deg), "deg", deg,
     "all bends of a primary added up, when only its length is given; assumed"},
    {"primary.bend_radius", 1.3, primary_bore, no_range, "mm", mm,
     "centre line of a stock long-radius weld bend, about 1.3 bores (ASME B16.9)"},
    {"wall_temperature", 1050, one, within(150), "K", kelvin, wall_why},
    {"roughness", 0.03 * mm, one, between(0.01 * mm, 0.1 * mm), "mm", mm,
     "drawn or welded stainless tube, clean to sooty; handbook values, from memory"},
    {"run.wall_heat_factor", 1, one, between(0.65, 1.35), "", plain,
     "on Nu = 0.07 Re^0.75 (form after Depcik and Assanis, SAE 2002-01-0372, constants from memory); published fits "
     "spread this much"},
    {"run.step_from", 0.10, one, between(0.05, 0.2), "of the target's boost", plain,
     "a load step begins at full load with the shaft still turning as fast as this boost asks; assumed"},
    {"emissivity", 0.8, one, between(0.3, 0.95), "", plain,
     "oxidised stainless; bright new tube is near 0.3; from memory"},
    {"alloy", 0, one, no_range, "", plain, "what most stock tube for the job is; common practice, no source",
     "304 (EN 1.4301)"},
    {"wall", 2 * mm, one, between(1.2 * mm, 3 * mm), "mm", mm,
     "thickness, where a bore is given and no tube; common practice, no source"},
    {"wrap.thickness", 1, one, times(0.6, 1.6), "mm", mm, "as laid on; common practice, no source"},
    {"wrap.conductivity", 1, one, times(0.5, 2), "W/(m K)", plain, "of the wrap when hot; common practice, no source"},
    {"joint.volume", 1, one, times(0.3, 3), "cm^3", 1e-6,
     "mean area of its ducts times half the largest bore, a tenth of that at a tap or step; assumed"},
    {"joint.angle_factor", 1, one, between(0.75, 1), "", plain,
     "on the angles between jets; the published wye rule uses 0.75, a 2-D reference lies between"},
    {"joint.clock", 0, one, no_range, "deg", deg, "drawn evenly because no clock angle is given",
     "evenly round the outlet's axis, in file order"},
    {"joint.throat", root_of_1_2, largest_primary_bore, between(1.0, root_of_1_5), "mm", mm,
     "1.2 times the area of the largest primary; assumed"},
    {"joint.taper", 7 * deg, one, between(5 * deg, 12 * deg), "deg half-angle", deg,
     "gentle enough that the flow stays on the wall; common practice, no source"},

    {"compressor.efficiency", 0.70, one, between(0.62, 0.76), "", plain, "mid-map; common practice, no source"},
    {"cooler.effectiveness", 0.75, one, between(0.6, 0.85), "", plain,
     "a good front-mounted cooler at speed; common practice, no source"},
    {"cooler.pressure_drop", 0.08 * bar, one, no_range, "bar", bar,
     "a good front-mounted cooler at the flow of redline, target boost and volumetric efficiency 0.95; common "
     "practice, no "
     "source"},
    {"turbine.capacity", 0.16, turbine_for_engine, times(0.75, 1.25), "kg/s", plain,
     "corrected flow at ratio 2.0 (288.15 K, 1.01325 bar), scaled with displacement, redline and boost; give your "
     "turbine's own figure"},
    {"turbine.rotor_over_throat", 1, one, between(0.7, 1.4), "", plain,
     "one capacity point does not tell throat from rotor; assumed alike"},
    {"turbine.peak_efficiency", 0.68, one, between(0.58, 0.75), "", plain,
     "small radial turbine in good health; from memory"},
    {"turbine.mechanical_efficiency", 0.96, one, between(0.93, 0.98), "", plain,
     "bearing losses of the shaft; from memory"},
    {"turbine.rotor_exit_angle", 60 * deg, one, between(55 * deg, 65 * deg), "deg from axial", deg,
     "radial turbine blading; from memory"},
    {"turbine.centroid_radius", 0.7, turbine_inducer, between(0.6, 0.8), "mm", mm,
     "inducer radius times 1.4; from memory"},
    {"turbine.volute_length", 120 * mm, one, between(80 * mm, 180 * mm), "mm", mm,
     "inlet flange to the start of the scroll's feed; assumed"},
    {"turbine.wall", 5 * mm, one, between(3.5 * mm, 7 * mm), "mm", mm, "of a cast housing; from memory"},
    {"turbine.alloy", 7, one, no_range, "", plain, "what most turbine housings are cast of; from memory",
     "cast iron (EN-GJS-SiMo)"},
    {"turbine.tongue_leak", 0.06, one, between(0, 0.15), "", plain,
     "gap between the scrolls of a divided housing, in scroll throats; assumed"},
    {"turbine.inducer", 1.16, turbine_exducer, between(1.08, 1.25), "mm", mm,
     "1.16 exducers, a usual turbine wheel; common practice, no source"},
    {"turbine.inertia", 3.5e-5, rotor_size_to_the_fifth, times(0.5, 2), "kg m^2", plain,
     "scaled with the fifth power of the exducer from 60 mm; assumed"},
    {"compressor.exducer", 1.05, turbine_inducer, between(0.945, 1.155), "mm", mm,
     "a little larger than the turbine wheel; common practice, no source"},
    {"compressor.exducer_over_inducer", 1.05, one, between(0.945, 1.155), "turbine inducers", plain,
     "compressor exducer, while the turbine's wheel is not given; common practice, no source"},
    {"compressor.work_coefficient", 0.70, one, between(0.62, 0.78), "", plain,
     "work over the square of tip speed, backswept wheel; from memory"},
    {"wastegate.bore", 44 * mm, gate_bore_for_size, no_range, "mm", mm,
     "44 mm on a two-litre, by the root of displacement; common practice, no source"},
    {"wastegate.flow_coefficient", 0.70, one, between(0.60, 0.80), "", plain, "poppet on its seat area; from memory"},
    {"wastegate.full_lift", 0.25, wastegate_bore, no_range, "mm", mm,
     "a quarter of the bore: the curtain then equals the seat's area"},
    {"wastegate.fully_open", 1.5, wastegate_spring, between(1.25, 2.0), "bar at its port", bar,
     "half as much again as where it cracks; try yours on the bench with an air line; common practice, no source"},
    {"wastegate.angle", 90 * deg, one, between(30 * deg, 90 * deg), "deg", deg,
     "square to the outlet, because no angle is given; assumed"},
    {"wastegate.clock", 0, one, no_range, "deg", deg, "because no clock angle is given",
     "midway between the first two ducts of its joint"},
    {"silencer", 0.15 * bar, one, between(0.05 * bar, 0.35 * bar), "bar", bar,
     "back pressure at the flow of redline, target boost and volumetric efficiency 0.95, gas of 1000 K; the same loss "
     "coefficient in "
     "all compared cases; common practice, no source"},
    {"primary.length", 350 * mm, one, no_range, "mm", mm, "a starting point to edit; common practice, no source"},
    {"shop.weld_shrink", 0.5 * mm, one, between(0.3 * mm, 1 * mm), "mm a weld", mm,
     "tight square butt, TIG; common practice, no source"},
};

}  // namespace

std::span<const AssumedRow> assumed_table() { return rows; }

}  // namespace pulsewright
