// Gas properties: the species data, burned gas, and the fits that the solver runs on, against published figures.
#include <fmt/format.h>

#include "solver/composition.hpp"
#include "solver/gas.hpp"
#include "tests/verification/all_checks.hpp"
#include "tests/verification/burned_tables.hpp"
#include "tests/verification/species_tables.hpp"

namespace pulsewright {
namespace {

using Rows = std::vector<std::vector<double>>;
constexpr const char* nasa = "McBride, Zehe, Gordon, NASA/TP-2002-211556, 2002";

std::string name_of(Species s) { return std::string(species_data(s).name); }

// The rows with only the first column and column `kept`, for T in (above, up_to].
Rows column(const Rows& rows, std::size_t kept, double above = 0, double up_to = 1e4) {
  Rows chosen;
  for (const auto& row : rows)
    if (row[0] > above && row[0] <= up_to) chosen.push_back({row[0], row[kept]});
  return chosen;
}

std::vector<Check> nasa_checks() {
  CheckList list("gas, species", nasa);
  list.relative(closed_form, closed_form_reason);
  for (const SpeciesTable& table : species_tables()) {
    Rows rows = table.rows;
    for (auto& row : rows) row.resize(5);
    const std::string name = name_of(table.species);
    list.table({{"T", name + " cp", name + " gamma", name + " h - h298", name + " entropy"}, 1, rows},
               [s = table.species](std::span<const double> key) {
                 const double T = key[0], cp = molar_heat_capacity(s, T);
                 return std::vector{cp, cp / (cp - molar_gas_constant),
                                    (molar_enthalpy(s, T) - molar_enthalpy(s, 298.15)) / 1000, molar_entropy(s, T)};
               });
  }
  return list.checks();
}

// Another body of data on the same gases: how far it may lie from NASA's, and why.
struct Rival {
  Species species;
  std::size_t column;  // of SpeciesTable: 5 WebBook, 6 NIST-JANAF
  double above, up_to, tolerance;
};

std::vector<Check> nist_checks() {
  static const Rival table[] = {
      {Species::N2, 5, 0, 3000, 3e-4},  {Species::O2, 5, 0, 3000, 2.1e-3},   {Species::Ar, 5, 0, 3000, 2e-5},
      {Species::CO2, 6, 0, 3000, 6e-4}, {Species::CO, 6, 0, 3000, 4e-4},     {Species::H2, 5, 0, 3000, 4e-4},
      {Species::H2O, 6, 0, 1000, 7e-4}, {Species::H2O, 6, 1000, 1500, 5e-3}, {Species::H2O, 6, 1500, 3000, 1.7e-2}};
  CheckList list("gas, species", "NIST-JANAF tables, 4th ed. (Chase), 1998");
  const auto tables = species_tables();
  for (const Rival& r : table) {
    const bool water = r.species == Species::H2O;
    list.source(r.column == 5 ? "NIST WebBook, Shomate coefficients after Chase, 1998"
                              : "NIST-JANAF tables, 4th ed. (Chase), 1998");
    list.relative(r.tolerance, water ? "steam: NASA's newer data lie above JANAF, 0.06 % at 1000 K to 1.6 % at 2500 K"
                                     : "two bodies of data: their known difference");
    const auto& rows = tables[static_cast<std::size_t>(r.species)].rows;
    list.table({{"T", name_of(r.species) + " cp"}, 1, column(rows, r.column, r.above, r.up_to)},
               [s = r.species](std::span<const double> key) { return std::vector{molar_heat_capacity(s, key[0])}; });
  }
  return list.checks();
}

Fuel hydrocarbon(double hydrogen_per_carbon) { return {"CHx", hydrogen_per_carbon, 0, 0, 0}; }

std::vector<Check> composition_checks() {
  CheckList list("gas, burned", "balance of atoms; rich: water-gas constant 3.5, Heywood, 1988, ch. 4 (from memory)");
  for (const BurnedTable& table : composition_tables()) {
    const Fuel fuel = hydrocarbon(table.hydrogen_per_carbon);
    const std::string name = fmt::format("CH{:.2f} ", fuel.hydrogen_per_carbon);
    Rows fractions, masses;
    for (const auto& row : table.rows) {
      fractions.push_back({row[0]});
      fractions.back().insert(fractions.back().end(), row.begin() + 2, row.begin() + 9);
      masses.push_back({row[0], row[1], row[9], row[10]});
    }
    list.absolute(1e-6, "mole fraction, closed form; only the printed digits differ");
    list.table({{"lambda", name + "x N2", name + "x O2", name + "x Ar", name + "x CO2", name + "x H2O", name + "x CO",
                 name + "x H2"},
                1,
                fractions},
               [&fuel](std::span<const double> key) {
                 const Composition c = burned_composition(fuel, key[0]);
                 return std::vector<double>(c.mole_fraction.begin(), c.mole_fraction.end());
               });
    list.relative(closed_form, closed_form_reason);
    list.table(
        {{"lambda", name + "air-fuel ratio", name + "molar mass", name + "gas constant"}, 1, masses},
        [&fuel](std::span<const double> key) {
          const Composition c = burned_composition(fuel, key[0]);
          return std::vector{key[0] * stoichiometric_air_fuel_ratio(fuel), 1000 * molar_mass(c), gas_constant(c)};
        });
  }
  return list.checks();
}

std::vector<double> exact_heat(const Composition& c, double T) {
  const double cp = heat_capacity(c, T), R = gas_constant(c), gamma = cp / (cp - R);
  return {cp, gamma, std::sqrt(gamma * R * T)};
}

std::vector<double> fitted_heat(const Gas& gas, double T, double Y) {
  return {cp(gas, T, Y), heat_ratio(gas, T, Y), sound_speed(gas, T, Y)};
}

// The rows of a table whose first column is lambda, without it.
Rows at_lambda(const Rows& rows, double lambda) {
  Rows chosen;
  for (const auto& row : rows)
    if (row[0] == lambda) chosen.emplace_back(row.begin() + 1, row.end());
  return chosen;
}

void burned_heat(CheckList& list, const Fuel& fuel, double lambda, const Rows& rows) {
  const std::string name = fmt::format("CH{:.2f} lambda {:g} ", fuel.hydrogen_per_carbon, lambda);
  const Composition burned = burned_composition(fuel, lambda);
  const Gas gas = mixture_gas(fuel, lambda);
  list.relative(closed_form, closed_form_reason);
  list.table({{"T", name + "cp", name + "gamma", name + "sound speed"}, 1, rows},
             [&](std::span<const double> key) { return exact_heat(burned, key[0]); });
  list.relative(2e-3, "the bound set for the fit's cp, which gamma and sound speed share");
  list.table({{"T", name + "fitted cp", name + "fitted gamma", name + "fitted sound speed"}, 1, rows},
             [&](std::span<const double> key) { return fitted_heat(gas, key[0], 1); });
}

std::vector<Check> heat_ratio_checks() {
  CheckList list("gas, burned", std::string(nasa) + "; frozen products");
  for (const BurnedTable& table : heat_ratio_tables()) {
    double before = 0;
    for (const auto& row : table.rows) {
      if (row[0] != before)
        burned_heat(list, hydrocarbon(table.hydrogen_per_carbon), row[0], at_lambda(table.rows, row[0]));
      before = row[0];
    }
  }
  const Gas gas = mixture_gas(hydrocarbon(1.85), 1);
  list.source(std::string(nasa) + "; dry air");
  list.relative(closed_form, closed_form_reason);
  list.table({{"T", "air cp", "air gamma", "air sound speed"}, 1, dry_air_rows()},
             [](std::span<const double> key) { return exact_heat(air(), key[0]); });
  list.relative(2e-3, "the bound set for the fit's cp, which gamma and sound speed share");
  list.table({{"T", "air fitted cp", "air fitted gamma", "air fitted sound speed"}, 1, dry_air_rows()},
             [&](std::span<const double> key) { return fitted_heat(gas, key[0], 0); });
  return list.checks();
}

std::vector<Check> transport_checks() {
  const Fuel fuel = hydrocarbon(1.85);
  const Composition burned = burned_composition(fuel, 1);
  const Gas gas = mixture_gas(fuel, 1);
  const Rows rows = transport_rows();
  const auto property = [&](const char* name, std::size_t kept, const std::function<double(double)>& got,
                            CheckList& list) {
    list.table({{"T", name}, 1, column(rows, kept)},
               [&](std::span<const double> key) { return std::vector{got(key[0])}; });
  };

  CheckList list("gas, transport", "Gordon et al., NASA TM-86885, 1984; Svehla, NASA TM-4647, 1995; Wilke, 1950");
  list.relative(1e-5, "the same coefficients; six digits are printed");
  property(
      "air viscosity", 3, [](double T) { return viscosity(air(), T); }, list);
  property(
      "air conductivity", 4, [](double T) { return conductivity(air(), T); }, list);
  property(
      "burned viscosity", 5, [&](double T) { return viscosity(burned, T); }, list);
  property(
      "burned conductivity", 6, [&](double T) { return conductivity(burned, T); }, list);
  list.relative(5e-3, "the bound set for the fit");
  property(
      "fitted burned viscosity", 5, [&](double T) { return viscosity(gas, T, 1); }, list);
  property(
      "fitted burned conductivity", 6, [&](double T) { return conductivity(gas, T, 1); }, list);
  list.source("Lemmon, Jacobsen, Int. J. Thermophys. 25 (2004) 21, dilute air");
  list.relative(0.02, "two bodies of data and the fit");
  property(
      "fitted air viscosity", 1, [&](double T) { return viscosity(gas, T, 0); }, list);
  list.relative(0.05, "two bodies of data and the fit");
  property(
      "fitted air conductivity", 2, [&](double T) { return conductivity(gas, T, 0); }, list);
  return list.checks();
}

}  // namespace

std::vector<Check> gas_checks() {
  return joined({nasa_checks(), nist_checks(), composition_checks(), heat_ratio_checks(), transport_checks()});
}

}  // namespace pulsewright
