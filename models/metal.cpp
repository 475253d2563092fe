#include "models/metal.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "shared/error.hpp"

namespace pulsewright {
namespace {

constexpr double piece_length = 0.075;  // m: gas and metal change little over it

const NamedStretch& stretch_at(const ManifoldPlan& plan, int duct, double distance) {
  for (const NamedStretch& s : plan.names) {
    const double length = s.name_to - s.name_from, from = s.reversed ? s.duct_at_from - length : s.duct_at_from;
    if (s.duct == duct && distance >= from && distance <= from + length) return s;
  }
  throw Error(ErrorKind::internal, "a place of a duct has no name");
}

double name_distance(const NamedStretch& s, double distance) {
  return s.name_from + (s.reversed ? s.duct_at_from - distance : distance - s.duct_at_from);
}

/// The piece of a section between two shares of its length.
MetalPiece piece_of(const ManifoldPlan& plan, const DuctSection& s, const MetalPiece& place, double share) {
  MetalPiece piece = place;
  const NamedStretch& name = stretch_at(plan, piece.duct, 0.5 * (piece.from + piece.to));
  const double a = name_distance(name, piece.from), b = name_distance(name, piece.to);
  piece.name = name.name;
  piece.name_from = std::min(a, b), piece.name_to = std::max(a, b);
  piece.computed = s.metal.has_value();
  piece.tube.length = piece.to - piece.from;
  piece.tube.inside_diameter = std::lerp(s.start.perimeter, s.finish.perimeter, share) / std::numbers::pi;
  if (s.metal) piece.tube.metal = *s.metal;
  piece.temperature = piece.temperature_before = s.wall_temperature;
  return piece;
}

}  // namespace

std::vector<MetalPiece> metal_pieces(const ManifoldPlan& plan) {
  std::vector<MetalPiece> pieces;
  for (std::size_t d = 0; d < plan.ducts.size(); ++d) {
    double from = 0;
    for (const DuctSection& s : plan.ducts[d].drawing.sections) {
      const auto count = std::max(1L, std::lround(s.length / piece_length));
      for (long k = 0; k < count; ++k) {
        const double n = static_cast<double>(count), i = static_cast<double>(k);
        MetalPiece place{};
        place.duct = static_cast<int>(d);
        place.from = from + i / n * s.length, place.to = from + (i + 1) / n * s.length;
        pieces.push_back(piece_of(plan, s, place, (i + 0.5) / n));
      }
      from += s.length;
    }
  }
  return pieces;
}

Metal::Metal(const ManifoldPlan& plan, const EngineBay& bay, Network& network)
    : bay_(bay), network_(network), pieces_(metal_pieces(plan)) {
  share_cells();
  network_.bring_exchange_up_to_now();
  exchange_before_ = network_.arena().exchange_sum;
  taken_before_ = network_.arena().heat_taken;
  write_walls();
}

void Metal::share_cells() {
  for (std::size_t k = 0; k < pieces_.size(); ++k) {
    const MetalPiece& piece = pieces_[k];
    const double dx = network_.dx(piece.duct);
    const std::size_t last = network_.cells(piece.duct) - 1;
    for (auto j = std::min(static_cast<std::size_t>(piece.from / dx), last); j <= last; ++j) {
      const double from = static_cast<double>(j) * dx, to = static_cast<double>(j + 1) * dx;
      const double part = (std::min(to, piece.to) - std::max(from, piece.from)) / dx;
      if (part > 0) shares_.push_back({k, network_.first(piece.duct) + j, part});
      if (to >= piece.to) break;
    }
  }
}

void Metal::write_walls() {
  Lane walls(network_.arena().size(), 0.0);
  for (const Share& s : shares_) walls[s.cell] += s.part * pieces_[s.piece].temperature;
  for (const Share& s : shares_) network_.set_wall_temperature(s.cell, walls[s.cell]);
}

// Equation   conductance = sum V dH/t, drive = sum V (T_w dH - dQ)/t over the cells of a piece, each by its part
// Source     dQ = integral h (T_w - T_gas) dt as the update books it, dH = integral h dt, T_w constant over the cycle
// Symbols    H J/(m3 K), Q J/m3; V cell volume m3; t cycle s
// Valid for  exactly what the gas lost, whatever its course within the cycle
// Tested by  tests/models/metal_test.cpp
void Metal::read_cycle(double seconds) {
  network_.bring_exchange_up_to_now();
  const Arena& a = network_.arena();
  for (MetalPiece& piece : pieces_) piece.gas_side = {}, piece.temperature_before = piece.temperature;
  for (const Share& s : shares_) {
    const double volume = s.part / (a.inv_volume[s.cell] * seconds);
    const double exchanged = a.exchange_sum[s.cell] - exchange_before_[s.cell];
    const double taken = a.heat_taken[s.cell] - taken_before_[s.cell];
    pieces_[s.piece].gas_side.conductance += volume * exchanged;
    pieces_[s.piece].gas_side.drive += volume * (a.wall_temperature[s.cell] * exchanged - taken);
  }
  exchange_before_ = a.exchange_sum;
  taken_before_ = a.heat_taken;
}

void Metal::after_cycle(double seconds) {
  read_cycle(seconds);
  if (held_) return;
  for (MetalPiece& piece : pieces_)
    if (piece.computed) piece.temperature = balanced_wall(piece.tube, piece.gas_side, bay_, network_.gas()).inside;
  write_walls();
}

void Metal::set_temperatures(std::span<const double> temperatures) {
  for (std::size_t k = 0; k < pieces_.size(); ++k)
    if (pieces_[k].computed) pieces_[k].temperature = temperatures[k];
  write_walls();
}

}  // namespace pulsewright
