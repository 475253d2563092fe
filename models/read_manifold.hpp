#pragma once
// The manifold of an engine case: primaries, ducts, joints, gates, as a sketch.

#include "models/engine_case.hpp"
#include "models/sketch.hpp"

namespace pulsewright {

/// What the manifold is fitted to; all read before.
struct ManifoldSurroundings {
  const EngineParts& engine;
  const std::vector<TurbineCase>& turbines;
  const AmbientCase& ambient;
  double cell;
};

Sketch read_manifold(const CaseTable& root, const ManifoldSurroundings& around, AssumedList& assumed);

}  // namespace pulsewright
