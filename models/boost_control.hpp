#pragma once
// Boost that the turbo makes by itself: after every second cycle boost, gate opening or gate size is moved toward the
// place where the turbines give what the compressor takes.
//
// One lever covers it all. Up to 1 the gates are shut and boost rises to the target; then boost stands at the target and
// the gates open; when they are wide open, boost rises on. The lever stops where the powers are equal: short of the
// target, holding it, or unable to hold it. A power surplus pushes it up, a lack pulls it down.

#include <functional>
#include <optional>
#include <string>

#include "models/balance_search.hpp"
#include "models/engine_model.hpp"
#include "models/results.hpp"

namespace pulsewright {

/// Natural logarithm of the turbines' power behind the bearings over the compressor's, in the last cycle; never beyond
/// +-3.
double power_balance(const EngineModel& model);

class BoostControl {
 public:
  /// Sets the model to where the search begins: a mode's own start, or `boost` of the target (after a load step). Mode
  /// given, or a target that is no boost: leaves it as it is.
  explicit BoostControl(EngineModel& model);
  BoostControl(EngineModel& model, double boost);

  /// Told of every cycle; may move boost and gates.
  void after_cycle();

  /// Powers are equal to 0.2 % at a boost that has stopped moving, or an end of the lever is reached.
  bool done() const;
  /// What keeps it from being done, in words.
  std::string in_words() const;

  BoostFigures::State state() const;
  bool searches() const { return search_.has_value(); }  // else the boost is given

 private:
  void begin(double lever, double lowest);
  void set(double lever);

  EngineModel& model_;
  double target_;
  bool gates_ = false;  // some hold
  int wait_ = 0;        // cycles until the answer to the last move is in
  std::optional<BalanceSearch> search_;
  bool without_boost_ = false;
};

/// How much larger the gates that hold must be, all alike, so that wide open they hold the target; or why none would.
struct HoldingScale {
  std::optional<double> scale;  // on bores and lifts; never rounded away: at least this
  std::string why;
};

/// For a model whose gates cannot hold; leaves it with the larger gates at the target. turn: one cycle of the model.
HoldingScale scale_that_would_hold(EngineModel& model, const std::function<void()>& turn);

}  // namespace pulsewright
