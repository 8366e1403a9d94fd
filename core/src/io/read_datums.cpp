// SPDX-License-Identifier: MIT
// Datum faces, bores and threads, and what is said of tacking.
#include <algorithm>
#include <array>
#include <cmath>

#include "detail_drafts.hpp"

namespace seamturn::io::detail {

namespace {

constexpr std::array<std::string_view, 4> flatness_words = {"E", "F", "G", "H"};
constexpr std::array<std::string_view, 3> guard_words = {"strike", "earth", "spatter"};

void read_extent(AttributeReader& reader, joint::Datum& datum) {
  if (datum.kind != joint::DatumKind::face) {
    datum.length_mm = reader.quantity("diameter", ranges::size);
    return;
  }
  const auto along = reader.find_direction("along");
  const geom::Vec3 any = std::abs(datum.axis.x()) < 0.9 ? geom::Vec3::UnitX() : geom::Vec3::UnitY();
  const geom::Vec3 wanted = along.value_or(any);
  const geom::Vec3 across = wanted - wanted.dot(datum.axis) * datum.axis;
  constexpr double least_across = 1e-3;
  if (along && across.norm() < least_across) {
    reader.error("along",
                 "read.datum.along",
                 "the face's first direction points along its normal; expected one that lies in "
                 "the face; correct it");
  }
  if (across.norm() >= least_across) datum.along = geom::unit(across);
  if (reader.has("diameter")) {
    datum.round = true;
    datum.length_mm = datum.width_mm = reader.quantity("diameter", ranges::size);
    return;
  }
  const auto size = reader.two_quantities("size", ranges::size);
  datum.length_mm = size[0];
  datum.width_mm = size[1];
}

}  // namespace

void read_datum(FileContext& context, const Element& element, WeldmentDraft& draft) {
  AttributeReader reader(context, element);
  joint::Datum datum;
  datum.id = reader.id("id");
  datum.kind = static_cast<joint::DatumKind>(reader.word("kind", joint::datum_kind_names()));
  datum.member = reader.id("member");
  datum.at = reader.point("at");
  datum.axis = reader.direction("axis");
  read_extent(reader, datum);
  if (const auto flatness = reader.find_word("flatness", flatness_words)) {
    datum.flatness = flatness_words.at(*flatness);
  }
  if (datum.kind != joint::DatumKind::face) {
    reader.refuse("flatness", "read.datum.flatness", "only a face is flat");
  }
  datum.allowance_mm = reader.find_quantity("allowance", ranges::weld_length);
  if (reader.has("arcs")) datum.arcs = reader.count("arcs", 1, joint::most_segments);
  datum.temperature_max_c = reader.find_quantity("temperature-max", ranges::later_heating);
  for (const std::size_t guard : reader.find_words<std::size_t>("no", guard_words)) {
    (guard == 0 ? datum.guard.strike : guard == 1 ? datum.guard.earth : datum.guard.spatter) = true;
  }
  const bool first = finish_unique(reader, "datum", datum.id, draft.weldment.places);
  check_children(context, element, {});
  if (first) draft.weldment.datums.push_back(std::move(datum));
}

void read_tacking(FileContext& context, const Element& element, WeldmentDraft& draft) {
  AttributeReader reader(context, element);
  joint::Tacking tacking;
  tacking.site_factor_ratio = reader.quantity("site-factor", ranges::site_factor);
  tacking.certificate = reader.find_text("certificate");
  reader.finish("tacking", draft.weldment.places);
  check_children(context, element, {});
  draft.weldment.tacking = std::move(tacking);
}

}  // namespace seamturn::io::detail
