#pragma once
// What rigs and engines read alike: a duct as it is drawn, where its ends stand, how they meet a joint.

#include <optional>
#include <string_view>
#include <vector>

#include "models/assumed.hpp"
#include "models/sketch.hpp"
#include "shared/case_table.hpp"

namespace pulsewright {

/// A table and one that stands behind it: a key of its own wins (a primary over each_primary).
class Layered {
 public:
  explicit Layered(const CaseTable& own) : own_(own), shared_(own) {}
  Layered(const CaseTable& own, const CaseTable& shared) : own_(own), shared_(shared) {}

  /// The table that a key is to be read from; both then know it.
  const CaseTable& with(std::string_view key) const;
  /// The same for keys that exclude each other: one in the own table puts those of the shared one aside.
  const CaseTable& with_any(std::initializer_list<std::string_view> keys) const;
  const CaseTable& own() const { return own_; }

 private:
  const CaseTable& own_;
  const CaseTable& shared_;
};

/// Limits of what can be built; a value outside is a fault of the case.
Range bore_range();
Range length_range();
Range angle_range();     // 0 to 180 degrees
Range clock_range();     // -360 to 360 degrees
Range wall_range();      // temperature of metal
Range pressure_range();  // absolute
Range gas_temperature_range();

/// The cell length to use: that of the command line if above 0, else that of the case. Throws Error (usage) where the
/// former lies outside the range.
double chosen_cell(double command_line, double of_case, const Range& range);

PlacedText read_address(const CaseTable& table, std::string_view key);

/// `angle_key` ("to_angle"), `clock_key`, and `direction`, three plain numbers.
struct MeetingKeys {
  std::string_view angle, clock, direction;
};
MeetingSketch read_meeting(const Layered& table, const MeetingKeys& keys);

/// Wall of a rig's duct, whose temperature is given or assumed; an engine's are read by models/read_metal.hpp.
DuctWall read_wall(const Layered& table, AssumedList& assumed);

/// Bores along a duct: `tube`, `bore`, `bore_from` and `bore_to`, or `area_table`.
struct DuctShape {
  double first_bore = 0.04, last_bore = 0.04, length = 0.1;  // harmless where the case is at fault
  std::vector<BoreAt> table;                                 // from area_table
  std::optional<double> wall;                                // thickness, of the tube that is named, m
};
DuctShape read_shape(const Layered& table);

/// Bends by their sum: `bends`, `bend_radius`; spread over the section.
struct BendReading {
  std::optional<double> angle, radius;
};
BendReading read_bends(const Layered& table);
void lay_bends(DuctSection& section, double angle, double radius);

/// Sections of a [[duct]], of that shape; their wall is left to the caller (with_wall).
std::vector<DuctSection> read_sections(const CaseTable& table, const DuctShape& shape, AssumedList& assumed);

/// from, to and how they meet: shared by rig and engine ducts.
void read_duct_ends(const CaseTable& table, DuctSketch& duct);

}  // namespace pulsewright
