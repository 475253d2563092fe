#include "solver/transport_fit.hpp"

#include "solver/composition.hpp"
#include "solver/polynomial_fit.hpp"

namespace pulsewright {
namespace {

using Property = double (*)(const Composition&, double);

std::array<double, TransportFit::terms> fit(Property property, const Composition& c) {
  constexpr double middle = (TransportFit::T_low + TransportFit::T_high) / 2;
  constexpr double half_span = (TransportFit::T_high - TransportFit::T_low) / 2;
  const auto found = fit_relative([&](double z) { return property(c, middle + half_span * z); },
                                  static_cast<int>(TransportFit::terms) - 1);
  std::array<double, TransportFit::terms> terms{};
  std::copy(found.begin(), found.end(), terms.begin());
  return terms;
}

Blend<TransportFit::terms> blend(Property property, const Composition& burned) {
  Blend<TransportFit::terms> b{fit(property, air()), fit(property, burned)};
  for (std::size_t k = 0; k < TransportFit::terms; ++k) b.more[k] -= b.fresh[k];
  return b;
}

}  // namespace

TransportFit make_transport_fit(const Composition& burned) {
  return {blend(viscosity, burned), blend(conductivity, burned)};
}

}  // namespace pulsewright
