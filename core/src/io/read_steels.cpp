// SPDX-License-Identifier: MIT
#include <array>

#include "detail_drafts.hpp"

namespace seamturn::io::detail {

namespace {

material::SteelBand read_band(FileContext& context,
                              const pugi::xml_node& element,
                              const std::string& key,
                              joint::Places& places) {
  AttributeReader reader(context, element);
  material::SteelBand band;
  band.up_to_mm = reader.quantity("up-to", ranges::size);
  band.yield_mpa = reader.quantity("yield", ranges::yield);
  band.cev_max = reader.find_quantity("cev-max", ranges::carbon_equivalent);
  band.maxima = read_composition(reader);
  band.source = reader.text("source");
  band.status = reader.status("status");
  reader.finish(key, places);
  check_children(context, element, {});
  return band;
}

void read_interpass(AttributeReader& reader, material::Steel& steel) {
  steel.interpass_max_c = reader.find_quantity("interpass-max", ranges::interpass);
  if (steel.interpass_max_c) {
    steel.interpass_source = reader.text("interpass-source");
    steel.interpass_status = reader.status("interpass-status");
    return;
  }
  for (const char* name : {"interpass-source", "interpass-status"}) {
    reader.refuse(name, "read.steel.interpass", "no interpass-max= stands beside it");
  }
}

}  // namespace

void read_steel(FileContext& context, const pugi::xml_node& element, planner::Library& library) {
  AttributeReader reader(context, element);
  material::Steel steel;
  steel.designation = reader.id("id");
  steel.standard = reader.text("standard");
  steel.group = reader.find_text("group");
  read_interpass(reader, steel);
  const std::string key = "steel/" + steel.designation;
  check_unique(reader, key, library.places.find_spot(key + "@id"));
  reader.finish(key, library.places);

  constexpr std::array<std::string_view, 1> known = {"band"};
  check_children(context, element, known);
  double last_mm = 0.0;
  for (const pugi::xml_node& child : element.children("band")) {
    const std::string band_key = key + "/band" + std::to_string(steel.bands.size() + 1);
    material::SteelBand band = read_band(context, child, band_key, library.places);
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
