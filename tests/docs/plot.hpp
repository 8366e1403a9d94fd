// SPDX-License-Identifier: MIT
// Plain line plots for docs/methods: axes with units, the range of a method shaded, curves named at
// their right end. Text in, text out; the same bytes each time.
#pragma once

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::tests {

struct Axis {
  std::string label;          ///< with the unit
  std::vector<double> ticks;  ///< first and last are the ends
  bool logarithmic = false;
};

struct Curve {
  std::string name;
  std::vector<std::pair<double, double>> points;
  bool dashed = false;
};

struct Plot {
  std::string title;
  Axis x, y;
  std::optional<std::pair<double, double>> range;  ///< shaded along x
  std::vector<Curve> curves;
};

/// y over x at equal steps (equal ratios on a logarithmic axis).
inline Curve curve_of(const std::string& name,
                      double from,
                      double to,
                      int steps,
                      const std::function<double(double)>& y,
                      bool logarithmic = false) {
  Curve curve{name, {}, false};
  for (int i = 0; i <= steps; ++i) {
    const double share = static_cast<double>(i) / steps;
    const double x = logarithmic ? from * std::pow(to / from, share) : from + (to - from) * share;
    curve.points.emplace_back(x, y(x));
  }
  return curve;
}

/// A table over x: flat up to each edge (the edge belongs to the lower step), then up or down.
inline Curve stairs_of(const std::string& name,
                       double from,
                       const std::vector<double>& edges,
                       const std::function<double(double)>& y) {
  Curve curve{name, {}, false};
  double left = from;
  for (const double edge : edges) {
    const double inside = (left + edge) / 2.0;
    curve.points.emplace_back(left, y(inside));
    curve.points.emplace_back(edge, y(inside));
    left = edge;
  }
  return curve;
}

namespace plot_detail {

constexpr double left = 56.0, right = 400.0, top = 30.0, bottom = 250.0;
constexpr double width = 560.0, height = 296.0;
constexpr const char* colours[] = {"#333", "#357", "#a33", "#383", "#863", "#636"};

inline double share(const Axis& axis, double value) {
  const double first = axis.ticks.front(), last = axis.ticks.back();
  const double at = axis.logarithmic ? std::log(value / first) / std::log(last / first)
                                     : (value - first) / (last - first);
  SEAMTURN_REQUIRE(at > -1e-9 && at < 1.0 + 1e-9, axis.label, value);
  return at;
}
inline std::string px(double value) {
  return base::fixed_text(value, 1);
}
inline double across(const Plot& plot, double x) {
  return left + (right - left) * share(plot.x, x);
}
inline double up(const Plot& plot, double y) {
  return bottom - (bottom - top) * share(plot.y, y);
}

inline std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '<') {
      out += "&lt;";
    } else if (c == '>') {
      out += "&gt;";
    } else if (c == '&') {
      out += "&amp;";
    } else {
      out += c;
    }
  }
  return out;
}

inline std::string text_at(double x,
                           double y,
                           const std::string& attributes,
                           const std::string& t) {
  return "<text x=\"" + px(x) + "\" y=\"" + px(y) + "\" " + attributes + ">" + escaped(t) +
         "</text>\n";
}

inline std::string axes(const Plot& plot) {
  std::string grid, words;
  for (const double tick : plot.x.ticks) {
    const std::string x = px(across(plot, tick));
    grid += "M" + x + "," + px(top) + "V" + px(bottom);
    words +=
        text_at(across(plot, tick), bottom + 15, "text-anchor=\"middle\"", base::digits_text(tick));
  }
  for (const double tick : plot.y.ticks) {
    const std::string y = px(up(plot, tick));
    grid += "M" + px(left) + "," + y + "H" + px(right);
    words += text_at(left - 5, up(plot, tick) + 4, "text-anchor=\"end\"", base::digits_text(tick));
  }
  words += text_at((left + right) / 2, bottom + 33, "text-anchor=\"middle\"", plot.x.label);
  words += text_at(left - 40, top - 8, "text-anchor=\"start\"", plot.y.label);
  return "<path d=\"" + grid +
         "\" fill=\"none\" stroke=\"#ccc\" stroke-width=\"0.6\"/>\n<path d=\"M" + px(left) + "," +
         px(top) + "V" + px(bottom) + "H" + px(right) + "\" fill=\"none\" stroke=\"#333\"/>\n" +
         words;
}

inline std::string shaded(const Plot& plot) {
  if (!plot.range) return {};
  const double from = across(plot, plot.range->first), to = across(plot, plot.range->second);
  return "<rect x=\"" + px(from) + "\" y=\"" + px(top) + "\" width=\"" + px(to - from) +
         "\" height=\"" + px(bottom - top) + "\" fill=\"#eee\"/>\n" +
         text_at((from + to) / 2, top + 11, "text-anchor=\"middle\" fill=\"#777\"", "range");
}

/// Names stand at the right, beside the ends of their curves, never on top of one another.
inline std::vector<double> name_heights(const Plot& plot) {
  constexpr double line = 13.0;
  std::vector<std::size_t> order(plot.curves.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  const auto end = [&plot](std::size_t i) { return up(plot, plot.curves[i].points.back().second); };
  std::stable_sort(
      order.begin(), order.end(), [&end](std::size_t a, std::size_t b) { return end(a) < end(b); });
  std::vector<double> heights(order.size());
  double lowest = top - line;
  for (const std::size_t i : order) lowest = heights[i] = std::max(end(i), lowest + line);
  return heights;
}

}  // namespace plot_detail

inline std::string svg_text(const Plot& plot) {
  using namespace plot_detail;
  std::string out =
      "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + px(width) + " " + px(height) +
      "\" font-family=\"sans-serif\" font-size=\"11\" role=\"img\">\n<title>" +
      escaped(plot.title) + "</title>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n";
  out += shaded(plot) + axes(plot);
  const std::vector<double> heights = name_heights(plot);
  for (std::size_t i = 0; i < plot.curves.size(); ++i) {
    const Curve& curve = plot.curves[i];
    const std::string colour = colours[i % std::size(colours)];
    std::string line;
    for (const auto& [x, y] : curve.points) {
      line += (line.empty() ? "" : " ") + px(across(plot, x)) + "," + px(up(plot, y));
    }
    out += "<polyline points=\"" + line + "\" fill=\"none\" stroke=\"" + colour +
           "\" stroke-width=\"1.5\"" + (curve.dashed ? " stroke-dasharray=\"5 3\"" : "") + "/>\n";
    const double end = across(plot, curve.points.back().first);
    out += text_at(std::max(end, right) + 6, heights[i] + 4, "fill=\"" + colour + "\"", curve.name);
  }
  return out + "</svg>\n";
}

}  // namespace seamturn::tests
