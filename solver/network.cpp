#include "solver/network.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <numbers>

#include "shared/error.hpp"
#include "solver/denormals.hpp"
#include "solver/friction.hpp"
#include "solver/limiter.hpp"

namespace pulsewright {
namespace {

constexpr long most_steps_between = 10;     // two refreshes of friction and heat factors, and ...
constexpr double distance_between = 25e-3;  // ... what a wave runs meanwhile, m: coarse cells refresh more often
constexpr long timed_every = 16;            // steps: looking at the clock each time would cost 3 % of a step

/// A value of the gas for a message, which never prints NaN or infinity.
std::string figure(double value) { return std::isfinite(value) ? fmt::format("{:.4g}", value) : "(no number)"; }

EndFlux turned(const EndFlux& f, double sign) { return {sign * f.mass, f.momentum, sign * f.energy, sign * f.burned}; }

}  // namespace

Network::Network(const Gas& gas, const NetworkOptions& options)
    : gas_(gas), options_(options), sweep_(&pick_sweep()), first_port_{0} {}

int Network::add_duct(const DuctSpec& spec) {
  const std::size_t n = spec.cells(), first = arena_.size() + 1;
  arena_.resize(first + n + 1);
  for (std::size_t j = 0; j < n; ++j) {
    const std::size_t i = first + j;
    arena_.inv_dx[i] = 1 / spec.dx;
    arena_.inv_volume[i] = 1 / spec.cell_volume[j];
    arena_.flare[i] = (spec.face_area[j + 1] - spec.face_area[j]) / spec.cell_volume[j];
    arena_.face_area[i] = spec.face_area[j];
    arena_.face_area[i + 1] = spec.face_area[j + 1];
    arena_.wall_temperature[i] = spec.wall_temperature[j];
    arena_.hydraulic_diameter[i] = spec.hydraulic_diameter[j];
    arena_.roughness_term[i] = roughness_term(spec.roughness[j] / spec.hydraulic_diameter[j]);
    arena_.loss_forward[i] = spec.loss_forward[j];
    arena_.loss_backward[i] = spec.loss_backward[j];
    arena_.heat_given[i] = 4 * options_.heat_flux / spec.hydraulic_diameter[j];
    fill_cell(i, spec.initial[j]);
  }
  fill_cell(first - 1, spec.initial.front());
  fill_cell(first + n, spec.initial.back());
  runs_.push_back({spec.name, first, n, spec.dx});
  cells_ += n;
  return static_cast<int>(runs_.size()) - 1;
}

void Network::fill_cell(std::size_t i, const Primitive& q) {
  arena_.rho[i] = q.rho, arena_.u[i] = q.u, arena_.p[i] = q.p, arena_.Y[i] = q.Y;
  arena_.T[i] = q.p / (q.rho * gas_constant(gas_, q.Y));
  arena_.c[i] = sound_speed(gas_, arena_.T[i], q.Y);
  arena_.momentum[i] = q.rho * q.u;
  // The energy whose temperature, by the loop's own inverse, is T to the last digit: gases side by side then rest at one pressure.
  double e = internal_energy(gas_, arena_.T[i], q.Y);
  for (int turn = 0; turn < 3; ++turn)
    e += cv(gas_, arena_.T[i], q.Y) * (arena_.T[i] - thermal_state(gas_, e, q.Y, arena_.T[i]).T);
  arena_.energy[i] = q.rho * (e + 0.5 * q.u * q.u);
  arena_.burned[i] = q.rho * q.Y;
}

void Network::attach_any(std::unique_ptr<Element> element, const std::vector<DuctEnd>& ends) {
  for (const DuctEnd& end : ends) add_slot(end);
  elements_.push_back(std::move(element));
  first_port_.push_back(slots_.size());
}

void Network::add_slot(const DuctEnd& end) {
  Run& r = runs_[static_cast<std::size_t>(end.duct)];
  const bool finish = end.side == Side::finish;
  bool& taken = finish ? r.finished : r.started;
  if (taken)
    throw Error(ErrorKind::internal,
                fmt::format("the {} of duct {} is attached twice", finish ? "finish" : "start", r.name));
  taken = true;
  const std::size_t last = r.first + r.cells - 1, cell = finish ? last : r.first;
  const auto into = [&](std::size_t steps) {
    return finish ? last - std::min(steps, r.cells - 1) : r.first + std::min(steps, r.cells - 1);
  };
  slots_.push_back(
      {cell, finish ? last + 1 : r.first, finish ? last + 1 : r.first - 1, into(1), into(2), finish ? 1.0 : -1.0, {}});
  Port port{};
  port.area = arena_.face_area[slots_.back().face];
  ports_.push_back(port);
}

void Network::start() {
  for (const Run& r : runs_)
    if (!r.started || !r.finished)
      throw Error(ErrorKind::internal, fmt::format("duct {} has a free end: attach an element to it", r.name));
  for (std::size_t i = 0; i < arena_.size(); ++i)
    courant_rate_ = std::max(courant_rate_, (std::abs(arena_.u[i]) + arena_.c[i]) * arena_.inv_dx[i]);
  double shortest = distance_between;
  for (const Run& r : runs_) shortest = std::min(shortest, r.dx);
  refresh_interval_ = std::clamp(std::lround(distance_between / shortest), 1L, most_steps_between);
  refresh_sources();
}

void Network::refresh_sources() {
  const bool rough_wall = options_.friction == NetworkOptions::Friction::rough_wall;
  const double constant = options_.friction == NetworkOptions::Friction::constant ? options_.darcy_factor : 0;
  const double heat = options_.wall_heat ? options_.wall_heat_factor : 0;
  if (!rough_wall && constant == 0 && heat == 0 && !options_.losses) return;
  if (heat > 0) bring_exchange_up_to_now();
  sweep_->sources(arena_, gas_, {rough_wall, constant, options_.losses, heat});
}

// The exchange factors stand from one refresh to the next, so that this sum is exact.
void Network::bring_exchange_up_to_now() {
  const double time = time_ - exchange_until_;
  for (std::size_t i = 0; i < arena_.size(); ++i) arena_.exchange_sum[i] += arena_.heat_exchange[i] * time;
  exchange_until_ = time_;
}

// The ghost continues the duct's own slope (limited: a shock that arrives throws no shadow ahead), corrected by what the
// element did to the end face in the last step. A closed end thus mirrors, an open duct extrapolates, and the end cell keeps
// its second order.
void Network::refresh_ghosts() {
  for (const Slot& s : slots_) {
    const auto beyond = [&](const Lane& lane, double correction) {
      return lane[s.cell] + limited(lane[s.cell] - lane[s.inner], lane[s.inner] - lane[s.deeper]) + correction;
    };
    arena_.rho[s.ghost] = std::max(beyond(arena_.rho, s.correction.rho), 0.05 * arena_.rho[s.cell]);
    arena_.p[s.ghost] = std::max(beyond(arena_.p, s.correction.p), 0.05 * arena_.p[s.cell]);
    arena_.u[s.ghost] = beyond(arena_.u, s.correction.u);
    arena_.Y[s.ghost] = std::clamp(beyond(arena_.Y, s.correction.Y), 0.0, 1.0);
    arena_.c[s.ghost] = arena_.c[s.cell];
    // The update runs over the ghost too, with no fluxes: it must find sound gas there, at rest at the cell's temperature.
    const double inner_energy = arena_.energy[s.cell] / arena_.rho[s.cell] - 0.5 * arena_.u[s.cell] * arena_.u[s.cell];
    arena_.momentum[s.ghost] = 0;
    arena_.energy[s.ghost] = arena_.rho[s.ghost] * inner_energy;
    arena_.burned[s.ghost] = arena_.rho[s.ghost] * arena_.Y[s.cell];
  }
}

void Network::read_ports() {
  for (std::size_t k = 0; k < slots_.size(); ++k) {
    const Slot& s = slots_[k];
    const EdgeStates& edge = s.sign > 0 ? arena_.finish : arena_.start;
    const double rho = edge.rho[s.cell], p = edge.p[s.cell], Y = std::clamp(edge.Y[s.cell], 0.0, 1.0);
    const double gamma = arena_.c[s.cell] * arena_.c[s.cell] * arena_.rho[s.cell] / arena_.p[s.cell];
    ports_[k].state = {rho,   s.sign * edge.u[s.cell],   p, Y, p / (rho * gas_constant(gas_, Y)),
                       gamma, std::sqrt(gamma * p / rho)};
  }
}

void Network::write_ports() {
  for (std::size_t k = 0; k < slots_.size(); ++k) {
    Slot& s = slots_[k];
    const EndFlux f = turned(ports_[k].flux, s.sign);
    const EndState &edge = ports_[k].state, &face = ports_[k].face;
    arena_.flux_mass[s.face] = f.mass;
    arena_.flux_momentum[s.face] = f.momentum;
    arena_.flux_energy[s.face] = f.energy;
    arena_.flux_burned[s.face] = f.burned;
    s.correction = {2 * (face.rho - edge.rho), 2 * s.sign * (face.w - edge.w), 2 * (face.p - edge.p),
                    2 * (face.Y - edge.Y)};
  }
}

void Network::advance_elements(const Step& step) {
  using Clock = std::chrono::steady_clock;
  const bool measured = !element_seconds_.empty() && steps_ % timed_every == 0;
  Clock::time_point before = measured ? Clock::now() : Clock::time_point{};
  for (std::size_t e = 0; e < elements_.size(); ++e) {
    elements_[e]->advance(std::span(ports_).subspan(first_port_[e], first_port_[e + 1] - first_port_[e]), step);
    if (!measured) continue;
    const Clock::time_point now = Clock::now();
    element_seconds_[e] += timed_every * std::chrono::duration<double>(now - before).count();
    before = now;
  }
}

void Network::step(double dt) {
  const DenormalsFlushed guard;
  if (steps_ >= refresh_due_) {
    refresh_sources();
    refresh_due_ = steps_ + refresh_interval_;
  }
  refresh_ghosts();
  sweep_->predict(arena_, gas_, dt);
  sweep_->fluxes(arena_);
  read_ports();
  advance_elements({time_, dt, gas_});
  write_ports();
  const SweepReport report = sweep_->update(arena_, gas_, dt);
  time_ += dt;
  ++steps_;
  courant_rate_ = report.courant_rate;
  if (!std::isfinite(report.check) || !(report.lowest_energy > 0) || !(report.lowest_density > 0)) report_unphysical();
}

void Network::run_until(double t) {
  while (t - time_ > 1e-12 * std::max(std::abs(t), 1e-6)) {
    const double wanted = (t - time_) / allowed_step();
    const bool last = wanted <= 1;
    step(last ? t - time_ : (t - time_) / std::ceil(wanted));
    if (last) time_ = t;
  }
}

bool Network::is_sound(std::size_t i) const {
  const double e = arena_.energy[i] / arena_.rho[i] - 0.5 * arena_.u[i] * arena_.u[i];
  return arena_.rho[i] > 0 && e > 0 && arena_.p[i] > 0 && arena_.T[i] > 0 && std::isfinite(arena_.u[i]) &&
         std::isfinite(arena_.c[i]);
}

void Network::report_unphysical() const {
  for (int d = 0; d < ducts(); ++d)
    for (std::size_t j = 0; j < run(d).cells; ++j) {
      const std::size_t i = run(d).first + j;
      if (is_sound(i)) continue;
      const double distance_mm = 1e3 * (static_cast<double>(j) + 0.5) * run(d).dx;
      throw Error(
          ErrorKind::unphysical,
          fmt::format("the gas turned unphysical: density {} kg/m3, pressure {} bar, temperature {} K, velocity {} m/s",
                      figure(arena_.rho[i]), figure(arena_.p[i] / 1e5), figure(arena_.T[i]), figure(arena_.u[i])),
          fmt::format("duct {}, cell {}, {:.1f} mm from its start, at {:.4f} ms", run(d).name, j + 1, distance_mm,
                      1e3 * time_),
          "look for a start state or a supply far from the rest, or a very sharp step in bore there; a shorter cell "
          "can help");
    }
  throw Error(ErrorKind::internal, "a ghost cell turned unphysical");
}

Primitive Network::cell(int duct, std::size_t i) const {
  const std::size_t k = run(duct).first + i;
  return {arena_.rho[k], arena_.u[k], arena_.p[k], arena_.Y[k]};
}

std::vector<double> Network::bores(int duct) const {
  std::vector<double> bores;
  for (std::size_t i = run(duct).first; i < run(duct).first + run(duct).cells; ++i)
    bores.push_back(std::sqrt(4 / std::numbers::pi * arena_.inv_dx[i] / arena_.inv_volume[i]));
  return bores;
}

Network::Place Network::step_setter() const {
  Place place{0, 0};
  double fastest = 0;
  for (int d = 0; d < ducts(); ++d)
    for (std::size_t j = 0; j < run(d).cells; ++j) {
      const std::size_t i = run(d).first + j;
      const double rate = (std::abs(arena_.u[i]) + arena_.c[i]) * arena_.inv_dx[i];
      if (rate > fastest) fastest = rate, place = {d, j};
    }
  return place;
}

Content Network::held(int duct) const {
  Content sum;
  for (std::size_t i = run(duct).first; i < run(duct).first + run(duct).cells; ++i)
    sum += (1 / arena_.inv_volume[i]) * Content{arena_.rho[i], arena_.energy[i], arena_.burned[i]};
  return sum;
}

Content Network::held() const {
  Content sum;
  for (int d = 0; d < ducts(); ++d) sum += held(d);
  for (const auto& element : elements_) sum += element->held();
  return sum;
}

Content Network::left() const {
  Content sum;
  for (const auto& element : elements_) sum += element->left();
  return sum;
}

double Network::heat_taken(int duct) const {
  double sum = 0;
  for (std::size_t i = run(duct).first; i < run(duct).first + run(duct).cells; ++i)
    sum += arena_.heat_taken[i] / arena_.inv_volume[i];
  return sum;
}

double Network::heat_taken() const {
  double sum = 0;
  for (int d = 0; d < ducts(); ++d) sum += heat_taken(d);
  return sum;
}

}  // namespace pulsewright
