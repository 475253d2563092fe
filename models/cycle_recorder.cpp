#include "models/cycle_recorder.hpp"

#include <algorithm>
#include <cmath>

namespace pulsewright {

CycleRecorder::CycleRecorder(const Network& network, double rpm)
    : network_(network),
      start_(network.time()),
      seconds_per_sample_(record_step_deg / (6 * rpm)),
      last_time_(network.time()) {
  for (int d = 0; d < network.ducts(); ++d) {
    const std::size_t n = network.cells(d), all = n * record_samples;
    DuctRecord record{network.name(d), network.dx(d), n, network.bores(d), {}, {}, {}, {}, {}};
    for (auto* field : {&record.p, &record.u, &record.T, &record.Y, &record.c}) field->resize(all);
    ducts_.push_back(std::move(record));
  }
  copy_now(now_);
  before_ = now_;
  write(0, 0);
  next_ = 1;
}

std::size_t CycleRecorder::add_gauge(std::function<double()> read) {
  const double value = read();
  gauges_.push_back(std::move(read));
  gauge_before_.push_back(value);
  gauge_now_.push_back(value);
  series_.emplace_back(record_samples, value);
  return gauges_.size() - 1;
}

void CycleRecorder::copy_now(Lanes& lanes) const {
  const Arena& a = network_.arena();
  lanes = {a.p, a.u, a.T, a.Y, a.c};
}

void CycleRecorder::after_step() {
  if (next_ >= record_samples) return;
  std::swap(before_, now_);
  std::swap(gauge_before_, gauge_now_);
  copy_now(now_);
  for (std::size_t i = 0; i < gauges_.size(); ++i) gauge_now_[i] = gauges_[i]();
  const double time = network_.time();
  for (; next_ < record_samples; ++next_) {
    const double due = start_ + static_cast<double>(next_) * seconds_per_sample_;
    if (due > time) break;
    write(next_, (due - last_time_) / (time - last_time_));
  }
  last_time_ = time;
}

void CycleRecorder::write(std::size_t sample, double part) {
  const auto between = [part](double a, double b) { return static_cast<float>(a + part * (b - a)); };
  for (int d = 0; d < network_.ducts(); ++d) {
    DuctRecord& record = ducts_[static_cast<std::size_t>(d)];
    const std::size_t first = network_.first(d), row = sample * record.cells;
    for (std::size_t j = 0; j < record.cells; ++j) {
      const std::size_t i = first + j;
      record.p[row + j] = between(before_.p[i], now_.p[i]);
      record.u[row + j] = between(before_.u[i], now_.u[i]);
      record.T[row + j] = between(before_.T[i], now_.T[i]);
      record.Y[row + j] = between(before_.Y[i], now_.Y[i]);
      record.c[row + j] = between(before_.c[i], now_.c[i]);
    }
  }
  for (std::size_t i = 0; i < gauges_.size(); ++i)
    series_[i][sample] = gauge_before_[i] + part * (gauge_now_[i] - gauge_before_[i]);
}

PlaceRecord place_record(std::string name, const std::vector<DuctRecord>& ducts, const PlanPlace& spot,
                         const Gas& gas) {
  const DuctRecord& record = ducts[static_cast<std::size_t>(spot.duct)];
  const double sign = spot.reversed ? -1 : 1;
  PlaceRecord place{std::move(name), spot.duct, spot.distance, {}, {}, {}, {}, {}, {}};
  const double cell = std::clamp(spot.distance / record.dx - 0.5, 0.0, static_cast<double>(record.cells - 1));
  const auto i = std::min(static_cast<std::size_t>(cell), record.cells - 2);
  const double part = cell - static_cast<double>(i);
  for (std::size_t k = 0; k < record_samples; ++k) {
    const auto at = [&](const std::vector<float>& field) {
      const double a = static_cast<double>(field[k * record.cells + i]),
                   b = static_cast<double>(field[k * record.cells + i + 1]);
      return a + part * (b - a);
    };
    place.p.push_back(at(record.p));
    place.u.push_back(sign * at(record.u));
    place.T.push_back(at(record.T));
    place.Y.push_back(at(record.Y));
    place.c.push_back(at(record.c));
    place.rho.push_back(place.p.back() / (gas_constant(gas, place.Y.back()) * place.T.back()));
  }
  return place;
}

}  // namespace pulsewright
