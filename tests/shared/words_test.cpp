#include "shared/words.hpp"

#include <gtest/gtest.h>

namespace pulsewright {
namespace {

TEST(Words, TheNearestWordIsTheOneMeant) {
  const std::vector<std::string> keys{"bore", "stroke", "length", "bends", "bend_radius", "boost_gauge"};
  EXPECT_EQ(nearest_word("broe", keys), "bore");
  EXPECT_EQ(nearest_word("lenght", keys), "length");
  EXPECT_EQ(nearest_word("Stroke", keys), "stroke");
  EXPECT_EQ(nearest_word("boost", keys), "boost_gauge");
  EXPECT_EQ(nearest_word("xyzzy", keys), "");
  EXPECT_EQ(nearest_word(std::string(100000, 'a'), keys), "");
}

TEST(Words, EditDistanceCountsLettersAndSwaps) {
  EXPECT_EQ(edit_distance("", "abc"), 3U);
  EXPECT_EQ(edit_distance("bore", "bore"), 0U);
  EXPECT_EQ(edit_distance("broe", "bore"), 1U);
  EXPECT_EQ(edit_distance("lift", "left"), 1U);
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3U);
}

TEST(Words, ALongTextIsCutBetweenLetters) {
  const std::string text = in_quotes(std::string(100, 'a') + "\xC3\xBC" + std::string(27, 'b'));
  EXPECT_LT(text.size(), 70U);
  EXPECT_EQ(in_quotes("a\nb"), "'a?b'");
}

TEST(Words, ListsReadLikeASentence) {
  EXPECT_EQ(listed({"a"}), "a");
  EXPECT_EQ(listed({"a", "b"}), "a or b");
  EXPECT_EQ(listed({"a", "b", "c"}, "and"), "a, b and c");
}

}  // namespace
}  // namespace pulsewright
