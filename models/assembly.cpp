#include "models/assembly.hpp"

#include "shared/error.hpp"
#include "solver/end_closed.hpp"
#include "solver/end_reservoir.hpp"
#include "solver/end_vessel.hpp"
#include "solver/end_wave.hpp"
#include "solver/throttle.hpp"

namespace pulsewright {
namespace {

template <class... F>
struct Overloaded : F... {
  using F::operator()...;
};
template <class... F>
Overloaded(F...) -> Overloaded<F...>;

Reservoir reservoir(const Gas& gas, const GasState& s) {
  return make_reservoir(gas, s.pressure, s.temperature, s.burned);
}

DuctSpec spec_of(const DuctPlan& duct, const Gas& gas, double cell) {
  DuctSpec spec = cut_duct(duct.name, duct.drawing, cell);
  spec.initial.clear();
  std::size_t stretch = 0;
  for (std::size_t j = 0; j < spec.cells(); ++j) {
    const double middle = (static_cast<double>(j) + 0.5) * spec.dx;
    while (stretch + 1 < duct.initial.size() && middle > duct.initial[stretch].to) ++stretch;
    spec.initial.push_back(primitive_of(duct.initial[stretch].gas, gas));
  }
  return spec;
}

JointSpec spec_of(const NodePlan& node, const JointNode& joint, const Network& network) {
  JointSpec spec;
  spec.name = node.name;
  for (const JointMouth& port : joint.ports) spec.ports.push_back({axis(port.n), port.smooth ? 1.0 : 0.0});
  spec.volume = joint.volume;
  spec.contraction_loss = joint.contraction_loss;
  spec.angle_factor = joint.angle_factor;
  spec.law = joint.law;
  const PlanPort first = node.ports.front();
  const std::size_t cell = network.first(first.duct) + (first.at_finish ? network.cells(first.duct) - 1 : 0);
  spec.p = network.arena().p[cell];
  spec.T = network.arena().T[cell];
  spec.Y = network.arena().Y[cell];
  return spec;
}

std::vector<DuctEnd> ends_of(const NodePlan& node) {
  std::vector<DuctEnd> ends;
  for (const PlanPort& port : node.ports) ends.push_back({port.duct, port.at_finish ? Side::finish : Side::start});
  return ends;
}

std::unique_ptr<Element> make_element(const NodePlan& node, const Gas& gas, const Network& network,
                                      const MachineMaker& machine) {
  const auto of_the_engine = [&]() -> std::unique_ptr<Element> {
    if (!machine) throw Error(ErrorKind::internal, "a rig holds a part of an engine: " + node.name);
    return machine(node);
  };
  return std::visit(
      Overloaded{
          [](const ClosedNode&) -> std::unique_ptr<Element> { return std::make_unique<ClosedEnd>(); },
          [&](const OpenNode& n) { return open_end(reservoir(gas, n.outside)); },
          [&](const SupplyNode& n) { return supply_end(reservoir(gas, n.total)); },
          [&](const NozzleNode& n) {
            return nozzle_end(reservoir(gas, n.outside), round_section(n.bore).area, n.discharge);
          },
          [](const AnechoicNode&) -> std::unique_ptr<Element> { return std::make_unique<AnechoicEnd>(); },
          [](const SignalNode& n) -> std::unique_ptr<Element> { return std::make_unique<SignalEnd>(n.points); },
          [&](const VesselNode& n) -> std::unique_ptr<Element> {
            return std::make_unique<Vessel>(
                VesselSpec{node.name, n.volume, n.inside.pressure, n.inside.temperature, n.inside.burned,
                           n.discharge * round_section(n.bore).area, n.opens},
                gas);
          },
          [&](const JointNode& n) -> std::unique_ptr<Element> {
            return std::make_unique<Joint>(spec_of(node, n, network), gas);
          },
          [](const ThrottleNode& n) -> std::unique_ptr<Element> { return std::make_unique<Throttle>(n.jet_area); },
          [&](const CylinderNode&) { return of_the_engine(); },
          [&](const TurbineNode&) { return of_the_engine(); },
          [&](const AirNode& n) { return n.silencer ? of_the_engine() : open_end(reservoir(gas, n.air)); },
      },
      node.kind);
}

void seat_gates(Assembly& a, const ManifoldPlan& plan, const GasState& air) {
  for (const GatePlan& gate : plan.gates) {
    Joint* joint = a.joints[static_cast<std::size_t>(gate.joint)];
    JointGate seat{.name = gate.name, .effective_area = gate.flow_coefficient * gate_area(gate), .n = axis(gate.n)};
    if (gate.destination >= 0)
      seat.sink = a.joints[static_cast<std::size_t>(gate.destination)];
    else
      seat.p = air.pressure, seat.T = air.temperature, seat.Y = air.burned;
    a.gates.push_back({joint, joint->add_gate(std::move(seat))});
  }
}

}  // namespace

Primitive primitive_of(const GasState& s, const Gas& gas) {
  return {s.pressure / (gas_constant(gas, s.burned) * s.temperature), s.velocity, s.pressure, s.burned};
}

std::array<double, 3> axis(const Eigen::Vector3d& n) { return {n.x(), n.y(), n.z()}; }

Assembly assemble(const ManifoldPlan& plan, const Gas& gas, const NetworkOptions& options, double cell,
                  const MachineMaker& machine) {
  Assembly a{std::make_unique<Network>(gas, options), {}, {}, {}};
  for (const DuctPlan& duct : plan.ducts) a.network->add_duct(spec_of(duct, gas, cell));
  for (const NodePlan& node : plan.nodes) {
    Element& element = a.network->attach(make_element(node, gas, *a.network, machine), ends_of(node));
    a.elements.push_back(&element);
    a.joints.push_back(dynamic_cast<Joint*>(&element));
  }
  seat_gates(a, plan, plan.air);
  a.network->start();
  return a;
}

}  // namespace pulsewright
