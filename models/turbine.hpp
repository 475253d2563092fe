#pragma once
// The turbine between its scrolls and the downpipe: quasi-steady, without volume. Each scroll's throat lets gas from
// the scroll's total state into one common space before the wheel, where its velocity head is lost; the rotor lets it
// out of there. The wheel takes work out of what passes forward. All scrolls meet in the one space, so a quiet scroll
// can run backward.

#include <array>
#include <limits>
#include <memory>
#include <optional>
#include <span>
#include <string>

#include "models/turbine_map.hpp"
#include "models/turbine_work.hpp"
#include "solver/element.hpp"
#include "solver/orifice.hpp"

namespace pulsewright {

struct TurbineSpec {
  std::string name;
  double scroll_throat;    // of each scroll, m2, effective
  double rotor;            // m2, effective
  double peak_efficiency;  // total to static
  double tongue_leak = 0;  // gap between two scrolls over one scroll's throat
  int outlet_port = -1;    // the downpipe's; every other port is a scroll's. -1: no downpipe, then
  double exit_area = std::numeric_limits<double>::infinity();  // the restriction between wheel and air, m2, effective
  double air_pressure = 101325, air_temperature = 293;         // behind it
  std::shared_ptr<const TurbineMap> map = nullptr;             // scales both areas, and the efficiency
};

/// The last step.
struct TurbineReading {
  struct Scroll {
    double flow = 0;     // toward the wheel, kg/s
    TotalState inlet{};  // at the scroll's throat
  };
  std::array<Scroll, 2> scrolls{};
  double flow = 0;             // through the wheel, kg/s; negative: backward
  double middle_pressure = 0;  // between throats and rotor, Pa
  double outlet_pressure = 0;  // static behind the rotor, Pa
  double efficiency = 0;       // total to static
  double power_available = 0;  // isentropic, total to static, W
  double area_scale = 1;       // on both nozzles, by the map; for the next step
  bool inside_map = true;      // the map knows this ratio and speed
  double power_shaft = 0;      // taken out of the gas, W; bearings not yet paid
};

/// Counted up since the start.
struct TurbineTotals {
  double shaft_work = 0;            // taken out of the gas, J
  double forward_mass = 0;          // through the wheel, kg
  double outside_mass = 0;          // of it, where the map did not reach, kg
  double outlet_pressure_time = 0;  // static pressure behind the rotor, summed over time, Pa s
};
TurbineTotals operator-(const TurbineTotals& a, const TurbineTotals& b);

class Turbine : public Element {
 public:
  static constexpr std::size_t max_scrolls = 2;

  /// Throws Error (internal) for areas that are not positive.
  Turbine(TurbineSpec spec, const Gas& gas);

  /// Tip speed of the wheel, m/s; 0 takes no work.
  void set_tip_speed(double tip_speed) { tip_speed_ = tip_speed; }
  double tip_speed() const { return tip_speed_; }

  /// Throws Error (unphysical) with the turbine's name where no pressure before the wheel balances the flows.
  void advance(std::span<Port> ports, const Step& step) override;

  /// What the last balances left over: nothing but the solution's tolerance, paid back in the next step.
  Content held() const override { return rest_; }
  /// Shaft work, and gas that went to the air without a downpipe.
  Content left() const override { return left_; }

  const TurbineReading& reading() const { return reading_; }
  const TurbineTotals& totals() const { return totals_; }
  const TurbineSpec& spec() const { return spec_; }

 private:
  void begin(std::span<const Port> ports, const Gas& gas);
  bool is_outlet(std::size_t port) const { return static_cast<int>(port) == spec_.outlet_port; }
  double rotor() const { return spec_.rotor * reading_.area_scale; }
  double area(std::size_t port) const { return is_outlet(port) ? rotor() : spec_.scroll_throat * reading_.area_scale; }
  void find_middle_pressure(std::span<Port> ports, const Step& step);
  double surplus(double pressure, std::span<Port> ports, const Step& step);
  void mix(const Content& inflow, const Gas& gas);
  void blow_to_air(const Gas& gas);
  void draw_from_air();
  void leak(std::span<Port> ports, const Gas& gas) const;
  void book(std::span<const Port> ports, double dt);
  void read(std::span<const Port> ports, const Gas& gas);
  double peak_efficiency(const TotalState& inlet);

  TurbineSpec spec_;
  Reservoir air_;
  double tip_speed_ = 0;
  std::optional<Reservoir> middle_;                      // the gas between throats and rotor
  std::array<double, max_scrolls + 1> rest_pressure_{};  // of each port's gas, brought to rest in this step, Pa
  double trend_ = 0;                                     // of the middle pressure, Pa a step: where the search begins
  double slope_ = 0;                                     // of the surplus by the middle pressure, kg/(s Pa)
  double scale_ = 0;                                     // sum of the flows of the last look, kg/s
  double work_ = 0;                                      // per mass through the wheel, from the last step, J/kg
  Content to_air_;                                       // per second, without a downpipe
  Content rest_, left_;
  TurbineReading reading_;
  TurbineTotals totals_;
};

}  // namespace pulsewright
