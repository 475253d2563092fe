#pragma once
// How the metal of a cold manifold comes to its temperature after the engine is loaded.

#include <functional>

#include "models/engine_model.hpp"
#include "models/metal_figures.hpp"

namespace pulsewright {

/// A piece of tube between gas and bay.
struct Heating {
  const TubePiece& piece;
  GasSide inside;
  const EngineBay& bay;
  const Gas& gas;
};

/// The temperature of a piece `seconds` later, from `temperature` on, while the gas gives as it does.
double warmed(const Heating& heating, double temperature, double seconds);

/// From a settled model: its metal as cold as the ambient, everything else (head, pistons, boost, throttle, gates) as it
/// stands, for `duration`. The gas is run through a cycle at each of a few moments, and the metal marched between them with
/// what the gas gave in that cycle. each_step is called after every step. Leaves the model with that metal, held.
WarmUp warm_up(EngineModel& model, double duration, const std::function<void()>& each_step);

}  // namespace pulsewright
