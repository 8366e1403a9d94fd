// SPDX-License-Identifier: MIT
// The plots in docs/methods/plots are what the core computes today, byte for byte.
// SEAMTURN_REDRAW=1 writes them anew; look at them before they are committed.
#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>
#include <set>

#include "docs/method_plots.hpp"
#include "repository.hpp"

namespace seamturn::tests {

namespace {

std::vector<NamedPlot> all_plots() {
  std::vector<NamedPlot> plots = preheat_plots();
  for (NamedPlot& plot : heat_plots()) plots.push_back(std::move(plot));
  for (NamedPlot& plot : shrinkage_plots()) plots.push_back(std::move(plot));
  for (NamedPlot& plot : cooling_plots()) plots.push_back(std::move(plot));
  for (NamedPlot& plot : tack_plots()) plots.push_back(std::move(plot));
  return plots;
}

const std::filesystem::path plot_folder = "docs/methods/plots";

}  // namespace

TEST_SUITE("docs/plots") {
  TEST_CASE("for every plot of the methods, law: the file is what the core computes") {
    const char* redraw = std::getenv("SEAMTURN_REDRAW");
    std::set<std::string> drawn;
    for (const NamedPlot& named : all_plots()) {
      INFO(named.file, ": SEAMTURN_REDRAW=1 build/bin/seamturn_tests -ts=docs/plots");
      const std::filesystem::path file = repository() / plot_folder / named.file;
      const std::string text = svg_text(named.plot);
      if (redraw != nullptr && std::string(redraw) == "1") {
        std::ofstream(file, std::ios::binary) << text;
      }
      CHECK(text.size() < 20000);
      CHECK((text_of(file) == text));
      CHECK(drawn.insert(named.file).second);
    }
    for (const auto& file : files_below(plot_folder.string(), {".svg"})) {
      INFO(file.string());
      CHECK(drawn.count(file.filename().string()) == 1);
    }
  }

  TEST_CASE("for every plot, law: a page shows it") {
    std::string pages;
    for (const auto& page : files_below("docs/methods", {".md"})) {
      pages += text_of(repository() / page);
    }
    for (const NamedPlot& named : all_plots()) {
      INFO(named.file);
      CHECK(pages.find("(plots/" + named.file + ")") != std::string::npos);
    }
  }

  TEST_CASE("given a line from corner to corner, closed-form: it ends in the corners") {
    // closed-form: the drawing area is 56 to 400 across and 250 up to 30.
    Plot plot{"t", {"x", {0.0, 10.0}}, {"y", {0.0, 2.0}}, std::pair(5.0, 10.0), {}};
    plot.curves.push_back(curve_of("a<b", 0.0, 10.0, 1, [](double x) { return x / 5.0; }));
    const std::string text = svg_text(plot);
    CHECK(text.find("points=\"56.0,250.0 400.0,30.0\"") != std::string::npos);
    CHECK(text.find("<rect x=\"228.0\" y=\"30.0\" width=\"172.0\"") != std::string::npos);
    CHECK(text.find("a&lt;b") != std::string::npos);
    plot.curves.front().points.emplace_back(10.5, 1.0);
    CHECK_THROWS_AS((void)svg_text(plot), base::ContractViolation);
  }

  TEST_CASE("given a table's edge, closed-form: the lower step ends with it") {
    const Curve stairs =
        stairs_of("s", 0.0, {2.0, 4.0}, [](double x) { return x <= 2.0 ? 1.0 : 3.0; });
    CHECK(stairs.points ==
          std::vector<std::pair<double, double>>{{0.0, 1.0}, {2.0, 1.0}, {2.0, 3.0}, {4.0, 3.0}});
  }
}

}  // namespace seamturn::tests
