#include "tests/acceptance/browser.hpp"

#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <stdexcept>

namespace pulsewright {
namespace {

constexpr int tallest_page = 9000;  // px; a page of one speed is shorter at every width that is tried

// Opened beside the page with leave to read files: finds every line of the page in an unseen frame, then counts its ink in the
// screenshot. A pixel is ink where its colour is nearer to the line's than half of what parts that from paper and letters.
constexpr const char* counter = R"(<!doctype html><body style="margin:0">
<iframe id=page src="PAGE" style="border:0;width:WIDTHpx;height:TALLpx"></iframe><img id=shot src="SHOT"><pre id=seen></pre><script>
onload = () => {
  const page = document.getElementById('page').contentDocument, shot = document.getElementById('shot');
  const canvas = Object.assign(document.createElement('canvas'), {width: shot.naturalWidth, height: shot.naturalHeight});
  const pen = canvas.getContext('2d');
  pen.drawImage(shot, 0, 0);
  const box = e => e.getBoundingClientRect();
  const drawn = line => {
    const r = box(line), ink = getComputedStyle(line).stroke.match(/\d+/g).map(Number), wide = Math.floor(r.width) - 2, high = Math.ceil(r.height) + 4;
    const d = pen.getImageData(Math.ceil(r.left) + 1, Math.floor(r.top) - 2, wide, high).data;
    let columns = 0;
    for (let x = 0; x < wide; ++x)
      for (let y = 0; y < high; ++y) {
        const k = 4 * (y * wide + x);
        if (Math.abs(d[k] - ink[0]) + Math.abs(d[k + 1] - ink[1]) + Math.abs(d[k + 2] - ink[2]) < 110) { ++columns; break; }
      }
    return columns / wide;
  };
  const apart = (a, b) => a.right <= b.left + 1 || b.right <= a.left + 1 || a.bottom <= b.top + 4 || b.bottom <= a.top + 4;
  const clear = svg => {
    const all = [...svg.querySelectorAll('text')].map(box), frame = box(svg);
    return all.every(t => t.left >= frame.left - 1 && t.right <= frame.right + 1) && all.every((a, i) => all.slice(i + 1).every(b => apart(a, b)));
  };
  const charts = [...page.querySelectorAll('svg.chart')].map(svg => ({
    title: svg.getAttribute('aria-label'), drawn: [...svg.querySelectorAll('polyline')].map(drawn), clear: clear(svg),
    letter: parseFloat(getComputedStyle(svg).fontSize) * box(svg).width / svg.viewBox.baseVal.width}));
  document.getElementById('seen').textContent = 'SEEN' + JSON.stringify({width: page.documentElement.scrollWidth, charts}) + 'END';
};
</script>)";

std::string slurp(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

std::string filled(std::string text, const std::string& mark, const std::string& value) {
  for (std::size_t at = text.find(mark); at != std::string::npos; at = text.find(mark, at + value.size()))
    text.replace(at, mark.size(), value);
  return text;
}

std::filesystem::path beside(const std::filesystem::path& page, const std::string& ending) {
  return page.string() + ending;
}

}  // namespace

std::optional<Browser> Browser::find() {
  std::istringstream folders(std::getenv("PATH") ? std::getenv("PATH") : "");
  for (std::string folder; std::getline(folders, folder, ':');)
    for (const char* name : {"chromium", "chromium-browser"})
      if (std::filesystem::exists(std::filesystem::path(folder) / name))
        return Browser((std::filesystem::path(folder) / name).string());
  return std::nullopt;
}

void Browser::run(const std::string& flags, const std::filesystem::path& page) const {
  const std::string profile = beside(page, ".profile"), out = beside(page, ".dom"), err = beside(page, ".err");
  const std::string command = "'" + program_ +
                              "' --headless=new --no-sandbox --disable-gpu --no-first-run "
                              "--disable-background-networking --disable-component-update" +
                              " --disable-sync --disable-dev-shm-usage --hide-scrollbars --force-device-scale-factor=1 "
                              "--host-resolver-rules='MAP * ~NOTFOUND'" +
                              " --virtual-time-budget=2000 --enable-logging=stderr --user-data-dir='" + profile + "' " +
                              flags + " 'file://" + page.string() + "' >'" + out + "' 2>'" + err + "' </dev/null";
  if (std::system(command.c_str()) != 0) throw std::runtime_error("the browser failed: " + slurp(err));
}

std::string Browser::console(const std::filesystem::path& page) const {
  run("--dump-dom", page);
  std::istringstream lines(slurp(beside(page, ".err")));
  std::string said;
  for (std::string line; std::getline(lines, line);)
    if (line.find("CONSOLE") != std::string::npos) said += line + '\n';
  return said;
}

PageSeen Browser::look(const std::filesystem::path& page, int width) const {
  const std::filesystem::path shot = beside(page, ".png"), helper = beside(page, ".counter.html");
  const std::string size = "--window-size=" + std::to_string(width) + "," + std::to_string(tallest_page);
  run(size + " --screenshot='" + shot.string() + "'", page);
  std::string text = filled(filled(counter, "PAGE", page.filename().string()), "SHOT", shot.filename().string());
  text = filled(filled(text, "WIDTH", std::to_string(width)), "TALL", std::to_string(tallest_page));
  std::ofstream(helper, std::ios::binary) << text;
  run("--allow-file-access-from-files --dump-dom " + size, helper);
  const std::string dom = slurp(beside(helper, ".dom"));
  const auto from = dom.find("SEEN{"), to = dom.find("}END", from);
  if (from == std::string::npos || to == std::string::npos)
    throw std::runtime_error("the page could not be counted: " + slurp(beside(helper, ".err")));
  const auto seen = nlohmann::json::parse(dom.substr(from + 4, to + 1 - from - 4));
  PageSeen result{seen["width"].get<int>(), {}};
  for (const auto& c : seen["charts"])
    result.charts.push_back({c["title"], c["drawn"].get<std::vector<double>>(), c["letter"], c["clear"]});
  return result;
}

}  // namespace pulsewright
