// SPDX-License-Identifier: MIT
#include <algorithm>
#include <array>

#include "detail_drafts.hpp"
#include "detail_utf8.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::io::detail {

namespace {

constexpr std::array<std::string_view, 4> names = {"fillet", "square", "single-v", "single-bevel"};

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

joint::SingleV read_single_v(AttributeReader& reader) {
  joint::SingleV v;
  v.gap_mm = reader.quantity("gap", ranges::gap);
  v.root_face_mm = reader.quantity("root-face", ranges::root_face);
  v.included = reader.angle("angle", ranges::included_angle);
  return v;
}

joint::SingleBevel read_single_bevel(AttributeReader& reader) {
  joint::SingleBevel bevel;
  bevel.gap_mm = reader.quantity("gap", ranges::gap);
  bevel.root_face_mm = reader.quantity("root-face", ranges::root_face);
  bevel.bevel = reader.angle("angle", ranges::bevel_angle);
  return bevel;
}

/// The first preparation of a joint; reports when there is none or a second.
pugi::xml_node find_preparation(FileContext& context, const pugi::xml_node& joint_element) {
  pugi::xml_node found;
  for (const pugi::xml_node& child : joint_element.children()) {
    if (std::find(names.begin(), names.end(), child.name()) == names.end()) continue;
    if (!found) {
      found = child;
      continue;
    }
    context.report.error(context.file.spot(child),
                         "read.element.repeated",
                         "a second preparation <" + std::string(child.name()) +
                             "> in one joint; expected one; write a joint for each weld");
    break;
  }
  if (!found) {
    context.report.error(context.file.spot(joint_element),
                         "read.element.missing",
                         "the joint has no preparation; expected " + one_of(names) + "; add one");
  }
  return found;
}

}  // namespace

pugi::xml_node read_preparation(FileContext& context,
                                const pugi::xml_node& joint_element,
                                JointDraft& draft,
                                joint::Places& places) {
  const pugi::xml_node element = find_preparation(context, joint_element);
  if (!element) return element;
  const std::string_view name = element.name();
  AttributeReader reader(context, element);
  if (name == "fillet") draft.joint.preparation = read_fillet(reader, draft);
  if (name == "square") {
    draft.joint.preparation = joint::SquareButt{reader.quantity("gap", ranges::gap)};
  }
  if (name == "single-v") draft.joint.preparation = read_single_v(reader);
  if (name == "single-bevel") draft.joint.preparation = read_single_bevel(reader);
  if (name != "fillet") read_penetration(reader, draft);
  reader.finish(draft.key + "/" + std::string(name), places);
  check_children(context, element, {});
  return element;
}

void read_cap(FileContext& context,
              const pugi::xml_node& joint_element,
              JointDraft& draft,
              joint::Places& places) {
  const pugi::xml_node element = only_child(context, joint_element, "cap", Need::may_be_absent);
  if (!element) return;
  AttributeReader reader(context, element);
  draft.joint.cap.height_mm = reader.quantity("height", ranges::cap_height);
  draft.joint.cap.toe_lap_mm = reader.find_quantity("toe-lap", ranges::cap_height).value_or(0.0);
  if (joint_element.child("fillet")) {
    reader.error(
        "read.joint.cap_on_fillet",
        "a cap on a fillet; expected none: a fillet's size is its throat or leg; delete it");
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
