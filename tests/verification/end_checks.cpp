// Ends of ducts marched by the program's own network: echoes, resonances, waves that leave, orifices and a vessel.
// The end correction of an open pipe (H. Levine and J. Schwinger, Phys. Rev. 73, 1948, 383: 0.61 radius) is not
// modelled: an open end reflects at its own plane, and these resonances are those without correction.
#include <algorithm>
#include <cmath>
#include <functional>
#include <memory>
#include <numbers>

#include "solver/end_closed.hpp"
#include "solver/end_reservoir.hpp"
#include "solver/end_vessel.hpp"
#include "solver/end_wave.hpp"
#include "solver/network.hpp"
#include "tests/verification/all_checks.hpp"

namespace pulsewright {
namespace {

constexpr int cells = 100;
constexpr double p0 = 1e5;

struct AtRest {
  double gamma, R, T, length;
  double bore = 0.04;

  Gas gas() const { return perfect_gas(gamma, R); }
  double c() const { return std::sqrt(gamma * R * T); }
  double density() const { return p0 / (R * T); }
};

using Shape = std::function<double(double)>;

/// A duct between two ends whose gas is at rest but for p - p0 = rise(x); running: the rise runs toward the finish as a
/// simple wave, else it stands.
Network duct_between(std::unique_ptr<Element> start, std::unique_ptr<Element> finish, const AtRest& rest,
                     const Shape& rise, bool running) {
  Network network(rest.gas());
  DuctSpec duct = straight_duct("duct", rest.length, rest.bore, cells, {rest.density(), 0, p0, 0});
  for (std::size_t i = 0; i < duct.cells(); ++i) {
    const double ratio = 1 + rise((static_cast<double>(i) + 0.5) * duct.dx) / p0, g = rest.gamma;
    const double u = running ? 2 * rest.c() / (g - 1) * (std::pow(ratio, (g - 1) / (2 * g)) - 1) : 0;
    duct.initial[i] = {rest.density() * std::pow(ratio, 1 / g), u, p0 * ratio, 0};
  }
  network.add_duct(duct);
  network.attach(std::move(start), {{0, Side::start}});
  network.attach(std::move(finish), {{0, Side::finish}});
  network.start();
  return network;
}

Shape pulse(double height, double middle, double width) {
  return [=](double x) { return height * std::exp(-std::pow((x - middle) / width, 2)); };
}

/// When the pulse of the next `span` seconds passes the cell: the mean time, weighted with the rise.
double passing_time(Network& network, std::size_t cell, double span) {
  const double until = network.time() + span;
  double sum = 0, moment = 0;
  while (network.time() < until) {
    const double dt = network.allowed_step();
    network.step(dt);
    const double rise = (network.cell(0, cell).p - p0) * dt;
    sum += rise, moment += rise * network.time();
  }
  return moment / sum;
}

/// Time from one passage of a 100 Pa pulse to its return, by the cell's distance from the closed end.
double echo_speed(const AtRest& rest) {
  const double l = rest.length, width = 0.05 * l;
  Network network = duct_between(std::make_unique<AnechoicEnd>(), std::make_unique<ClosedEnd>(), rest,
                                 pulse(100, 0.2 * l, width), true);
  const std::size_t probe = 45;
  const double distance = l * (1 - (static_cast<double>(probe) + 0.5) / cells),
               there = passing_time(network, probe, 0.7 * l / rest.c());
  const double back = passing_time(network, probe, 0.9 * l / rest.c());
  return 2 * distance / (back - there);
}

/// Frequency of a standing wave by the crossings of p0 in the first cell, over some five periods.
double frequency(Network& network, double expected) {
  double first = 0, last = 0, before = network.cell(0, 0).p - p0;
  int crossings = 0;
  while (network.time() < 5.3 / expected) {
    const double t = network.time();
    network.step(network.allowed_step());
    const double now = network.cell(0, 0).p - p0;
    if (before * now < 0) {
      last = t + (network.time() - t) * before / (before - now);
      if (crossings++ == 0) first = last;
    }
    before = now;
  }
  return 0.5 * (crossings - 1) / (last - first);
}

std::vector<double> resonances(const AtRest& rest, double mode, double quarter, double half) {
  const double pi = std::numbers::pi, l = rest.length;
  const Reservoir outside = make_reservoir(rest.gas(), p0, rest.T, 0);
  Network open = duct_between(
      std::make_unique<ClosedEnd>(), open_end(outside), rest,
      [&](double x) { return 1e-3 * p0 * std::cos((2 * mode - 1) * pi * x / (2 * l)); }, false);
  Network closed = duct_between(
      std::make_unique<ClosedEnd>(), std::make_unique<ClosedEnd>(), rest,
      [&](double x) { return 1e-3 * p0 * std::cos(mode * pi * x / l); }, false);
  return {frequency(open, quarter), frequency(closed, half)};
}

void add_resonances(CheckList& list) {
  list.relative(0.005, "marched, 100 cells, amplitude 0.1 % of the pressure");
  const std::vector<std::vector<double>> rows = {
      {1.4, 287.05, 288.15, 0.4, 1, 212.682679, 425.365359}, {1.4, 287.05, 288.15, 0.4, 2, 638.048038, 850.730717},
      {1.4, 287.05, 288.15, 0.4, 3, 1063.4134, 1276.09608},  {1.33, 288, 900, 0.6, 1, 244.642596, 489.285193},
      {1.33, 288, 900, 0.6, 2, 733.927789, 978.570386},      {1.33, 288, 900, 0.6, 3, 1223.21298, 1467.85558},
      {1.33, 288, 1100, 0.4, 1, 405.69385, 811.3877},        {1.33, 288, 1100, 0.4, 2, 1217.08155, 1622.7754},
      {1.33, 288, 1100, 0.4, 3, 2028.46925, 2434.1631}};
  std::size_t row = 0;
  list.table({{"gamma", "R", "T", "length", "mode", "closed-open duct, Hz", "closed-closed duct, Hz"}, 5, rows},
             [&](std::span<const double> key) {
               const std::vector<double>& r = rows[row++];
               return resonances({key[0], key[1], key[2], key[3]}, key[4], r[5], r[6]);
             });
}

/// Largest departure from rest when the pulse has had time to leave, over its height.
double left_behind(double height) {
  const AtRest rest{1.33, 287, 900, 0.6};
  Network network = duct_between(std::make_unique<AnechoicEnd>(), std::make_unique<AnechoicEnd>(), rest,
                                 pulse(height, 0.3, 0.05), true);
  network.run_until(1.5 * rest.length / rest.c());
  double largest = 0;
  for (std::size_t i = 0; i < cells; ++i) largest = std::max(largest, std::abs(network.cell(0, i).p - p0));
  return largest / height;
}

void add_anechoic(CheckList& list) {
  list.absolute(0, "a thousandth of the pulse: what the duct itself scatters of it at 5 and more cells per flank");
  list.at_most("echo of a 100 Pa pulse from an anechoic end, over its height", 1e-3, left_behind(100));
  list.absolute(0, "the pulse breaks on its way, and a shock leaves along another curve than a simple wave");
  list.at_most("echo of a 1 bar pulse from an anechoic end, over its height", 0.01, left_behind(1e5));
}

/// Flow, kg/s, from a supply through a duct and a nozzle to gas of lower pressure, when it has become steady.
double nozzle_flow(double gamma, double R, double T, double total, double outside, double discharge, double area) {
  const Gas gas = perfect_gas(gamma, R);
  Network network(gas);
  network.add_duct(straight_duct("duct", 0.3, 0.05, 60, {total / (R * T), 0, total, 0}));
  network.attach(supply_end(make_reservoir(gas, total, T, 0)), {{0, Side::start}});
  Element& nozzle =
      network.attach(nozzle_end(make_reservoir(gas, outside, T, 0), area, discharge), {{0, Side::finish}});
  network.start();
  network.run_until(0.05);
  const Content before = nozzle.left();
  network.run_until(0.06);
  return (nozzle.left() - before).mass / 0.01;
}

void add_nozzles(CheckList& list) {
  list.source("Heywood, Internal Combustion Engine Fundamentals, 1988, app. C (equation numbers from memory)");
  list.relative(0.01, "marched, 60 cells; the duct before the nozzle loses nothing");
  list.table(
      {{"gamma", "R", "T0", "p0", "outside", "discharge", "area", "supply, duct and nozzle, kg/s"},
       7,
       {{1.4, 287, 300, 101325, 95000, 0.6, 0.0007068583471, 0.04998674532},
        {1.33, 288, 1200, 500000, 150000, 0.65, 0.0007068583471, 0.2628476449},
        {1.33, 288, 1000, 160000, 130000, 0.65, 0.0007068583471, 0.07455344283},
        {1.3, 288, 1400, 800000, 120000, 0.6, 0.0006157521601, 0.3105871912}}},
      [](std::span<const double> k) { return std::vector{nozzle_flow(k[0], k[1], k[2], k[3], k[4], k[5], k[6])}; });
}

/// Pressure rise, bar, between the contact and the front of the wave that a vessel sends into a duct.
double vessel_rise(double bore) {
  const Gas gas = perfect_gas(1.33, 287);
  Network network(gas);
  network.add_duct(straight_duct("duct", 0.5, bore, 100, {2e5 / (287 * 1100), 0, 2e5, 0}));
  network.attach(std::make_unique<Vessel>(VesselSpec{"vessel", 1, 6e5, 1700, 1, 350e-6, 0}, gas), {{0, Side::start}});
  network.attach(std::make_unique<AnechoicEnd>(), {{0, Side::finish}});
  network.start();
  network.run_until(0.45e-3);  // the front stands at 0.33 m, the contact between 0.08 and 0.12 m
  return (network.cell(0, 40).p - 2e5) / 1e5;
}

void add_vessel(CheckList& list) {
  list.source("quasi-steady orifice, jet cooled by its own velocity, simple wave: closed form");
  list.relative(0.01, "marched, 5 mm cells; the closed form takes the front for a simple wave, a shock is 0.4 % lower");
  list.value("vessel at 6 bar and 1700 K through 350 mm2 into 36.6 mm: rise, bar", 1.413, vessel_rise(36.6e-3));
  list.value("into 42.7 mm", 1.100, vessel_rise(42.7e-3));
  list.value("into 47.5 mm", 0.921, vessel_rise(47.5e-3));
}

}  // namespace

std::vector<Check> end_checks() {
  CheckList list("ends of a duct, marched",
                 "Kinsler et al., Fundamentals of Acoustics, plane waves in pipes (textbook form)");
  list.relative(0.005, "marched, 100 cells; the pulse is 0.1 % of the pressure");
  for (const AtRest& rest : {AtRest{1.4, 287.05, 288.15, 0.4}, AtRest{1.33, 288, 900, 0.6}})
    list.value("echo of a 100 Pa pulse from a closed end: 2L over its time, m/s", rest.c(), echo_speed(rest));
  add_resonances(list);
  add_anechoic(list);
  add_nozzles(list);
  add_vessel(list);
  return list.checks();
}

}  // namespace pulsewright
