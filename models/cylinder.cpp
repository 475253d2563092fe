#include "models/cylinder.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "solver/orifice.hpp"

namespace pulsewright {
namespace {

constexpr CrankAngle bottom_dead_centre = CrankAngle::from_degrees(-180);
constexpr CrankAngle slack{1e-9};  // rounding of the angle must not move an event at the end of a step to the next

}  // namespace

bool Cylinder::gas_exchange(CrankAngle angle) {
  return std::lround(std::floor((angle + slack - bottom_dead_centre).radians / (cycle_angle / 2))) % 2 != 0;
}

// Angle since firing top dead centre, counted on from the closing of the intake: in [shuts_, shuts_ + 720 degrees).
CrankAngle Cylinder::own_angle(double time) const {
  return wrapped(CrankAngle{spec_.crank_speed * time} - spec_.firing_at, shuts_ - slack);
}

double Cylinder::next_time(CrankAngle own, double after) const {
  const CrankAngle now{spec_.crank_speed * after}, target = own + spec_.firing_at;
  return wrapped(target, now).radians / spec_.crank_speed;
}

CylinderGas Cylinder::gas_at(const Content& c, CrankAngle angle) const {
  const double Y = std::clamp(c.burned / c.mass, 0.0, 1.0), V = crank_.volume(angle);
  const double T = temperature_from_energy(gas_, c.energy / c.mass, Y);
  return {angle, c.mass * gas_constant(gas_, Y) * T / V, T, V, Y};
}

// Share of air in what comes from the plenum: the rest is the vapour of port fuel.
double Cylinder::air_share() const { return spec_.fuel.port ? 1 - 1 / (1 + spec_.fuel.air_fuel_ratio) : 1; }

void Cylinder::shut(CrankAngle angle) {
  const Charge charge = make_charge(spec_.fuel, content_, gas_);
  TrappedCharge trapped{content_.mass, air_share() * (content_.mass - content_.burned), content_.burned / content_.mass,
                        air_share() * (totals_.intake.mass - intake_at_closing_), charge.fuel};
  intake_at_closing_ = totals_.intake.mass;
  const ClosedSetting setting{gas_, crank_, spec_.walls, burn_, spec_.crank_speed};
  period_ = ClosedPeriod(setting, charge, angle, opens_);
  trapped.max_pressure = period_.max_pressure();
  trapped.max_pressure_angle = period_.max_pressure_angle();
  book_.trapped(trapped);
  totals_.fuel += charge.content - content_;
  content_ = charge.content;
  closed_ = true;
}

void Cylinder::open(CrankAngle angle) {
  const ClosedPoint point = period_.at(angle);
  totals_ = totals();
  content_ = period_.content(point);
  rate_ = {0, spec_.crank_speed * period_.energy_slope(angle), 0};
  closed_ = false;
}

void Cylinder::advance(std::span<Port> ports, const Step& step) {
  const CrankAngle from = own_angle(step.time), to = from + CrankAngle{spec_.crank_speed * step.dt};
  const bool stays_shut = to < opens_ + slack;
  if (stays_shut && !closed_) shut(from);
  if (!stays_shut && closed_) open(from);
  if (closed_) {
    close_port(ports[0]);
    exhaust_flow_ = intake_flow_ = 0;
  } else {
    exchange(ports[0], step, from);
  }
  angle_ = to;
  end_step();
}

// Equation   dm = dt (md_in - md_ex), dE = dt (md_in h_in - md_ex h0_ex) - p (V1 - V0) - Q, burned mass as mass;
//            fluxes, p and Q at the middle of the step, the state there from the step before: y + dt/2 (dy/dt before)
// Source     first law for an open single zone: Heywood 1988, section 9.2.2; two-step midpoint rule
// Symbols    md mass flow kg/s; h0 total enthalpy of the true upstream side J/kg; p Pa; V m3; Q wall heat J
// Valid for  steps short beside the time in which the valves empty the cylinder (the ducts' own limit sees to that)
// Tested by  tests/models/cylinder_test.cpp, tests/verification/engine_checks.cpp
void Cylinder::exchange(Port& port, const Step& step, CrankAngle from) {
  const CrankAngle turn{spec_.crank_speed * step.dt}, middle = from + CrankAngle{turn.radians / 2};
  const CylinderGas gas = gas_at(content_ + (step.dt / 2) * rate_, middle);
  if (!(gas.p > 0 && gas.T > 0 && std::isfinite(gas.p))) refuse(gas, step.time);
  const bool kept_shut = step.time >= shut_from_ && step.time < shut_to_;
  const Reservoir inside = make_reservoir(gas_, gas.p, gas.T, gas.Y);
  const double exhaust_area = kept_shut ? 0 : flow_area(spec_.exhaust_valves, exhaust_lift_(middle));

  if (exhaust_area > 0)
    flow_through_orifice(inside, exhaust_area, gas_, port);
  else
    close_port(port);
  const Content out = (-step.dt * port.area) * Content{port.flux.mass, port.flux.energy, port.flux.burned};
  const auto in = port_.flow(inside, {flow_area(spec_.intake_valves, intake_lift_(middle)), gas.V}, step.dt, gas_);
  const double work = gas.p * (crank_.volume(from + turn) - crank_.volume(from)), heat = step.dt * wall_heat(gas);

  const Content before = content_;
  content_ = content_ + in.into_cylinder - out + Content{0, -work - heat, 0};
  exhaust_flow_ = out.mass / step.dt;
  intake_flow_ = in.into_cylinder.mass / step.dt;
  totals_.intake += in.from_plenum;
  totals_.exhaust += out;
  totals_.work += work;
  totals_.wall_heat += heat;
  if (from < burn_.end) burn_late(from, from + turn);
  rate_ = (1 / step.dt) * (content_ - before);
}

// What a long burn leaves when the exhaust opens goes on burning in the cylinder, in proportion to the fresh gas still
// there.
void Cylinder::burn_late(CrankAngle from, CrankAngle to) {
  const double left = 1 - burn_.fraction(from), fresh = content_.mass - content_.burned;
  if (!(left > 0 && fresh > 0 && period_.charge().fuel > 0)) return;
  const double burned = fresh * (burn_.fraction(to) - burn_.fraction(from)) / left;
  const double share = burned / period_.charge().fresh();
  content_ += Content{0, share * period_.charge().heat(), burned};
  totals_.fuel_heat += share * period_.charge().fuel_heat;
  totals_.fuel_mass += share * period_.charge().fuel;
  totals_.heat += share * period_.charge().heat();
  totals_.burned += burned;
}

double Cylinder::wall_heat(const CylinderGas& g) const {
  if (spec_.walls.law == WallHeatLaw::none) return 0;
  const double piston_speed = crank_.mean_piston_speed(spec_.crank_speed);
  const double h = wall_coefficient(
      spec_.walls.law, {g.p, g.T, g.V, crank_.bore(), piston_speed, woschni_speed_gas_exchange(piston_speed)});
  return wall_heat_flow(spec_.walls, {crank_.bore_area(), crank_.head_area(), crank_.liner_area(g.V)}, h, g.T);
}

// The stroke pairs are told apart by what was before, not by this step's own start: rounding must not lose a dead
// centre.
void Cylinder::end_step() {
  const bool was = in_gas_exchange_;
  in_gas_exchange_ = gas_exchange(angle_);
  if (in_gas_exchange_ && !was) book_.compression_and_expansion_done(totals());
  const bool cycle_done = was && !in_gas_exchange_;
  if (cycle_done) {
    const Plenum& plenum = port_.plenum();
    book_.gas_exchange_done(totals(), air_share() * plenum.pressure / (gas_constant(gas_, 0) * plenum.temperature));
  }
  if (interval_ > 0) sample(cycle_done);
}

void Cylinder::sample(bool cycle_done) {
  if (cycle_done) {
    trace_.swap(recording_);
    recording_.clear();
  }
  const double count = std::floor((angle_ + slack).radians / interval_);
  if (count == interval_count_) return;
  interval_count_ = count;
  const CylinderGas gas = now();
  recording_.push_back({gas.angle, gas.p, gas.T});
}

void Cylinder::record(CrankAngle interval) {
  interval_ = interval.radians;
  recording_.clear();
  trace_.clear();
}

void Cylinder::keep_exhaust_shut(double from_time, double to_time) {
  shut_from_ = from_time;
  shut_to_ = to_time;
}

CylinderTotals Cylinder::totals() const {
  if (!closed_) return totals_;
  const ClosedPoint p = period_.at(angle_);
  const Charge& charge = period_.charge();
  CylinderTotals t = totals_;
  t.fuel_mass += p.burned_share * charge.fuel;
  t.fuel_heat += p.burned_share * charge.fuel_heat;
  t.heat += p.burned_share * charge.heat();
  t.burned += p.burned_share * charge.fresh();
  t.wall_heat += p.wall_heat;
  t.work += p.work;
  return t;
}

Content Cylinder::held() const { return (closed_ ? period_.content(period_.at(angle_)) : content_) + port_.held(); }

Content Cylinder::left() const {
  const CylinderTotals t = totals();
  return {-t.intake.mass - t.fuel.mass, t.work + t.wall_heat - t.intake.energy - t.fuel.energy - t.heat,
          -t.intake.burned - t.fuel.burned - t.burned};
}

CylinderGas Cylinder::now() const {
  CylinderGas gas = gas_at(closed_ ? period_.content(period_.at(angle_)) : content_, angle_);
  gas.angle = wrapped(angle_, bottom_dead_centre - slack);
  return gas;
}

void Cylinder::refuse(const CylinderGas& gas, double time) const {
  throw Error(ErrorKind::unphysical, fmt::format("gas at {:.4g} Pa and {:.4g} K", gas.p, gas.T),
              fmt::format("{}, {:.1f} degrees after firing, {:.6g} s", spec_.name, gas.angle.degrees(), time));
}

}  // namespace pulsewright
