// SPDX-License-Identifier: MIT
// Rows of a library about edges as they come: fit-up tolerances and ranges of preparations.
#include "detail_drafts.hpp"

namespace seamturn::io::detail {

namespace {

constexpr std::array<std::string_view, 3> sides_words = {"one", "two", "backing"};
constexpr std::array<std::string_view, 4> type_words = {"butt", "tee", "corner", "lap"};

std::string text_of_type(AttributeReader& reader) {
  const auto type = reader.find_word("joint", type_words);
  return type ? std::string(type_words.at(*type)) : std::string();
}

/// Limits of one size: NAME-min, NAME-max, NAME-above, NAME-max-of-thickness, NAME-status.
joint::RangeLimit read_limit(AttributeReader& reader, const std::string& name, const Range& range) {
  const bool angle = range.dimension == base::Dimension::angle;
  const auto find = [&](const std::string& tail) -> std::optional<double> {
    const std::optional<double> value = reader.find_quantity((name + tail).c_str(), range);
    if (!value || !angle) return value;
    return base::Angle::rad(*value).deg();
  };
  joint::RangeLimit limit;
  limit.least = find("-min");
  limit.largest = find("-max");
  if (const std::optional<double> above = find("-above")) {
    limit.least = above;
    limit.above_least = true;
  }
  limit.thickness_ratio =
      reader.find_quantity((name + "-max-of-thickness").c_str(), ranges::share_of_thickness);
  return limit;
}

void read_limit_status(AttributeReader& reader, const std::string& name, joint::RangeLimit& limit,
                       base::Status row) {
  const std::string attribute = name + "-status";
  limit.status = reader.has(attribute.c_str()) ? reader.status(attribute.c_str()) : row;
}

}  // namespace

void read_fit_up(FileContext& context, const pugi::xml_node& element, LibraryDraft& draft) {
  AttributeReader reader(context, element);
  fitup::Tolerances row;
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
  if (draft.library.fit_up) {
    reader.error("read.fit_up.repeated",
                 "second fit-up tolerances; expected at most one row in all libraries used; delete "
                 "one of them");
  }
  reader.finish("fit-up", draft.spots);
  check_children(context, element, {});
  draft.library.fit_up = std::move(row);
}

void read_preparation_range(FileContext& context,
                            const pugi::xml_node& element,
                            LibraryDraft& draft) {
  AttributeReader reader(context, element);
  joint::PreparationRange row;
  row.id = reader.id("id");
  const std::span<const std::string_view> names = preparation_words();
  row.preparation = std::string(names[reader.word("preparation", names)]);
  row.sides = static_cast<joint::RangeSides>(reader.word("sides", sides_words));
  row.joint = text_of_type(reader);
  row.source = reader.text("source");
  const base::Status status = reader.status("status");
  row.thickness = read_limit(reader, "thickness", ranges::depth);
  row.angle = read_limit(reader, "angle", ranges::half_turn);
  row.gap = read_limit(reader, "gap", ranges::gap);
  row.root_face = read_limit(reader, "root-face", ranges::root_face);
  row.radius = read_limit(reader, "radius", ranges::root_radius);
  read_limit_status(reader, "thickness", row.thickness, status);
  read_limit_status(reader, "angle", row.angle, status);
  read_limit_status(reader, "gap", row.gap, status);
  read_limit_status(reader, "root-face", row.root_face, status);
  read_limit_status(reader, "radius", row.radius, status);
  if (const std::string wrong = joint::wrong_with_range(row); !wrong.empty()) {
    reader.error("read.range.limits", wrong + "; expected limits that something can lie between; "
                                              "correct the row");
  }
  reader.finish("preparation-range/" + row.id, draft.spots);
  check_children(context, element, {});
  draft.library.preparation_ranges.push_back(std::move(row));
}

}  // namespace seamturn::io::detail
