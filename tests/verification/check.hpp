#pragma once
// A check against a figure from outside the program: what was published, what we get, and how far apart they may be. The
// same checks run as tests and are printed by `pulsewright verify`.

#include <functional>
#include <limits>
#include <span>
#include <string>
#include <vector>

namespace pulsewright {

/// Either a value (expected within tolerance, as a fraction of expected if relative) or a band (low..high, one side may be
/// open). reason says why the tolerance or the band is as wide as it is.
struct Check {
  std::string group;   // subject, as "steady flow"
  std::string name;    // what is checked
  std::string at;      // where in a table: "gamma 1.4, M 2"; empty for a check that stands alone
  std::string source;  // author, title, year, table
  double expected = std::numeric_limits<double>::quiet_NaN();
  double got = std::numeric_limits<double>::quiet_NaN();
  double tolerance = 0;
  bool relative = false;
  std::string reason;
  bool band = false;  // then low and high count instead of expected and tolerance
  double low = -std::numeric_limits<double>::infinity();
  double high = std::numeric_limits<double>::infinity();
};

/// False for NaN on either side.
bool holds(const Check& check);

/// The expectation as a person reads it: "0.30313 +- 1e-06 of it", "0.22 .. 0.29", "at most 0.005".
std::string expected_text(const Check& check);

/// One line with everything: for the message of a test that fails.
std::string describe(const Check& check);

/// Collects the checks of one source, so that group, source and tolerance are said once.
class CheckList {
 public:
  CheckList(std::string group, std::string source);

  // Stand until changed; the values that follow are held to them.
  CheckList& source(std::string source);
  CheckList& relative(double tolerance, std::string reason);
  CheckList& absolute(double tolerance, std::string reason);

  void value(std::string name, double expected, double got);
  void band(std::string name, double low, double high, double got);  // under the reason that stands
  void at_most(std::string name, double limit, double got);
  void at_least(std::string name, double limit, double got);

  /// A published table. columns names the keys first, then the values; a row holds both, NaN where the source has no value.
  /// got is called once a row with its keys and answers the values in the order of the columns.
  struct Table {
    std::vector<std::string> columns;
    std::size_t keys = 1;
    std::vector<std::vector<double>> rows;
  };
  void table(const Table& table, const std::function<std::vector<double>(std::span<const double>)>& got);

  const std::vector<Check>& checks() const { return checks_; }

 private:
  Check blank(std::string name, double got) const;

  std::string group_, source_, reason_ = "no reason given";
  double tolerance_ = 0;
  bool relative_ = true;
  std::vector<Check> checks_;
};

/// The checks of several lists one after another.
std::vector<Check> joined(std::vector<std::vector<Check>> lists);

/// Closed form evaluated twice: the published figure has nine digits, so 1e-6 leaves nothing but its rounding.
inline constexpr double closed_form = 1e-6;
inline constexpr const char* closed_form_reason = "closed form; only the printed digits differ";

}  // namespace pulsewright
