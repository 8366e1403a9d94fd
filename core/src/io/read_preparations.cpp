// SPDX-License-Identifier: MIT
#include <algorithm>
#include <array>

#include "detail_drafts.hpp"
#include "detail_utf8.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::io::detail {

namespace {

void misplaced_size(AttributeReader& reader, const char* attribute, const std::string& found) {
  reader.error(attribute,
               "read.fillet.size",
               found +
                   "; expected exactly one of throat=, leg=, or leg-1= with leg-2=; throat is "
                   "the a of a drawing, leg the z; keep the one the drawing names");
}

joint::Fillet read_fillet(AttributeReader& reader, JointDraft& draft) {
  joint::Fillet fillet;
  draft.throat_mm = reader.find_quantity("throat", ranges::weld_size);
  const std::optional<double> leg = reader.find_quantity("leg", ranges::weld_size);
  const std::optional<double> leg_1 = reader.find_quantity("leg-1", ranges::weld_size);
  const std::optional<double> leg_2 = reader.find_quantity("leg-2", ranges::weld_size);
  if (reader.has("angle")) {
    draft.dihedral = base::Angle::rad(reader.quantity("angle", ranges::dihedral));
  }
  fillet.leg_1_mm = leg.value_or(leg_1.value_or(0.0));
  fillet.leg_2_mm = leg.value_or(leg_2.value_or(0.0));
  fillet.bulge_mm = reader.find_quantity("bulge", ranges::bulge).value_or(0.0);
  fillet.gap_mm = reader.find_quantity("gap", ranges::gap).value_or(0.0);
  fillet.reach_mm = reader.find_quantity("reach", ranges::gap).value_or(0.0);
  fillet.over_weld_ratio = reader.find_quantity("over-weld", ranges::over_weld).value_or(1.0);
  const int kinds = int(draft.throat_mm.has_value()) + int(leg.has_value()) +
                    int(leg_1.has_value() || leg_2.has_value());
  if (kinds == 0) misplaced_size(reader, "throat", "the fillet has no size");
  if (kinds > 1) {
    const char* second = leg_2 ? "leg-2" : leg_1 ? "leg-1" : "leg";
    misplaced_size(reader, second, "the fillet has more than one size");
  } else if (leg_1.has_value() != leg_2.has_value()) {
    misplaced_size(reader, leg_1 ? "leg-1" : "leg-2", "one leg of two is given");
  }
  return fillet;
}

void read_penetration(AttributeReader& reader, JointDraft& draft) {
  if (reader.find_text("penetration", "full") == "full") return;
  draft.penetration_mm = reader.find_quantity("penetration", ranges::depth);
}

void read_side(AttributeReader& reader, const joint::Groove& groove, joint::GrooveSide& side) {
  using joint::GrooveForm;
  const bool both_lean = groove.form == GrooveForm::v || groove.form == GrooveForm::compound_v;
  side.angle = reader.angle("angle", both_lean ? ranges::included_angle : ranges::bevel_angle);
  if (groove.form == GrooveForm::v && reader.has("first-face")) {
    side.first_face = reader.angle("first-face", ranges::first_face);
  }
  if (groove.form == GrooveForm::u || groove.form == GrooveForm::j) {
    side.radius_mm = reader.quantity("radius", ranges::root_radius);
  }
  if (groove.form == GrooveForm::compound_v) {
    side.lower_depth_mm = reader.quantity("lower-depth", ranges::depth);
    side.lower_angle = reader.angle("lower-angle", ranges::included_angle);
  }
}

/// The second side is like the first where nothing else is said.
void read_second_side(AttributeReader& reader, joint::Groove& groove) {
  const bool both_lean = groove.form == joint::GrooveForm::v;
  groove.side_2 = groove.side_1;
  if (reader.has("angle-2")) {
    groove.side_2.angle =
        reader.angle("angle-2", both_lean ? ranges::included_angle : ranges::bevel_angle);
    groove.side_2.first_face.reset();
  }
  if (groove.side_2.radius_mm > 0.0) {
    groove.side_2.radius_mm =
        reader.find_quantity("radius-2", ranges::root_radius).value_or(groove.side_1.radius_mm);
  }
  groove.side_1.depth_mm = reader.find_quantity("depth-1", ranges::depth).value_or(0.0);
  groove.side_2.depth_mm = reader.find_quantity("depth-2", ranges::depth).value_or(0.0);
}

joint::Groove read_groove(AttributeReader& reader, const joint::GrooveName& word) {
  joint::Groove groove;
  groove.form = word.form;
  groove.is_double = word.is_double;
  groove.gap_mm = reader.quantity("gap", ranges::gap);
  if (word.form == joint::GrooveForm::square) return groove;
  groove.root_face_mm = reader.quantity("root-face", ranges::root_face);
  read_side(reader, groove, groove.side_1);
  if (word.is_double) read_second_side(reader, groove);
  return groove;
}

joint::Plug read_plug(AttributeReader& reader, std::string_view name) {
  joint::Plug plug;
  if (name == "plug") {
    plug.width_mm = plug.length_mm = reader.quantity("diameter", ranges::weld_size);
  } else {
    plug.width_mm = reader.quantity("width", ranges::weld_size);
    plug.length_mm = reader.quantity("length", ranges::size);
  }
  plug.fill_mm = reader.quantity("fill", ranges::depth);
  return plug;
}

/// Reads what an element of this name says; nothing when it names no preparation.
std::optional<joint::Preparation> read_named(AttributeReader& reader,
                                             std::string_view name,
                                             JointDraft& draft) {
  if (name == "fillet") return read_fillet(reader, draft);
  if (name == "plug" || name == "slot") return read_plug(reader, name);
  for (const joint::GrooveName& word : joint::groove_names()) {
    if (word.name != name) continue;
    joint::Groove groove = read_groove(reader, word);
    read_penetration(reader, draft);
    return groove;
  }
  return std::nullopt;
}

/// The first preparation of a joint; reports when there is none or a second.
Element find_preparation(FileContext& context, const Element& joint_element) {
  Element found;
  const std::span<const std::string_view> names = joint::preparation_names();
  for (const Element& child : joint_element.children()) {
    if (std::find(names.begin(), names.end(), std::string_view(child.name())) == names.end())
      continue;
    if (!found) {
      found = child;
      continue;
    }
    context.report.error(context.spot(child),
                         "read.element.repeated",
                         "a second preparation <" + std::string(child.name()) +
                             "> in one joint; expected one; write a joint for each weld");
    break;
  }
  if (!found) {
    context.report.error(context.spot(joint_element),
                         "read.element.missing",
                         "the joint has no preparation; expected " + one_of(names) + "; add one");
  }
  return found;
}

}  // namespace

Element read_preparation(FileContext& context,
                         const Element& joint_element,
                         JointDraft& draft,
                         joint::Places& places) {
  const Element element = find_preparation(context, joint_element);
  if (!element) return element;
  const std::string_view name = element.name();
  AttributeReader reader(context, element);
  if (auto preparation = read_named(reader, name, draft)) draft.joint.preparation = *preparation;
  reader.finish(draft.key + "/" + std::string(name), places);
  check_children(context, element, {});
  return element;
}

namespace {

void read_cover(AttributeReader& reader, JointDraft& draft) {
  constexpr std::array<std::string_view, 2> shapes = {"corner-fillet", "full-cover"};
  draft.joint.cap.leg_mm = reader.quantity("leg", ranges::weld_size);
  draft.joint.cap.shape = reader.word("model", shapes) == 0 ? joint::CoverShape::corner_fillet
                                                            : joint::CoverShape::full_cover;
  if (draft.joint.type == joint::JointType::butt ||
      !joint::is_one_edge_cut(draft.joint.preparation)) {
    reader.error("read.joint.cover",
                 "a cover on this joint; expected it on a bevel or J in a tee or corner, where it "
                 "is the reinforcing fillet; write <cap> instead");
  }
}

void read_gouge_of(AttributeReader& reader, JointDraft& draft) {
  draft.joint.gouge.depth_mm = reader.quantity("depth", ranges::depth);
  draft.joint.gouge.radius_mm = reader.quantity("radius", ranges::root_radius);
  draft.joint.gouge.flank =
      reader.has("flank") ? reader.angle("flank", ranges::first_face) : joint::usual_gouge_flank;
}

}  // namespace

void read_gouge(FileContext& context,
                const Element& joint_element,
                JointDraft& draft,
                joint::Places& places) {
  const Element element = only_child(context, joint_element, "gouge", Need::may_be_absent);
  const bool decided = draft.joint.root == joint::RootDecision::gouge;
  if (bool(element) != decided) {
    context.report.error(context.spot(element ? element : joint_element),
                         "read.joint.gouge",
                         decided ? "root=\"gouge\" without what is gouged; expected <gouge "
                                   "depth=\"...\" radius=\"...\"/> in the joint; add it"
                                 : "a <gouge> without the decision; expected root=\"gouge\" on the "
                                   "joint; add it or delete the element");
  }
  if (!element) return;
  AttributeReader reader(context, element);
  read_gouge_of(reader, draft);
  reader.finish(draft.key + "/gouge", places);
  check_children(context, element, {});
}

void read_cap(FileContext& context,
              const Element& joint_element,
              JointDraft& draft,
              joint::Places& places) {
  const Element cover = only_child(context, joint_element, "cover", Need::may_be_absent);
  if (cover) {
    AttributeReader reader(context, cover);
    read_cover(reader, draft);
    reader.finish(draft.key + "/cover", places);
    check_children(context, cover, {});
  }
  const Element element = only_child(context, joint_element, "cap", Need::may_be_absent);
  if (!element) return;
  AttributeReader reader(context, element);
  if (cover) {
    reader.error("read.joint.cover",
                 "a cap beside a cover; expected one of them: the cover is the cap of a tee; "
                 "delete one");
  }
  draft.joint.cap.height_mm = reader.quantity("height", ranges::cap_height);
  draft.joint.cap.toe_lap_mm = reader.find_quantity("toe-lap", ranges::cap_height).value_or(0.0);
  if (!std::holds_alternative<joint::Groove>(draft.joint.preparation)) {
    reader.error("read.joint.cap_on_fillet",
                 "a cap on a " + std::string(joint::preparation_name(draft.joint.preparation)) +
                     "; expected none: its size is stated in full; delete it");
  }
  if (draft.joint.type == joint::JointType::tee && draft.joint.cap.toe_lap_mm > 0.0) {
    reader.error("toe-lap",
                 "read.joint.toe_lap",
                 "a cap in a tee laps " + base::digits_text(draft.joint.cap.toe_lap_mm) +
                     " mm beyond the groove, on the first member's side into the plate; expected "
                     "0 mm; delete toe-lap");
  }
  reader.finish(draft.key + "/cap", places);
  check_children(context, element, {});
}

}  // namespace seamturn::io::detail
