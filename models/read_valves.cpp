// The valves of a cylinder and their cam card.

#include <numbers>

#include "models/read_engine.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr double degree = std::numbers::pi / 180;
constexpr double between_exhaust_and_intake = 2 * std::numbers::pi;  // that dead centre, on the cylinder's own scale

/// Which valves, and where on the cylinder's own scale the dead centres lie that their card counts from, rad.
struct ValveKind {
  std::string key;
  DeadCentre opens_at, closes_at;  // that the assumed angles count from
  double bottom, top;
};

const ValveKind exhaust_kind{"exhaust_valve", DeadCentre::bottom, DeadCentre::top, 180 * degree, 360 * degree};
const ValveKind intake_kind{"intake_valve", DeadCentre::top, DeadCentre::bottom, 540 * degree, 360 * degree};

std::string of(const ValveKind& kind, std::string_view what) { return kind.key + "." + std::string(what); }

double own_angle(const ValveKind& kind, const CamAngle& a) {
  return (a.dead == DeadCentre::bottom ? kind.bottom : kind.top) + a.after;
}

double opening_or_assumed(const CaseTable& t, const ValveKind& kind, AssumedList& assumed) {
  const auto said = t.cam_angle("opens");
  if (said && !said->centre) return own_angle(kind, *said);
  return own_angle(kind, {-assumed.take(of(kind, "opens")), kind.opens_at, false});
}

double closing_or_assumed(const CaseTable& t, const ValveKind& kind, AssumedList& assumed) {
  const auto said = t.cam_angle("closes");
  if (said && !said->centre) return own_angle(kind, *said);
  return own_angle(kind, {assumed.take(of(kind, "closes")), kind.closes_at, false});
}

/// opens = "centre 108 deg after tdc" with a duration instead of closes.
bool read_by_centre(const CaseTable& t, const ValveKind& kind, CamCard& card) {
  if (!t.has("opens")) return false;
  const auto centre = t.cam_angle("opens");
  if (!centre || !centre->centre) return false;
  if (t.has("closes"))
    t.fault("closes", "opens gives the centre of the lift, so closes says it twice",
            "give duration = \"240 deg\" instead");
  const double duration = t.need_quantity("duration", Dimension::angle, between(60 * degree, 400 * degree));
  const double middle = own_angle(kind, *centre);
  card.opens = {middle - duration / 2};
  card.closes = {middle + duration / 2};
  return true;
}

/// lift_table: the name of a file beside the case, or rows of angle and lift; angles after the dead centre between exhaust
/// and intake.
std::vector<LiftPoint> read_lift_table(const CaseTable& t) {
  constexpr std::size_t most_bytes = 1'000'000;
  std::vector<LiftPoint> table;
  const auto from_file = [&](std::string_view name) {
    return parse_lift_table(t.read_beside(name, most_bytes), std::string(name));
  };
  if (t.kind("lift_table") == CaseKind::text) {
    table = t.parsed("lift_table", from_file).value_or(table);
  } else if (const auto rows = t.rows("lift_table", {Dimension::angle, Dimension::length})) {
    for (const auto& row : *rows) table.push_back({{row[0]}, row[1]});
    try {
      check_lift_table(table);
    } catch (const Error& error) {
      t.fault("lift_table", error.message(), error.hint());
      table.clear();
    }
  }
  for (LiftPoint& point : table) point.angle = point.angle + CrankAngle{between_exhaust_and_intake};
  return table;
}

/// The table says everything that a card says.
bool read_by_table(const CaseTable& t, CamCard& card) {
  if (!t.has("lift_table")) return false;
  for (const char* key : {"opens", "closes", "duration", "lift", "stated_at", "lift_exponent"})
    if (t.has(key)) t.fault(key, "lift_table gives the whole lift, so " + std::string(key) + " says it twice");
  card.table = read_lift_table(t);
  if (card.table.empty()) return true;
  const LiftCurve curve(card);
  card.opens = curve.opens();
  card.closes = curve.closes();
  card.stated_at = open_lift;
  card.lift = curve.highest();
  return true;
}

CamCard read_card(const CaseTable& t, const ValveKind& kind, AssumedList& assumed) {
  CamCard card;
  if (read_by_table(t, card)) return card;
  if (!read_by_centre(t, kind, card)) {
    if (t.has("duration"))
      t.fault("duration", "a duration goes with the centre of the lift, opens = \"centre 108 deg before tdc\"");
    card.opens = {opening_or_assumed(t, kind, assumed)};
    card.closes = {closing_or_assumed(t, kind, assumed)};
  }
  card.lift = assumed.given_or(t.quantity("lift", Dimension::length, above(0, 0.05)), of(kind, "lift"));
  card.stated_at = assumed.given_or(t.quantity("stated_at", Dimension::length, above(0, 0.01)), of(kind, "stated_at"));
  card.exponent = assumed.given_or(t.number("lift_exponent", between(1, 4)), of(kind, "lift_exponent"));
  return card;
}

/// { lift = ["1 mm", "3 mm"], coefficient = [0.7, 0.65] }: from a flow bench, on the curtain area.
void read_flow_table(const CaseTable& t, ValveShape& shape) {
  const auto lifts = t.quantities("lift", Dimension::length, above(0, 0.05));
  const auto coefficients = t.numbers("coefficient", between(0.1, 1));
  t.need("lift"), t.need("coefficient");
  if (!lifts || !coefficients) return;
  if (lifts->size() != coefficients->size() || lifts->empty())
    return t.fault_here("as many lifts as coefficients, one or more");
  for (std::size_t i = 0; i < lifts->size(); ++i) {
    if (i > 0 && !((*lifts)[i] > (*lifts)[i - 1])) return t.fault("lift", "lifts of a flow table rise");
    shape.coefficients.emplace_back((*lifts)[i], (*coefficients)[i]);
  }
}

/// One number for all lifts, two (at lift/head 0.05 and at 0.25), or a table.
void read_flow_coefficient(const CaseTable& t, const ValveKind& kind, ValveShape& shape, AssumedList& assumed) {
  if (!t.has("flow_coefficient")) {
    assumed.take(of(kind, "flow_coefficient"));
    return;
  }
  const Range range = between(0.1, 1);
  if (t.kind("flow_coefficient") == CaseKind::table) return read_flow_table(t.table("flow_coefficient"), shape);
  if (t.kind("flow_coefficient") != CaseKind::list) {
    shape.coefficient_low = shape.coefficient_high = t.number("flow_coefficient", range).value_or(0.65);
    return;
  }
  const auto two = t.numbers("flow_coefficient", range);
  if (two && two->size() != 2)
    t.fault("flow_coefficient", "flow_coefficient takes one number, or two: at lift/head 0.05 and at 0.25");
  if (two && two->size() == 2) shape.coefficient_low = two->front(), shape.coefficient_high = two->back();
}

ValveShape read_valve_shape(const CaseTable& t, const ValveKind& kind, AssumedList& assumed) {
  ValveShape shape;
  const auto count = t.count("count", 1, 6);
  shape.count = static_cast<int>(assumed.given_or(count, of(kind, "count")));
  shape.head = assumed.given_or(t.quantity("head", Dimension::length, above(0, 0.3)), of(kind, "head"));
  (kind.key == "exhaust_valve" ? assumed.facts().exhaust_head : assumed.facts().intake_head) = shape.head;
  const double throat = assumed.given_or(t.quantity("throat", Dimension::length, above(0, 0.3)), of(kind, "throat"));
  shape.throat = throat / shape.head;
  if (!(shape.throat > shape.stem && shape.throat <= 1))
    t.fault("throat", "the throat of " + in_words(throat, Dimension::length) + " does not lie under a head of " +
                          in_words(shape.head, Dimension::length));
  read_flow_coefficient(t, kind, shape, assumed);
  return shape;
}

void check_cam(const CaseTable& t, const ValveCase& valve) {
  try {
    const LiftCurve curve(valve.card);
  } catch (const Error& error) {
    t.fault(t.has("closes") ? "closes" : "opens", "an impossible cam: " + error.message(), error.hint());
  }
}

/// How far from its dead centre a valve of a running engine opens or closes.
void check_window(const CaseTable& t, std::string_view key, double at, double low, double high) {
  const bool said = t.has(key) || t.has("lift_table");
  if (!said || (at >= low * degree && at <= high * degree)) return;
  t.fault(t.has(key) ? key : "lift_table",
          "an impossible cam: " + std::string(key) + " lies " + in_words(at, Dimension::angle) +
              " after firing top dead centre, and a four-stroke needs " + in_words(low * degree, Dimension::angle) +
              " to " + in_words(high * degree, Dimension::angle));
}

ValveCase read_valve(const CaseTable& t, const ValveKind& kind, AssumedList& assumed) {
  ValveCase valve;
  valve.shape = read_valve_shape(t, kind, assumed);
  valve.card = read_card(t, kind, assumed);
  if (t.has("lift_table") && valve.card.table.empty()) return valve;  // its fault is said
  check_cam(t, valve);
  return valve;
}

}  // namespace

ValveCase read_exhaust_valve(const CaseTable& table, AssumedList& assumed) {
  ValveCase valve = read_valve(table, exhaust_kind, assumed);
  valve.seat_load = table.quantity("seat_load", Dimension::force, between(1, 1e5));
  check_window(table, "opens", valve.card.opens.radians, 60, 240);
  check_window(table, "closes", valve.card.closes.radians, 300, 460);
  return valve;
}

ValveCase read_intake_valve(const CaseTable& table, AssumedList& assumed) {
  const ValveCase valve = read_valve(table, intake_kind, assumed);
  check_window(table, "opens", valve.card.opens.radians, 260, 420);
  check_window(table, "closes", valve.card.closes.radians, 480, 660);
  return valve;
}

}  // namespace pulsewright
