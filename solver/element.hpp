#pragma once
// What stands at the ends of ducts: closed ends, nozzles, joints, valves, turbines. Every one of them is an Element:
// it sees the gas at its duct ends (ports) and answers with the flux through each end face.

#include <span>

namespace pulsewright {

struct Gas;

/// Gas at a duct end as the element sees it, half a step ahead (the predictor has run).
/// w is the velocity TOWARD the element (out of the duct); p static. gamma = c^2 rho / p, frozen over the step.
struct EndState {
  double rho;    // density, kg/m3
  double w;      // velocity toward the element, m/s
  double p;      // static pressure, Pa, absolute
  double Y;      // burned mass fraction, 0..1
  double T;      // temperature, K
  double gamma;  // c^2 rho / p
  double c;      // sound speed, m/s
};

/// Flux through the end face per unit of its area, counted toward the element.
struct EndFlux {
  double mass;      // rho w, kg/(m2 s)
  double momentum;  // rho w^2 + p, Pa
  double energy;    // rho w (h + w^2/2), W/m2
  double burned;    // rho w Y, kg/(m2 s)
};

/// One duct end. state and area are given; flux and face are the answer. face is the gas in the end face itself: the duct
/// uses it to extrapolate into its end cell (slopes), so it must be positive and finite but need not match flux exactly.
struct Port {
  EndState state;
  double area;  // of the duct at this end, m2
  EndFlux flux;
  EndState face;
};

struct Step {
  double time;  // at the start of the step, s
  double dt;    // s
  const Gas& gas;
};

/// Mass, energy (sensible) and burned mass: what is held somewhere or has crossed somewhere.
struct Content {
  double mass = 0;    // kg
  double energy = 0;  // J
  double burned = 0;  // kg

  Content& operator+=(const Content& other) {
    mass += other.mass;
    energy += other.energy;
    burned += other.burned;
    return *this;
  }
};
inline Content operator+(Content a, const Content& b) { return a += b; }
inline Content operator-(const Content& a, const Content& b) {
  return {a.mass - b.mass, a.energy - b.energy, a.burned - b.burned};
}
/// What crosses a port's end face during dt, counted toward the element: the one account that both sides keep.
inline Content content_through(const Port& port, double dt) {
  const double area_time = port.area * dt;
  return {area_time * port.flux.mass, area_time * port.flux.energy, area_time * port.flux.burned};
}
inline Content operator*(double s, const Content& a) { return {s * a.mass, s * a.energy, s * a.burned}; }

class Element {
 public:
  virtual ~Element() = default;

  /// Fills flux and face of every port for the step, and advances what the element itself holds by those very fluxes.
  /// Ports come in the order in which the duct ends were attached. Throws Error (unphysical) with the element's name.
  virtual void advance(std::span<Port> ports, const Step& step) = 0;

  /// What the element holds now (a joint's volume, a vessel, a cylinder).
  virtual Content held() const { return {}; }

  /// What has left the network through this element since the start: to air, to a reservoir, as shaft work. Negative: entered.
  virtual Content left() const { return {}; }
};

}  // namespace pulsewright
