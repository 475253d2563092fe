#include "solver/joint.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "shared/error.hpp"

namespace pulsewright {
namespace {

const Gas hot = perfect_gas(1.33, 287);

Port port_at(double p, double T, double w, double area = 1e-3) {
  const double rho = p / (287 * T);
  Port port{};
  port.state = {rho, w, p, 0, T, 1.33, std::sqrt(1.33 * p / rho)};
  port.area = area;
  return port;
}

/// Ducts set round an outlet (the last port) at the given angle to its axis; the outlet has a smooth mouth.
JointSpec collector(int primaries, double angle_deg, double volume = 0, JointLaw law = JointLaw::momentum) {
  JointSpec spec{.name = "merge", .volume = volume, .law = law, .p = 1e5, .T = 900};
  const double a = angle_deg * std::numbers::pi / 180;
  for (int i = 0; i < primaries; ++i) {
    const double turn = 2 * std::numbers::pi * i / primaries;
    spec.ports.push_back({{-std::cos(a), std::sin(a) * std::cos(turn), std::sin(a) * std::sin(turn)}, 0});
  }
  spec.ports.push_back({{1, 0, 0}, 1});
  return spec;
}

double mass_into(std::span<const Port> ports) {
  double sum = 0;
  for (const Port& port : ports) sum += port.area * port.flux.mass;
  return sum;
}

// 1e-12 of p and of rho c: what rounding leaves of differences of equal numbers.
TEST(Joint, GasAtRestStaysAtRest) {
  for (JointLaw law : {JointLaw::momentum, JointLaw::constant_pressure})
    for (double volume : {0.0, 4e-5}) {
      Joint joint(collector(4, 15, volume, law), hot);
      std::vector<Port> ports(5, port_at(1e5, 900, 0));
      for (int step = 0; step < 100; ++step) joint.advance(ports, {0, 5e-6, hot});
      for (const Port& port : ports) {
        EXPECT_NEAR(port.flux.mass / (port.state.rho * port.state.c), 0, 1e-12);
        EXPECT_NEAR(port.flux.momentum / 1e5, 1, 1e-12);
      }
    }
}

// A weak pulse p0 + dp with w = dp/(rho c): the pressure left in the face is p0 + (1 + R) dp, R = (1 - n)/(1 + n) for n
// other equal ducts (A. D. Pierce, Acoustics, 1989, chapter 7). 1e-4: the pulse is 1e-5 of p0, so its square is no
// larger.
TEST(Joint, ReflectsAWeakPulseAsAcousticsSays) {
  for (int others : {2, 4}) {
    Joint joint(collector(others, 20), hot);
    std::vector<Port> ports(static_cast<std::size_t>(others + 1), port_at(1e5, 900, 0));
    const double dp = 1;
    ports[0] = port_at(1e5 + dp, 900 * (1 + 0.33 / 1.33 * dp / 1e5), 0);
    ports[0].state.w = dp / (ports[0].state.rho * ports[0].state.c);
    joint.advance(ports, {0, 5e-6, hot});
    EXPECT_NEAR((ports[0].face.p - 1e5) / dp - 1, (1.0 - others) / (1.0 + others), 1e-4);
  }
}

// 1e-12 of what went through: the defect of every step is kept, so rounding alone is left.
TEST(Joint, HoldsExactlyWhatTheFluxesBring) {
  for (double volume : {0.0, 1e-7, 5e-5}) {
    Joint joint(collector(4, 30, volume), hot);
    std::vector<Port> ports(5);
    std::mt19937 random(7);
    std::uniform_real_distribution<double> unit(0, 1);
    const Content start = joint.held();
    Content in;
    double through = 0, energy_through = 0;
    for (int step = 0; step < 5000; ++step) {
      for (std::size_t j = 0; j < 5; ++j) {
        const double swing = std::sin(2e-3 * step * static_cast<double>(j + 1) + static_cast<double>(j));
        ports[j] = port_at(1e5 * (1.6 + swing / 2 + 0.01 * unit(random)), 800 + 300 * swing,
                           200 * std::cos(3e-3 * step + static_cast<double>(j)));
        ports[j].state.Y = 0.5 + 0.5 * swing;
      }
      joint.advance(ports, {0, 5e-6, hot});
      for (const Port& port : ports) {
        in += (5e-6 * port.area) * Content{port.flux.mass, port.flux.energy, port.flux.burned};
        through += 5e-6 * port.area * std::abs(port.flux.mass);
        energy_through += 5e-6 * port.area * std::abs(port.flux.energy);
      }
    }
    const Content error = joint.held() - start - in;
    EXPECT_NEAR(error.mass / through, 0, 1e-12);
    EXPECT_NEAR(error.burned / through, 0, 1e-12);
    EXPECT_NEAR(error.energy / energy_through, 0, 1e-12);
  }
}

// 1e-7: the pressure is sought to 1e-8; the flow follows it with a factor of a few.
TEST(Joint, WithoutVolumePassesOnAllThatComesIn) {
  Joint joint(collector(4, 20), hot);
  std::vector<Port> ports(5, port_at(1e5, 900, 0));
  ports[0] = port_at(2e5, 1050, 250);
  for (int step = 0; step < 50; ++step) joint.advance(ports, {0, 5e-6, hot});
  EXPECT_NEAR(mass_into(ports) / (ports[0].area * ports[0].flux.mass), 0, 1e-7);
  EXPECT_LT(std::abs(joint.held().mass), 1e-7 * 5e-6 * ports[0].area * ports[0].flux.mass);
}

// A normal shock between the two ducts (1000 m/s, 0.75 bar, 1090 K into 530 m/s, 1.9 bar, 1400 K, nearly the jump
// relations).
TEST(Joint, PassesAllMassThroughAStandingShock) {
  JointSpec spec{.name = "step", .p = 1.9e5, .T = 1400};
  spec.ports = {{{-1, 0, 0}, 1}, {{1, 0, 0}, 1}};
  Joint joint(spec, hot);
  std::vector<Port> ports{port_at(0.75e5, 1090, 1000), port_at(1.9e5, 1400, -530)};
  double through = 0, lost = 0;
  for (int step = 0; step < 2000; ++step) {
    joint.advance(ports, {0, 5e-6, hot});
    through += ports[0].flux.mass;
    lost += mass_into(ports) / ports[0].area;
  }
  EXPECT_NEAR(ports[0].flux.mass, 0.75e5 / (287 * 1090) * 1000, 1e-9);
  EXPECT_NEAR(lost / through, 0, 1e-8);  // no more than one step's tolerance: it does not add up
}

TEST(Joint, TreatsLikeDuctsAlike) {
  Joint joint(collector(4, 25, 3e-5), hot);
  std::vector<Port> ports(5, port_at(1.4e5, 950, 80));
  ports[4] = port_at(1.2e5, 900, -100, 2e-3);
  for (int step = 0; step < 20; ++step) joint.advance(ports, {0, 5e-6, hot});
  for (std::size_t j : {1u, 2u, 3u}) EXPECT_NEAR(ports[j].flux.mass / ports[0].flux.mass, 1, 1e-14);
}

// The first guess of the pressure is 1e-4 to 100 times right: the search within a bracket has to find the same flows.
// 1e-7: two searches to 1e-8 each.
TEST(Joint, FindsTheSameFlowsFromAnyFirstGuess) {
  std::vector<std::vector<Port>> answers;
  for (double guess : {1.5e5, 10.0, 1e7}) {
    JointSpec spec = collector(4, 20);
    spec.p = guess;
    Joint joint(spec, hot);
    answers.emplace_back(5, port_at(1e5, 900, 0));
    answers.back()[0] = port_at(3e5, 1050, 400);
    joint.advance(answers.back(), {0, 5e-6, hot});
  }
  for (std::size_t j = 0; j < 5; ++j)
    for (std::size_t i : {1u, 2u}) EXPECT_NEAR(answers[i][j].flux.mass / answers[0][j].flux.mass, 1, 1e-7);
}

TEST(Joint, ConstantPressureLawGivesEveryFaceOnePressure) {
  Joint joint(collector(4, 20, 0, JointLaw::constant_pressure), hot);
  std::vector<Port> ports(5, port_at(1e5, 900, 0));
  ports[2] = port_at(1.8e5, 1000, 150);
  joint.advance(ports, {0, 5e-6, hot});
  for (const Port& port : ports) EXPECT_DOUBLE_EQ(port.face.p, joint.pressure());
}

// A stream into a duct twice as wide loses rho (U1 - U2)^2/2 (Borda-Carnot); the joint's widening is plain momentum.
// The flow is slow (Mach 0.05), so compressibility changes it by less than 0.3 % of the head; 0.5 % is allowed.
TEST(Joint, SuddenWideningLosesWhatBordaCarnotSays) {
  JointSpec spec{.name = "step", .p = 1e5, .T = 900};
  spec.ports = {{{-1, 0, 0}, 0}, {{1, 0, 0}, 0}};
  Joint joint(spec, hot);
  std::vector<Port> ports{port_at(1e5, 900, 30), port_at(1e5, 900, -15, 2e-3)};
  for (int step = 0; step < 200; ++step) joint.advance(ports, {0, 5e-6, hot});
  const EndState a = ports[0].face, b = ports[1].face;
  const double lost = a.p + a.rho * a.w * a.w / 2 - b.p - b.rho * b.w * b.w / 2;
  EXPECT_NEAR(lost / (a.rho * a.w * a.w / 2), std::pow(1 + b.w / a.w, 2), 5e-3);
}

// A volume filled slowly from 1 to 4 bar with gas of its own first temperature T0 ends at T0 / (1/4 + 3/4/gamma) (first
// law with the enthalpy of what came in). The filling is driven by 0.2 % of the pressure, so kinetic energy is nothing:
// 0.2 %.
TEST(Joint, VolumeFillsAsTheFirstLawSays) {
  JointSpec spec{.name = "vessel", .volume = 1e-4, .p = 1e5, .T = 900};
  spec.ports = {{{-1, 0, 0}, 0}};
  Joint joint(spec, hot);
  std::vector<Port> ports(1);
  for (int step = 0; step < 20000; ++step) {
    const double p = std::min(4e5, joint.pressure() * 1.002);
    ports[0] = port_at(p, 900, 0);
    joint.advance(ports, {0, 1e-5, hot});
  }
  EXPECT_NEAR(joint.pressure() / 4e5, 1, 1e-3);
  EXPECT_NEAR(joint.temperature() / (900 / (0.25 + 0.75 / 1.33)), 1, 2e-3);
}

Port mixture_port(const Gas& gas, double p, double T, double w, double Y) {
  Port port{};
  const double gamma = heat_ratio(gas, T, Y);
  port.state = {p / (gas_constant(gas, Y) * T), w, p, Y, T, gamma, sound_speed(gas, T, Y)};
  port.area = 1e-3;
  return port;
}

// Fresh gas of 330 K driven into a joint full of burned gas of 1300 K, replaced some times over. The pressure that the
// fluxes saw (in the outlet's face) and that of the gas then held are one: the heat capacity is that of the mixture.
// 1e-4: c_v of one step, in which up to a tenth of the gas is replaced, is taken as constant. What came in is held to
// rounding.
TEST(Joint, RealGasKeepsEnergyAndOnePressure) {
  const Gas gas = mixture_gas(*find_fuel("petrol"), 0.9);
  JointSpec spec = collector(2, 20, 4e-5, JointLaw::constant_pressure);
  spec.T = 1300;
  spec.Y = 1;
  Joint joint(spec, gas);
  Content in;
  const Content start = joint.held();
  double worst = 0, through = 0;
  for (int step = 0; step < 1000; ++step) {
    std::vector<Port> ports{mixture_port(gas, 1.2e5, 330, 60, 0), mixture_port(gas, 1.1e5, 900, 50, 1),
                            mixture_port(gas, 1e5, joint.temperature(), -60, joint.burned())};
    joint.advance(ports, {0, 2e-5, gas});
    for (const Port& port : ports) {
      in += (2e-5 * port.area) * Content{port.flux.mass, port.flux.energy, port.flux.burned};
      through += 2e-5 * port.area * std::abs(port.flux.mass);
    }
    worst = std::max(worst, std::abs(ports[2].face.p / joint.pressure() - 1));
  }
  const Content error = joint.held() - start - in;
  EXPECT_LT(worst, 1e-4);
  EXPECT_NEAR(error.mass / through, 0, 1e-12);
  EXPECT_NEAR(error.energy / (through * joint.enthalpy()), 0, 1e-12);
  EXPECT_NEAR(error.burned / through, 0, 1e-12);
}

TEST(Joint, RefusesWhatItCannotBe) {
  EXPECT_THROW(Joint(JointSpec{.name = "none"}, hot), Error);
  EXPECT_THROW(Joint(collector(8, 20), hot), Error);
  EXPECT_THROW(Joint(collector(3, 20, -1e-6), hot), Error);
}

TEST(Joint, NamesItselfWhenAStateIsNotPhysical) {
  Joint joint(collector(2, 20), hot);
  std::vector<Port> ports(3, port_at(1e5, 900, 0));
  ports[1].state.p = std::nan("");
  try {
    joint.advance(ports, {0, 5e-6, hot});
    FAIL() << "no error";
  } catch (const Error& e) {
    EXPECT_EQ(e.kind(), ErrorKind::unphysical);
    EXPECT_NE(e.where().find("merge"), std::string::npos);
  }
}

// Every duct runs away faster than its gas can follow: no pressure above nothing balances that.
TEST(Joint, SaysSoWhereNoPressureBalances) {
  Joint joint(collector(2, 20), hot);
  std::vector<Port> ports(3, port_at(1e5, 900, -6000));
  EXPECT_THROW(joint.advance(ports, {0, 5e-6, hot}), Error);
}

}  // namespace
}  // namespace pulsewright
