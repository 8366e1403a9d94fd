// SPDX-License-Identifier: MIT
// A preparation from the sizes of a figure call.
#include "detail_preparation.hpp"

namespace seamturn::figures::detail {

namespace {

using base::Angle;
using joint::GrooveForm;
using section::WeldSection;

/// Keys a preparation needs beyond its name; the card cannot know them all.
void require_keys(Arguments& arguments, std::initializer_list<std::string_view> keys) {
  for (const std::string_view key : keys) {
    if (!arguments.has(key)) {
      arguments.add_usage("preparation " + arguments.text("preparation") + " needs " +
                          std::string(key) + "=");
    }
  }
}

joint::Fillet fillet_of(Arguments& arguments, Angle between) {
  const int ways = (arguments.has("leg") ? 1 : 0) + (arguments.has("throat") ? 1 : 0) +
                   (arguments.has("leg-1") || arguments.has("leg-2") ? 1 : 0);
  if (ways != 1 || arguments.has("leg-1") != arguments.has("leg-2")) {
    arguments.add_usage("a fillet takes exactly one of leg=, throat=, or leg-1= with leg-2=");
    return joint::Fillet{};
  }
  joint::Fillet fillet;
  fillet.bulge_mm = arguments.number("bulge");
  fillet.gap_mm = arguments.number("gap");
  fillet.reach_mm = arguments.number("reach");
  fillet.leg_1_mm = arguments.number(arguments.has("leg-1") ? "leg-1" : "leg");
  fillet.leg_2_mm = arguments.number(arguments.has("leg-2") ? "leg-2" : "leg");
  if (!arguments.has("throat")) return fillet;
  const double throat = arguments.number("throat");
  const bool sane = throat > 0.0 && between.rad() > 0.0 && between < Angle::deg(180.0);
  // Refused with its reason by the calculation; a leg of the same sign stands in until then.
  fillet.leg_1_mm = fillet.leg_2_mm = sane ? joint::leg_from_throat_mm(throat, between) : throat;
  return fillet;
}

joint::GrooveSide side_of(Arguments& arguments, GrooveForm form) {
  joint::GrooveSide side;
  side.angle = Angle::rad(arguments.number("angle"));
  if (arguments.has("first-face")) side.first_face = Angle::rad(arguments.number("first-face"));
  if (form == GrooveForm::u || form == GrooveForm::j) {
    require_keys(arguments, {"radius"});
    side.radius_mm = arguments.number("radius");
  }
  if (form == GrooveForm::compound_v) {
    require_keys(arguments, {"lower-depth", "lower-angle"});
    side.lower_depth_mm = arguments.number("lower-depth");
    side.lower_angle = Angle::rad(arguments.number("lower-angle"));
  }
  return side;
}

joint::Groove groove_of(Arguments& arguments, const joint::GrooveName& word) {
  require_keys(arguments, {"thickness", "gap"});
  joint::Groove groove;
  groove.form = word.form;
  groove.is_double = word.is_double;
  groove.gap_mm = arguments.number("gap");
  if (word.form == GrooveForm::square) return groove;
  require_keys(arguments, {"root-face", "angle"});
  groove.root_face_mm = arguments.number("root-face");
  groove.side_1 = side_of(arguments, word.form);
  if (!word.is_double) return groove;
  groove.side_2 = groove.side_1;
  if (arguments.has("angle-2")) {
    groove.side_2.angle = Angle::rad(arguments.number("angle-2"));
    groove.side_2.first_face.reset();
  }
  groove.side_2.radius_mm = arguments.number("radius-2", groove.side_1.radius_mm);
  groove.side_1.depth_mm = arguments.number("depth-1");
  groove.side_2.depth_mm = arguments.number("depth-2");
  return groove;
}

joint::Plug plug_of(Arguments& arguments, bool is_slot) {
  joint::Plug plug;
  if (is_slot) {
    require_keys(arguments, {"width", "length", "fill"});
    plug.width_mm = arguments.number("width");
    plug.length_mm = arguments.number("length");
  } else {
    require_keys(arguments, {"width", "fill"});
    plug.width_mm = plug.length_mm = arguments.number("width");
  }
  plug.fill_mm = arguments.number("fill");
  return plug;
}

void take_top_and_root(Arguments& arguments, section::SectionParams& params) {
  params.cap.height_mm = arguments.number("cap-height");
  params.cap.toe_lap_mm = arguments.number("toe-lap");
  if (arguments.has("cover")) {
    require_keys(arguments, {"cover-leg"});
    params.cap.shape = arguments.choice("cover", {"corner-fillet", "full-cover"}) == 0
                           ? joint::CoverShape::corner_fillet
                           : joint::CoverShape::full_cover;
    params.cap.leg_mm = arguments.number("cover-leg");
  }
  if (!arguments.has("gouge-depth")) return;
  require_keys(arguments, {"gouge-radius"});
  params.gouge.depth_mm = arguments.number("gouge-depth");
  params.gouge.radius_mm = arguments.number("gouge-radius");
  params.gouge.flank = Angle::rad(arguments.number("gouge-flank", joint::usual_gouge_flank.rad()));
}

joint::Preparation preparation_of(Arguments& arguments, std::string_view name, Angle between) {
  for (const joint::GrooveName& word : joint::groove_names()) {
    if (word.name == name) return groove_of(arguments, word);
  }
  if (name == "fillet") return fillet_of(arguments, between);
  return plug_of(arguments, name == "slot");
}

}  // namespace

section::SectionParams section_params(Arguments& arguments) {
  const std::span<const std::string_view> names = joint::preparation_names();
  const std::size_t kind = arguments.choice("preparation", {names.begin(), names.end()});
  section::SectionParams params;
  params.thickness_mm = arguments.number("thickness");
  params.depth_mm = arguments.number("depth");
  take_top_and_root(arguments, params);
  const Angle between = Angle::rad(arguments.number("angle", Angle::deg(90.0).rad()));
  params.preparation = preparation_of(arguments, names[kind], between);
  if (joint::is_fillet(params.preparation)) params.between_plates = between;
  return params;
}

int side_of_call(Arguments& arguments, const section::SectionParams& params) {
  if (!arguments.has("side")) return 1;
  const int side = static_cast<int>(arguments.choice("side", {"1", "2"})) + 1;
  if (side > section::side_count(params)) {
    arguments.add_usage("side=2 needs a double preparation or gouge-depth=");
  }
  return side;
}

base::Outcome<std::vector<WeldSection>> sides_of(section::SectionParams params) {
  std::vector<WeldSection> sides;
  for (params.side = 1; params.side <= section::side_count(params); ++params.side) {
    auto made = section::weld_section(params);
    if (!made) return made.error();
    sides.push_back(std::move(made).value());
  }
  return sides;
}

}  // namespace seamturn::figures::detail
