#include "models/cylinder_cycle.hpp"

namespace pulsewright {
namespace {

CylinderTotals combined(const CylinderTotals& a, const CylinderTotals& b, double sign) {
  return {a.intake + sign * b.intake,       a.exhaust + sign * b.exhaust,     a.fuel + sign * b.fuel,
          a.fuel_mass + sign * b.fuel_mass, a.fuel_heat + sign * b.fuel_heat, a.heat + sign * b.heat,
          a.burned + sign * b.burned,       a.wall_heat + sign * b.wall_heat, a.work + sign * b.work};
}

}  // namespace

CylinderTotals operator+(const CylinderTotals& a, const CylinderTotals& b) { return combined(a, b, 1); }
CylinderTotals operator-(const CylinderTotals& a, const CylinderTotals& b) { return combined(a, b, -1); }

void CycleBook::compression_and_expansion_done(const CylinderTotals& totals) {
  work_at_half_ = totals.work;
  current_.charge = charge_;
  if (at_start_) current_.imep = (totals.work - at_start_->work) / displacement_;
}

void CycleBook::gas_exchange_done(const CylinderTotals& totals, double plenum_air_density) {
  if (at_start_) {
    current_.number += 1;
    current_.pmep = (totals.work - work_at_half_) / displacement_;
    current_.volumetric_efficiency = current_.charge.air / (plenum_air_density * displacement_);
    current_.delivery = current_.charge.inducted_air / (plenum_air_density * displacement_);
    current_.totals = totals - *at_start_;
    last_ = current_;
  }
  at_start_ = totals;
}

}  // namespace pulsewright
