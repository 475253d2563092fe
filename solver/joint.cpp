#include "solver/joint.hpp"

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"
#include "solver/joint_balance.hpp"
#include "solver/wave.hpp"

namespace pulsewright {
namespace {

constexpr double least_flow = 1e-12;  // kg/s: slower streams carry no momentum to speak of

double dot(const std::array<double, 3>& a, const std::array<double, 3>& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

}  // namespace

Joint::Joint(JointSpec spec, const Gas& gas)
    : spec_(std::move(spec)), count_(spec_.ports.size()), p_(spec_.p), T_(spec_.T), h_(0), Y_(spec_.Y) {
  if (count_ < 1 || count_ > max_ports)
    throw Error(ErrorKind::internal, "a joint of " + std::to_string(count_) + " ducts; 1 to 8 are possible",
                spec_.name);
  if (!(spec_.volume >= 0 && p_ > 0 && T_ > 0 && Y_ >= 0 && Y_ <= 1))
    throw Error(ErrorKind::internal, "a joint with a volume or state that cannot be", spec_.name);
  h_ = pulsewright::enthalpy(gas, T_, Y_);
  const double mass = p_ * spec_.volume / (gas_constant(gas, Y_) * T_);
  content_ = {mass, mass * internal_energy(gas, T_, Y_), mass * Y_};
  for (std::size_t j = 0; j < count_; ++j) {
    ports_[j].p = p_;
    ports_[j].contraction_loss = spec_.contraction_loss;
    for (std::size_t k = 0; k < count_; ++k) cosine_[j][k] = stream_cosine(spec_.ports[k].n, spec_.ports[j].n);
  }
}

std::size_t Joint::add_gate(JointGate gate) {
  auto& cosine = gate_cosine_.emplace_back();
  for (std::size_t k = 0; k < count_; ++k) cosine[k] = stream_cosine(spec_.ports[k].n, gate.n);
  gates_.push_back(std::move(gate));
  gate_looks_.resize(gates_.size());
  return gates_.size() - 1;
}

Content Joint::left() const {
  Content sum;
  for (const JointGate& gate : gates_)
    if (!gate.sink) sum += gate.passed;
  return sum;
}

/// A stream comes in against its duct's n; factors below 1 turn every angle toward straight on.
double Joint::stream_cosine(const std::array<double, 3>& from, const std::array<double, 3>& into) const {
  const double cosine = std::clamp(-dot(from, into), -1.0, 1.0);
  return spec_.angle_factor == 1 ? cosine : std::cos(spec_.angle_factor * std::acos(cosine));
}

double Joint::stream_toward(const std::array<double, max_ports>& cosine) const {
  if (stream_mass_ < least_flow) return 0;
  double sum = 0;
  for (std::size_t k = 0; k < count_; ++k) sum += stream_momentum_[k] * cosine[k];
  return sum / stream_mass_;
}

void Joint::fail(const std::string& what, const Step& step) const {
  throw Error(ErrorKind::unphysical, what, "joint '" + spec_.name + "', time " + std::to_string(step.time) + " s");
}

void Joint::check(std::span<const Port> ports, const Step& step) const {
  if (ports.size() != count_)
    throw Error(ErrorKind::internal,
                std::to_string(ports.size()) + " ducts at a joint made for " + std::to_string(count_), spec_.name);
  for (const Port& port : ports)
    if (const EndState& d = port.state; !(d.p > 0 && d.rho > 0 && std::isfinite(d.p + d.rho + d.w)))
      fail("the gas of a duct came with p = " + std::to_string(d.p) + " Pa, density " + std::to_string(d.rho) +
               " kg/m3, velocity " + std::to_string(d.w) + " m/s",
           step);
}

// Equation   v_j = sum_k J_k (-n_k . n_j)/S;  A_m = A + s max(0, lambda_j Q S/Ja - A)
// Source     momentum of the entering streams along each way out; the area they fill is our own closure
// Symbols    J, S, Ja, Q momentum, mass, sum of |J| and volume flow of the entering streams; lambda_j outlet's share
// Valid for  any directions; v is capped where it is used (solver/joint_port.cpp)
// Tested by  tests/verification/joint_flow_checks.cpp
void Joint::prepare(std::span<const Port> ports, const Step& step) {
  check(ports, step);
  const double filled = total_momentum_ > 0 ? stream_volume_ * stream_mass_ / total_momentum_ : 0;
  for (std::size_t j = 0; j < count_; ++j) {
    JointPort& port = ports_[j];
    port.duct = ports[j].state;
    port.area = ports[j].area;
    port.rest_pressure = wave_pressure(0, port.duct);
    port.jet = stream_toward(cosine_[j]);
    port.mixing_area = port.area + spec_.ports[j].s * std::max(0.0, outlet_share_[j] * filled - port.area);
  }
  prepare_gates(step);
}

void Joint::advance(std::span<Port> ports, const Step& step) {
  prepare(ports, step);
  const Balance b = solve(step);
  answer(ports, b);
  keep(b, ports, step);
  remember(b, step);
}

void Joint::answer(std::span<Port> ports, const Balance& b) const {
  for (std::size_t j = 0; j < count_; ++j) {
    const JointPort& from = ports_[j];
    const double sign = from.inflow ? 1 : -1, mass = sign * from.mass;
    const double Y = from.inflow ? from.duct.Y : b.gas.Y, gamma = from.inflow ? from.duct.gamma : b.gas.gamma;
    ports[j].flux = {mass, from.mass * from.u + from.p, mass * from.h0, mass * Y};
    ports[j].face = {from.rho, sign * from.u, from.p, Y, from.T, gamma, std::sqrt(gamma * from.p / from.rho)};
  }
}

/// What the fluxes left is kept, at volume 0 too: there it is the little that the search did not balance.
void Joint::keep(const Balance& b, std::span<const Port> ports, const Step& step) {
  content_ += pending_;
  pending_ = {};
  for (const Port& port : ports)
    content_ += (step.dt * port.area) * Content{port.flux.mass, port.flux.energy, port.flux.burned};
  pass_gates(b, step);
  const double before = p_;
  if (spec_.volume > 0) {
    if (!(content_.mass > 0 && content_.energy > 0)) fail("more gas was drawn from the joint than it holds", step);
    Y_ = std::clamp(content_.burned / content_.mass, 0.0, 1.0);
    T_ = temperature_from_energy(step.gas, content_.energy / content_.mass, Y_);
    const double R = gas_constant(step.gas, Y_);
    p_ = content_.mass * R * T_ / spec_.volume;
    h_ = content_.energy / content_.mass + R * T_;
  } else {
    p_ = b.gas.p;
    T_ = b.gas.T;
    h_ = b.gas.h;
    Y_ = b.gas.Y;
  }
  trend_ = std::clamp(p_ - before, -0.1 * p_, 0.1 * p_);
}

/// The streams' memory follows them as fast as the gas of the joint is replaced; at once where there is no volume.
void Joint::remember(const Balance& b, const Step& step) {
  double share = 1;
  if (spec_.volume > 0) share = -std::expm1(-step.dt * std::max(b.in.mass, b.out_mass) / content_.mass);
  const auto relax = [share](double& x, double to) { x += share * (to - x); };
  double mass = 0, momentum = 0, volume = 0;
  for (std::size_t k = 0; k < count_; ++k) {
    const JointPort& port = ports_[k];
    const double flow = port.area * port.mass;
    relax(stream_momentum_[k], port.inflow ? flow * port.u : 0);
    relax(outlet_share_[k], port.inflow || b.out_mass < least_flow ? 0 : flow / b.out_mass);
    if (!port.inflow) continue;
    mass += flow;
    momentum += flow * port.u;
    volume += port.area * port.u;
  }
  relax(stream_mass_, mass);
  relax(total_momentum_, momentum);
  relax(stream_volume_, volume);
}

}  // namespace pulsewright
