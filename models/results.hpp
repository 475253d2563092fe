#pragma once
// The figures that a run of one engine case gives, speed by speed. Plain data: JSON, HDF5, tables and pages are made
// from it. Units stand in each comment; pressures are absolute unless the name says otherwise.

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "models/assumed.hpp"
#include "models/energy_account.hpp"
#include "models/metal_figures.hpp"
#include "models/records.hpp"

namespace pulsewright {

/// At one turbine entry, at the plane where its volute begins.
struct EntryFigures {
  std::string name;              // "turbine", "turbine.a"
  double pressure_mean;          // static, time mean, as a damped gauge shows it; Pa
  double stagnation_mean;        // Pa
  double pressure_peak;          // Pa
  double pressure_swing;         // peak to valley, Pa
  double temperature_flow_mean;  // of all gas that passes, brought to rest, K
  double temperature_time_mean;  // K
  double mass_flow;              // kg/s
  double power_available;        // isentropic, total to static, W
  double power_shaft;            // W
};

/// One turbine with its shaft.
struct ShaftFigures {
  std::string name;
  double tip_speed;                   // of the wheel at its inducer, m/s
  std::optional<double> revolutions;  // per minute; none while the wheel's size is not given
  double power_shaft;                 // taken out of the gas, W
  double share_of_air;                // of its compressor, 0..1: as its shaft's share of all shaft power
  double surplus;                     // shaft power behind the bearings beyond what that share of the air takes, W
  double outlet_pressure;             // static behind the wheel, time mean, Pa
  double expansion_ratio;             // mean total pressure at its entries over that
  std::optional<double> outside_map;  // share of its gas that passed where its map has no point; none without a map
};

struct CylinderFigures {
  int cylinder;                                     // from 1
  double volumetric_efficiency;                     // trapped fresh mass over displacement at the intake's density
  double burned_gas_left;                           // burned mass fraction of the trapped charge
  double imep, pmep;                                // Pa, with sign
  double pressure_peak;                             // in the cylinder, Pa
  double port_pressure_mean, port_pressure_peak;    // Pa, at the valve
  std::optional<double> overlap_port_pressure;      // mean over the valve overlap, Pa; none without overlap
  std::optional<double> overlap_port_minus_intake;  // Pa
  double temperature;                               // of all gas that passes the head face, brought to rest, K
  double shut_valve_force;                          // most that gas pushes one shut exhaust valve open with, N
  std::optional<double> seat_load;                  // that the springs hold against it, N; none: not given
  bool lifts_off() const { return seat_load && shut_valve_force > *seat_load; }
};

struct GateFigures {
  std::string name;
  double share_of_flow;                        // of all exhaust gas, 0..1
  double opening;                              // share of full lift
  double flow;                                 // kg/s
  double bore;                                 // m
  bool holds_target;                           // it opens for the boost target
  std::optional<double> bore_that_would_hold;  // where it cannot hold, m; rounded up
  double before = 0, behind = 0;        // cycle means of the total pressure on its valve and of what is behind, Pa
  std::optional<double> pushed_open{};  // share of full lift that drive pressure adds to what the boost alone opens
  std::optional<double> cracks_at{};    // boost at which it begins to lift under this drive pressure, Pa gauge
  std::optional<double> spring{};       // and without drive pressure, Pa gauge
};

/// One compressor at work; corrected to its map's reference where there is one.
struct CompressorFigures {
  std::string name;       // of its turbine
  double pressure_ratio;  // total to total
  double flow;            // kg/s, corrected with a map
  double efficiency;
  double tip_speed;  // of its exducer, m/s
  bool mapped = false;
  bool surge = false, choke = false, overspeed = false, too_slow = false;  // outside the map, on which side
};

/// A blowdown's first way to a place.
struct Arrival {
  int from;                  // cylinder, from 1
  std::string at;            // "merge", "turbine", "port 3"
  std::string path;          // in words
  double deg_after_opening;  // of its exhaust valve, first rise
  double steepest_deg_after_opening;
  double deg;   // crank angle of the first rise
  double rise;  // small-pulse estimate, Pa
};

struct PulseOverlap {
  int first, second;  // cylinders that follow each other at an entry
  std::string at;
  double percent;
};

struct Timing {
  std::size_t cells = 0;
  long steps = 0;
  double seconds = 0;  // in the time loop
  double cell_updates() const { return static_cast<double>(cells) * static_cast<double>(steps); }
  std::vector<std::pair<std::string, double>>
      shares;               // of the seconds: ducts, cylinders, joints, ...; empty unless asked for
  std::string step_setter;  // duct and distance of the cell that sets the time step
};

/// How the boost of a speed came about. The compressor's and the turbine's power stand in the speed's result.
struct BoostFigures {
  enum class State {
    given,         // by the user; nothing was balanced
    held,          // at the target, gates open as far as that takes
    below_target,  // the turbine has too little power, gates shut
    cannot_hold,   // gates wide open, boost above the target
    not_reached,   // target imposed, gates shut, and the turbine has less power than that takes
    no_boost       // the turbine gives less than the least boost takes
  };
  State state = State::given;
  double target = 0;                          // Pa gauge
  bool beyond = false;                        // boost stands where the search ends, four targets: no balance found
  std::string why_no_bore;                    // where it cannot hold and no bore would
  std::optional<double> time_to_boost;        // to 90 % of the target after the load step, s
  std::string why_no_time;                    // where there is none
  std::vector<double> step_time, step_boost;  // of the load step, cycle by cycle; s, Pa gauge
};

struct SpeedResult {
  double rpm;
  bool settled;
  std::string unsettled_figure;  // which figure did not, when not settled
  int cycles;
  double mass_error, energy_error;                          // |in - out - stored| / in, last cycle
  double unsettled_mass, unsettled_energy;                  // |stored| / in
  double boost_gauge, intake_pressure, intake_temperature;  // Pa, Pa, K
  BoostFigures boost;
  double turbine_wheel_speed;  // m/s, at the inducer's tip
  double compressor_power;     // that the boost asks for, W
  double turbine_surplus;      // shaft power behind the bearings beyond that; below zero: the boost cannot be held, W
  std::vector<EntryFigures> turbine;
  std::vector<ShaftFigures> shafts;  // one for each turbine
  std::vector<GateFigures> gates;
  std::vector<CompressorFigures> compressors;
  std::vector<CylinderFigures> cylinders;
  std::vector<Arrival> arrivals;
  std::vector<PulseOverlap> overlap;
  double torque, power;                                                 // N m, W
  double air_flow, fuel_flow, exhaust_flow;                             // kg/s
  EnergyAccount energy;                                                 // where the fuel's heat goes, J per cycle
  std::optional<double> drive_to_boost_gauge, drive_to_boost_absolute;  // none below 0.2 bar boost
  MetalFigures metal;
  std::optional<WarmUp> warm_up;  // where it was asked for
  Timing timing;
  CycleRecord record;
};

/// From which engine speed the boost reaches 90 % of the target.
struct Threshold {
  std::optional<double> rpm;  // interpolated between the computed speeds
  double low = 0, high = 0;   // the computed speeds around it
  std::string reason;         // why there is none
};

struct EngineResult {
  std::string title;
  double ambient_pressure;  // Pa
  double cell;              // m
  std::vector<AssumedEntry> assumed;
  std::vector<SpeedResult> speeds;
  Threshold threshold;
};

}  // namespace pulsewright
