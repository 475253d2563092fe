#include "models/rig_run.hpp"

#include <fmt/format.h>

#include <chrono>
#include <cmath>

#include "models/assembly.hpp"
#include "shared/error.hpp"

namespace pulsewright {
namespace {

std::vector<RigDuctRecord> empty_records(const Network& net) {
  std::vector<RigDuctRecord> records;
  for (int d = 0; d < net.ducts(); ++d) {
    records.push_back({net.name(d), net.dx(d), net.cells(d), net.bores(d), {}, {}, {}, {}, {}});
  }
  return records;
}

void store_instant(RigResult& result, const Network& net) {
  result.times.push_back(net.time());
  for (int d = 0; d < net.ducts(); ++d) {
    RigDuctRecord& r = result.ducts[static_cast<std::size_t>(d)];
    const auto first = static_cast<std::ptrdiff_t>(net.first(d)), last = first + static_cast<std::ptrdiff_t>(r.cells);
    const Arena& a = net.arena();
    const auto append = [&](std::vector<double>& to, const Lane& lane) {
      to.insert(to.end(), lane.begin() + first, lane.begin() + last);
    };
    append(r.p, a.p), append(r.T, a.T), append(r.u, a.u), append(r.rho, a.rho), append(r.Y, a.Y);
  }
}

std::vector<RigBalance> balances_at_start(const Assembly& rig, const ManifoldPlan& plan) {
  std::vector<RigBalance> all;
  for (int d = 0; d < rig.network->ducts(); ++d) all.push_back({rig.network->name(d), rig.network->held(d), {}, {}, 0});
  for (std::size_t i = 0; i < plan.nodes.size(); ++i)
    all.push_back({plan.nodes[i].name, rig.elements[i]->held(), {}, {}, 0});
  return all;
}

void close_balances(RigResult& result, const Assembly& rig) {
  const auto ducts = static_cast<std::size_t>(rig.network->ducts());
  Content start, end, left;
  double heat = 0;
  for (std::size_t i = 0; i < result.balances.size(); ++i) {
    RigBalance& b = result.balances[i];
    if (i < ducts) {
      b.at_end = rig.network->held(static_cast<int>(i));
      b.heat = rig.network->heat_taken(static_cast<int>(i));
    } else {
      b.at_end = rig.elements[i - ducts]->held();
      b.left = rig.elements[i - ducts]->left();
    }
    start += b.at_start, end += b.at_end, left += b.left, heat += b.heat;
  }
  result.mass_error = (end.mass - start.mass + left.mass) / start.mass;
  result.energy_error = (end.energy - start.energy + left.energy - heat) / start.energy;
}

std::string where(const Network& net, const Network::Place& place) {
  const double distance_mm = 1e3 * (static_cast<double>(place.cell) + 0.5) * net.dx(place.duct);
  return fmt::format("{} at {:.0f} mm", net.name(place.duct), distance_mm);
}

}  // namespace

RigResult run_rig(const RigSetup& setup, const Progress& progress) {
  const Assembly rig = assemble(setup.plan, setup.gas, setup.options, setup.cell);
  Network& net = *rig.network;
  RigResult result;
  result.ducts = empty_records(net);
  result.balances = balances_at_start(rig, setup.plan);
  store_instant(result, net);
  const auto begun = std::chrono::steady_clock::now();
  const auto instants = std::max<long>(1, std::lround(std::ceil(setup.duration / setup.record - 1e-9)));
  for (long k = 1; k <= instants; ++k) {
    net.run_until(std::min(setup.duration, static_cast<double>(k) * setup.record));
    store_instant(result, net);
    if (progress && !progress(static_cast<double>(k) / static_cast<double>(instants)))
      throw Error(ErrorKind::internal, "interrupted");
  }
  result.timing.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begun).count();
  result.timing.cells = net.cells();
  result.timing.steps = net.steps();
  result.timing.step_setter = where(net, net.step_setter());
  close_balances(result, rig);
  return result;
}

}  // namespace pulsewright
