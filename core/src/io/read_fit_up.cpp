// SPDX-License-Identifier: MIT
// Rows of a library about edges as they come: fit-up tolerances and ranges of preparations.
#include "detail_drafts.hpp"
#include "detail_utf8.hpp"

namespace seamturn::io::detail {

namespace {

constexpr std::array<std::string_view, 3> sides_words = {"one", "two", "backing"};
constexpr std::array<std::string_view, 4> type_words = {"butt", "tee", "corner", "lap"};

std::string text_of_type(AttributeReader& reader) {
  const auto type = reader.find_word("joint", type_words);
  return type ? std::string(type_words.at(*type)) : std::string();
}

/// Attributes that limit one size of a range.
struct LimitWords {
  MarkedName least;
  MarkedName largest;
  MarkedName above;
  MarkedName share;
  MarkedName status;
};
constexpr LimitWords thickness_words{"thickness-min",
                                     "thickness-max",
                                     "thickness-above",
                                     "thickness-max-of-thickness",
                                     "thickness-status"};
constexpr LimitWords angle_words{
    "angle-min", "angle-max", "angle-above", "angle-max-of-thickness", "angle-status"};
constexpr LimitWords gap_words{
    "gap-min", "gap-max", "gap-above", "gap-max-of-thickness", "gap-status"};
constexpr LimitWords root_face_words{"root-face-min",
                                     "root-face-max",
                                     "root-face-above",
                                     "root-face-max-of-thickness",
                                     "root-face-status"};
constexpr LimitWords radius_words{
    "radius-min", "radius-max", "radius-above", "radius-max-of-thickness", "radius-status"};

/// Of a limit that states no status of its own the row's counts: not known yet.
struct LimitDraft {
  joint::RangeLimit limit;
  bool has_status = false;

  [[nodiscard]] joint::RangeLimit in_row(base::Status row_status) const {
    joint::RangeLimit whole = limit;
    if (!has_status) whole.status = row_status;
    return whole;
  }
};

LimitDraft read_limit(AttributeReader& reader, const LimitWords& words, const Range& range) {
  const bool angle = range.dimension == base::Dimension::angle;
  const auto find = [&](MarkedName name) -> std::optional<double> {
    const std::optional<double> value = reader.find_quantity(name, range);
    if (!value || !angle) return value;
    return base::Angle::rad(*value).deg();
  };
  LimitDraft draft;
  joint::RangeLimit& limit = draft.limit;
  limit.least = find(words.least);
  limit.largest = find(words.largest);
  if (const std::optional<double> above = find(words.above)) {
    limit.least = above;
    limit.above_least = true;
  }
  limit.thickness_ratio = reader.find_quantity(words.share, ranges::share_of_thickness);
  draft.has_status = reader.has(words.status);
  if (draft.has_status) limit.status = reader.status(words.status);
  return draft;
}

}  // namespace

void read_fit_up(FileContext& context, const Element& element, planner::Library& library) {
  AttributeReader reader(context, element);
  fitup::Tolerances& row = library.fit_ups.emplace_back();
  row.id = reader.id("id");
  row.gap_minus_mm = reader.quantity("gap-minus", ranges::gap);
  row.gap_plus_mm = reader.quantity("gap-plus", ranges::gap);
  row.root_face_minus_mm = reader.quantity("root-face-minus", ranges::gap);
  row.root_face_plus_mm = reader.quantity("root-face-plus", ranges::gap);
  row.angle_minus = base::Angle::rad(reader.quantity("angle-minus", ranges::tolerance_angle));
  row.angle_plus = base::Angle::rad(reader.quantity("angle-plus", ranges::tolerance_angle));
  row.size_minus_mm = reader.quantity("size-minus", ranges::gap);
  row.size_plus_mm = reader.quantity("size-plus", ranges::gap);
  row.gap_stop_mm = reader.find_quantity("gap-stop", ranges::weld_size);
  row.status = reader.status("status");
  row.source = reader.text("source");
  const std::string key = "fit-up/" + row.id;
  if (const std::optional<base::Place> first = library.places.find(key); first && !row.id.empty()) {
    reader.error("id",
                 "read.fit_up.repeated",
                 "second fit-up tolerances " + in_quotes(row.id) + "; the first stand in " +
                     first->file + " line " + std::to_string(first->line) +
                     "; expected every name once in all libraries used; rename or delete one of "
                     "them");
  }
  reader.finish(key, library.places);
  check_children(context, element, {});
}

void read_preparation_range(FileContext& context,
                            const Element& element,
                            planner::Library& library) {
  AttributeReader reader(context, element);
  joint::PreparationRange& row = library.preparation_ranges.emplace_back();
  row.id = reader.id("id");
  const std::span<const std::string_view> names = joint::preparation_names();
  row.preparation = std::string(names[reader.word("preparation", names)]);
  row.sides = static_cast<joint::RangeSides>(reader.word("sides", sides_words));
  row.joint = text_of_type(reader);
  const LimitDraft thickness = read_limit(reader, thickness_words, ranges::depth);
  const LimitDraft angle = read_limit(reader, angle_words, ranges::half_turn);
  const LimitDraft gap = read_limit(reader, gap_words, ranges::gap);
  const LimitDraft root_face = read_limit(reader, root_face_words, ranges::root_face);
  const LimitDraft radius = read_limit(reader, radius_words, ranges::root_radius);
  row.source = reader.text("source");
  const base::Status status = reader.status("status");
  row.thickness = thickness.in_row(status);
  row.angle = angle.in_row(status);
  row.gap = gap.in_row(status);
  row.root_face = root_face.in_row(status);
  row.radius = radius.in_row(status);
  if (const std::string wrong = joint::wrong_with_range(row); !wrong.empty()) {
    reader.error("read.range.limits",
                 wrong +
                     "; expected limits that something can lie between; "
                     "correct the row");
  }
  finish_unique(reader, "preparation-range", row.id, library.places);
  check_children(context, element, {});
}

}  // namespace seamturn::io::detail
