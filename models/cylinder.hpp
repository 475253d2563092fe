#pragma once
// A cylinder as the gas dynamics sees it: one zone of gas above a piston, breathing from a plenum and into an exhaust
// port duct, burning its charge once a cycle.
//
// From exhaust opening to intake closing it goes with the network's steps, second order in dt: the state half a step
// ahead comes from the step before, and the very fluxes given to the port are taken from the cylinder. From intake
// closing to exhaust opening it is integrated in one go (models/closed_period.hpp) and looked up as time passes.

#include <string>
#include <vector>

#include "models/burn.hpp"
#include "models/closed_period.hpp"
#include "models/cylinder_cycle.hpp"
#include "models/intake_port.hpp"
#include "models/valve_lift.hpp"
#include "solver/element.hpp"

namespace pulsewright {

struct CylinderSpec {
  std::string name;  // "cylinder 1"
  CrankDimensions crank;
  double crank_speed;    // rad/s, fixed over the run
  CrankAngle firing_at;  // firing top dead centre, after the instant t = 0
  CamCard exhaust_cam, intake_cam;
  ValveShape exhaust_valves, intake_valves;
  BurnTiming burn;
  FuelSupply fuel;
  CylinderWalls walls;
  Plenum plenum;
};

/// State of the gas in a cylinder.
struct CylinderGas {
  CrankAngle angle;  // the cylinder's own: 0 at firing, -180 to 540 degrees
  double p, T, V, Y;
};

class Cylinder : public Element {
 public:
  /// Starts at t = 0 with a guess of the gas at that point of the cycle. Throws Error (case file) for valve timing or a
  /// burn that leaves no time with both valves shut around firing top dead centre.
  Cylinder(const CylinderSpec& spec, const Gas& gas);

  void advance(std::span<Port> ports, const Step& step) override;  // one port: the exhaust valve
  Content held() const override;
  Content left() const override;

  CylinderTotals totals() const;  // since the start
  CylinderGas now() const;
  double exhaust_flow() const { return exhaust_flow_; }  // over the last step: out through the exhaust valves, kg/s
  double intake_flow() const { return intake_flow_; }    // in through the intake valves, kg/s
  const std::optional<CylinderCycle>& last_cycle() const { return book_.last(); }

  /// Another start than the guess; before the first step, at a point of the cycle with open valves. Throws Error
  /// (internal) else.
  void fill(double p, double T, double Y);

  /// A better start than the guess: the gas of another run that stands at this point of the cycle (a settled run at
  /// another speed or layout). Before the first step. Throws Error (internal) when the two stand elsewhere.
  void start_from(const Cylinder& other);

  /// Keeps a sample every `interval` from now on; zero stops. trace() is the last whole cycle, -180 to 540 degrees.
  void record(CrankAngle interval);
  const std::vector<CylinderSample>& trace() const { return trace_; }

  /// The exhaust valve stays on its seat over this time (a study of what this cylinder does to the others).
  void keep_exhaust_shut(double from_time, double to_time);
  void set_plenum(const Plenum& plenum) { port_.set_plenum(plenum); }

  /// Half of the charge burns there from now on. Throws Error (case file) where the burn would begin before the intake is shut.
  void set_burn_centre(CrankAngle centre);

  double cycle_time() const { return cycle_angle / spec_.crank_speed; }
  /// First time not before `after` at that point of the cycle.
  double next_time(CrankAngle own_angle, double after) const;
  const CylinderSpec& spec() const { return spec_; }
  const LiftCurve& exhaust_lift() const { return exhaust_lift_; }
  const LiftCurve& intake_lift() const { return intake_lift_; }
  const SliderCrank& crank() const { return crank_; }

 private:
  static bool gas_exchange(CrankAngle angle);  // between the bottom dead centres round overlap
  CrankAngle own_angle(double time) const;
  CylinderGas gas_at(const Content& content, CrankAngle angle) const;
  double air_share() const;
  Content filled(double p, double T, double Y, CrankAngle angle) const;
  void fill_at_start();
  void shut(CrankAngle angle);
  void open(CrankAngle angle);
  void exchange(Port& port, const Step& step, CrankAngle from);
  void burn_late(CrankAngle from, CrankAngle to);
  double wall_heat(const CylinderGas& middle) const;
  void end_step();
  void sample(bool cycle_done);
  [[noreturn]] void refuse(const CylinderGas& gas, double time) const;

  CylinderSpec spec_;
  Gas gas_;
  SliderCrank crank_;
  LiftCurve exhaust_lift_, intake_lift_;
  BurnProgress burn_;
  IntakePort port_;
  CrankAngle shuts_, opens_;  // of the time with both valves on their seats: before and after firing

  bool closed_ = false;
  CrankAngle angle_;       // own angle at the end of the last step, counted on from shuts_
  Content content_;        // with open valves
  Content rate_;           // of the last step, 1/s
  ClosedPeriod period_;    // the last with shut valves
  CylinderTotals totals_;  // without the running closed period
  double intake_at_closing_ = 0;
  double exhaust_flow_ = 0, intake_flow_ = 0;
  double shut_from_ = 0, shut_to_ = 0;  // keep_exhaust_shut

  CycleBook book_;
  bool in_gas_exchange_ = false;  // between the bottom dead centres round overlap
  double interval_ = 0, interval_count_ = 0;
  std::vector<CylinderSample> trace_, recording_;
};

}  // namespace pulsewright
