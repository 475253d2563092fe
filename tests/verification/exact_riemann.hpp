#pragma once
// Exact solution of the Riemann problem of a perfect gas, written for the checks alone: shocks by their Mach number, the
// star pressure by bisection, so that it shares neither formula nor search with the solver's own waves.

namespace pulsewright {

struct GasState {
  double rho, u, p;  // density, velocity to the right, static pressure
};

/// Throws Error (internal) if the two sides part so fast that a vacuum opens between them.
class ExactRiemann {
 public:
  ExactRiemann(const GasState& left, const GasState& right, double gamma);

  double p_star() const { return p_; }
  double u_star() const { return u_; }
  double rho_star_left() const;
  double rho_star_right() const;

  /// The gas at x/t, x counted from where the two sides met.
  GasState at(double x_over_t) const;

  /// Speed of the outer edge (shock, or head of the rarefaction) and inner edge (the same for a shock) of each wave.
  struct Wave {
    double outer, inner;
    bool shock;
  };
  Wave left_wave() const;
  Wave right_wave() const;

 private:
  GasState left_, right_;
  double gamma_, p_ = 0, u_ = 0;
};

}  // namespace pulsewright
