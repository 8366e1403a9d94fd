// SPDX-License-Identifier: MIT
#include "seamturn/joint/preparation.hpp"

#include <cmath>
#include <numbers>
#include <vector>

#include "seamturn/base/error.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::joint {

Fillet laid_fillet(const Fillet& drawn) {
  SEAMTURN_REQUIRE(drawn.over_weld_ratio >= 1.0, drawn.over_weld_ratio);
  const double growth = std::sqrt(drawn.over_weld_ratio);
  Fillet laid = drawn;
  laid.leg_1_mm *= growth;
  laid.leg_2_mm *= growth;
  laid.bulge_mm *= growth;
  laid.over_weld_ratio = 1.0;
  return laid;
}

namespace {

constexpr GrooveName grooves[] = {
    {"square", GrooveForm::square, false},
    {"single-v", GrooveForm::v, false},
    {"double-v", GrooveForm::v, true},
    {"single-bevel", GrooveForm::bevel, false},
    {"double-bevel", GrooveForm::bevel, true},
    {"single-u", GrooveForm::u, false},
    {"double-u", GrooveForm::u, true},
    {"single-j", GrooveForm::j, false},
    {"double-j", GrooveForm::j, true},
    {"compound-v", GrooveForm::compound_v, false},
};

std::string_view groove_name(const Groove& groove) {
  for (const GrooveName& known : grooves) {
    if (known.form == groove.form && known.is_double == groove.is_double) return known.name;
  }
  // Edges that stay square, or lean twice, have one name whether welded from one side or two.
  return groove.form == GrooveForm::square ? "square" : "compound-v";
}

}  // namespace

std::string_view cover_shape_name(CoverShape shape) {
  switch (shape) {
    case CoverShape::cap:
      return "cap";
    case CoverShape::corner_fillet:
      return "corner-fillet";
    case CoverShape::full_cover:
      return "full-cover";
  }
  return "cap";
}

std::span<const GrooveName> groove_names() {
  return grooves;
}

std::span<const std::string_view> preparation_names() {
  static const std::vector<std::string_view> names = [] {
    std::vector<std::string_view> all{"fillet"};
    for (const GrooveName& groove : grooves) all.push_back(groove.name);
    all.insert(all.end(), {"plug", "slot"});
    return all;
  }();
  return names;
}

std::string_view preparation_name(const Preparation& preparation) {
  if (const auto* groove = std::get_if<Groove>(&preparation)) return groove_name(*groove);
  if (const auto* plug = std::get_if<Plug>(&preparation)) {
    return plug->length_mm > plug->width_mm ? "slot" : "plug";
  }
  return "fillet";
}

bool is_fillet(const Preparation& preparation) {
  return std::holds_alternative<Fillet>(preparation);
}

bool is_one_edge_cut(const Preparation& preparation) {
  const auto* groove = std::get_if<Groove>(&preparation);
  return groove != nullptr && (groove->form == GrooveForm::bevel || groove->form == GrooveForm::j);
}

double root_gap_mm(const Preparation& preparation) {
  if (const auto* groove = std::get_if<Groove>(&preparation)) return groove->gap_mm;
  if (const auto* fillet = std::get_if<Fillet>(&preparation)) return fillet->gap_mm;
  return 0.0;
}

bool is_double(const Preparation& preparation) {
  const auto* groove = std::get_if<Groove>(&preparation);
  return groove != nullptr && groove->is_double;
}

double welded_round_mm(const Plug& plug) {
  return 2.0 * (plug.length_mm - plug.width_mm) + 0.5 * std::numbers::pi * plug.width_mm;
}

Groove square_butt(double gap_mm) {
  Groove groove;
  groove.gap_mm = gap_mm;
  return groove;
}

Groove single_v(const RootSizes& root, Angle included) {
  Groove groove;
  groove.form = GrooveForm::v;
  groove.gap_mm = root.gap_mm;
  groove.root_face_mm = root.root_face_mm;
  groove.side_1.angle = included;
  return groove;
}

Groove single_bevel(const RootSizes& root, Angle bevel) {
  Groove groove = single_v(root, bevel);
  groove.form = GrooveForm::bevel;
  return groove;
}

double leg_from_throat_mm(double throat_mm, Angle between_plates) {
  SEAMTURN_REQUIRE(base::is_positive(throat_mm), throat_mm);
  SEAMTURN_REQUIRE(between_plates > Angle::deg(0.0) && between_plates < Angle::deg(180.0),
                   between_plates.deg());
  return throat_mm / std::cos(0.5 * between_plates.rad());
}

}  // namespace seamturn::joint
