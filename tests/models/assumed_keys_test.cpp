// Whatever is assumed can be given instead, and then is assumed no more.

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "models/starter.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

struct Given {
  const char* key;         // of the table of assumed values
  const char* assignment;  // one place where a case can say it
};

const std::vector<Given> givens = {
    {"ambient.pressure", "ambient.pressure=\"0.98 bar\""},
    {"ambient.temperature", "ambient.temperature=\"280 K\""},
    {"engine.lambda", "engine.lambda=0.9"},
    {"engine.rod", "engine.rod=\"145 mm\""},
    {"engine.compression_ratio", "engine.compression_ratio=8.5"},
    {"engine.burn.centre", "engine.burn.centre=\"22 deg after tdc\""},
    {"engine.burn.duration", "engine.burn.duration=\"30 deg\""},
    {"engine.burn.wiebe_a", "engine.burn.wiebe_a=5"},
    {"engine.burn.wiebe_m", "engine.burn.wiebe_m=1.5"},
    {"engine.burn.efficiency", "engine.burn.efficiency=0.9"},
    {"engine.friction_mean_pressure", "engine.friction_mean_pressure=\"1.5 bar\""},
    {"engine.piston_temperature", "engine.piston_temperature=\"560 K\""},
    {"engine.head_temperature", "engine.head_temperature=\"540 K\""},
    {"engine.liner_temperature", "engine.liner_temperature=\"400 K\""},
    {"exhaust_valve.count", "engine.exhaust_valve.count=2"},
    {"exhaust_valve.head", "engine.exhaust_valve.head=\"30 mm\""},
    {"exhaust_valve.opens", "engine.exhaust_valve.opens=\"60 deg before bdc\""},
    {"exhaust_valve.closes", "engine.exhaust_valve.closes=\"20 deg after tdc\""},
    {"exhaust_valve.stated_at", "engine.exhaust_valve.stated_at=\"1 mm\""},
    {"exhaust_valve.lift_exponent", "engine.exhaust_valve.lift_exponent=2.2"},
    {"exhaust_valve.lift", "engine.exhaust_valve.lift=\"9 mm\""},
    {"exhaust_valve.throat", "engine.exhaust_valve.throat=\"26 mm\""},
    {"exhaust_valve.flow_coefficient", "engine.exhaust_valve.flow_coefficient=[0.72, 0.62]"},
    {"intake_valve.count", "engine.intake_valve.count=2"},
    {"intake_valve.head", "engine.intake_valve.head=\"35 mm\""},
    {"intake_valve.opens", "engine.intake_valve.opens=\"10 deg before tdc\""},
    {"intake_valve.closes", "engine.intake_valve.closes=\"45 deg after bdc\""},
    {"intake_valve.stated_at", "engine.intake_valve.stated_at=\"1 mm\""},
    {"intake_valve.lift_exponent", "engine.intake_valve.lift_exponent=2.2"},
    {"intake_valve.lift", "engine.intake_valve.lift=\"9.5 mm\""},
    {"intake_valve.throat", "engine.intake_valve.throat=\"30 mm\""},
    {"intake_valve.flow_coefficient", "engine.intake_valve.flow_coefficient=0.65"},
    {"exhaust_port.length", "engine.exhaust_port.length=\"80 mm\""},
    {"exhaust_port.exit", "engine.exhaust_port.exit=\"round 34 mm\""},
    {"exhaust_port.wall_temperature", "engine.exhaust_port.wall_temperature=\"480 K\""},
    {"each_primary.transition", "each_primary.transition=\"25 mm\""},
    {"primary.bends", "each_primary.bends=\"150 deg\""},
    {"primary.bend_radius", "each_primary.bend_radius=\"47.6 mm\""},
    {"run.wall_heat_factor", "run.wall_heat_factor=1.2"},
    {"run.step_from", "run.step_from=0.2"},
    {"joint.volume", "joint.merge.volume=\"60 cm^3\""},
    {"joint.angle_factor", "joint.merge.angle_factor=0.8"},
    {"joint.throat", "joint.merge.throat=\"48 mm\""},
    {"compressor.efficiency", "compressor.efficiency=0.72"},
    {"cooler.effectiveness", "cooler.effectiveness=0.8"},
    {"cooler.pressure_drop", "cooler.pressure_drop=\"0.1 bar\""},
    {"compressor.exducer_over_inducer", "compressor.exducer_over_inducer=1.1"},
    {"compressor.work_coefficient", "compressor.work_coefficient=0.68"},
    {"turbine.capacity",
     "turbine.capacity={ flow = \"0.2 kg/s\", ratio = 2.0, temperature = \"288.15 K\", pressure = \"1.01325 bar\" }"},
    {"turbine.rotor_over_throat", "turbine.rotor_over_throat=1.1"},
    {"turbine.peak_efficiency", "turbine.peak_efficiency=0.7"},
    {"turbine.mechanical_efficiency", "turbine.mechanical_efficiency=0.95"},
    {"turbine.volute_length", "turbine.volute_length=\"100 mm\""},
    {"turbine.rotor_exit_angle", "turbine.rotor_exit_angle=\"58 deg\""},
    {"turbine.centroid_radius", "turbine.centroid_radius=\"44 mm\""},
    {"turbine.inducer", "turbine.inducer=\"64 mm\""},
    {"turbine.inertia", "turbine.inertia=\"3e-5 kg m^2\""},
    {"compressor.exducer", "compressor.exducer=\"66 mm\""},
    {"wastegate.bore", "wastegate.1.bore=\"40 mm\""},
    {"wastegate.flow_coefficient", "wastegate.1.flow_coefficient=0.65"},
    {"wastegate.full_lift", "wastegate.1.full_lift=\"8 mm\""},
    {"wastegate.fully_open", "wastegate.1.fully_open=\"1.1 bar\""},
    {"wastegate.angle", "wastegate.1.angle=\"45 deg\""},
    {"wastegate.clock", "wastegate.1.clock=\"45 deg\""},
    {"ambient.surroundings", "ambient.surroundings=\"350 K\""},
    {"ambient.air_speed", "ambient.air_speed=\"2 m/s\""},
    {"turbine.wall", "turbine.wall=\"4 mm\""},
    {"turbine.alloy", "turbine.alloy=\"cast iron\""},
    {"silencer", "silencer=\"0.1 bar\""},
};

/// The good case without the port's exit, so that it too is assumed.
const std::string bare = test::with(test::engine_text, "[engine.exhaust_port]\nexit = \"oval 36 mm x 28 mm\"\n", "");

std::set<std::string> assumed_in(const std::string& text, const std::vector<std::string>& assignments) {
  CaseFile file = CaseFile::from_text(text, "case.toml");
  for (const std::string& assignment : assignments) file.set(assignment);
  std::set<std::string> keys;
  for (const AssumedEntry& entry : read_engine_case(file).assumed) keys.insert(entry.key);
  return keys;
}

/// What must be said first so that a key comes into play.
std::vector<std::string> setting(const std::string& key) {
  if (key == "each_primary.transition") return {"engine.exhaust_port.exit=\"oval 36 mm x 28 mm\""};
  const std::string wheel = "turbine.inducer=\"64 mm\"", exit = "turbine.exducer=\"55 mm\"";
  if (key == "turbine.inertia" || key == "compressor.exducer") return {wheel, exit};
  if (key == "turbine.rotor_exit_angle" || key == "turbine.centroid_radius")
    return {wheel, exit, "turbine.a_over_r=\"0.63 in\""};
  if (key == "wastegate.fully_open") return {"wastegate.1.spring=\"0.7 bar\"", "wastegate.1.diaphragm=\"60 mm\""};
  if (key == "run.step_from" || key == "turbine.inducer") return {exit, "run.boost=\"step\""};
  if (key == "wrap.thickness" || key == "wrap.conductivity") return {"each_primary.wrap=\"glass wrap\""};
  return {};
}

TEST(AssumedKeys, GivenValuesLeaveTheList) {
  for (const Given& given : givens) {
    std::vector<std::string> said = setting(given.key);
    EXPECT_TRUE(assumed_in(bare, said).contains(given.key)) << given.key << " is not assumed in the first place";
    said.emplace_back(given.assignment);
    EXPECT_FALSE(assumed_in(bare, said).contains(given.key)) << given.assignment;
  }
}

/// The good case with a wider pipe between the merge's throat and the turbine.
const std::string widening =
    test::with(bare, "outlet = \"turbine\"",
               "outlet = \"wide pipe\"\nthroat = \"48 mm\"\n[[duct]]\nname = \"wide pipe\"\nto = \"turbine\"\n"
               "length = \"150 mm\"\nbore = \"65 mm\"");

/// What the starter cases of all layouts leave open.
std::set<std::string> assumed_by_starters() {
  std::set<std::string> keys;
  for (const char* manifold : {"log", "4-1", "4-2-1", "divided"}) {
    StarterOptions o;
    o.cylinders = "4";
    o.manifold = manifold;
    for (const AssumedEntry& entry : make_starter(o).engine.assumed) keys.insert(entry.key);
  }
  return keys;
}

// Left out are rows that no engine case takes by itself: of rigs, of `start`, and of the build sheet, which comes later.
TEST(AssumedKeys, EveryRowIsTakenWhereNothingIsSaid) {
  const std::set<std::string> elsewhere = {"wall_temperature", "primary.length", "shop.weld_shrink"};
  const std::set<std::string> of_starters = assumed_by_starters();
  for (const AssumedRow& row : assumed_table()) {
    const std::string key(row.key);
    if (elsewhere.contains(key) || of_starters.contains(key)) continue;
    EXPECT_TRUE(assumed_in(key == "joint.taper" ? widening : bare, setting(key)).contains(key)) << key;
  }
}

TEST(AssumedKeys, MetalIsAssumedUntilItIsSaid) {
  std::vector<std::string> said;
  for (const char* of : {"each_primary", "duct.downpipe", "turbine"})
    for (const char* what :
         {"alloy=\"321\"", "emissivity=0.7", "wrap={ thickness = \"3 mm\", conductivity = \"0.2 W/(m K)\" }"})
      said.push_back(std::string(of) + "." + what);
  said.emplace_back("duct.downpipe.wall=\"1.5 mm\"");
  const auto before = assumed_in(bare, {}), after = assumed_in(bare, said);
  for (const char* key : {"alloy", "wall", "emissivity", "turbine.alloy"}) {
    EXPECT_TRUE(before.contains(key)) << key;
    EXPECT_FALSE(after.contains(key)) << key;
  }
  EXPECT_FALSE(before.contains("wall_temperature"));  // computed
  for (const char* key : {"wrap.thickness", "wrap.conductivity"}) {
    EXPECT_FALSE(after.contains(key)) << key;
    EXPECT_TRUE(assumed_in(bare, {"each_primary.wrap=\"glass wrap\""}).contains(key)) << key;
  }
}

TEST(AssumedKeys, WallsAndClocksLeaveTheListWhereAllAreGiven) {
  std::vector<std::string> said = {"each_primary.wall_temperature=\"1000 K\"", "each_primary.roughness=\"0.02 mm\"",
                                   "duct.downpipe.wall_temperature=\"800 K\"", "duct.downpipe.roughness=\"0.02 mm\"",
                                   "turbine.wall_temperature=\"1000 K\"",      "turbine.roughness=\"0.02 mm\"",
                                   "engine.exhaust_port.roughness=\"0.02 mm\""};
  for (const char* c : {"1", "2", "3", "4"}) said.push_back(std::string("primary.") + c + ".clock=\"" + c + "0 deg\"");
  const auto keys = assumed_in(bare, said);
  for (const char* key : {"wall_temperature", "roughness", "joint.clock", "alloy", "wall", "emissivity", "turbine.wall",
                          "ambient.surroundings", "ambient.air_speed"})
    EXPECT_FALSE(keys.contains(key)) << key;
}

TEST(AssumedKeys, DividedHousingLeaksAtItsTongue) {
  const std::string divided = test::with(test::with(bare, "[turbine]", "[turbine]\nscrolls = 2"),
                                         "outlet = \"turbine\"", "outlet = \"turbine.a\"") +
                              "[[joint]]\nname = \"rear\"\noutlet = \"turbine.b\"\n";
  const std::string text = test::with(test::with(divided, "cylinder = 2", "cylinder = 2\nto = \"rear\""),
                                      "cylinder = 3", "cylinder = 3\nto = \"rear\"");
  EXPECT_TRUE(assumed_in(text, {}).contains("turbine.tongue_leak"));
  EXPECT_FALSE(assumed_in(text, {"turbine.tongue_leak=0.1"}).contains("turbine.tongue_leak"));
}

TEST(AssumedKeys, ChargeTemperatureGivenNeedsNoCooler) {
  EXPECT_TRUE(assumed_in(bare, {}).contains("cooler.effectiveness"));
  EXPECT_FALSE(assumed_in(bare, {"charge.temperature=\"50 degC\""}).contains("cooler.effectiveness"));
}

}  // namespace
}  // namespace pulsewright
