#pragma once
// Rigs round one joint, for the checks of joints: ducts that meet in it, with given gas or walls beyond their far ends.

#include <memory>
#include <numbers>
#include <vector>

#include "solver/end_wave.hpp"
#include "solver/joint.hpp"
#include "solver/network.hpp"

namespace pulsewright {

inline constexpr double rig_gamma = 1.33, rig_R = 287, rig_T = 900, rig_p = 1e5;  // exhaust gas as a perfect gas

/// Gas in a duct; u is its velocity toward the joint, m/s.
struct DuctGas {
  double p = rig_p, T = rig_T, u = 0, Y = 0;
};

/// A pulse as a simple wave into gas at rest at rig_p, rig_T: half a sine of the given height and length.
std::vector<SignalPoint> pulse_signal(double height, double length);

/// A joint and the entropy made in it, J/K, from the gas in its faces.
class EntropyMeter : public Element {
 public:
  EntropyMeter(JointSpec spec, const Gas& gas) : joint(std::move(spec), gas) {}
  void advance(std::span<Port> ports, const Step& step) override;
  Content held() const override { return joint.held(); }
  Content left() const override { return joint.left(); }

  Joint joint;
  double made = 0;
};

/// One duct of a star: its finish is at the joint, for the outlet too. At its start: a wall, or its own gas without
/// end, with or without a wave that comes in.
struct StarDuct {
  enum class Far { wall, endless };
  double length, bore;
  DuctGas gas{};
  Far far = Far::endless;
  std::vector<SignalPoint> signal{};
};

struct Star {
  std::unique_ptr<Network> net;
  EntropyMeter* meter = nullptr;
};

/// Ducts 0, 1, 2 ... with cells of about dx at one joint (spec.ports in the same order).
Star make_star(const JointSpec& spec, const std::vector<StarDuct>& ducts, double dx, double courant = 0.8);

/// Ducts set evenly round an outlet that comes last, all at this angle to its axis; the outlet's mouth is smooth.
JointSpec cone(int primaries, double angle_deg, JointLaw law = JointLaw::momentum);

/// Steady flow through a joint whose ducts carry no waves: `speeds` of the inflows, the one outflow comes last.
/// Pressures follow; the outlet's is rig_p. Returns the gas in the faces.
std::vector<EndState> steady_faces(const JointSpec& spec, const std::vector<double>& areas,
                                   const std::vector<double>& speeds);

inline double area_of(double bore) { return std::numbers::pi / 4 * bore * bore; }

}  // namespace pulsewright
