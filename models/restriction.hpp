#pragma once
// What narrows a pipe behind the turbine, as the trade states it, and the jet that the gas makes of it.

namespace pulsewright {

/// Area of the jet behind a plate with a sharp hole, m2.
double jet_of_plate(double hole, double pipe);

/// Loss of a butterfly valve in velocity heads of its pipe. opening: share of the quarter turn, 1 is wide open.
double butterfly_loss(double opening);

/// Area of its jet, m2; 0 where it is shut.
double jet_of_butterfly(double opening, double pipe);

}  // namespace pulsewright
