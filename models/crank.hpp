#pragma once
// Crank and piston: crank angle, and the volume above the piston that follows from it.

#include <cmath>
#include <numbers>

#include "shared/error.hpp"

namespace pulsewright {

/// Crank angle; degrees where people speak of it, radians inside. A cylinder's own angle is 0 at its firing top dead
/// centre and runs over [-180, 540) degrees: compression, expansion, exhaust, intake.
struct CrankAngle {
  double radians = 0;

  static constexpr CrankAngle from_degrees(double degrees) { return {degrees * std::numbers::pi / 180}; }
  constexpr double degrees() const { return radians * 180 / std::numbers::pi; }
  constexpr auto operator<=>(const CrankAngle&) const = default;
};
constexpr CrankAngle operator+(CrankAngle a, CrankAngle b) { return {a.radians + b.radians}; }
constexpr CrankAngle operator-(CrankAngle a, CrankAngle b) { return {a.radians - b.radians}; }

inline constexpr double cycle_angle = 4 * std::numbers::pi;  // one four-stroke cycle, rad

constexpr double radians_per_second(double rpm) { return rpm * 2 * std::numbers::pi / 60; }  // rad/s

/// The same point of the cycle, counted from `from`: in [from, from + 720 degrees).
inline CrankAngle wrapped(CrankAngle angle, CrankAngle from) {
  const double turns = std::floor((angle.radians - from.radians) / cycle_angle);
  return {angle.radians - turns * cycle_angle};
}

/// What is measured on the engine; m, and the plain ratio.
struct CrankDimensions {
  double bore;
  double stroke;
  double rod;  // between the centres of its eyes
  double compression_ratio;
};

/// Volumes and areas of one cylinder over the crank angle. Throws Error (case file) for a crank that cannot turn.
class SliderCrank {
 public:
  explicit SliderCrank(const CrankDimensions& d)
      : throw_(d.stroke / 2), rod_(d.rod), bore_(d.bore), bore_area_(std::numbers::pi / 4 * d.bore * d.bore) {
    if (!(d.bore > 0 && d.stroke > 0)) throw Error(ErrorKind::case_file, "bore and stroke must be above zero");
    if (!(d.rod > throw_)) throw Error(ErrorKind::case_file, "the rod must be longer than half the stroke");
    if (!(d.compression_ratio > 1)) throw Error(ErrorKind::case_file, "the compression ratio must be above 1");
    clearance_ = displacement() / (d.compression_ratio - 1);
  }

  double bore() const { return bore_; }
  double stroke() const { return 2 * throw_; }
  double bore_area() const { return bore_area_; }
  double displacement() const { return 2 * throw_ * bore_area_; }  // m3
  double clearance() const { return clearance_; }                  // volume at top dead centre, m3

  // Equation   x = a + l - a cos(t) - q, q = sqrt(l^2 - a^2 sin^2(t)); V = Vc + A x;
  //            dV/dt = A a sin(t) (1 + a cos(t)/q)
  // Source     J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, eqs 2.4-2.6
  // Symbols    a half the stroke, l rod m; t angle after top dead centre, rad; A bore area m2; Vc clearance m3
  // Valid for  l > a, no pin offset
  // Tested by  tests/models/crank_test.cpp, tests/verification/engine_checks.cpp
  double piston_travel(CrankAngle t) const {
    const double s = throw_ * std::sin(t.radians);
    return throw_ * (1 - std::cos(t.radians)) + rod_ - std::sqrt(rod_ * rod_ - s * s);
  }
  double volume(CrankAngle t) const { return clearance_ + bore_area_ * piston_travel(t); }
  double volume_slope(CrankAngle t) const {  // m3 per radian
    const double sine = std::sin(t.radians), s = throw_ * sine;
    return bore_area_ * throw_ * sine * (1 + throw_ * std::cos(t.radians) / std::sqrt(rod_ * rod_ - s * s));
  }

  // Equation   A_head = pi B^2/4 + 4 Vc/B: a disc of the bore's width that holds the clearance, its side wall included
  // Source     Heywood 1988, eq. 2.6, with the chamber's area of a disc, the least that a flat-topped chamber can have
  // Symbols    A_head all of the chamber's walls but the piston's crown m2; B bore m; Vc clearance m3
  // Valid for  flat pistons; roofs and bowls have some more
  // Tested by  tests/models/crank_test.cpp
  double head_area() const { return bore_area_ + 4 * clearance_ / bore_; }

  /// Liner laid bare above the piston on its way down from top dead centre; m2.
  double liner_area(double volume) const { return std::numbers::pi * bore_ * (volume - clearance_) / bore_area_; }

  double mean_piston_speed(double crank_speed) const { return stroke() * crank_speed / std::numbers::pi; }  // of rad/s

 private:
  double throw_, rod_, bore_, bore_area_, clearance_ = 0;
};

}  // namespace pulsewright
