#include "models/closed_period.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <boost/numeric/odeint.hpp>
#include <cmath>

namespace pulsewright {
namespace {

constexpr double reference_temperature = 298.15;  // K, at which heating values are stated
constexpr double tolerance = 1e-9;                // of the charge's energy, per step of the integration
constexpr double longest_step = 0.05;             // rad; keeps the look-up between steps as good as the steps

using Crossed = std::array<double, 2>;  // wall heat and work, as shares of the energy at the start

}  // namespace

// Equation   heat = m_f LHV eta - m_c (h_fresh(298.15) - h_burned(298.15)), sensible enthalpies with one zero at 0 K;
//            direct fuel enters with m_f h_fresh(298.15): liquid fuel at 298.15 K gives its heating value, no more
// Source     first law with the heating value's own reference state (Heywood 1988, section 3.5.2)
// Symbols    m_f fuel, m_c charge that burns (its fuel included) kg; LHV J/kg; eta combustion efficiency
// Valid for  fuel vapour counted as air; the cold of evaporation is left out
// Tested by  tests/models/closed_period_test.cpp
Charge make_charge(const FuelSupply& supply, const Content& content, const Gas& gas) {
  Charge charge{content};
  const double h_fresh = enthalpy(gas, reference_temperature, 0);
  const double h_burned = enthalpy(gas, reference_temperature, 1);
  const double fresh = std::max(content.mass - content.burned, 0.0);
  charge.fuel = fresh / (supply.air_fuel_ratio + (supply.port ? 1 : 0));
  if (charge.fuel <= 0) return charge;
  if (!supply.port) charge.content += Content{charge.fuel, charge.fuel * h_fresh, 0};
  charge.fuel_heat = charge.fuel * supply.heating_value * supply.efficiency;
  charge.shift = charge.fresh() * (h_burned - h_fresh);
  return charge;
}

// Equation   dW/dt = p dV/dt; dQ/dt = h(T, p, ...) sum A (T - T_wall) / omega; E = E_0 + heat x(t) - Q - W;
//            p = m R T/V; motored pressure isentropic from the burn's start
// Source     first law for a closed single zone: Heywood 1988, section 9.2.2
// Symbols    t crank angle rad; x burned share; W work, Q wall heat J; omega rad/s
// Valid for  shut valves, no blow-by, no crevices
// Tested by  tests/models/closed_period_test.cpp, tests/verification/engine_checks.cpp
class ClosedIntegration {
 public:
  ClosedIntegration(const ClosedSetting& s, ClosedPeriod& out)
      : s_(s),
        out_(out),
        energy_(out.charge_.content.energy),
        piston_speed_(s.crank.mean_piston_speed(s.crank_speed)) {}

  void run(CrankAngle from, CrankAngle to) {
    Crossed y{};
    double angle = from.radians;
    for (double stop : {s_.burn.start.radians, s_.burn.end.radians, to.radians}) {
      const double next = std::clamp(stop, angle, to.radians);
      if (out_.charge_.fuel > 0 && angle == s_.burn.start.radians) note_motored(y, angle);
      if (next > angle) leg(y, angle, next);
      angle = next;
    }
    find_peak();
  }

 private:
  struct Inside {
    double p, T, V, R;
  };

  ClosedPoint point(const Crossed& y, double angle) const {
    const double share = out_.charge_.fuel > 0 ? s_.burn.fraction({angle}) : 0;
    return {share, y[0] * energy_, y[1] * energy_};
  }

  Inside inside(const ClosedPoint& point, double angle) const {
    const Content c = out_.content(point);
    const double Y = c.burned / c.mass, V = s_.crank.volume({angle});
    const double T = temperature_from_energy(s_.gas, c.energy / c.mass, Y), R = gas_constant(s_.gas, Y);
    if (!(T > 0))
      throw Error(ErrorKind::unphysical, fmt::format("gas at {:.4g} K with shut valves, {:.4g} kg", T, c.mass),
                  fmt::format("{:.4g} degrees after firing top dead centre", CrankAngle{angle}.degrees()));
    return {c.mass * R * T / V, T, V, R};
  }

  void note_motored(const Crossed& y, double angle) {
    const ClosedPoint start = point(y, angle);
    const Inside g = inside(start, angle);
    motored_p_ = g.p;
    motored_V_ = g.V;
    motored_gamma_ = heat_ratio(s_.gas, g.T, out_.content(start).burned / out_.charge_.content.mass);
  }

  double gas_speed(const Inside& g, double angle) const {
    const double still = woschni_speed_closed(piston_speed_);
    if (motored_p_ == 0 || angle < s_.burn.start.radians) return still;
    const double motored = motored_p_ * std::pow(motored_V_ / g.V, motored_gamma_);
    return still + woschni_speed_burning(s_.crank.displacement(), out_.charge_.content.mass * g.R, g.p - motored);
  }

  // Wall heat and work per radian.
  Crossed slope(const Crossed& y, double angle) const {
    const Inside g = inside(point(y, angle), angle);
    const double work = g.p * s_.crank.volume_slope({angle});
    if (s_.walls.law == WallHeatLaw::none) return {0, work / energy_};
    const double h =
        wall_coefficient(s_.walls.law, {g.p, g.T, g.V, s_.crank.bore(), piston_speed_, gas_speed(g, angle)});
    const WallAreas areas{s_.crank.bore_area(), s_.crank.head_area(), s_.crank.liner_area(g.V)};
    return {wall_heat_flow(s_.walls, areas, h, g.T) / s_.crank_speed / energy_, work / energy_};
  }

  void leg(Crossed& y, double from, double to) {
    namespace ode = boost::numeric::odeint;
    const auto right_side = [this](const Crossed& now, Crossed& slopes, double angle) { slopes = slope(now, angle); };
    const auto keep = [this](const Crossed& now, double angle) {
      const Crossed k = slope(now, angle);
      out_.nodes_.push_back({angle, now[0] * energy_, now[1] * energy_, k[0] * energy_, k[1] * energy_});
    };
    ode::integrate_adaptive(
        ode::make_controlled(tolerance, tolerance, longest_step, ode::runge_kutta_dopri5<Crossed>()), right_side, y,
        from, to, std::min(0.02, to - from), keep);
  }

  double pressure(double angle) const { return inside(out_.at({angle}), angle).p; }

  // Best node, then a golden section between its neighbours.
  void find_peak() {
    const auto& nodes = out_.nodes_;
    std::size_t best = 0;
    double highest = 0;
    for (std::size_t i = 0; i < nodes.size(); ++i)
      if (const double p = pressure(nodes[i].angle); p > highest) highest = p, best = i;
    double low = nodes[best > 0 ? best - 1 : 0].angle, high = nodes[std::min(best + 1, nodes.size() - 1)].angle;
    for (int turn = 0; turn < 20; ++turn) {
      const double a = high - 0.618034 * (high - low), b = low + 0.618034 * (high - low);
      (pressure(a) > pressure(b) ? high : low) = pressure(a) > pressure(b) ? b : a;
    }
    out_.max_pressure_angle_ = {(low + high) / 2};
    out_.max_pressure_ = std::max(highest, pressure((low + high) / 2));
  }

  const ClosedSetting& s_;
  ClosedPeriod& out_;
  double energy_, piston_speed_;
  double motored_p_ = 0, motored_V_ = 0, motored_gamma_ = 0;
};

ClosedPeriod::ClosedPeriod(const ClosedSetting& setting, const Charge& charge, CrankAngle from, CrankAngle to)
    : charge_(charge), fraction_(setting.burn.fraction) {
  ClosedIntegration(setting, *this).run(from, to);
}

// Cubic Hermite between the integrator's own steps: its error (below 1e-6 of the energy) never touches the balance,
// since the energy is what heat and work leave.
ClosedPoint ClosedPeriod::at(CrankAngle angle) const {
  const auto above = std::upper_bound(nodes_.begin() + 1, nodes_.end() - 1, angle.radians,
                                      [](double a, const Node& node) { return a < node.angle; });
  const Node& b = *above;
  const Node& a = *(above - 1);
  const double width = b.angle - a.angle;
  const double s = width > 0 ? std::clamp((angle.radians - a.angle) / width, 0.0, 1.0) : 1, r = 1 - s;
  const auto between = [&](double v0, double v1, double k0, double k1) {
    return r * r * (1 + 2 * s) * v0 + s * s * (1 + 2 * r) * v1 + width * s * r * (r * k0 - s * k1);
  };
  return {charge_.fuel > 0 ? fraction_(angle) : 0, between(a.wall, b.wall, a.wall_slope, b.wall_slope),
          between(a.work, b.work, a.work_slope, b.work_slope)};
}

Content ClosedPeriod::content(const ClosedPoint& p) const {
  return {charge_.content.mass, charge_.content.energy + charge_.heat() * p.burned_share - p.wall_heat - p.work,
          charge_.content.burned + charge_.fresh() * p.burned_share};
}

double ClosedPeriod::energy_slope(CrankAngle angle) const {
  const double h = 1e-3, from = std::max(angle.radians - h, nodes_.front().angle);
  const double to = std::min(angle.radians + h, nodes_.back().angle);
  if (!(to > from)) return 0;
  return (content(at({to})).energy - content(at({from})).energy) / (to - from);
}

}  // namespace pulsewright
