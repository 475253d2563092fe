#pragma once
// Maps of machines as text: comma separated, a heading line that names the columns with their units, then one point a
// line; lines that begin with # are remarks. Every fault is told with its line, all of them at once.

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace pulsewright {

/// Takes a fault: "turbine.csv:7: ...", and what to do about it.
using MapFault = std::function<void(std::string message, std::string hint)>;

struct MapRow {
  int line;
  std::vector<double> values;  // one for each column
};

/// The state to which corrected figures refer: a line before the heading, "reference, 288.15 K, 1.01325 bar".
struct MapReference {
  double temperature;  // K
  double pressure;     // Pa
};

inline constexpr std::size_t most_map_bytes = 1 << 20;

struct MapFile {
  std::string name;
  std::vector<std::string> columns;  // as the heading names them
  std::optional<MapReference> reference;
  std::vector<MapRow> rows;

  /// Where a column stands; -1 where the file has none of that name.
  int column(std::string_view name) const;
  std::string at(int line) const { return name + ":" + std::to_string(line); }
};

/// What a map of a machine asks of its columns; every lack is told once, and `good` says whether there was none.
class MapColumns {
 public:
  MapColumns(const MapFile& file, const MapFault& fault) : file_(file), fault_(fault) {}

  int may(std::string_view name) const { return file_.column(name); }
  int need(std::string_view name);
  /// The column by one of two names, never both; -1 where neither stands there.
  int one_of(std::string_view a, std::string_view b);
  int need_one_of(std::string_view a, std::string_view b);
  void need_reference();
  bool good() const { return good_; }

 private:
  void say(const std::string& what, const std::string& hint);

  const MapFile& file_;
  const MapFault& fault_;
  bool good_ = true;
};

/// Columns must be among `known`, each once. Nothing after a fault.
std::optional<MapFile> parse_map_file(const std::string& text, const std::string& name,
                                      const std::vector<std::string>& known, const MapFault& fault);

}  // namespace pulsewright
