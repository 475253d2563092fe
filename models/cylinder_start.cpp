#include <fmt/format.h>

#include <cmath>

#include "models/cylinder.hpp"

namespace pulsewright {
namespace {

BurnProgress progress(const BurnTiming& timing) {
  const BurnCurve curve(timing);
  return {curve.start(), curve.end(), [curve](CrankAngle angle) { return curve.fraction(angle); }};
}

}  // namespace

Cylinder::Cylinder(const CylinderSpec& spec, const Gas& gas)
    : spec_(spec),
      gas_(gas),
      crank_(spec.crank),
      exhaust_lift_(spec.exhaust_cam),
      intake_lift_(spec.intake_cam),
      burn_(progress(spec.burn)),
      port_(spec.plenum),
      book_(crank_.displacement()) {
  if (!(spec.crank_speed > 0)) throw Error(ErrorKind::case_file, "engine speed must be above zero", spec.name);
  shuts_ = wrapped(intake_lift_.seats(), CrankAngle{-cycle_angle});
  opens_ = wrapped(exhaust_lift_.leaves_seat(), CrankAngle{0});
  const CrankAngle exhaust_seats = wrapped(exhaust_lift_.seats(), opens_);
  const CrankAngle intake_leaves = wrapped(intake_lift_.leaves_seat(), opens_);
  const CrankAngle next_shut{shuts_.radians + cycle_angle};
  if (!(exhaust_seats < next_shut && intake_leaves < next_shut && intake_leaves > opens_ && burn_.start > shuts_))
    throw Error(
        ErrorKind::case_file,
        fmt::format(
            "valve timing leaves no shut time for the burn: intake seats at {:.0f}, burn begins at {:.0f}, exhaust "
            "leaves its seat at {:.0f} and seats at {:.0f} degrees after firing",
            shuts_.degrees(), burn_.start.degrees(), opens_.degrees(), exhaust_seats.degrees()),
        spec.name, "check opens and closes of both valves, and burn.centre");
  fill_at_start();
}

Content Cylinder::filled(double p, double T, double Y, CrankAngle angle) const {
  const double mass = p * crank_.volume(angle) / (gas_constant(gas_, Y) * T);
  return {mass, mass * internal_energy(gas_, T, Y), mass * Y};
}

// A guess that the first cycles correct: what the plenum would fill at intake closing, compressed and burned up to now;
// with open valves burned gas on the way out, fresh gas on the way in.
void Cylinder::fill_at_start() {
  const Plenum& plenum = port_.plenum();
  angle_ = own_angle(0);
  in_gas_exchange_ = gas_exchange(angle_);
  if (angle_ < opens_) {
    content_ = filled(plenum.pressure, plenum.temperature, 0.05, shuts_);
    shut(shuts_);
    totals_ = totals_ - totals();
  } else if (angle_.degrees() < 360) {
    content_ = filled(plenum.pressure, 1100, 1, angle_);
  } else {
    content_ = filled(plenum.pressure, plenum.temperature, 0.05, angle_);
  }
}

void Cylinder::set_burn_centre(CrankAngle centre) {
  BurnTiming timing = spec_.burn;
  timing.centre = centre;
  BurnProgress moved = progress(timing);
  if (!(moved.start > shuts_))
    throw Error(ErrorKind::case_file,
                fmt::format("the burn begins at {:.0f} degrees after firing, before the intake seats at {:.0f}",
                            moved.start.degrees(), shuts_.degrees()),
                spec_.name, "check burn.centre and burn.duration");
  spec_.burn = timing;
  burn_ = std::move(moved);
}

void Cylinder::fill(double p, double T, double Y) {
  if (closed_) throw Error(ErrorKind::internal, "a cylinder is filled with its valves shut", spec_.name);
  content_ = filled(p, T, Y, angle_);
}

void Cylinder::start_from(const Cylinder& other) {
  if (std::abs(std::remainder(angle_.radians - other.angle_.radians, cycle_angle)) > 1e-6)
    throw Error(ErrorKind::internal, "a cylinder starts from one at another crank angle", spec_.name);
  const Plenum plenum = port_.plenum();
  closed_ = other.closed_;
  content_ = other.content_;
  rate_ = other.rate_;
  period_ = other.period_;
  port_ = other.port_;
  port_.set_plenum(plenum);
  intake_at_closing_ = other.intake_at_closing_ - other.totals_.intake.mass;
  totals_ = {};
  totals_ = totals_ - totals();
}

}  // namespace pulsewright
