// SPDX-License-Identifier: MIT
#include "stance_drawing/panel.hpp"

#include <algorithm>
#include <cmath>

namespace seamturn::stance_drawing {

svg::Point Panel::page(const Vec3& p_W) const {
  const svg::Point off = px_per_mm * (view.at(p_W) - centre_mm);
  const svg::Point middle = 0.5 * (paper.low + paper.high);
  return {middle.x + off.x, middle.y - off.y};
}

svg::Polygon Panel::page(const Line& line) const {
  svg::Polygon points;
  points.reserve(line.size());
  for (const Vec3& point : line) points.push_back(page(point));
  return points;
}

Line Panel::in_field(const Vec3& at, const Vec3& along) const {
  const svg::Point from = page(at);
  const svg::Point run = page(Vec3(at + along)) - from;
  double first = -1e9;
  double last = 1e9;
  const auto cut = [&](double slope, double low, double high) {
    if (std::abs(slope) < 1e-9) {
      if (low > 0.0 || high < 0.0) last = first;  // beside the field all along
      return;
    }
    first = std::max(first, std::min(low / slope, high / slope));
    last = std::min(last, std::max(low / slope, high / slope));
  };
  cut(run.x, field.low.x - from.x, field.high.x - from.x);
  cut(run.y, field.low.y - from.y, field.high.y - from.y);
  if (last <= first || last > 1e8) return {};
  return {at + first * along, at + last * along};
}

svg::Box seen_box(const View& view, const Line& places) {
  svg::Box box{view.at(places.front()), view.at(places.front())};
  for (const Vec3& place : places) box.include(view.at(place));
  return box;
}

double fitting_scale(const svg::Box& seen, const svg::Box& paper) {
  constexpr double edge_px = 34.0;  // torches reach beyond what they weld
  return std::min((paper.width() - 2.0 * edge_px) / std::max(seen.width(), 1.0),
                  (paper.height() - 2.0 * edge_px) / std::max(seen.height(), 1.0));
}

}  // namespace seamturn::stance_drawing
