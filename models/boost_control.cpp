#include "models/boost_control.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace pulsewright {
namespace {

constexpr double close_enough = 1.2e-3;  // of the powers: beyond it the lever moves ...
constexpr double equal_powers = 2e-3;    // ... and this is what they may differ by in the end
constexpr int first_cycles = 3, cycles_a_move = 2;
constexpr double most_balance = 3;  // of the logarithm: what lies beyond is only known to be far off

// The lever: boost over the target up to 1, then the gates' opening on top of it up to 2, then boost over the target again.
constexpr double at_target = 1, wide_open = 2;
constexpr double lowest_boost = 0.02;   // of the target: less counts as none
constexpr double first_boost = 0.15;    // of the target: where a search from below begins
constexpr double first_opening = 0.2;   // where a search at the target begins
constexpr double highest_lever = 5;     // boost of four targets
constexpr double steepest_balance = 4;  // logarithm of the powers' ratio per unit of the lever
constexpr double longest_move = 0.35;

constexpr double largest_scale = 3;  // on the bore of gates that would hold

}  // namespace

double power_balance(const EngineModel& model) {
  const double turbine = model.turbine_power(), compressor = model.compressor_power();
  if (!(compressor > 0)) return most_balance;
  if (!(turbine > 0)) return -most_balance;
  return std::clamp(std::log(turbine / compressor), -most_balance, most_balance);
}

BoostControl::BoostControl(EngineModel& model) : model_(model), target_(model.engine_case().charge.boost_gauge) {
  const BoostMode mode = model.engine_case().run.boost;
  if (mode == BoostMode::given || !(target_ > 0)) return;
  if (mode == BoostMode::hold)
    begin(at_target + first_opening, at_target);
  else
    begin(first_boost, lowest_boost);
}

BoostControl::BoostControl(EngineModel& model, double boost)
    : model_(model), target_(model.engine_case().charge.boost_gauge) {
  begin(std::clamp(boost / target_, lowest_boost, at_target), lowest_boost);
}

void BoostControl::begin(double lever, double lowest) {
  gates_ = std::ranges::any_of(model_.engine_case().plan.gates, &GatePlan::holds);
  search_.emplace(
      SearchRange{lowest, highest_lever, {at_target, wide_open}, steepest_balance, longest_move, close_enough}, lever);
  wait_ = first_cycles;
  set(lever);
}

/// Without gates there is nothing between 1 and 2: there the boost rises on, as it does beyond 2.
void BoostControl::set(double lever) {
  const double opening = gates_ ? std::clamp(lever - at_target, 0.0, 1.0) : 0;
  model_.set_boost(target_ * std::max(0.0, lever - opening));
  model_.set_gate_opening(opening);
}

void BoostControl::after_cycle() {
  if (!searches() || without_boost_ || --wait_ > 0) return;
  if (search_->answer(power_balance(model_))) {
    set(search_->position());
    wait_ = cycles_a_move;
    return;
  }
  wait_ = 1;
  if (search_->at_low_end() && search_->position() < at_target) {
    without_boost_ = true;
    set(0);
  }
}

bool BoostControl::done() const {
  if (!searches() || without_boost_) return true;
  return search_->close() &&
         (search_->at_low_end() || search_->at_high_end() || std::abs(power_balance(model_)) < equal_powers);
}

std::string BoostControl::in_words() const {
  return fmt::format("the powers of turbine and compressor ({:+.2g} % apart)", 100 * std::expm1(power_balance(model_)));
}

BoostFigures::State BoostControl::state() const {
  using State = BoostFigures::State;
  if (!searches()) return State::given;
  if (without_boost_) return State::no_boost;
  const double lever = search_->position();
  if (lever < at_target) return State::below_target;
  if (search_->at_low_end()) return State::not_reached;
  if (lever <= (gates_ ? wide_open : at_target)) return State::held;
  return State::cannot_hold;
}

HoldingScale scale_that_would_hold(EngineModel& model, const std::function<void()>& turn) {
  constexpr int most_moves = 30;
  constexpr double margin = equal_powers;  // the turbine is left with that much too little: the printed gate must hold
  BalanceSearch search({1, largest_scale, {}, 2 * steepest_balance, 0.5, 0.5 * margin}, 1);
  model.set_boost(model.engine_case().charge.boost_gauge);
  model.set_gate_opening(1);
  int quiet = 0;
  for (int move = 0; move < most_moves && quiet < 2; ++move) {
    for (int cycle = 0; cycle < cycles_a_move; ++cycle) turn();
    quiet = search.answer(power_balance(model) + margin) ? 0 : quiet + 1;
    model.set_gate_scale(search.position());
  }
  if (search.at_high_end())
    return {{},
            fmt::format("even gates of {:.1f} times the bore leave the turbine more power than the compressor takes",
                        largest_scale)};
  if (quiet < 2) return {{}, "the search for the bore did not come to rest"};
  return {search.position(), {}};
}

}  // namespace pulsewright
