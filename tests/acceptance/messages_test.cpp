// What the program says to somebody who mistyped, and what it does where its output cannot be written.

#include <gtest/gtest.h>
#include <sys/wait.h>

#include <cstdlib>
#include <fstream>

#include "tests/acceptance/program.hpp"

namespace pulsewright {
namespace {

const std::string equal = "03_equal_primaries.toml";

bool has(const std::string& text, const std::string& word) { return text.find(word) != std::string::npos; }

TEST(Messages, WithoutAVerbEveryVerbIsListed) {
  const Outcome o = Workshop().run({});
  EXPECT_EQ(o.exit_code, 2);
  EXPECT_TRUE(o.out.empty());
  for (const char* verb : {"start ", "check ", "run ", "compare ", "trace ", "verify "})
    EXPECT_TRUE(has(o.err, "pulsewright " + std::string(verb))) << verb << o.err;
}

TEST(Messages, AMisspeltOptionIsToldTheNearestOne) {
  const Workshop shop;
  for (const auto& [typed, meant] :
       {std::pair{"--raport", "--report?"}, std::pair{"--rmp", "--rpm?"}, std::pair{"--quik", "--quick?"}}) {
    const Outcome o = shop.run({"run", equal, typed, "3000"});
    EXPECT_EQ(o.exit_code, 2);
    EXPECT_TRUE(has(o.err, std::string("did you mean ") + meant)) << typed << o.err;
  }
  EXPECT_TRUE(has(shop.run({"compare", equal, "--reprot=x.html"}).err, "did you mean --report?"));
}

TEST(Messages, AnOptionLikeNoneIsNotGuessedAt) {
  const Outcome o = Workshop().run({"run", equal, "--zzzzzzzz"});
  EXPECT_EQ(o.exit_code, 2);
  EXPECT_FALSE(has(o.err, "did you mean")) << o.err;
  EXPECT_TRUE(has(o.err, "pulsewright run --help")) << o.err;
}

TEST(Messages, ATryThatChangesNothingIsSaid) {
  const Workshop shop;
  const Outcome same = shop.run({"check", equal, "--try", "each_primary.tube=\"NPS 1-1/4 sch 10S\""});
  EXPECT_EQ(same.exit_code, 0);
  EXPECT_TRUE(has(same.err, "changes nothing")) << same.err;
  const Outcome changed = shop.run({"check", equal, "--try", "each_primary.tube=\"NPS 1-1/2 sch 10S\""});
  EXPECT_TRUE(changed.err.empty()) << changed.err;
}

TEST(Messages, WhatIsMissingForAStarterCaseIsListedAsAllOfIt) {
  const Outcome o = Workshop().run({"start", "--cylinders", "4", "--bore", "86 mm"});
  EXPECT_EQ(o.exit_code, 2);
  EXPECT_TRUE(has(o.err, "--stroke, --redline and --boost")) << o.err;
}

// /dev/full takes nothing: every write to it fails as on a full disk.
TEST(Messages, AFullDiskBehindStandardOutputIsAFileFault) {
  const Workshop shop;
  const std::string said = (shop.folder() / "said").string();
  for (const std::string& verb : std::vector<std::string>{"check " + equal, "--help", "run 01_shock_tube.toml"}) {
    const std::string line = "cd '" + shop.folder().string() + "' && '" + PULSEWRIGHT_PROGRAM + "' " + verb +
                             " >/dev/full 2>'" + said + "' </dev/null";
    const int status = std::system(line.c_str());
    EXPECT_EQ(WEXITSTATUS(status), 4) << verb;
    EXPECT_TRUE(has(shop.read("said"), "standard output")) << verb;
  }
}

}  // namespace
}  // namespace pulsewright
