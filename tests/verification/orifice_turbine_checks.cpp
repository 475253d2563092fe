// Orifices and turbines: the flow functions, and the elements that use them, against published closed forms.
#include <cmath>
#include <numbers>

#include "models/nozzle_pair.hpp"
#include "models/restriction.hpp"
#include "models/turbine_work.hpp"
#include "solver/orifice.hpp"
#include "tests/verification/all_checks.hpp"

namespace pulsewright {
namespace {

/// A duct so wide that an orifice on its end moves nothing in it: the flow is then that between two gases at rest.
constexpr double wide_area = 1e5;

struct OrificeCase {
  double gamma, R, T0, p0, p_throat, discharge, area;
};

double flow_into_duct(const OrificeCase& c) {
  const Gas gas = perfect_gas(c.gamma, c.R);
  Port port{};
  port.area = wide_area;
  port.state = {c.p_throat / (c.R * c.T0), 0, c.p_throat, 0, c.T0, c.gamma, std::sqrt(c.gamma * c.R * c.T0)};
  return -flow_through_orifice(make_reservoir(gas, c.p0, c.T0, 0), c.discharge * c.area, gas, port);
}

double flow_out_of_duct(const OrificeCase& c) {
  const Gas gas = perfect_gas(c.gamma, c.R);
  Port port{};
  port.area = wide_area;
  port.state = {c.p0 / (c.R * c.T0), 0, c.p0, 0, c.T0, c.gamma, std::sqrt(c.gamma * c.R * c.T0)};
  return flow_through_orifice(make_reservoir(gas, c.p_throat, c.T0, 0), c.discharge * c.area, gas, port);
}

void add_choked(CheckList& list) {
  list.table(
      {{"gamma", "critical pressure ratio", "critical temperature ratio", "choked flow function", "p0 over critical p"},
       1,
       {{1.4, 0.5282817877, 0.8333333333, 0.6847314564, 1.892929159},
        {1.35, 0.5368512184, 0.8510638298, 0.6761448751, 1.862713478},
        {1.33, 0.5403640176, 0.8583690987, 0.6726284075, 1.850604347},
        {1.3, 0.5457277338, 0.8695652174, 0.6672623512, 1.832415577}}},
      [](std::span<const double> key) {
        const double r = critical_pressure_ratio(key[0]);
        return std::vector{r, std::pow(r, (key[0] - 1) / key[0]), flow_function(0, key[0]), 1 / r};
      });
}

void add_flow_function(CheckList& list) {
  list.table({{"gamma", "throat p/p0", "flow function"},
              2,
              {{1.4, 0.999, 0.04469739526}, {1.4, 0.99, 0.1406617026},   {1.4, 0.98, 0.1978455506},
               {1.4, 0.95, 0.3076411004},   {1.4, 0.9, 0.4225808638},    {1.4, 0.85, 0.5017991528},
               {1.4, 0.8, 0.5606610192},    {1.4, 0.75, 0.6051546441},   {1.4, 0.7, 0.6383172333},
               {1.4, 0.65, 0.6618881902},   {1.4, 0.6, 0.6769152529},    {1.4, 0.55, 0.684021206},
               {1.4, 0.5, 0.6847314564},    {1.4, 0.3, 0.6847314564},    {1.33, 0.999, 0.04469613436},
               {1.33, 0.99, 0.1406218424},  {1.33, 0.98, 0.1977328511},  {1.33, 0.95, 0.3071961613},
               {1.33, 0.9, 0.4213254139},   {1.33, 0.85, 0.4994995025},  {1.33, 0.8, 0.5571330165},
               {1.33, 0.75, 0.6002451166},  {1.33, 0.7, 0.6318964808},   {1.33, 0.65, 0.6538467115},
               {1.33, 0.6, 0.6671627635},   {1.33, 0.55, 0.6724873113},  {1.33, 0.5, 0.6726284075},
               {1.33, 0.3, 0.6726284075},   {1.3, 0.999, 0.04469555242}, {1.3, 0.99, 0.1406034495},
               {1.3, 0.98, 0.1976808592},   {1.3, 0.95, 0.306991038},    {1.3, 0.9, 0.4207473269},
               {1.3, 0.85, 0.4984419444},   {1.3, 0.8, 0.5555127529},    {1.3, 0.75, 0.5979936171},
               {1.3, 0.7, 0.6289564678},    {1.3, 0.65, 0.6501706785},   {1.3, 0.6, 0.6627125593},
               {1.3, 0.55, 0.667234501},    {1.3, 0.5, 0.6672623512},    {1.3, 0.3, 0.6672623512}}},
             [](std::span<const double> key) { return std::vector{flow_function(key[1], key[0])}; });
}

void add_orifice_cases(CheckList& list) {
  list.table({{"gamma", "R", "T0", "p0", "throat p", "discharge", "area", "orifice into a wide duct, kg/s",
               "orifice out of a wide duct, kg/s"},
              7,
              {{1.4, 287, 300, 101325, 95000, 0.6, 0.0007068583471, 0.04998674532, 0.04998674532},
               {1.33, 288, 1200, 500000, 150000, 0.65, 0.0007068583471, 0.2628476449, 0.2628476449},
               {1.33, 288, 1000, 160000, 130000, 0.65, 0.0007068583471, 0.07455344283, 0.07455344283},
               {1.3, 288, 1400, 800000, 120000, 0.6, 0.0006157521601, 0.3105871912, 0.3105871912}}},
             [](std::span<const double> key) {
               const OrificeCase c{key[0], key[1], key[2], key[3], key[4], key[5], key[6]};
               return std::vector{flow_into_duct(c), flow_out_of_duct(c)};
             });
}

void add_turbine_power(CheckList& list) {
  list.table({{"gamma", "R", "T0", "expansion ratio", "flow", "efficiency", "isentropic drop, J/kg",
               "spouting velocity, m/s", "power, W", "total temperature behind the wheel, K", "best wheel speed, m/s"},
              6,
              {{1.33, 288, 1100, 1.5, 0.1, 0.7, 122201.3168, 494.3709474, 8554.092177, 1026.30403, 349.5730493},
               {1.33, 288, 1200, 2, 0.15, 0.7, 220084.0029, 663.4515852, 23108.82031, 1067.273902, 469.1311149},
               {1.33, 288, 1200, 2.5, 0.2, 0.72, 283252.3074, 752.6650084, 40788.33227, 1024.298381, 532.2145314},
               {1.33, 288, 1000, 1.1, 0.03, 0.6, 27127.30896, 232.926207, 488.2915613, 985.9774249, 164.7037005},
               {1.3, 287, 1250, 3, 0.2, 0.7, 348133.9594, 834.4267007, 48738.75431, 1054.05218, 590.0287784}}},
             [](std::span<const double> key) {
               const Gas gas = perfect_gas(key[0], key[1]);
               const double drop = isentropic_drop(gas, {1e5 * key[3], key[2], 0}, 1e5), work = key[5] * drop;
               const double behind = temperature_from_enthalpy(gas, enthalpy(gas, key[2], 0) - work, 0);
               const double spouting = spouting_velocity(drop);
               return std::vector{drop, spouting, key[4] * work, behind, best_velocity_ratio * spouting};
             });
}

/// The table's two stages share the pressure ratio evenly: that takes a second nozzle larger by the root of the ratio.
/// Its single nozzle is a pair whose second nozzle is too wide to matter.
void add_turbine_flow(CheckList& list) {
  list.table({{"gamma", "R", "T0", "area", "expansion ratio", "one nozzle, flow parameter", "one nozzle, kg/s",
               "two nozzles, flow parameter", "two nozzles, kg/s"},
              5,
              {{1.33, 288, 1200, 0.0008, 1.05, 1.41523979e-05, 0.0434655638, 1.02079169e-05, 0.0313510733},
               {1.33, 288, 1200, 0.0008, 1.1, 1.90455507e-05, 0.0612790761, 1.39997312e-05, 0.0450441475},
               {1.33, 288, 1200, 0.0008, 1.2, 2.45414307e-05, 0.0861404452, 1.86893496e-05, 0.065599635},
               {1.33, 288, 1200, 0.0008, 1.5, 3.05249284e-05, 0.13392816, 2.54526017e-05, 0.111673321},
               {1.33, 288, 1200, 0.0008, 1.8, 3.16914587e-05, 0.166855576, 2.84555722e-05, 0.149818629},
               {1.33, 288, 1200, 0.0008, 2, 3.17080072e-05, 0.185491893, 2.96051828e-05, 0.173190367},
               {1.33, 288, 1200, 0.0008, 2.5, 3.17080072e-05, 0.231864866, 3.10873471e-05, 0.227326288},
               {1.33, 288, 1200, 0.0008, 3, 3.17080072e-05, 0.27823784, 3.16094682e-05, 0.27737316},
               {1.33, 288, 1000, 0.0006, 1.05, 1.06142984e-05, 0.0357106047, 7.65593767e-06, 0.0257575351},
               {1.33, 288, 1000, 0.0006, 1.1, 1.4284163e-05, 0.0503458984, 1.04997984e-05, 0.0370075435},
               {1.33, 288, 1000, 0.0006, 1.2, 1.8406073e-05, 0.0707715974, 1.40170122e-05, 0.0538955997},
               {1.33, 288, 1000, 0.0006, 1.5, 2.28936963e-05, 0.110033212, 1.90894513e-05, 0.0917489951},
               {1.33, 288, 1000, 0.0006, 1.8, 2.3768594e-05, 0.137085844, 2.13416792e-05, 0.123088564},
               {1.33, 288, 1000, 0.0006, 2, 2.37810054e-05, 0.152397141, 2.22038871e-05, 0.142290406},
               {1.33, 288, 1000, 0.0006, 2.5, 2.37810054e-05, 0.190496426, 2.33155103e-05, 0.186767604},
               {1.33, 288, 1000, 0.0006, 3, 2.37810054e-05, 0.228595712, 2.37071012e-05, 0.227885304}}},
             [](std::span<const double> key) {
               const double ratio = key[4], parameter = key[3] / std::sqrt(key[1]), p0 = 101325 * ratio;
               const double one = parameter * pair_flow(1 / ratio, 1e5, key[0]).flow;
               const double two = parameter * pair_flow(1 / ratio, std::sqrt(ratio), key[0]).flow;
               return std::vector{one, one * p0 / std::sqrt(key[2]), two, two * p0 / std::sqrt(key[2])};
             });
}

void add_velocity_ratio(CheckList& list) {
  list.value("wheel speed over spouting velocity at best efficiency", std::numbers::sqrt2 / 2, best_velocity_ratio);
  list.table({{"U/C0", "efficiency over its peak"},
              1,
              {{0.3, 0.668528137},
               {0.4, 0.81137085},
               {0.5, 0.914213562},
               {0.6, 0.977056275},
               {0.65, 0.993477631},
               {0.7, 0.999898987},
               {0.707106781, 1},
               {0.75, 0.996320344},
               {0.8, 0.9827417},
               {0.9, 0.925584412},
               {1, 0.828427125}}},
             [](std::span<const double> key) { return std::vector{turbine_efficiency(1, key[0], 1)}; });
}

/// Air of c_p 1005 J/(kg K) and g = 1.4 at 298 K before the compressor, exhaust at 1200 K before the turbine, all
/// of it through the wheel, bearings of 0.98.
void add_turbo_balance(CheckList& list) {
  constexpr double k = 2.0 / 7, T1 = 298, T3 = 1200, bearings = 0.98;
  const Gas air = perfect_gas(1 / (1 - k), 1005 * k), exhaust = perfect_gas(1.33, 288);
  list.table({{"boost ratio", "compressor efficiency", "turbine efficiency", "air-fuel ratio", "compressor work, J/kg",
               "share of the heat that the wheel sees", "expansion ratio that balances"},
              4,
              {{2, 0.72, 0.7, 12.5, 91100.5546, 0.088279876, 1.4513433},
               {2.5, 0.72, 0.7, 12, 124481.031, 0.120255659, 1.67594684}}},
             [&](std::span<const double> key) {
               const double T2 = isentropic_temperature(air, T1, 0, key[0]);
               const double work = (enthalpy(air, T2, 0) - enthalpy(air, T1, 0)) / key[1];
               const double needed = work / (bearings * (1 + 1 / key[3]) * key[2]);
               double low = 1, high = 10;
               for (int turn = 0; turn < 60; ++turn) {
                 const double ratio = 0.5 * (low + high);
                 (isentropic_drop(exhaust, {ratio * 1e5, T3, 0}, 1e5) < needed ? low : high) = ratio;
               }
               return std::vector{work, needed / enthalpy(exhaust, T3, 0), low};
             });
}

void add_butterfly(CheckList& list) {
  list.table({{"butterfly valve, degrees from wide open", "loss, velocity heads"},
              1,
              {{5, 0.24}, {10, 0.52}, {20, 1.54}, {40, 10.8}, {60, 118}}},
             [](std::span<const double> key) { return std::vector{butterfly_loss(1 - key[0] / 90)}; });
}

}  // namespace

std::vector<Check> orifice_turbine_checks() {
  CheckList list("orifice and turbine",
                 "Heywood, Internal Combustion Engine Fundamentals, 1988, app. C (equation numbers from memory)");
  list.relative(closed_form, closed_form_reason);
  add_choked(list);
  add_flow_function(list);
  list.relative(closed_form,
                "closed form; the solution's own tolerance is a millionth of the velocity at most, mostly its square");
  add_orifice_cases(list);
  list.source("Watson and Janota, Turbocharging the Internal Combustion Engine, 1982; Dixon and Hall, 2014");
  list.relative(1e-9, "closed form, ten printed digits");
  add_turbine_power(list);
  list.source("Watson and Janota, Turbocharging the Internal Combustion Engine, 1982 (from memory)");
  list.relative(closed_form, closed_form_reason);
  add_turbine_flow(list);
  list.relative(closed_form, closed_form_reason);
  add_turbo_balance(list);
  list.source("J. Weisbach, throttle valve in a round pipe, as pipe-flow handbooks print it");
  list.relative(1e-6, "the table itself, put through the jet's area and back");
  add_butterfly(list);
  list.relative(closed_form, closed_form_reason);
  list.source(
      "ideal radial turbine U^2 = C0^2/2; Luddecke et al., Int. J. Rotating Machinery 2012, 589720; the parabola is "
      "common practice");
  add_velocity_ratio(list);
  return list.checks();
}

}  // namespace pulsewright
