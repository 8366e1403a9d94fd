// SPDX-License-Identifier: MIT
#include "seamturn/joint/start_stop.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/rounding.hpp"
#include "seamturn/geom/path.hpp"

namespace seamturn::joint {

namespace {

using base::rounding_mm;

class Mapper {
 public:
  Mapper(const StartStopRule& rule, const StartStopCourse& course) : rule_(rule), course_(course) {
    const WeldLength& asked = course.asked;
    before_mm_ = std::max(asked.run_on_mm, asked.end_return_mm);
    after_mm_ = std::max(asked.run_off_mm, asked.end_return_mm);
  }

  StartStopMap map(int layers) {
    for (int layer = 1; layer <= layers; ++layer) {
      LayerStops stops = course_.closed ? closed_layer() : open_layer(layer);
      stops.layer = layer;
      note(stops);
      map_.layers.push_back(stops);
    }
    tell();
    return std::move(map_);
  }

 private:
  /// From a to b along the seam, the shorter way round on a closed one.
  double apart_mm(double a_mm, double b_mm) const {
    return course_.closed ? geom::way_round_mm(a_mm, b_mm, course_.length_mm)
                          : std::abs(a_mm - b_mm);
  }

  double clear_of_corners_mm(double station_mm) const {
    double nearest_mm = std::numeric_limits<double>::infinity();
    for (const double corner_mm : course_.corners_mm) {
      nearest_mm = std::min(nearest_mm, apart_mm(station_mm, corner_mm));
    }
    return nearest_mm;
  }

  double wrapped(double station_mm) const {
    return geom::wrapped_station_mm(station_mm, course_.length_mm);
  }

  LayerStops closed_at(double start_mm) const {
    LayerStops stops;
    stops.start_mm = wrapped(start_mm);
    stops.stop_mm = wrapped(start_mm + course_.asked.overlap_mm);
    return stops;
  }

  /// How far short of the rule a layer falls; 0: keeps it.
  double missing_mm(const LayerStops& stops) const {
    const double clear_mm =
        std::min(clear_of_corners_mm(stops.start_mm), clear_of_corners_mm(stops.stop_mm));
    double missing = std::max(0.0, rule_.corner_clear_mm - clear_mm);
    if (!map_.layers.empty()) {
      const double off_mm = apart_mm(stops.stop_mm, map_.layers.back().stop_mm);
      missing += std::max(0.0, rule_.stagger_mm - off_mm);
    }
    return missing;
  }

  /// Stations worth trying: the nearest that a corner or the last stop lets through, and a grid.
  std::vector<double> candidates_mm() const {
    constexpr int grid = 720;
    std::vector<double> stations = {0.0};
    const auto beside = [&](double at_mm, double clear_mm) {
      for (const double shift_mm : {0.0, course_.asked.overlap_mm}) {
        stations.push_back(wrapped(at_mm + clear_mm - shift_mm));
        stations.push_back(wrapped(at_mm - clear_mm - shift_mm));
      }
    };
    for (const double corner_mm : course_.corners_mm) beside(corner_mm, rule_.corner_clear_mm);
    if (!map_.layers.empty()) beside(map_.layers.back().stop_mm, rule_.stagger_mm);
    for (int i = 1; i < grid; ++i) stations.push_back(course_.length_mm * i / grid);
    const double from_mm = map_.layers.empty() ? 0.0 : map_.layers.back().start_mm;
    std::stable_sort(stations.begin(), stations.end(), [&](double a, double b) {
      return wrapped(a - from_mm) < wrapped(b - from_mm);
    });
    return stations;
  }

  LayerStops closed_layer() const {
    std::optional<LayerStops> best;
    double least_mm = std::numeric_limits<double>::infinity();
    for (const double station_mm : candidates_mm()) {
      const LayerStops stops = closed_at(station_mm);
      const double missing = missing_mm(stops);
      if (missing < least_mm - rounding_mm) {
        least_mm = missing;
        best = stops;
      }
      if (least_mm <= rounding_mm) break;
    }
    return *best;
  }

  LayerStops open_layer(int layer) const {
    LayerStops stops;
    stops.reversed = rule_.stagger_mm > 0.0 && layer % 2 == 0;
    stops.start_mm = -before_mm_;
    stops.stop_mm = course_.length_mm + after_mm_;
    if (stops.reversed) std::swap(stops.start_mm, stops.stop_mm);
    return stops;
  }

  void note(const LayerStops& stops) {
    nearest_corner_mm_ = std::min({nearest_corner_mm_,
                                   clear_of_corners_mm(stops.start_mm),
                                   clear_of_corners_mm(stops.stop_mm)});
    if (map_.layers.empty()) return;
    nearest_stop_mm_ =
        std::min(nearest_stop_mm_, apart_mm(stops.stop_mm, map_.layers.back().stop_mm));
  }

  void tell() {
    const auto warn = [&](const char* code, const std::string& text) {
      map_.findings.push_back(base::Finding{base::Severity::warning, code, text, {}, {}});
    };
    if (nearest_corner_mm_ < rule_.corner_clear_mm - rounding_mm) {
      warn("joint.length.stop_at_corner",
           "a layer starts or stops " + base::digits_text(nearest_corner_mm_) +
               " mm from a corner; expected at least " + base::digits_text(rule_.corner_clear_mm) +
               " mm; give tabs or end returns as long as that, or ask for less");
    }
    if (nearest_stop_mm_ < rule_.stagger_mm - rounding_mm) {
      warn("joint.length.stops_close",
           "two layers stop " + base::digits_text(nearest_stop_mm_) +
               " mm from one another; expected at least " + base::digits_text(rule_.stagger_mm) +
               " mm; the seam is too short for that; ask for less");
    }
  }

  const StartStopRule& rule_;
  const StartStopCourse& course_;
  double before_mm_ = 0.0;
  double after_mm_ = 0.0;
  double nearest_corner_mm_ = std::numeric_limits<double>::infinity();
  double nearest_stop_mm_ = std::numeric_limits<double>::infinity();
  StartStopMap map_;
};

}  // namespace

StartStopCourse start_stop_course(const geom::Path& path,
                                  const WeldLength& asked,
                                  bool ends_at_corners) {
  StartStopCourse course;
  course.length_mm = geom::path_length_mm(path);
  course.closed = geom::is_closed(path);
  course.corners_mm = geom::corner_stations_mm(path);
  course.asked = asked;
  if (ends_at_corners && !course.closed) {
    course.corners_mm.insert(course.corners_mm.begin(), 0.0);
    course.corners_mm.push_back(course.length_mm);
  }
  return course;
}

StartStopMap start_stop_map(const StartStopRule& rule, const StartStopCourse& course, int layers) {
  SEAMTURN_REQUIRE(course.length_mm > 0.0 && layers >= 1, course.length_mm, layers);
  SEAMTURN_REQUIRE(
      rule.corner_clear_mm >= 0.0 && rule.stagger_mm >= 0.0, rule.corner_clear_mm, rule.stagger_mm);
  SEAMTURN_REQUIRE(course.asked.form != LengthForm::intermittent, course.asked.count);
  for (const double corner_mm : course.corners_mm) {
    SEAMTURN_REQUIRE(corner_mm >= 0.0 && corner_mm <= course.length_mm + rounding_mm, corner_mm);
  }
  return Mapper(rule, course).map(layers);
}

}  // namespace seamturn::joint
