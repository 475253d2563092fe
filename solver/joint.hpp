#pragma once
// Where ducts meet: a merge collector, a log's tee, a tap, a step in bore. One small cell of gas that keeps the
// momentum of the incoming streams by direction (the default law), or one static pressure for all ducts (no angle
// effect). Wastegates sit on joints: an orifice to the air or to another joint.

#include <array>
#include <string>
#include <vector>

#include "solver/element.hpp"
#include "solver/gas.hpp"
#include "solver/joint_gate.hpp"
#include "solver/joint_port.hpp"

namespace pulsewright {

/// How one duct sits on a joint.
struct PortGeometry {
  std::array<double, 3> n{1, 0, 0};  // unit vector along the duct, pointing out of the joint
  double s = 0;                      // 1: smooth mouth that streams may fill together (the outlet), 0: a plain bore
};

struct JointSpec {
  std::string name{};
  std::vector<PortGeometry> ports{};  // 1 to 8, in the order in which the duct ends are attached
  double volume = 0;                  // m3, may be 0
  double contraction_loss = 0.1;      // of the outlet's velocity head, times 1 - area/mixing area
  double angle_factor = 1;            // on the angles between streams and outlets, 0.75-1
  JointLaw law = JointLaw::momentum;
  double p = 101325, T = 293, Y = 0;  // at the start: Pa, K, burned mass fraction
};

class Joint : public Element {
 public:
  static constexpr std::size_t max_ports = 8;

  /// Throws Error (internal) for no port, more than max_ports, a negative volume or a state that is not positive.
  Joint(JointSpec spec, const Gas& gas);

  /// Throws Error (unphysical) with the joint's name where no pressure balances the flows.
  void advance(std::span<Port> ports, const Step& step) override;

  /// With the gas handed over by other joints' gates and not yet mixed in.
  Content held() const override { return content_ + pending_; }
  /// Through gates to the air.
  Content left() const override;

  /// Adds a gate and returns its number.
  std::size_t add_gate(JointGate gate);
  JointGate& gate(std::size_t i) { return gates_[i]; }
  const JointGate& gate(std::size_t i) const { return gates_[i]; }

  /// Gas from the side, without momentum, mixed in at the next step; negative: drawn.
  void take_in(const Content& from_the_side) { pending_ += from_the_side; }

  const std::string& name() const { return spec_.name; }
  double volume() const { return spec_.volume; }
  double pressure() const { return p_; }     // static, Pa
  double temperature() const { return T_; }  // K
  double enthalpy() const { return h_; }     // J/kg
  double burned() const { return Y_; }       // mass fraction

  /// For tests and timing: looks at the ports since the start, and steps whose pressure needed the bracketed search.
  long looks() const { return looks_; }
  long searches() const { return searches_; }

 private:
  struct Balance;
  struct GateLook {  // one gate while the pressure is sought
    double head;     // total pressure at the gate over the joint's static pressure
    OrificeSide outside;
    double h, Y;         // of gas that comes back
    double mass, slope;  // kg/s out of the joint, and by the joint's pressure
  };

  void check(std::span<const Port> ports, const Step& step) const;
  void prepare(std::span<const Port> ports, const Step& step);
  void prepare_gates(const Step& step);
  Balance balance(double p, const Step& step, bool settle);
  void take_inflow(Balance& b, const Step& step);
  void mix(Balance& b, const Step& step) const;
  void take_outflow(Balance& b, const Step& step, bool settle);
  void sum_up(Balance& b, const Step& step) const;
  Balance solve(const Step& step);
  Balance solve_bracketed(const Step& step);
  void follow(double rise);
  void answer(std::span<Port> ports, const Balance& b) const;
  void keep(const Balance& b, std::span<const Port> ports, const Step& step);
  void pass_gates(const Balance& b, const Step& step);
  void remember(const Balance& b, const Step& step);
  double stream_cosine(const std::array<double, 3>& from, const std::array<double, 3>& into) const;
  double stream_toward(const std::array<double, max_ports>& cosine) const;
  [[noreturn]] void fail(const std::string& what, const Step& step) const;

  JointSpec spec_;
  std::vector<JointGate> gates_;
  std::vector<GateLook> gate_looks_;
  std::array<std::array<double, max_ports>, max_ports> cosine_{};  // [j][k]: way out at port j, stream of port k
  std::vector<std::array<double, max_ports>> gate_cosine_;
  std::array<JointPort, max_ports> ports_{};
  std::size_t count_;

  Content content_, pending_;
  double p_, T_, h_, Y_;                                              // now
  double trend_ = 0;                                                  // change of the pressure in the last step, Pa
  std::array<double, max_ports> stream_momentum_{}, outlet_share_{};  // J and lambda of each port
  double stream_mass_ = 0, total_momentum_ = 0, stream_volume_ = 0;   // S, Ja and Q
  long looks_ = 0, searches_ = 0;
};

}  // namespace pulsewright
