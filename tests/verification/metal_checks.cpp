// What hot tubes give off to the air around them, and how much they grow.
#include <cmath>
#include <numbers>

#include "models/alloy.hpp"
#include "models/outside_heat.hpp"
#include "tests/verification/all_checks.hpp"

namespace pulsewright {
namespace {

// A steam pipe of 0.1 m, 165 degC, emissivity 0.85, in a room of 23 degC.
double steam_pipe_loss(double emissivity) {
  const Gas air = mixture_gas(*find_fuel("petrol"), 1.0);
  return std::numbers::pi * 0.1 * outside_heat_flux(0.1, 438, emissivity, {296, 0, 101325}, air);
}

std::vector<Check> outside_checks() {
  CheckList list(
      "heat off a tube",
      "Bergman, Lavine, Incropera, DeWitt, Introduction to Heat Transfer, 6th ed. 2011, examples 9.2 and 7.3, "
      "second hand, as an open library recomputes them");
  list.relative(closed_form, closed_form_reason);
  list.value("horizontal cylinder in still air: Nusselt number (Pr 0.69, Gr 2.63e9)", 139.134939701,
             natural_nusselt(0.69 * 2.63e9, 0.69));
  list.value("cylinder across moving air: Nusselt number (Re 6071, Pr 0.7)", 40.6370859412, blown_nusselt(6071, 0.7));
  list.source(
      "Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, steam pipe in a room (figures from memory)");
  list.relative(0.015, "the book's air data are rounded");
  list.value("steam pipe 165 degC, 0.1 m: to the air, W/m", 325, steam_pipe_loss(0));
  list.value("steam pipe 165 degC, 0.1 m: to air and room, W/m", 766, steam_pipe_loss(0.85));
  return list.checks();
}

std::vector<Check> growth_checks() {
  CheckList list("growth of a tube", "mean expansion in public data sheets of the grades");
  list.relative(0.01, "the sheets' last digit, and their 0 or 20 degC");
  const auto mean_from = [](const char* alloy, double C) {
    return 1e6 * growth_per_metre(find_alloy(alloy), C + 273.15) / (C - 20);
  };
  list.value("304 to 650 degC, 1e-6/K", 18.7, mean_from("304", 650));
  list.value("321 to 600 degC, 1e-6/K", 18.9, mean_from("321", 600));
  list.value("321 to 1000 degC, 1e-6/K", 20.5, mean_from("321", 1000));
  list.value("625 to 100 degC, 1e-6/K", 12.8, mean_from("625", 100));
  return list.checks();
}

}  // namespace

std::vector<Check> metal_checks() { return joined({outside_checks(), growth_checks()}); }

}  // namespace pulsewright
