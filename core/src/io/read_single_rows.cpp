// SPDX-License-Identifier: MIT
// Rows of which all libraries together may hold one.
#include <optional>
#include <utility>

#include "detail_drafts.hpp"

namespace seamturn::io::detail {

namespace {

void refuse_second(AttributeReader& reader,
                   bool is_second,
                   const char* code,
                   const std::string& row) {
  if (!is_second) return;
  reader.error(
      code,
      "second " + row + " row; expected at most one in all libraries used; delete one of them");
}

/// A row at the end of its reading.
struct RowEnd {
  FileContext& context;
  const pugi::xml_node& element;
  AttributeReader& reader;
  const char* name;
  joint::Places& places;
};

/// Its origin, and that it is the only one.
template <class Row>
void keep_only(const RowEnd& end, Row& row, const char* code, std::optional<Row>& kept) {
  read_origin(end.reader, row);
  refuse_second(end.reader, kept.has_value(), code, end.name);
  end.reader.finish(end.name, end.places);
  check_children(end.context, end.element, {});
  kept = std::move(row);
}

}  // namespace

void read_gouging(FileContext& context, const pugi::xml_node& element, planner::Library& library) {
  AttributeReader reader(context, element);
  process::Gouging row;
  row.id = reader.id("id");
  row.method = reader.text("method");
  row.speed_mm_s = reader.quantity("speed", ranges::gouging_speed);
  row.entry_s = reader.quantity("entry", ranges::time);
  keep_only({context, element, reader, "gouging", library.places},
            row,
            "read.gouging.repeated",
            library.gouging);
}

void read_heating(FileContext& context, const pugi::xml_node& element, planner::Library& library) {
  AttributeReader reader(context, element);
  process::Heating row;
  row.id = reader.id("id");
  row.method = reader.text("method");
  row.power_w = reader.quantity("power", ranges::heating_power);
  row.useful_ratio = reader.quantity("useful", ranges::efficiency);
  row.entry_s = reader.quantity("entry", ranges::time);
  row.holds = reader.find_yes("holds");
  keep_only({context, element, reader, "heating", library.places},
            row,
            "read.heating.repeated",
            library.heating);
}

void read_priorities(FileContext& context,
                     const pugi::xml_node& element,
                     planner::Library& library) {
  AttributeReader reader(context, element);
  planner::Priorities row;
  row.worth.entry_s = reader.quantity("entry", ranges::time);
  row.worth.stance_s = reader.quantity("stance", ranges::time);
  keep_only({context, element, reader, "priorities", library.places},
            row,
            "read.priorities.repeated",
            library.priorities);
}

void read_layer_stops(FileContext& context,
                      const pugi::xml_node& element,
                      planner::Library& library) {
  AttributeReader reader(context, element);
  planner::LayerStops row;
  row.stagger_mm = reader.quantity("stagger", ranges::weld_length);
  keep_only({context, element, reader, "layer-stops", library.places},
            row,
            "read.layer_stops.repeated",
            library.layer_stops);
}

void read_long_seams(FileContext& context,
                     const pugi::xml_node& element,
                     planner::Library& library) {
  AttributeReader reader(context, element);
  planner::LongSeams row;
  row.over_mm = reader.quantity("over", ranges::size);
  row.segments = reader.count("segments", 1, joint::most_segments);
  row.arcs = reader.count("arcs", 1, joint::most_segments);
  row.overlap_mm = reader.quantity("overlap", ranges::weld_length);
  keep_only({context, element, reader, "long-seams", library.places},
            row,
            "read.long_seams.repeated",
            library.long_seams);
}

/// A shop's own rules for tacks; what it does not state stays as the standard and we have it.
void read_tacks(FileContext& context, const pugi::xml_node& element, planner::Library& library) {
  AttributeReader reader(context, element);
  const double pitch_mm = reader.quantity("pitch", ranges::size);
  const double clear_mm = reader.quantity("clear-of-ends", ranges::size_or_none);
  const double gap_mm = reader.quantity("gap-max", ranges::gap);
  const auto length_mm = reader.find_quantity("length-min", ranges::size);
  const auto throat_mm = reader.find_quantity("throat", ranges::weld_size);
  const auto stress_mpa = reader.find_quantity("stress", ranges::yield);
  const std::string source = reader.text("source");
  const base::Status status = reader.status("status");
  refuse_second(reader, library.places.contains("tacks"), "read.tacks.repeated", "tacks");
  reader.finish("tacks", library.places);
  check_children(context, element, {});
  const auto stated = [&](double value) { return tack::RuleValue{value, status, source}; };
  library.tack_rules.pitch_mm = stated(pitch_mm);
  library.tack_rules.clear_of_ends_mm = stated(clear_mm);
  library.tack_rules.gap_max_mm = stated(gap_mm);
  if (length_mm) library.tack_rules.length_min_mm = stated(*length_mm);
  if (throat_mm) library.tack_rules.throat_mm = stated(*throat_mm);
  if (stress_mpa) library.tack_rules.stress_mpa = stated(*stress_mpa);
}

}  // namespace seamturn::io::detail
