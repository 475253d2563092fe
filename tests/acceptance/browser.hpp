#pragma once
// A Chromium without a window, where one is installed: what a page looks like to the eye, counted in pixels of its own
// screenshot.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace pulsewright {

/// A chart of the page as it was drawn.
struct ChartSeen {
  std::string title;
  std::vector<double> drawn;  // for each line: share of the pixel columns between its ends that hold its ink
  double letter_px;           // height of its letters on the screen
  bool letters_clear;         // no two texts stand on each other, none runs out of the chart
};

struct PageSeen {
  int page_width;  // what the page needs, pixels
  std::vector<ChartSeen> charts;
};

class Browser {
 public:
  /// none where no Chromium is on the PATH.
  static std::optional<Browser> find();

  /// What the page says to the console while it opens from disk: errors, and every request that its content policy stops.
  std::string console(const std::filesystem::path& page) const;

  /// The page at this width; writes its helper files beside it.
  PageSeen look(const std::filesystem::path& page, int width) const;

 private:
  explicit Browser(std::string program) : program_(std::move(program)) {}
  void run(const std::string& flags, const std::filesystem::path& page) const;

  std::string program_;
};

}  // namespace pulsewright
