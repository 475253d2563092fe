#include "shared/json.hpp"

#include <cmath>
#include <nlohmann/json.hpp>

#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr const char* reason_suffix = "_reason";

[[noreturn]] void refuse(const std::string& where, const std::string& what) {
  throw Error(ErrorKind::internal, "the output's " + in_quotes(where) + " " + what);
}

void check(const Json& value, const std::string& where) {
  if (value.is_number_float() && !std::isfinite(value.get<double>())) refuse(where, "is not a finite number");
  if (value.is_array()) {
    for (std::size_t i = 0; i < value.size(); ++i) {
      std::string place = where;
      place += "[" + std::to_string(i) + "]";
      if (value[i].is_null()) refuse(place, "is null");
      check(value[i], place);
    }
  }
  if (!value.is_object()) return;
  for (const auto& [key, below] : value.items()) {
    const std::string place = where.empty() ? key : where + "." + key;
    const auto reason = value.find(key + reason_suffix);
    if (below.is_null() && (reason == value.end() || !reason->is_string())) refuse(place, "is null without a reason");
    check(below, place);
  }
}

}  // namespace

void put_number(Json& object, const std::string& key, double value) {
  if (!std::isfinite(value)) refuse(key, "is not a finite number");
  object[key] = value;
}

void put_missing(Json& object, const std::string& key, std::string_view reason) {
  object[key] = nullptr;
  object[key + reason_suffix] = std::string(reason);
}

void put_number(Json& object, const std::string& key, std::optional<double> value, std::string_view reason) {
  if (value)
    put_number(object, key, *value);
  else
    put_missing(object, key, reason);
}

std::string json_text(const Json& document) {
  check(document, {});
  return document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace pulsewright
