#include "cli/trace_file.hpp"

#include <fmt/format.h>

#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {

TraceFile::TraceFile(const std::filesystem::path& path, const std::string& layout, double rpm)
    : reader_(path), at_("layout_" + layout) {
  if (!reader_.has_attribute("", "program"))
    throw Error(ErrorKind::file, "this file was not written by pulsewright", path.string());
  if (!reader_.has(at_))
    throw Error(ErrorKind::usage, "the file has no layout " + layout, path.string(),
                "layouts: " + listed(reader_.list("")));
  engine_ = reader_.attribute_text(at_, "kind") == "engine";
  gas_at_ = at_;
  if (engine_)
    choose_speed(rpm);
  else if (rpm != 0)
    throw Error(ErrorKind::usage, "a rig has no speed: leave --rpm out");
  instants_ = reader_.read(gas_at_ + (engine_ ? "/angle" : "/time")).values;
  for (const std::string& entry : reader_.list(at_ + "/names")) {
    const std::string place = at_ + "/names/" + entry;
    const auto number = [&](const char* name) { return reader_.attribute_number(place, name); };
    plan_.names.push_back({reader_.attribute_text(place, "name"), number("from_m"), number("to_m"),
                           static_cast<int>(number("duct")), number("duct_at_from_m"), number("reversed") != 0});
  }
}

void TraceFile::choose_speed(double rpm) {
  std::vector<std::string> speeds;
  for (const std::string& group : reader_.list(at_))
    if (group.starts_with("rpm_")) speeds.push_back(group);
  for (const std::string& group : speeds) {
    const double found = reader_.attribute_number(at_ + "/" + group, "rpm");
    if (rpm != found && !(rpm == 0 && speeds.size() == 1)) continue;
    rpm_ = found;
    gas_at_ = at_ + "/" + group;
    return;
  }
  throw Error(
      ErrorKind::usage,
      rpm == 0 ? "the file holds several speeds: say --rpm" : fmt::format("the file has no speed of {:g} rpm", rpm),
      "--rpm", "it has: " + listed(speeds));
}

TracedDuct TraceFile::duct(int number) const {
  const std::string at = fmt::format("{}/ducts/{:03}", gas_at_, number);
  const auto field = [&](const char* name) { return reader_.read(at + "/" + name).values; };
  TracedDuct d{0,
               reader_.attribute_number(at, "dx_m"),
               field("bore"),
               field("pressure"),
               field("temperature"),
               field("velocity"),
               field("density"),
               field("burned")};
  d.cells = d.bore.size();
  return d;
}

}  // namespace pulsewright
