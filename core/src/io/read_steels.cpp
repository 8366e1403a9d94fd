// SPDX-License-Identifier: MIT
#include <array>
#include <initializer_list>

#include "detail_drafts.hpp"

namespace seamturn::io::detail {

namespace {

material::SteelBand read_band(FileContext& context,
                              const Element& element,
                              const std::string& key,
                              joint::Places& places) {
  AttributeReader reader(context, element);
  material::SteelBand band;
  band.up_to_mm = reader.quantity("up-to", ranges::size);
  band.yield_mpa = reader.find_quantity("yield", ranges::yield);
  band.cev_max = reader.find_quantity("cev-max", ranges::carbon_equivalent);
  constexpr std::array<std::string_view, 2> may_be_open = {"c", "mn"};
  OpenElements open;
  for (const std::size_t index : reader.find_words<std::size_t>("open", may_be_open)) {
    (index == 0 ? open.c : open.mn) = true;
  }
  band.maxima = read_composition(reader, open);
  band.c_is_open = open.c && !reader.has("c");  // stated nevertheless: told already
  band.mn_is_open = open.mn && !reader.has("mn");
  band.source = reader.text("source");
  band.status = reader.status("status");
  reader.finish(key, places);
  check_children(context, element, {});
  return band;
}

/// Attributes that stand only beside a value that is absent.
void refuse_alone(AttributeReader& reader,
                  std::initializer_list<MarkedName> names,
                  const char* code,
                  const char* why) {
  for (const MarkedName name : names) reader.refuse(name, code, why);
}

void read_interpass(AttributeReader& reader, material::Steel& steel) {
  steel.interpass_max_c = reader.find_quantity("interpass-max", ranges::interpass);
  if (steel.interpass_max_c) {
    steel.interpass_source = reader.text("interpass-source");
    steel.interpass_status = reader.status("interpass-status");
    return;
  }
  refuse_alone(reader,
               {"interpass-source", "interpass-status"},
               "read.steel.interpass",
               "no interpass-max= stands beside it");
}

std::optional<material::CoolingWindow> find_t85(AttributeReader& reader) {
  if (!reader.has("t85-min") && !reader.has("t85-max")) {
    refuse_alone(
        reader, {"t85-source", "t85-status"}, "read.steel.t85", "no t85-min= stands beside it");
    return std::nullopt;
  }
  material::CoolingWindow window;
  window.least_s = reader.quantity("t85-min", ranges::cooling_time);
  window.most_s = reader.quantity("t85-max", ranges::cooling_time);
  window.source = reader.text("t85-source");
  window.status = reader.status("t85-status");
  if (window.most_s <= window.least_s) {
    reader.error("t85-max",
                 "read.steel.t85",
                 "the window of t8/5 is empty; expected t85-max= above t85-min=; correct either");
  }
  return window;
}

std::optional<material::StatedTemperature> find_later_heating(AttributeReader& reader) {
  const auto value_c = reader.find_quantity("later-heating-max", ranges::later_heating);
  if (!value_c) {
    refuse_alone(reader,
                 {"later-heating-source", "later-heating-status"},
                 "read.steel.later_heating",
                 "no later-heating-max= stands beside it");
    return std::nullopt;
  }
  return material::StatedTemperature{
      *value_c, reader.text("later-heating-source"), reader.status("later-heating-status")};
}

std::optional<material::AwsCategory> find_aws_category(AttributeReader& reader) {
  constexpr std::array<std::string_view, 4> categories = {"A/B", "B", "C", "D"};
  const auto index = reader.find_word("aws-category", categories);
  if (!reader.has("aws-category")) {
    refuse_alone(reader,
                 {"aws-source", "aws-status"},
                 "read.steel.aws",
                 "no aws-category= stands beside it");
    return std::nullopt;
  }
  return material::AwsCategory{std::string(categories.at(index.value_or(0))),
                               reader.text("aws-source"),
                               reader.status("aws-status")};
}

}  // namespace

void read_steel(FileContext& context, const Element& element, planner::Library& library) {
  AttributeReader reader(context, element);
  material::Steel steel;
  steel.designation = reader.id("id");
  steel.standard = reader.text("standard");
  steel.group = reader.find_text("group");
  read_interpass(reader, steel);
  steel.t85 = find_t85(reader);
  steel.later_heating_max = find_later_heating(reader);
  steel.aws_category = find_aws_category(reader);
  finish_unique(reader, "steel", steel.designation, library.places);

  constexpr std::array<std::string_view, 1> known = {"band"};
  check_children(context, element, known);
  const Element::Children bands = element.children("band");
  steel.bands.reserve(bands.count());
  const std::string band_key = "steel/" + steel.designation + "/band";
  double last_mm = 0.0;
  for (const Element& child : bands) {
    material::SteelBand band = read_band(
        context, child, band_key + std::to_string(steel.bands.size() + 1), library.places);
    if (band.up_to_mm <= last_mm) {
      AttributeReader band_reader(context, child);
      band_reader.error("up-to",
                        "read.steel.bands",
                        "the band does not reach beyond the one before it; expected rising up-to=; "
                        "sort the bands by thickness");
    }
    last_mm = band.up_to_mm;
    steel.bands.push_back(std::move(band));
  }
  if (steel.bands.empty()) {
    reader.error(
        "read.element.missing",
        "the steel has no <band>; expected at least one, e.g. <band up-to=\"16 mm\" .../>; "
        "add it");
  }
  library.steels.push_back(std::move(steel));
}

}  // namespace seamturn::io::detail
