#pragma once
// JSON that keeps the order of its keys and never hides a NaN: the library would print one as null without a word.
// Files that build a document include <nlohmann/json.hpp> themselves.

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <string_view>

namespace pulsewright {

using Json = nlohmann::ordered_json;

/// object[key] = value; throws Error (internal) if it is not finite.
void put_number(Json& object, const std::string& key, double value);

/// What cannot be given: object[key] = null, object[key_reason] = why.
void put_missing(Json& object, const std::string& key, std::string_view reason);

/// The one or the other.
void put_number(Json& object, const std::string& key, std::optional<double> value, std::string_view reason);

/// The document as text, two blanks a level, a line feed at its end. Throws Error (internal) naming the place of a
/// number that is not finite, and of a null without its reason.
std::string json_text(const Json& document);

}  // namespace pulsewright
