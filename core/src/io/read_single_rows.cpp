// SPDX-License-Identifier: MIT
// Rows of which all libraries together may hold one.
#include <optional>
#include <string>
#include <utility>

#include "detail_drafts.hpp"
#include "seamturn/base/factors.hpp"

namespace seamturn::io::detail {

namespace {

/// A row at the end of its reading.
struct RowEnd {
  AttributeReader& reader;
  const char* name;
  const char* code;  ///< of a second one
  joint::Places& places;
};

/// Nothing else stands in it, and it is the only one.
void close_only(const RowEnd& end) {
  if (const std::optional<base::Place> first = end.places.find(end.name)) {
    end.reader.error(end.code,
                     "second " + std::string(end.name) + " row; the first stands in " +
                         first->file + " line " + std::to_string(first->line) +
                         "; expected at most one in all libraries used; delete one of them");
  }
  end.reader.finish(end.name, end.places);
  check_children(end.reader.context(), end.reader.element(), {});
}

template <class Row>
void keep_only(const RowEnd& end, Row& row, std::optional<Row>& kept) {
  read_origin(end.reader, row);
  close_only(end);
  kept = std::move(row);
}

}  // namespace

void read_gouging(FileContext& context, const Element& element, planner::Library& library) {
  AttributeReader reader(context, element);
  process::Gouging row;
  row.id = reader.id("id");
  row.method = reader.text("method");
  row.speed_mm_s = reader.quantity("speed", ranges::gouging_speed);
  row.entry_s = reader.quantity("entry", ranges::time);
  keep_only({reader, "gouging", "read.gouging.repeated", library.places}, row, library.gouging);
}

void read_heating(FileContext& context, const Element& element, planner::Library& library) {
  AttributeReader reader(context, element);
  process::Heating row;
  row.id = reader.id("id");
  row.method = reader.text("method");
  row.power_w = reader.quantity("power", ranges::heating_power);
  row.useful_ratio = reader.quantity("useful", ranges::efficiency);
  row.entry_s = reader.quantity("entry", ranges::time);
  row.holds = reader.find_yes("holds");
  keep_only({reader, "heating", "read.heating.repeated", library.places}, row, library.heating);
}

void read_priorities(FileContext& context, const Element& element, planner::Library& library) {
  AttributeReader reader(context, element);
  planner::Priorities row;
  row.worth.entry_s = reader.quantity("entry", ranges::time);
  row.worth.stance_s = reader.quantity("stance", ranges::time);
  keep_only(
      {reader, "priorities", "read.priorities.repeated", library.places}, row, library.priorities);
}

void read_layer_stops(FileContext& context, const Element& element, planner::Library& library) {
  AttributeReader reader(context, element);
  planner::LayerStopRule row;
  row.stagger_mm = reader.quantity("stagger", ranges::weld_length);
  keep_only({reader, "layer-stops", "read.layer_stops.repeated", library.places},
            row,
            library.layer_stops);
}

void read_long_seams(FileContext& context, const Element& element, planner::Library& library) {
  AttributeReader reader(context, element);
  planner::LongSeams row;
  row.over_mm = reader.quantity("over", ranges::size);
  row.segments = reader.count("segments", 1, joint::most_segments);
  row.arcs = reader.count("arcs", 1, joint::most_segments);
  row.overlap_mm = reader.quantity("overlap", ranges::weld_length);
  keep_only(
      {reader, "long-seams", "read.long_seams.repeated", library.places}, row, library.long_seams);
}

/// A shop's own rules for tacks; what it does not state stays as the standard and we have it.
void read_tacks(FileContext& context, const Element& element, planner::Library& library) {
  AttributeReader reader(context, element);
  const double pitch_mm = reader.quantity("pitch", ranges::size);
  const double clear_mm = reader.quantity("clear-of-ends", ranges::size_or_none);
  const double gap_mm = reader.quantity("gap-max", ranges::gap);
  const auto length_mm = reader.find_quantity("length-min", ranges::size);
  const auto throat_mm = reader.find_quantity("throat", ranges::weld_size);
  const auto stress_mpa = reader.find_quantity("stress", ranges::yield);
  const std::string source = reader.text("source");
  const base::Status status = reader.status("status");
  close_only({reader, "tacks", "read.tacks.repeated", library.places});
  const auto stated = [&](double value) { return tack::RuleValue{value, status, source}; };
  library.tack_rules.pitch_mm = stated(pitch_mm);
  library.tack_rules.clear_of_ends_mm = stated(clear_mm);
  library.tack_rules.gap_max_mm = stated(gap_mm);
  if (length_mm) library.tack_rules.length_min_mm = stated(*length_mm);
  if (throat_mm) library.tack_rules.throat_mm = stated(*throat_mm);
  if (stress_mpa) library.tack_rules.stress_mpa = stated(*stress_mpa);
}

void read_rates(FileContext& context, const Element& element, planner::Library& library) {
  AttributeReader reader(context, element);
  cost::Rates rates;
  rates.currency = reader.text("currency");
  rates.labour_per_hour = reader.quantity("labour", ranges::price_per_hour);
  rates.cell_per_hour = reader.quantity("cell", ranges::price_per_hour);
  rates.energy_per_kwh = reader.quantity("energy", ranges::price_per_kwh);
  rates.power_source_efficiency_ratio =
      reader.quantity("power-source-efficiency", ranges::efficiency);
  rates.gas_loss_ratio = reader.quantity("gas-loss", ranges::gas_loss);
  rates.gas_pre_post_flow_s = reader.quantity("gas-pre-post-flow", ranges::time);
  rates.setup_per_batch_h = reader.quantity("setup-per-batch", ranges::time) / base::s_per_h;
  rates.time_band_ratio = reader.quantity("time-band", ranges::band);
  rates.consumption_band_ratio = reader.quantity("consumption-band", ranges::band);
  rates.source = reader.text("source");
  close_only({reader, "rates", "read.rates.repeated", library.places});
  library.rates = std::move(rates);
}

}  // namespace seamturn::io::detail
