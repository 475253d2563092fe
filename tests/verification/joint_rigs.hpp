#pragma once
// Rigs round one joint, for the checks of joints: ducts that meet in it, with given gas or walls beyond their far ends.

#include <functional>
#include <memory>
#include <numbers>
#include <vector>

#include "solver/joint.hpp"
#include "solver/network.hpp"

namespace pulsewright {

inline constexpr double rig_gamma = 1.33, rig_R = 287, rig_T = 900, rig_p = 1e5;  // exhaust gas as a perfect gas

/// Gas beyond a duct's end; u is its velocity toward the duct. Against the gas at rest it is an end without echo.
struct Beyond {
  double p = rig_p, T = rig_T, u = 0;
};

/// The state behind a simple wave of pressure p that runs into gas at rest at rig_p, rig_T.
Beyond simple_wave(double p);

/// The duct's end borders on given gas: the exact Riemann solution between the two.
class BeyondEnd : public Element {
 public:
  explicit BeyondEnd(std::function<Beyond(double time)> gas) : gas_(std::move(gas)) {}
  void advance(std::span<Port> ports, const Step& step) override;
  Content left() const override { return left_; }

 private:
  std::function<Beyond(double)> gas_;
  Content left_;
};

class WallEnd : public Element {
 public:
  void advance(std::span<Port> ports, const Step& step) override;
};

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

/// One duct of a star: its finish is at the joint, for the outlet too.
struct StarDuct {
  double length, bore;
  Beyond gas{};                            // at the start
  std::function<Beyond(double)> beyond{};  // its far end; none: a wall
  double burned = 0;
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
