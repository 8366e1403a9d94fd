// SPDX-License-Identifier: MIT
#include <algorithm>
#include <array>
#include <iterator>

#include "detail_drafts.hpp"
#include "detail_utf8.hpp"

namespace seamturn::io::detail {

namespace {

void finish_row(AttributeReader& reader,
                std::string_view kind,
                std::string_view id,
                planner::Library& library) {
  finish_unique(reader, kind, id, library.places);
  check_children(reader.context(), reader.element(), {});
}

std::string read_process(AttributeReader& reader) {
  const std::string process = reader.text("process");
  const bool is_number = process.size() >= 2 && process.size() <= 4 &&
                         process.find_first_not_of("0123456789") == std::string::npos;
  if (!process.empty() && !is_number) {
    reader.error("process",
                 "read.process.malformed",
                 in_quotes(process) +
                     " is no process number; expected the number of ISO 4063, e.g. \"135\"");
  }
  return process;
}

void read_wire(FileContext& context, const Element& element, planner::Library& library) {
  AttributeReader reader(context, element);
  process::Wire& wire = library.wires.emplace_back();
  wire.id = reader.id("id");
  wire.designation = reader.text("designation");
  wire.process = read_process(reader);
  wire.diameter_mm = reader.quantity("diameter", ranges::wire_diameter);
  wire.linear_mass_kg_m = reader.find_quantity("linear-mass", ranges::linear_mass);
  wire.efficiency_ratio = reader.quantity("efficiency", ranges::efficiency);
  wire.hydrogen_ml_100g = reader.quantity("hydrogen", ranges::hydrogen);
  wire.cet = reader.find_quantity("cet", ranges::carbon_equivalent);
  wire.interpass_max_c = reader.find_quantity("interpass-max", ranges::interpass);
  wire.price_per_kg = reader.quantity("price", ranges::price_per_kg);
  read_origin(reader, wire);
  finish_row(reader, "wire", wire.id, library);
}

void read_gas(FileContext& context, const Element& element, planner::Library& library) {
  AttributeReader reader(context, element);
  process::Gas& gas = library.gases.emplace_back();
  gas.id = reader.id("id");
  gas.designation = reader.text("designation");
  gas.price_per_m3 = reader.quantity("price", ranges::price_per_m3);
  read_origin(reader, gas);
  finish_row(reader, "gas", gas.id, library);
}

std::vector<process::WeldPosition> read_positions(AttributeReader& reader) {
  return reader.find_words<process::WeldPosition>("positions", position_words());
}

std::vector<process::PassRole> read_roles(AttributeReader& reader) {
  return reader.find_words<process::PassRole>("roles", role_words());
}

void read_travel(AttributeReader& reader, process::LinkedSettings& settings) {
  settings.travel_min_mm_s = reader.quantity("travel-min", ranges::travel);
  settings.travel_max_mm_s = reader.quantity("travel-max", ranges::travel);
  settings.travel_preferred_mm_s = reader.quantity("travel", ranges::travel);
  if (settings.travel_min_mm_s > settings.travel_max_mm_s) {
    reader.error(
        "travel-min",
        "read.settings.travel",
        "the slowest travel is above the fastest; expected travel-min= at most travel-max=; "
        "correct one of them");
  } else if (settings.travel_preferred_mm_s < settings.travel_min_mm_s ||
             settings.travel_preferred_mm_s > settings.travel_max_mm_s) {
    reader.error("travel",
                 "read.settings.travel",
                 "the preferred travel lies outside travel-min and travel-max; expected it between "
                 "them; correct it");
  }
}

void read_weave(AttributeReader& reader, process::LinkedSettings& settings) {
  settings.weave_width_mm = reader.find_quantity("weave-width", ranges::weave_width).value_or(0.0);
  settings.weave_frequency_hz =
      reader.find_quantity("weave-frequency", ranges::weave_frequency).value_or(0.0);
  if (reader.has("weave-width") == reader.has("weave-frequency")) return;
  reader.error(
      reader.has("weave-width") ? "weave-width" : "weave-frequency",
      "read.settings.weave",
      "half a weave found; expected weave-width= and weave-frequency= together, or neither; "
      "add the other");
}

void read_settings(FileContext& context, const Element& element, planner::Library& library) {
  constexpr std::array<std::string_view, 4> transfers = {"dip", "globular", "spray", "pulsed"};
  AttributeReader reader(context, element);
  process::LinkedSettings& settings = library.settings.emplace_back();
  settings.id = reader.id("id");
  settings.process = read_process(reader);
  settings.wire = reader.id("wire");
  settings.gas = reader.id("gas");
  settings.role = static_cast<process::PassRole>(reader.word("role", role_words()));
  settings.positions = read_positions(reader);
  if (!reader.has("positions")) {
    reader.error("read.attribute.missing",
                 "<settings> has no attribute \"positions\"; expected some of " +
                     one_of(position_words()) + "; add positions=\"...\"");
  }
  settings.feed_mm_s = reader.quantity("feed", ranges::feed);
  settings.voltage_v = reader.quantity("voltage", ranges::voltage);
  settings.current_a = reader.quantity("current", ranges::current);
  settings.tip_distance_mm = reader.quantity("tip-distance", ranges::tip_distance);
  settings.gas_flow_l_min = reader.quantity("gas-flow", ranges::gas_flow);
  read_travel(reader, settings);
  read_weave(reader, settings);
  settings.push = reader.angle("push", ranges::push);
  settings.transfer = transfers.at(reader.word("transfer", transfers));
  read_origin(reader, settings);
  finish_row(reader, "settings", settings.id, library);
}

void read_bead_limit(FileContext& context, const Element& element, planner::Library& library) {
  constexpr std::array<std::string_view, 2> families = {"groove", "fillet"};
  AttributeReader reader(context, element);
  process::BeadLimit& limit = library.bead_limits.emplace_back();
  limit.id = reader.id("id");
  limit.family = static_cast<process::WeldFamily>(reader.word("weld", families));
  limit.roles = read_roles(reader);
  limit.positions = read_positions(reader);
  limit.leg_max_mm = reader.find_quantity("leg-max", ranges::weld_size);
  limit.area_max_mm2 = reader.find_quantity("area-max", ranges::area);
  limit.thickness_max_mm = reader.find_quantity("thickness-max", ranges::weld_size);
  limit.split_width_mm = reader.find_quantity("split-width", ranges::weld_size);
  if (!limit.leg_max_mm && !limit.area_max_mm2 && !limit.thickness_max_mm &&
      !limit.split_width_mm) {
    reader.error(
        "read.bead_limit.empty",
        "the row limits nothing; expected at least one of leg-max, area-max, thickness-max "
        "and split-width; add it or delete the row");
  }
  read_origin(reader, limit);
  finish_row(reader, "bead-limit", limit.id, library);
}

void read_tolerance(FileContext& context, const Element& element, planner::Library& library) {
  AttributeReader reader(context, element);
  position::WorkingTolerance& tolerance = library.tolerances.emplace_back();
  tolerance.position =
      static_cast<process::WeldPosition>(reader.word("position", position_words()));
  tolerance.roles = read_roles(reader);
  tolerance.downhill = reader.angle("downhill", ranges::tolerance_angle);
  tolerance.uphill = reader.angle("uphill", ranges::tolerance_angle);
  tolerance.bank = reader.angle("bank", ranges::tolerance_angle);
  tolerance.bead_at_edge_ratio = reader.find_quantity("bead-at-edge", ranges::share).value_or(1.0);
  read_origin(reader, tolerance);
  const std::string number = std::to_string(library.tolerances.size());
  reader.finish("working-tolerance/" + number, library.places);
  check_children(context, element, {});
}

void read_rolling_lead(FileContext& context, const Element& element, planner::Library& library) {
  AttributeReader reader(context, element);
  position::RollingLead& row = library.rolling_leads.emplace_back();
  row.process = read_process(reader);
  row.roles = read_roles(reader);
  row.over_mm = reader.find_quantity("over", ranges::ring_diameter).value_or(0.0);
  row.up_to_mm = reader.find_quantity("up-to", ranges::ring_diameter);
  if (reader.has("lead")) row.lead = reader.angle("lead", ranges::rolling_lead);
  row.lead_mm = reader.find_quantity("lead-length", ranges::rolling_lead_length);
  if (reader.has("lead") == reader.has("lead-length")) {
    reader.error("read.rolling_lead.lead",
                 "the row states its lead twice or not at all; expected either lead= (an angle) or "
                 "lead-length= (along the ring); keep one of them");
  }
  if (row.up_to_mm && *row.up_to_mm <= row.over_mm) {
    reader.error("up-to",
                 "read.rolling_lead.range",
                 "no ring is over and up to these diameters; expected up-to= above over=; correct "
                 "one of them");
  }
  read_origin(reader, row);
  const std::string number = std::to_string(library.rolling_leads.size());
  reader.finish("rolling-lead/" + number, library.places);
  check_children(context, element, {});
}

void read_record(FileContext& context, const Element& element, planner::Library& library) {
  AttributeReader reader(context, element);
  procedure::Record& row = library.records.emplace_back();
  row.id = reader.id("id");
  row.interpass_max_c = reader.quantity("interpass-max", ranges::interpass);
  read_origin(reader, row);
  finish_row(reader, "record", row.id, library);
}

}  // namespace

std::span<const std::string_view> position_words() {
  static constexpr std::array<std::string_view, 7> words = {
      "PA", "PB", "PC", "PD", "PE", "PF", "PG"};
  return words;
}

std::span<const std::string_view> role_words() {
  static constexpr std::array<std::string_view, 5> words = {
      "tack", "root", "fill", "cap", "single"};
  return words;
}

void read_library(FileContext& context, planner::Library& library) {
  const Element root = context.tree.root();
  AttributeReader reader(context, root);
  static_cast<void>(reader.text("title"));
  static_cast<void>(reader.find_yes("invented"));
  reader.finish();
  struct Kind {
    std::string_view name;
    void (*read)(FileContext&, const Element&, planner::Library&);
  };
  constexpr Kind kinds[] = {{"steel", read_steel},
                            {"wire", read_wire},
                            {"gas", read_gas},
                            {"settings", read_settings},
                            {"bead-limit", read_bead_limit},
                            {"working-tolerance", read_tolerance},
                            {"rolling-lead", read_rolling_lead},
                            {"fit-up", read_fit_up},
                            {"preparation-range", read_preparation_range},
                            {"gouging", read_gouging},
                            {"heating", read_heating},
                            {"priorities", read_priorities},
                            {"layer-stops", read_layer_stops},
                            {"long-seams", read_long_seams},
                            {"record", read_record},
                            {"tacks", read_tacks},
                            {"rates", read_rates}};
  std::vector<std::string_view> known;
  for (const Kind& kind : kinds) known.push_back(kind.name);
  check_children(context, root, known);
  // The longest of the lists.
  const Element::Children settings = root.children("settings");
  library.settings.reserve(library.settings.size() + settings.count());
  for (const Element& element : root.children()) {
    const std::string_view name = element.name();
    const auto* kind = std::find_if(
        std::begin(kinds), std::end(kinds), [&](const Kind& row) { return row.name == name; });
    if (kind != std::end(kinds)) kind->read(context, element, library);
  }
}

}  // namespace seamturn::io::detail
