#pragma once
// Ends that go on: gas outside through which waves leave and never come back. An anechoic end has that gas at rest in
// the state that the duct began with; a signal end sends a prescribed simple wave in through it.

#include <optional>
#include <vector>

#include "solver/element.hpp"

namespace pulsewright {

/// Waves leave along the isentropic (simple wave) relation of the gas outside, so that a simple wave leaves without any
/// echo; a shock of pressure ratio 2 leaves an echo of 0.2 % of its height.
class WaveEnd : public Element {
 public:
  void advance(std::span<Port> ports, const Step& step) override;
  Content left() const override { return left_; }

 protected:
  /// The gas outside now, velocity toward the element, given the state the duct's end had at the start of the run.
  virtual EndState outside(const EndState& at_start, const Step& step) const = 0;

 private:
  std::optional<EndState> at_start_;
  Content left_;
};

class AnechoicEnd : public WaveEnd {
 protected:
  EndState outside(const EndState& at_start, const Step&) const override { return at_start; }
};

/// One row of a prescribed wave: static pressure and temperature of the gas in it.
struct SignalPoint {
  double time;         // s
  double pressure;     // Pa, absolute
  double temperature;  // K
};

/// The incoming wave runs into the gas that lay at the duct's end at the start. Linear between rows, the first and the
/// last row held before and after them.
class SignalEnd : public WaveEnd {
 public:
  /// Throws Error (case_file) unless times rise and pressures and temperatures are positive.
  explicit SignalEnd(std::vector<SignalPoint> series);

 protected:
  EndState outside(const EndState& at_start, const Step& step) const override;

 private:
  SignalPoint at(double time) const;

  std::vector<SignalPoint> series_;
};

}  // namespace pulsewright
