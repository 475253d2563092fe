#pragma once
// The metal of a manifold, piece by piece: its temperature follows the cycle means of what the gas gives it.

#include <span>
#include <string>
#include <vector>

#include "models/metal_balance.hpp"
#include "models/plan.hpp"
#include "solver/network.hpp"

namespace pulsewright {

/// A length of tube with one temperature.
struct MetalPiece {
  std::string name;           // of what the user drew: "primary 1", "downpipe", "volute"
  double name_from, name_to;  // along what has that name, m
  int duct;                   // of the plan
  double from, to;            // along that duct, m
  bool computed;              // else its temperature is given, and tube.metal says nothing
  TubePiece tube;
  double temperature;         // of its inside from now on, K
  double temperature_before;  // during the last cycle, K
  GasSide gas_side;           // of the last cycle
};

/// Sections of the plan cut into pieces of some 75 mm, duct by duct from start to finish.
std::vector<MetalPiece> metal_pieces(const ManifoldPlan& plan);

/// Keeps the walls of a network at the temperatures of the pieces. A cell that two pieces share has the mean of both, by
/// length, and its heat goes to each by its own temperature: what the gas loses is what the pieces get, to rounding.
class Metal {
 public:
  /// network must outlive it and have the ducts of the plan.
  Metal(const ManifoldPlan& plan, const EngineBay& bay, Network& network);

  /// Reads what the gas gave each piece in the cycle that ends now and, unless held, moves each to where it would leave again.
  void after_cycle(double seconds);

  /// Held: temperatures stay (a load step is over before metal moves).
  void hold(bool held) { held_ = held; }

  /// New temperatures of the computed pieces; those of given ones stay. As many as pieces.
  void set_temperatures(std::span<const double> temperatures);

  std::span<const MetalPiece> pieces() const { return pieces_; }
  const EngineBay& bay() const { return bay_; }
  const Gas& gas() const { return network_.gas(); }

 private:
  struct Share {  // of a piece in a cell
    std::size_t piece, cell;
    double part;  // of the cell's length
  };
  void share_cells();
  void read_cycle(double seconds);
  void write_walls();

  EngineBay bay_;
  Network& network_;
  std::vector<MetalPiece> pieces_;
  std::vector<Share> shares_;
  Lane exchange_before_, taken_before_;  // of the arena at the end of the last cycle
  bool held_ = false;
};

}  // namespace pulsewright
