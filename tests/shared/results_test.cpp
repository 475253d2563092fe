#include "shared/results.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <random>

#include "tests/shared/fault.hpp"
#include "tests/shared/scratch.hpp"

namespace pulsewright {
namespace {

std::vector<double> ramp(std::size_t n) {
  std::vector<double> values(n);
  for (std::size_t i = 0; i < n; ++i) values[i] = 0.1 * static_cast<double>(i);
  return values;
}

TEST(Results, WhatIsWrittenReadsBackToTheBit) {
  const ScratchFolder folder;
  const std::vector<double> series = ramp(1441), field = ramp(300 * 500);
  {
    ResultWriter out(folder / "run.h5", false);
    out.attribute("", "version", "0.1.0");
    out.write_text("case", "title = \"Zündfolge\"\n");
    out.write("rpm_2500/turbine/pressure", series, "Pa");
    out.write("rpm_2500/ducts/primary 1/pressure", field, {300, 500}, "Pa");
    out.attribute("rpm_2500", "rpm", 2500);
    out.attribute("rpm_2500/turbine/pressure", "where", "entry");
    out.commit();
  }
  const ResultReader in(folder / "run.h5");
  EXPECT_EQ(in.attribute_text("", "version"), "0.1.0");
  EXPECT_EQ(in.text("case"), "title = \"Zündfolge\"\n");
  const ResultData pressure = in.read("rpm_2500/turbine/pressure");
  EXPECT_EQ(pressure.values, series);
  EXPECT_EQ(pressure.unit, "Pa");
  const ResultData space_time = in.read("rpm_2500/ducts/primary 1/pressure");
  EXPECT_EQ(space_time.shape, (std::vector<std::size_t>{300, 500}));
  EXPECT_EQ(space_time.values, field);
  EXPECT_EQ(in.attribute_number("rpm_2500", "rpm"), 2500);
  EXPECT_EQ(in.attribute_text("rpm_2500/turbine/pressure", "where"), "entry");
}

TEST(Results, GroupsAreListed) {
  const ScratchFolder folder;
  {
    ResultWriter out(folder / "run.h5", false);
    out.write("b/two", ramp(3), "K");
    out.write("a/one", ramp(3), "K");
    out.write("a/none", std::vector<double>{}, "K");
    out.commit();
  }
  const ResultReader in(folder / "run.h5");
  EXPECT_EQ(in.list(""), (std::vector<std::string>{"a", "b"}));
  EXPECT_EQ(in.list("a"), (std::vector<std::string>{"none", "one"}));
  EXPECT_TRUE(in.is_group("a"));
  EXPECT_FALSE(in.is_group("a/one"));
  EXPECT_FALSE(in.has("a/three"));
  EXPECT_FALSE(in.has("c/one"));
  EXPECT_TRUE(in.read("a/none").values.empty());
}

TEST(Results, ANumberThatIsNotFiniteIsNeverWritten) {
  const ScratchFolder folder;
  ResultWriter out(folder / "run.h5", false);
  const std::vector<double> bad{1, std::numeric_limits<double>::quiet_NaN()};
  const Refusal refusal = refusal_of([&] { out.write("turbine/pressure", bad, "Pa"); });
  EXPECT_EQ(refusal.kind, ErrorKind::internal);
  EXPECT_TRUE(says(refusal.text, "value 1 of 'turbine/pressure' is nan"));
  EXPECT_EQ(refusal_of([&] { out.attribute("", "x", std::numeric_limits<double>::infinity()); }).kind,
            ErrorKind::internal);
  EXPECT_EQ(refusal_of([&] { out.write("x", ramp(5), {2, 2}, "Pa"); }).kind, ErrorKind::internal);
}

TEST(Results, NothingIsLeftWithoutCommit) {
  const ScratchFolder folder;
  {
    ResultWriter out(folder / "run.h5", false);
    out.write("x", ramp(10), "Pa");
  }
  EXPECT_EQ(folder.count(), 0U);
}

TEST(Results, AnExistingFileStaysUnlessForced) {
  const ScratchFolder folder;
  const auto path = folder.write("run.h5", "mine");
  EXPECT_EQ(refusal_of([&] { ResultWriter(path, false); }).kind, ErrorKind::file);
  EXPECT_EQ(folder.read("run.h5"), "mine");
  ResultWriter out(path, true);
  out.write("x", ramp(10), "Pa");
  EXPECT_EQ(folder.read("run.h5"), "mine") << "before commit";
  out.commit();
  EXPECT_EQ(ResultReader(path).read("x").values, ramp(10));
}

TEST(Results, WritingOneNameTwiceIsAMistakeOfOurs) {
  const ScratchFolder folder;
  ResultWriter out(folder / "run.h5", false);
  out.write("x", ramp(3), "Pa");
  EXPECT_EQ(refusal_of([&] { out.write("x", ramp(3), "Pa"); }).kind, ErrorKind::internal);
}

TEST(Results, MissingForeignAndDamagedFilesAreRefused) {
  const ScratchFolder folder;
  EXPECT_TRUE(says(refusal_of([&] { ResultReader(folder / "gone.h5"); }).text, "does not exist"));
  EXPECT_TRUE(says(refusal_of([&] { ResultReader(folder.write("x.h5", "text")); }).text, "not a result file"));
  EXPECT_TRUE(says(refusal_of([&] { ResultReader(folder.write("e.h5", "")); }).text, "not a result file"));
  EXPECT_EQ(refusal_of([&] { ResultReader(folder / ""); }).kind, ErrorKind::file);
}

TEST(Results, AFlippedByteIsNoticed) {
  const ScratchFolder folder;
  {
    ResultWriter out(folder / "run.h5", false);
    std::mt19937 random(1);  // noise does not compress: nearly all of the file is data
    std::vector<double> noise(20000);
    for (double& value : noise) value = std::uniform_real_distribution<>(0, 1)(random);
    out.write("x", noise, "Pa");
    out.commit();
  }
  std::string bytes = folder.read("run.h5");
  bytes[bytes.size() / 2] = static_cast<char>(bytes[bytes.size() / 2] ^ 0x10);
  const ResultReader in(folder.write("bad.h5", bytes));
  EXPECT_EQ(refusal_of([&] { in.read("x"); }).kind, ErrorKind::file);
}

TEST(Results, WhatIsNotThereIsRefusedByName) {
  const ScratchFolder folder;
  {
    ResultWriter out(folder / "run.h5", false);
    out.write("x", ramp(3), "Pa");
    out.write_text("words", "");
    out.commit();
  }
  const ResultReader in(folder / "run.h5");
  EXPECT_TRUE(says(refusal_of([&] { in.read("turbine/pressure"); }).text, "'turbine/pressure'"));
  EXPECT_EQ(refusal_of([&] { in.text("x"); }).kind, ErrorKind::file);
  EXPECT_EQ(refusal_of([&] { in.read("words"); }).kind, ErrorKind::file);
  EXPECT_EQ(refusal_of([&] { in.attribute_number("x", "rpm"); }).kind, ErrorKind::file);
  EXPECT_EQ(refusal_of([&] { in.attribute_number("x", "units"); }).kind, ErrorKind::file);
  EXPECT_EQ(refusal_of([&] { in.list("x"); }).kind, ErrorKind::file);
  EXPECT_EQ(in.text("words"), "");
}

TEST(Results, AnyNameOfACaseFitsIntoAPath) {
  const ScratchFolder folder;
  const std::vector<std::string> names{"primary 1", "a/b", "a%2Fb", ".", "..", "Rohr ü", "x.y"};
  {
    ResultWriter out(folder / "run.h5", false);
    for (const std::string& name : names) out.write("ducts/" + path_word(name) + "/p", ramp(3), "Pa");
    out.commit();
  }
  const ResultReader in(folder / "run.h5");
  EXPECT_EQ(in.list("ducts").size(), names.size());
  for (const std::string& name : names) EXPECT_EQ(in.read("ducts/" + path_word(name) + "/p").values.size(), 3U);
}

}  // namespace
}  // namespace pulsewright
