#include "shared/text_table.hpp"

#include <gtest/gtest.h>

#include "shared/version.hpp"
#include "tests/shared/fault.hpp"

namespace pulsewright {
namespace {

using Align = TextTable::Align;

TEST(TextTable, AlignsWordsLeftAndNumbersRight) {
  TextTable table({{"layout"}, {"bar", Align::right}});
  table.add_row({"equal", "1.95"});
  table.add_row({"short unequal", "12.1"});
  EXPECT_EQ(table.text(),
            "layout          bar\n"
            "-------------  ----\n"
            "equal          1.95\n"
            "short unequal  12.1\n");
}

TEST(TextTable, CountsLettersNotBytes) {
  TextTable table({{"a"}, {"b"}});
  table.add_row({"Rohr ü", "x"});
  table.add_row({"Rohr u", "x"});
  EXPECT_EQ(table.text(), "a       b\n------  -\nRohr ü  x\nRohr u  x\n");
}

TEST(TextTable, ShortRowsAndGapsLeaveNoBlanksAtLineEnds) {
  TextTable table({{"a"}, {"b"}});
  table.add_row({"x"});
  table.add_gap();
  table.add_row({"y", "z"});
  EXPECT_EQ(table.text(), "a  b\n-  -\nx\n\ny  z\n");
}

TEST(TextTable, NamesCannotBreakItsLines) {
  TextTable table({{"a"}});
  table.add_row({"x\n\x1b[2J"});
  EXPECT_EQ(table.text().find('\x1b'), std::string::npos);
  EXPECT_EQ(refusal_of([&] { table.add_row({"1", "2"}); }).kind, ErrorKind::internal);
}

TEST(Version, SaysProgramAndCompiler) {
  EXPECT_TRUE(says(std::string(program_version()), "."));
  EXPECT_TRUE(says(std::string(compiler_text()), "."));
}

}  // namespace
}  // namespace pulsewright
