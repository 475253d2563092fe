#include "models/read_restriction.hpp"

#include "models/read_duct.hpp"
#include "models/read_network.hpp"

namespace pulsewright {
namespace {

constexpr double nearly_shut = 0.02;  // of the quarter turn: an engine does not run against less

RestrictionSketch read_restriction(const CaseTable& t) {
  RestrictionSketch r;
  r.name = read_name(t);
  r.place = t.place();
  r.at = t.need("at") ? read_address(t, "at") : PlacedText{"?", t.place()};
  const auto bore = t.quantity("bore", Dimension::length, bore_range());
  const auto opening = t.number("butterfly", between(nearly_shut, 1));
  const auto loss = t.number("loss", between(0, 1000));
  const int said = t.has("bore") + t.has("butterfly") + t.has("loss");
  if (said != 1)
    t.fault_here(said == 0 ? "a restriction says nothing of its size" : "a restriction is said in more than one way",
                 "one of: bore = \"50 mm\" (a plate's hole), butterfly = 0.5 (share of the quarter turn, 1 wide open), "
                 "loss = 0.8 (velocity heads of the pipe)");
  using Kind = RestrictionSketch::Kind;
  r.kind = bore ? Kind::plate : opening ? Kind::butterfly : Kind::loss;
  r.value = bore ? *bore : opening ? *opening : loss.value_or(0);
  return r;
}

GateSketch read_cut_out(const CaseTable& t, std::size_t number, AssumedList& assumed) {
  GateSketch gate;
  gate.name = read_name(t, number == 0 ? "cut-out" : "cut-out " + std::to_string(number + 1));
  gate.place = t.place();
  gate.at = t.need("at") ? read_address(t, "at") : PlacedText{"?", t.place()};
  gate.to = {"air", t.place()};
  gate.cut_out = true;
  gate.meeting = read_meeting(Layered(t), {"angle", "clock", "direction"});
  gate.bore = t.need_quantity("bore", Dimension::length, above(0, 0.3));
  gate.full_lift = gate.bore / 4;  // the curtain is then the bore's area
  gate.flow_coefficient = assumed.given_or(t.number("flow_coefficient", above(0, 1)), "wastegate.flow_coefficient");
  gate.opening = t.number("opening", between(0, 1)).value_or(1);
  return gate;
}

}  // namespace

std::vector<RestrictionSketch> read_restrictions(const CaseTable& root) {
  std::vector<RestrictionSketch> restrictions;
  for (const CaseTable& t : root.tables("restriction")) restrictions.push_back(read_restriction(t));
  return restrictions;
}

std::vector<GateSketch> read_cut_outs(const CaseTable& root, AssumedList& assumed) {
  std::vector<GateSketch> gates;
  for (const CaseTable& t : root.tables("cut_out")) gates.push_back(read_cut_out(t, gates.size(), assumed));
  return gates;
}

}  // namespace pulsewright
