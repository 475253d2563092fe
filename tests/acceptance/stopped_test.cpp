// Stopped half-way, or on a full disk: never half a file under the name that was asked for, nothing else in the way.

#include <gtest/gtest.h>
#include <signal.h>
#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <csignal>
#include <thread>

#include "tests/acceptance/program.hpp"

namespace pulsewright {
namespace {

const std::string rig = "01_shock_tube.toml", equal = "03_equal_primaries.toml", unequal = "04_short_unequal.toml";

std::function<void(int)> killing_after(int milliseconds, int signal) {
  return [=](int pid) {
    std::this_thread::sleep_for(std::chrono::milliseconds(milliseconds));
    kill(pid, signal);
  };
}

/// Runs with 1 mm cells take minutes: the signal, a second after the start, comes in their midst.
void expect_nothing_left(const std::vector<std::string>& arguments, int signal) {
  const Workshop shop;
  const auto before = shop.files();
  const Outcome o = shop.run(arguments, killing_after(1000, signal));
  EXPECT_EQ(o.exit_code, 130) << o.err;
  EXPECT_NE(o.err.find("nothing was written"), std::string::npos) << o.err;
  EXPECT_TRUE(o.out.empty());
  EXPECT_EQ(shop.files(), before);
}

TEST(Stopped, ARunLeavesNothingBehind) {
  for (const int signal : {SIGINT, SIGTERM})
    expect_nothing_left({"run", equal, "--cell", "1 mm", "--out", "long.h5", "--report", "long.html"}, signal);
}

TEST(Stopped, AComparisonLeavesNothingBehind) {
  for (const int signal : {SIGINT, SIGTERM})
    expect_nothing_left({"compare", equal, unequal, "--cell", "1 mm", "--out", "long.h5", "--report", "long.html"},
                        signal);
}

bool is_leftover(const std::string& name) { return name.starts_with(".") && name.ends_with(".part"); }

/// The rig takes some tenths of a second: killed sooner and later, also while it writes.
TEST(Stopped, KilledAtAnyMomentAFileIsWholeOrNotThere) {
  const Workshop shop;
  const auto before = shop.files();
  for (int after = 10; after < 400; after += 30) {
    shop.run({"run", rig, "--out", "tube.h5", "--force"}, killing_after(after, SIGKILL));
    for (const std::string& name : shop.files()) {
      if (name == "tube.h5")
        EXPECT_EQ(shop.run({"trace", name, "--along", "driven", "--when", "0.6ms"}).exit_code, 0) << after;
      else
        EXPECT_TRUE(std::ranges::count(before, name) == 1 || is_leftover(name)) << name;
    }
  }
  EXPECT_EQ(shop.run({"run", rig, "--out", "tube.h5", "--force"}).exit_code, 0);  // leftovers stand in nobody's way
}

/// No file grows beyond a limit meanwhile: what a full disk does to a writer, without one.
class LittleRoom {
 public:
  explicit LittleRoom(rlim_t bytes) : handler_(std::signal(SIGXFSZ, SIG_IGN)) {
    getrlimit(RLIMIT_FSIZE, &before_);
    const rlimit now{bytes, before_.rlim_max};
    setrlimit(RLIMIT_FSIZE, &now);
  }
  ~LittleRoom() {
    setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, handler_);
  }
  LittleRoom(const LittleRoom&) = delete;
  LittleRoom& operator=(const LittleRoom&) = delete;

 private:
  rlimit before_{};
  void (*handler_)(int);
};

Outcome run_with_little_room(const Workshop& shop, const std::vector<std::string>& arguments) {
  const LittleRoom room(8192);
  return shop.run(arguments);
}

TEST(FullDisk, OfAResultFileIsAFileFaultAndNothingIsLeft) {
  const Workshop shop;
  const auto before = shop.files();
  const Outcome o = run_with_little_room(shop, {"run", rig, "--out", "tube.h5"});
  EXPECT_EQ(o.exit_code, 4) << o.err;
  EXPECT_NE(o.err.find("tube.h5"), std::string::npos) << o.err;
  EXPECT_EQ(shop.files(), before);
}

TEST(FullDisk, OfAPageIsAFileFaultAndTheOldPageStays) {
  const Workshop shop;
  shop.write("page.html", "the old page");
  const auto before = shop.files();
  const Outcome o =
      run_with_little_room(shop, {"run", equal, "--rpm", "3000", "--quick", "--report", "page.html", "--force"});
  EXPECT_EQ(o.exit_code, 4) << o.err;
  EXPECT_NE(o.err.find("page.html"), std::string::npos) << o.err;
  EXPECT_EQ(shop.files(), before);
  EXPECT_EQ(shop.read("page.html"), "the old page");
}

}  // namespace
}  // namespace pulsewright
