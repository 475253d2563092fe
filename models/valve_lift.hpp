#pragma once
// Valves: the lift curve through the cam card's figures, and the flow area that a lift gives.

#include <functional>
#include <utility>
#include <vector>

#include "models/crank.hpp"
#include "models/lift_table.hpp"

namespace pulsewright {

inline constexpr double open_lift = 1e-4;  // a valve counts as open above 0.1 mm

/// What the cam card says, and the shape that is assumed between its figures. Angles on the cylinder's own scale.
struct CamCard {
  CrankAngle opens;                // where the lift reaches stated_at
  CrankAngle closes;               // where it falls back to it
  double stated_at = 1e-4;         // lift at which the card's angles are stated, m
  double lift = 0;                 // highest, m
  double exponent = 2;             // of the cosine; assumed
  std::vector<LiftPoint> table{};  // the whole lift, measured: then nothing of the above is asked
};

/// Lift against crank angle: smooth, symmetric, through both stated points and the highest lift; or through every point
/// of a table, with no peak or valley of its own between them.
class LiftCurve {
 public:
  /// Throws Error (case file) for a cam that cannot be: no lift above stated_at, closing before opening, longer than a
  /// cycle; a table that check_lift_table refuses.
  explicit LiftCurve(const CamCard& card);

  double operator()(CrankAngle angle) const;  // m; 0 outside the seat-to-seat duration

  CrankAngle centre() const { return {centre_}; }  // of the card; of a table where its lift is highest
  CrankAngle leaves_seat() const { return {from_}; }
  CrankAngle seats() const { return {to_}; }
  CrankAngle opens() const { return {opens_}; }  // through open_lift
  CrankAngle closes() const { return {closes_}; }
  double highest() const { return lift_; }  // m

 private:
  void fit(const CamCard& card);
  void take(const std::vector<LiftPoint>& table);
  double crossing(double shut, double open) const;

  double lift_ = 0, exponent_ = 2;
  double centre_ = 0, half_ = 0;   // half: of a card from seat to seat
  double from_ = 0, to_ = 0;       // off the seat
  double opens_ = 0, closes_ = 0;  // above open_lift
  std::function<double(double)> table_;
};

/// The time both valves of a cylinder are open; `duration` is zero where they never are.
struct Overlap {
  CrankAngle from, to;
  double duration() const { return to > from ? to.radians - from.radians : 0; }
};
Overlap overlap(const LiftCurve& exhaust, const LiftCurve& intake);

/// Poppet valves of one kind in one cylinder.
struct ValveShape {
  int count = 1;
  double head = 0;                                        // diameter, m
  double throat = 0.87;                                   // bore under the seat, of the head; assumed
  double stem = 0.2;                                      // diameter, of the head; assumed
  double coefficient_low = 0.70;                          // on the curtain area at lift/head 0.05 and below; assumed
  double coefficient_high = 0.60;                         // at lift/head 0.25 and above; assumed
  std::vector<std::pair<double, double>> coefficients{};  // lift m, coefficient: measured, instead of the two
};

double throat_area(const ValveShape& valves);             // all of them, less the stems, m2
double flow_area(const ValveShape& valves, double lift);  // effective, all of them, m2

}  // namespace pulsewright
