// The page in a browser, as it comes from disk: silent, without a request, every line of every chart visible. Skipped where no
// Chromium is installed.

#include "tests/acceptance/browser.hpp"

#include <gtest/gtest.h>

#include "tests/acceptance/program.hpp"

namespace pulsewright {
namespace {

class BrowserPage : public testing::Test {
 protected:
  void SetUp() override {
    browser_ = Browser::find();
    if (!browser_) GTEST_SKIP() << "no Chromium on the PATH (Debian package chromium)";
    const Outcome o = shop_.run({"compare", "03_equal_primaries.toml", "04_short_unequal.toml", "--rpm", "4500",
                                 "--quick", "--report", "page.html"});
    ASSERT_EQ(o.exit_code, 0) << o.err;
  }

  std::filesystem::path page(const std::string& name = "page.html") const { return shop_.folder() / name; }

  /// The page with every `from` made `to`.
  std::filesystem::path altered(const std::string& from, const std::string& to) const {
    std::string text = shop_.read("page.html");
    for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
      text.replace(at, from.size(), to);
    shop_.write("altered.html", text);
    return page("altered.html");
  }

  const Browser& browser() const { return *browser_; }
  const Workshop& shop() const { return shop_; }

 private:
  Workshop shop_;
  std::optional<Browser> browser_;
};

// Columns of a drawn line that hold its ink. A solid line has all of them but a few that fall between pixels; of a dash of 6 and a
// gap of 3 at least the 6 ninths less what the other layout's line hides where they cross.
constexpr double least_solid = 0.95, least_dashed = 0.45;
constexpr double least_letters = 10.5;  // px: what a phone's own small print has

void expect_drawn(const PageSeen& seen, int width) {
  EXPECT_LE(seen.page_width, width) << "the page runs off the screen";
  EXPECT_EQ(seen.charts.size(), 6u);  // turbine, merge, four ports
  for (const ChartSeen& chart : seen.charts) {
    ASSERT_EQ(chart.drawn.size(), 2u) << chart.title;
    EXPECT_GE(chart.drawn[0], least_solid) << chart.title;
    EXPECT_GE(chart.drawn[1], least_dashed) << chart.title;
    EXPECT_GE(chart.letter_px, least_letters) << chart.title;
    EXPECT_TRUE(chart.letters_clear) << chart.title;
  }
}

TEST_F(BrowserPage, OpensFromDiskWithoutAWordOrARequest) {
  EXPECT_EQ(browser().console(page()), "");
  const std::string text = shop().read("page.html");
  for (const char* way_out : {"://", "src=", "href=", "url(", "@import"})
    EXPECT_EQ(text.find(way_out), std::string::npos) << way_out;
}

TEST_F(BrowserPage, StopsARequestThatSomebodyPutsIn) {
  EXPECT_NE(browser()
                .console(altered("</body>", "<img src=\"http://127.0.0.1:9/x.png\"></body>"))
                .find("Content Security Policy"),
            std::string::npos);
}

TEST_F(BrowserPage, ShowsEveryLineOnAWideScreen) { expect_drawn(browser().look(page(), 1440), 1440); }
TEST_F(BrowserPage, ShowsEveryLineOnAPhone) { expect_drawn(browser().look(page(), 390), 390); }

TEST_F(BrowserPage, ALineWithoutInkIsNoticed) {
  for (const ChartSeen& chart : browser().look(altered("stroke-width=\"2.1\"", "stroke-width=\"0\""), 1440).charts)
    EXPECT_LT(chart.drawn[0], 0.1) << chart.title;
}

}  // namespace
}  // namespace pulsewright
