#pragma once
// The walls of an engine's ducts: their temperature where it is given, else what it is computed from.

#include <optional>

#include "models/assumed.hpp"
#include "models/outside_heat.hpp"
#include "models/plan.hpp"
#include "models/read_duct.hpp"

namespace pulsewright {

/// Wall of a primary or duct: roughness, and either wall_temperature or alloy, wall, emissivity, wrap. tube_wall: thickness
/// of the tube that it is made of, where the case names one.
DuctWall read_tube_wall(const Layered& table, std::optional<double> tube_wall, AssumedList& assumed);

/// The same for a turbine's housing, a casting.
DuctWall read_housing_wall(const CaseTable& turbine, AssumedList& assumed);

/// What the tubes of this plan see: [ambient] surroundings and air_speed; assumed only where a wall asks.
EngineBay read_bay(const CaseTable& root, const ManifoldPlan& plan, double pressure, AssumedList& assumed);

}  // namespace pulsewright
