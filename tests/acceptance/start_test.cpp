// The verb start from outside: by options, by questions on a terminal, by questions from a pipe.

#include <gtest/gtest.h>
#include <pty.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <nlohmann/json.hpp>

#include "tests/acceptance/program.hpp"

namespace pulsewright {
namespace {

const std::vector<std::string> five = {"start", "--cylinders", "4",    "--bore",  "86 mm",  "--stroke",
                                       "86 mm", "--redline",   "7500", "--boost", "1.0 bar"};

std::vector<std::string> with(std::vector<std::string> words, const std::vector<std::string>& more) {
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

bool has(const std::string& text, const std::string& word) { return text.find(word) != std::string::npos; }

/// The program on a terminal of its own, with these keys pressed; what the screen shows comes back in `out`.
Outcome on_a_terminal(const Workshop& shop, const std::vector<std::string>& arguments, const std::string& keys) {
  int screen = -1;
  const pid_t pid = forkpty(&screen, nullptr, nullptr, nullptr);
  if (pid == 0) {
    std::vector<char*> argv{const_cast<char*>(PULSEWRIGHT_PROGRAM)};
    for (const std::string& a : arguments) argv.push_back(const_cast<char*>(a.c_str()));
    argv.push_back(nullptr);
    if (chdir(shop.folder().c_str()) != 0) _exit(120);
    execv(PULSEWRIGHT_PROGRAM, argv.data());
    _exit(121);
  }
  Outcome o{-1, {}, {}};
  std::size_t pressed = 0, prompts = 0;
  char piece[4096];
  for (ssize_t n = 0; (n = read(screen, piece, sizeof piece)) > 0;) {
    o.out.append(piece, static_cast<std::size_t>(n));
    for (; o.out.find("]: ", prompts) != std::string::npos; prompts = o.out.find("]: ", prompts) + 3)
      if (pressed < keys.size() && write(screen, &keys[pressed++], 1) != 1) break;
  }
  int status = 0;
  waitpid(pid, &status, 0);
  close(screen);
  o.exit_code = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  return o;
}

TEST(Start, FromFiveFiguresGivesACaseThatChecksAndRuns) {
  const Workshop shop;
  const Outcome o = shop.run(with(five, {"--out", "mine.toml"}));
  ASSERT_EQ(o.exit_code, 0) << o.err;
  for (const char* word : {"blowdown", "NPS ", "m/s", "pulsewright run mine.toml"})
    EXPECT_TRUE(has(o.out, word)) << word;
  EXPECT_EQ(shop.run({"check", "mine.toml"}).exit_code, 0);
  const Outcome ran = shop.run({"run", "mine.toml", "--rpm", "4000", "--quick", "--json"});
  ASSERT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_TRUE(nlohmann::json::parse(ran.out)["speeds"][0]["settled"].get<bool>());
}

TEST(Start, OnATerminalEnterTenTimesGivesACaseThatRuns) {
  const Workshop shop;
  const Outcome o = on_a_terminal(shop, {"start", "--out", "mine.toml"}, "\n\n\n\n\n\n\n\n\n\n");
  ASSERT_EQ(o.exit_code, 0) << o.out;
  EXPECT_TRUE(has(o.out, "10/10"));
  EXPECT_EQ(shop.run({"run", "mine.toml", "--rpm", "4000", "--quick"}).exit_code, 0);
}

TEST(Start, OnATerminalTheEndOfInputStopsAndNothingIsWritten) {
  const Workshop shop;
  const auto before = shop.files();
  const Outcome o = on_a_terminal(shop, {"start", "--out", "mine.toml"}, "\n\n\x04");
  EXPECT_EQ(o.exit_code, 130) << o.out;
  EXPECT_TRUE(has(o.out, "nothing was written"));
  EXPECT_EQ(shop.files(), before);
}

TEST(Start, OnATerminalOneInterruptStops) {
  const Workshop shop;
  const auto before = shop.files();
  EXPECT_EQ(on_a_terminal(shop, {"start", "--out", "mine.toml"}, "\n\x03").exit_code, 128 + SIGINT);
  EXPECT_EQ(shop.files(), before);
}

TEST(Start, OffATerminalNobodyIsAsked) {
  const Outcome o = Workshop().run({"start"});
  EXPECT_EQ(o.exit_code, 2);
  EXPECT_TRUE(has(o.err, "--cylinders, --bore, --stroke, --redline and --boost")) << o.err;
  EXPECT_TRUE(has(o.err, "--ask")) << o.err;
  EXPECT_TRUE(o.out.empty());
}

// Standard input is empty here: the first question finds its end.
TEST(Start, AskedForQuestionsStopAtTheEndOfAPipe) {
  const Workshop shop;
  const auto before = shop.files();
  const Outcome o = shop.run({"start", "--ask", "--out", "mine.toml"});
  EXPECT_EQ(o.exit_code, 130);
  EXPECT_TRUE(has(o.err, "nothing was written")) << o.err;
  EXPECT_EQ(shop.files(), before);
}

TEST(Start, WithoutAFileOnlyTheCaseGoesToStandardOutput) {
  const Workshop shop;
  const Outcome o = shop.run(five);
  ASSERT_EQ(o.exit_code, 0) << o.err;
  EXPECT_FALSE(has(o.out, "m/s is"));
  EXPECT_TRUE(has(o.err, "blowdown"));
  shop.write("mine.toml", o.out);
  EXPECT_EQ(shop.run({"check", "mine.toml"}).exit_code, 0);
}

TEST(Start, NeverOverwritesWithoutForce) {
  const Workshop shop;
  shop.write("mine.toml", "mine");
  EXPECT_EQ(shop.run(with(five, {"--out", "mine.toml"})).exit_code, 4);
  EXPECT_EQ(shop.read("mine.toml"), "mine");
  EXPECT_EQ(shop.run(with(five, {"--out", "mine.toml", "--force"})).exit_code, 0);
}

TEST(Start, ArrangementAndCountMustAgree) {
  const Workshop shop;
  const Outcome o = shop.run(with(five, {"--arrangement", "boxer 6"}));
  EXPECT_EQ(o.exit_code, 2);
  EXPECT_TRUE(has(o.err, "boxer 6") && has(o.err, "--cylinders")) << o.err;
  EXPECT_EQ(shop.run(with(five, {"--arrangement", "boxer 4"})).exit_code, 0);
}

TEST(Start, ABadOptionIsToldAndNothingIsWritten) {
  const Workshop shop;
  const auto before = shop.files();
  const Outcome o = shop.run(with(five, {"--manifold", "3-3", "--out", "mine.toml"}));
  EXPECT_EQ(o.exit_code, 2);
  EXPECT_TRUE(has(o.err, "--manifold") && has(o.err, "4-2-1")) << o.err;
  EXPECT_EQ(shop.files(), before);
}

}  // namespace
}  // namespace pulsewright
