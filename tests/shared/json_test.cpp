#include "shared/json.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <nlohmann/json.hpp>

#include "tests/shared/fault.hpp"

namespace pulsewright {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

TEST(JsonOutput, KeepsTheOrderOfItsKeys) {
  Json document;
  put_number(document, "zebra", 1.5);
  put_number(document, "apple", 0.1);
  EXPECT_EQ(json_text(document), "{\n  \"zebra\": 1.5,\n  \"apple\": 0.1\n}\n");
}

TEST(JsonOutput, RefusesANumberThatIsNotFiniteNamingItsPlace) {
  Json document;
  EXPECT_EQ(refusal_of([&] { put_number(document, "x", nan); }).kind, ErrorKind::internal);
  document["speeds"] = Json::array({Json{{"rpm", 2500}}, Json{{"rpm", nan}}});
  EXPECT_TRUE(says(refusal_of([&] { json_text(document); }).text, "'speeds[1].rpm' is not a finite number"));
  document["speeds"] = std::vector<double>{1, std::numeric_limits<double>::infinity()};
  EXPECT_TRUE(says(refusal_of([&] { json_text(document); }).text, "'speeds[1]'"));
}

TEST(JsonOutput, ANullNeedsItsReason) {
  Json document;
  put_number(document, "power_kW", std::nullopt, "no turbine in this rig");
  EXPECT_EQ(document["power_kW_reason"], "no turbine in this rig");
  EXPECT_NO_THROW(json_text(document));
  document["torque_Nm"] = nullptr;
  EXPECT_TRUE(says(refusal_of([&] { json_text(document); }).text, "'torque_Nm' is null without a reason"));
}

TEST(JsonOutput, SurvivesATextThatIsNotUtf8) {
  Json document;
  document["title"] = "a\xff";
  EXPECT_NO_THROW(Json::parse(json_text(document)));
}

}  // namespace
}  // namespace pulsewright
