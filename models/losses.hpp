#pragma once
// What bends and tapers lose beyond the friction of a straight tube of the same length. All coefficients K: loss of
// total pressure over the velocity head rho u^2/2, in a taper that of the smaller end. Angles in radians.

namespace pulsewright {

/// One bend: its angle, centre-line radius over bore, and the Darcy factor of the straight tube at the flow's Reynolds
/// number. Without the friction along the arc. Handbooks differ by +-30 %: that is the range of this figure.
double bend_loss(double angle, double radius_over_bore, double darcy);

/// The same with the friction along the arc, as the handbooks print it.
double bend_loss_with_friction(double angle, double radius_over_bore, double darcy);

/// Share of the sudden loss (1 - small/large)^2 that a cone of this half-angle loses when the flow widens; 0..1.
double diffuser_share(double half_angle);

/// Share of the sudden loss 0.5 (1 - small/large) when the flow narrows: 0 up to 15 degrees half-angle, 1 at 90.
double contraction_share(double half_angle);

/// Widening from small to large area: share * (1 - small/large)^2.
double diffuser_loss(double half_angle, double small_over_large);

/// Narrowing from large to small area: share * 0.5 (1 - small/large).
double contraction_loss(double half_angle, double small_over_large);

}  // namespace pulsewright
