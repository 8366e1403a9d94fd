// SPDX-License-Identifier: MIT
#include "seamturn/joint/preparation_range.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"
#include "seamturn/base/rounding.hpp"

namespace seamturn::joint {

namespace {

using base::rounding_ratio;
constexpr std::array<std::string_view, 3> side_names = {"one", "two", "backing"};

/// A size of the joint with the limit it is held against.
struct Judged {
  const char* code;
  const char* name;
  const char* unit;
  std::optional<double> value;
  const RangeLimit& limit;
};

/// The largest permitted, of the fixed limit and the share of the thickness.
std::optional<double> largest_of(const RangeLimit& limit, double thickness_mm) {
  if (!limit.thickness_ratio) return limit.largest;
  const double share_mm = *limit.thickness_ratio * thickness_mm;
  return limit.largest ? std::min(*limit.largest, share_mm) : share_mm;
}

bool is_inside(double value, const RangeLimit& limit, double thickness_mm) {
  const double slack = rounding_ratio * std::max(1.0, std::abs(value));
  if (limit.least) {
    if (limit.above_least ? value <= *limit.least + slack : value < *limit.least - slack) {
      return false;
    }
  }
  const std::optional<double> largest = largest_of(limit, thickness_mm);
  return !largest || value <= *largest + slack;
}

std::string limit_text(const RangeLimit& limit, double thickness_mm, const std::string& unit) {
  const std::optional<double> largest = largest_of(limit, thickness_mm);
  const std::string low =
      limit.least ? base::digits_text(*limit.least) + " " + unit : std::string();
  const std::string high = largest ? base::digits_text(*largest) + " " + unit : std::string();
  if (low.empty()) return "at most " + high;
  if (limit.above_least) return "above " + low + (high.empty() ? "" : " and up to " + high);
  return high.empty() ? "at least " + low : low + " to " + high;
}

base::Finding outside(const Judged& judged, const PreparationRange& range, double thickness_mm) {
  return base::Finding{
      base::Severity::warning,
      judged.code,
      std::string(judged.name) + " " + base::digits_text(*judged.value) + " " + judged.unit +
          " lies outside row " + range.id + ": " +
          limit_text(judged.limit, thickness_mm, judged.unit) + " [" + range.source + ", " +
          std::string(base::status_name(judged.limit.status)) +
          "]. Take a size inside, another preparation, or prove it by a procedure test",
      {},
      {}};
}

void require_finite(const PreparationSizes& sizes) {
  SEAMTURN_REQUIRE(base::is_positive(sizes.thickness_mm), sizes.thickness_mm);
  for (const std::optional<double>& one : {sizes.gap_mm, sizes.root_face_mm, sizes.radius_mm}) {
    SEAMTURN_REQUIRE(!one || std::isfinite(*one), one.value_or(0.0));
  }
  SEAMTURN_REQUIRE(!sizes.angle || std::isfinite(sizes.angle->rad()), "angle");
}

void note_wrong_limit(std::string& wrong, const std::string& name, const RangeLimit& limit) {
  const auto add = [&](const std::string& text) {
    wrong += (wrong.empty() ? "" : "; ") + name + " " + text;
  };
  for (const auto& one : {limit.least, limit.largest, limit.thickness_ratio}) {
    if (one && !(base::is_amount(*one))) add("has a limit below 0 or none at all");
  }
  if (limit.least && limit.largest && *limit.least > *limit.largest) {
    add("has its least above its largest");
  }
  if (limit.above_least && !limit.least) add("is said to lie above a least that is missing");
}

/// Fewer sizes outside; of as many, the row that suits the thickness says more.
bool is_nearer(const std::vector<base::Finding>& one, const std::vector<base::Finding>& other) {
  if (one.size() != other.size()) return one.size() < other.size();
  const std::string thickness = "joint.range.thickness";
  return other.front().code == thickness && one.front().code != thickness;
}

bool binds(const RangeLimit& limit) {
  return limit.least || limit.largest || limit.thickness_ratio;
}

}  // namespace

std::string_view sides_name(RangeSides sides) {
  return side_names.at(static_cast<std::size_t>(sides));
}

std::optional<RangeSides> find_sides(std::string_view name) {
  for (std::size_t i = 0; i < side_names.size(); ++i) {
    if (side_names.at(i) == name) return static_cast<RangeSides>(i);
  }
  return std::nullopt;
}

std::vector<base::Finding> check_against_range(const PreparationSizes& sizes,
                                               const PreparationRange& range) {
  require_finite(sizes);
  const std::optional<double> angle_deg =
      sizes.angle ? std::optional<double>(sizes.angle->deg()) : std::nullopt;
  const Judged all[] = {
      {"joint.range.thickness", "thickness", "mm", sizes.thickness_mm, range.thickness},
      {"joint.range.angle", "angle", "deg", angle_deg, range.angle},
      {"joint.range.gap", "root gap", "mm", sizes.gap_mm, range.gap},
      {"joint.range.root_face", "root face", "mm", sizes.root_face_mm, range.root_face},
      {"joint.range.radius", "root radius", "mm", sizes.radius_mm, range.radius},
  };
  std::vector<base::Finding> findings;
  for (const Judged& judged : all) {
    if (!judged.value || is_inside(*judged.value, judged.limit, sizes.thickness_mm)) continue;
    findings.push_back(outside(judged, range, sizes.thickness_mm));
  }
  return findings;
}

std::vector<base::Finding> check_against_ranges(std::string_view preparation,
                                                RangeSides sides,
                                                const PreparationSizes& sizes,
                                                std::span<const PreparationRange> ranges,
                                                std::string_view joint) {
  std::optional<std::vector<base::Finding>> nearest;
  for (const PreparationRange& range : ranges) {
    if (range.preparation != preparation || range.sides != sides) continue;
    if (!joint.empty() && !range.joint.empty() && range.joint != joint) continue;
    std::vector<base::Finding> findings = check_against_range(sizes, range);
    if (findings.empty()) return findings;
    if (!nearest || is_nearer(findings, *nearest)) nearest = std::move(findings);
  }
  if (nearest) return *nearest;
  return {base::Finding{
      base::Severity::note,
      "joint.range.unknown",
      "no library row says which sizes suit " + std::string(preparation) + " welded from " +
          (sides == RangeSides::backing
               ? std::string("one side on backing")
               : std::string(sides_name(sides)) + (sides == RangeSides::one ? " side" : " sides")) +
          ": compare with the standard",
      {},
      {}}};
}

std::string wrong_with_range(const PreparationRange& range) {
  std::string wrong;
  note_wrong_limit(wrong, "thickness", range.thickness);
  note_wrong_limit(wrong, "angle", range.angle);
  note_wrong_limit(wrong, "gap", range.gap);
  note_wrong_limit(wrong, "root face", range.root_face);
  note_wrong_limit(wrong, "radius", range.radius);
  const bool any = binds(range.thickness) || binds(range.angle) || binds(range.gap) ||
                   binds(range.root_face) || binds(range.radius);
  if (!any) wrong += (wrong.empty() ? "" : "; ") + std::string("the row limits nothing");
  return wrong;
}

}  // namespace seamturn::joint
