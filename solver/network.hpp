#pragma once
// Ducts and the elements between them, advanced in time together.

#include <memory>
#include <span>
#include <string>
#include <vector>

#include "solver/arena.hpp"
#include "solver/duct.hpp"
#include "solver/element.hpp"
#include "solver/gas.hpp"
#include "solver/sweep.hpp"

namespace pulsewright {

struct NetworkOptions {
  enum class Friction { none, rough_wall, constant };
  double courant = 0.8;                // share of the largest stable time step
  Friction friction = Friction::none;  // rough_wall: Reynolds number and roughness of each duct
  double darcy_factor = 0;             // for constant
  bool losses = true;                  // loss_forward, loss_backward of the ducts (bends, tapers)
  bool wall_heat = false;              // exchange with wall_temperature
  double wall_heat_factor = 1;         // on the Nusselt number
  double heat_flux = 0;                // given flux into the gas, W/m2 of wall
};

class Network {
 public:
  explicit Network(const Gas& gas, const NetworkOptions& options = {});

  /// Returns the duct's number, 0, 1, 2 ... Ducts come before elements are attached.
  int add_duct(const DuctSpec& spec);

  /// The element's ports come in the order of ends. Returns the element, owned by the network.
  template <class E>
  E& attach(std::unique_ptr<E> element, const std::vector<DuctEnd>& ends) {
    E& reference = *element;
    attach_any(std::move(element), ends);
    return reference;
  }

  /// To be called once after the last attach(). Throws Error (internal) where a duct end has no element or two.
  void start();

  /// The largest time step that the present state allows, s.
  double allowed_step() const { return options_.courant / courant_rate_; }

  /// One step of dt seconds (dt <= allowed_step()). Throws Error (unphysical) with duct, cell, distance, time, values.
  void step(double dt);

  /// Friction and heat factors, which stand for some steps, are made anew with the next one. At the start of every engine
  /// cycle, so that all cycles refresh them at the same instants: else the run repeats only after several cycles.
  void refresh_with_next_step() { refresh_due_ = steps_; }

  /// Steps of equal length that land on t exactly.
  void run_until(double t);

  double time() const { return time_; }
  long steps() const { return steps_; }
  const Gas& gas() const { return gas_; }
  const NetworkOptions& options() const { return options_; }

  int ducts() const { return static_cast<int>(runs_.size()); }
  std::size_t cells() const { return cells_; }  // without ghosts
  std::size_t cells(int duct) const { return run(duct).cells; }
  std::size_t first(int duct) const { return run(duct).first; }  // arena index of its first cell
  double dx(int duct) const { return run(duct).dx; }
  const std::string& name(int duct) const { return run(duct).name; }
  std::vector<double> bores(int duct) const;  // of the equal-area circle of each cell, m
  const Arena& arena() const { return arena_; }
  Primitive cell(int duct, std::size_t i) const;

  /// Where the cell that sets the time step sits: duct and cell number.
  struct Place {
    int duct;
    std::size_t cell;
  };
  Place step_setter() const;

  Content held(int duct) const;       // in the gas of one duct
  Content held() const;               // in all ducts and elements
  Content left() const;               // through all elements since the start
  double heat_taken(int duct) const;  // from its walls since the start, J
  double heat_taken() const;

  /// For walls whose temperature is found outside: the arena's exchange_sum H then counts up to now, as its heat_taken Q
  /// does. While a wall stands at T, the integral of h T_gas over time is the change of H T - Q.
  void bring_exchange_up_to_now();
  void set_wall_temperature(std::size_t cell, double T) { arena_.wall_temperature[cell] = T; }

  /// In the order in which they were attached.
  std::span<const std::unique_ptr<Element>> elements() const { return elements_; }

  /// Where the time goes: measured from now on, at some ten nanoseconds an element and step.
  void measure_time() { element_seconds_.assign(elements_.size(), 0); }
  double element_seconds(std::size_t element) const { return element_seconds_[element]; }

  /// For tests that compare the builds of the sweep.
  void use_sweep(const Sweep& sweep) { sweep_ = &sweep; }

 private:
  struct Run {
    std::string name;
    std::size_t first, cells;
    double dx;
    bool started = false, finished = false;  // ends attached
  };
  struct Slot {                                    // where a port sits in the arena
    std::size_t cell, face, ghost, inner, deeper;  // inner, deeper: the next two cells into the duct
    double sign;                                   // +1 finish, -1 start: w = sign u
    Primitive correction;                          // twice (end face - predicted edge) of the last step, along the duct
  };

  const Run& run(int duct) const { return runs_[static_cast<std::size_t>(duct)]; }
  void attach_any(std::unique_ptr<Element> element, const std::vector<DuctEnd>& ends);
  void add_slot(const DuctEnd& end);
  void refresh_sources();
  void refresh_ghosts();
  void advance_elements(const Step& step);
  void read_ports();
  void write_ports();
  void fill_cell(std::size_t i, const Primitive& q);
  bool is_sound(std::size_t i) const;
  [[noreturn]] void report_unphysical() const;

  Gas gas_;
  NetworkOptions options_;
  const Sweep* sweep_;
  Arena arena_;
  std::vector<Run> runs_;
  std::vector<std::unique_ptr<Element>> elements_;
  std::vector<std::size_t> first_port_;  // of each element, and one past the last
  std::vector<Port> ports_;
  std::vector<Slot> slots_;
  std::vector<double> element_seconds_;  // empty: not measured
  std::size_t cells_ = 0;
  double time_ = 0, courant_rate_ = 0, exchange_until_ = 0;
  long steps_ = 0, refresh_due_ = 0, refresh_interval_ = 1;
};

}  // namespace pulsewright
