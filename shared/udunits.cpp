#include "shared/udunits.hpp"

#include <udunits2.h>

#include <cmath>
#include <memory>
#include <mutex>

#include "shared/error.hpp"

namespace pulsewright {
namespace {

struct Free {
  void operator()(ut_system* system) const { ut_free_system(system); }
  void operator()(ut_unit* unit) const { ut_free(unit); }
  void operator()(cv_converter* converter) const { cv_free(converter); }
};
using Unit = std::unique_ptr<ut_unit, Free>;

std::unique_ptr<ut_system, Free> load() {
  ut_set_error_message_handler(ut_ignore);  // a library of ours never prints
  std::unique_ptr<ut_system, Free> system(ut_read_xml(nullptr));
  if (!system) throw Error(ErrorKind::internal, "the unit data base of UDUNITS-2 is missing", {}, "run scripts/setup");
  return system;
}

// Reading the data base takes 5 ms, so it is read once; the library itself may only be entered by one thread at a time.
struct UnitSystem {
  std::mutex mutex;
  std::unique_ptr<ut_system, Free> system = load();
};

UnitSystem& unit_system() {
  static UnitSystem system;
  return system;
}

Unit parse(ut_system* system, const std::string& text) { return Unit(ut_parse(system, text.c_str(), UT_UTF8)); }

}  // namespace

Conversion converted(double value, const std::string& from, const std::string& to) {
  UnitSystem& units = unit_system();
  const std::lock_guard lock(units.mutex);
  const Unit target = parse(units.system.get(), to);
  if (!target) throw Error(ErrorKind::internal, "'" + to + "' is not a unit");
  Conversion result;
  const Unit source = parse(units.system.get(), from);
  if (!source) return result;
  result.known = true;
  if (ut_are_convertible(source.get(), target.get()) == 0) return result;
  const std::unique_ptr<cv_converter, Free> converter(ut_get_converter(source.get(), target.get()));
  if (!converter) return result;
  const double zero = cv_convert_double(converter.get(), 0);
  result.comparable = std::isfinite(zero);  // the library also converts Hz to s, by 1/x: that is not the same measure
  result.value = cv_convert_double(converter.get(), value);
  result.difference = zero == 0 ? result.value : (cv_convert_double(converter.get(), 1) - zero) * value;
  return result;
}

}  // namespace pulsewright
