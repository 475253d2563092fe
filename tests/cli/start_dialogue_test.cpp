// The ten questions: what is asked, what is understood, what is asked again.

#include "cli/start_dialogue.hpp"

#include <gtest/gtest.h>

#include <sstream>

namespace pulsewright {
namespace {

struct Asked {
  std::optional<StarterOptions> options;
  std::string said;
};

Asked asked(const std::string& typed, const StarterOptions& known = {}) {
  std::istringstream in(typed);
  std::ostringstream out;
  Asked a{ask_for_starter(in, out, known), {}};
  a.said = out.str();
  return a;
}

std::string lines(int count) { return std::string(static_cast<std::size_t>(count), '\n'); }

std::size_t count(const std::string& text, const std::string& word) {
  std::size_t n = 0;
  for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) ++n;
  return n;
}

TEST(StartDialogue, EnterTenTimesLeavesAllToBeAssumed) {
  const Asked a = asked(lines(10));
  ASSERT_TRUE(a.options.has_value());
  for (const StarterQuestion& q : starter_questions()) EXPECT_TRUE(((*a.options).*q.answer).empty()) << q.option;
  EXPECT_EQ(count(a.said, "/10 "), 10u);
  EXPECT_NO_THROW(make_starter(*a.options));
}

TEST(StartDialogue, NineAnswersAreNotEnough) {
  EXPECT_FALSE(asked(lines(9)).options.has_value());
  EXPECT_FALSE(asked("").options.has_value());
}

TEST(StartDialogue, EveryQuestionExplainsItselfAndShowsWhatEnterMeans) {
  std::string typed;
  for (int k = 0; k < 10; ++k) typed += "?\n\n";
  const Asked a = asked(typed);
  ASSERT_TRUE(a.options.has_value());
  for (const StarterQuestion& q : starter_questions()) {
    EXPECT_NE(a.said.find(q.explain), std::string::npos) << q.option;
    EXPECT_NE(a.said.find("[" + std::string(q.assumed) + "]"), std::string::npos) << q.option;
  }
}

TEST(StartDialogue, WhatStandsForEnterIsAGoodAnswer) {
  for (const StarterQuestion& q : starter_questions()) {
    if (q.assumed.find_first_of("0123456789") == std::string_view::npos && q.option != std::string_view("--fuel"))
      continue;  // a rule of the assumed table, in words
    StarterOptions o;
    o.*q.answer = q.assumed;
    EXPECT_NO_THROW(q.check(o)) << q.option;
  }
}

TEST(StartDialogue, EachAnswerKeepsItsOwnUnit) {
  const Asked a = asked("boxer 4\n3.386 in\n79 mm\n7200\n15 psi" + lines(6));
  ASSERT_TRUE(a.options.has_value());
  EXPECT_EQ(a.options->cylinders, "boxer 4");
  EXPECT_EQ(a.options->bore, "3.386 in");
  EXPECT_EQ(a.options->stroke, "79 mm");
  EXPECT_EQ(a.options->boost, "15 psi");
}

TEST(StartDialogue, ABadAnswerIsAskedAgainWithTheReason) {
  const Asked a = asked("4\n86\n86 kg\n86 mm" + lines(9));
  ASSERT_TRUE(a.options.has_value());
  EXPECT_EQ(a.options->bore, "86 mm");
  EXPECT_EQ(count(a.said, " 2/10 Bore"), 1u);
  EXPECT_EQ(count(a.said, "Bore [86 mm]: "), 3u);
  EXPECT_NE(a.said.find("unit"), std::string::npos) << a.said;
  EXPECT_NE(a.said.find("86 kg"), std::string::npos) << a.said;
}

TEST(StartDialogue, ALayoutIsHeldAgainstTheCylindersAnsweredBefore) {
  const Asked a = asked("inline 6" + lines(9) + "4-2-1\n3-3\n");
  ASSERT_TRUE(a.options.has_value());
  EXPECT_EQ(a.options->manifold, "3-3");
  EXPECT_NE(a.said.find("for 6: log, 4-1, divided or 3-3"), std::string::npos) << a.said;
}

TEST(StartDialogue, AsksOnlyWhatIsNotKnown) {
  StarterOptions known;
  known.bore = "86 mm";
  known.stroke = "86 mm";
  const Asked a = asked(lines(8), known);
  ASSERT_TRUE(a.options.has_value());
  EXPECT_EQ(a.options->bore, "86 mm");
  EXPECT_EQ(count(a.said, "Bore"), 0u);
  EXPECT_NE(a.said.find("8/8 "), std::string::npos);
}

TEST(StartDialogue, CommandsForTheTerminalInAnAnswerAreNotEchoed) {
  const Asked a = asked("4\n\x1b[2J86 mm\n" + lines(9));
  EXPECT_EQ(a.said.find('\x1b'), std::string::npos);
}

TEST(StartDialogue, CarriageReturnsAndBlanksRoundAnAnswerAreNothing) {
  const Asked a = asked("4\r\n  86 mm \r\n\r\n" + lines(7));
  ASSERT_TRUE(a.options.has_value());
  EXPECT_EQ(a.options->bore, "86 mm");
}

}  // namespace
}  // namespace pulsewright
