// SPDX-License-Identifier: MIT
// What the sheet is for: joints, seams, steels, thicknesses, preparation.
#include <cmath>
#include <cstring>

#include "procedure_sheet/sheet.hpp"

namespace seamturn::procedure_sheet {

using plan_reader::copy;
using plan_reader::copy_rounded;
using plan_reader::number;
using plan_reader::put;
using plan_reader::rounded;
using plan_reader::text;

namespace {

pugi::xml_node find_steel(const Subject& subject, const char* designation) {
  for (const pugi::xml_node steel : subject.plan.root().child("steels").children("steel")) {
    if (std::strcmp(text(steel, "designation"), designation) == 0) return steel;
  }
  return {};
}

/// As sizes stand on a sheet.
std::string sheet_mm(pugi::xml_node node, const std::string& attribute) {
  return rounded(number(node, attribute.c_str()), 2);
}

void put_part(pugi::xml_node parent, const Subject& subject, const std::string& side) {
  pugi::xml_node node = parent.append_child("part");
  put(node, "side", side);
  const char* steel = text(subject.procedure, ("steel_" + side).c_str());
  put(node, "steel", steel);
  put(node, "thickness_mm", sheet_mm(subject.procedure, "thickness_" + side + "_mm"));
  put_item(node, "standard", text(find_steel(subject, steel), "standard"));
  put_item(node, "group (ISO/TR 15608)", text(subject.procedure, ("group_" + side).c_str()));
}

void put_gouging(pugi::xml_node node, const Subject& subject, const std::string& root) {
  if (root != "gouge") {
    put_item(node, "back gouging", "none planned");
    return;
  }
  const pugi::xml_node preparation = subject.joint.child("preparation");
  put_item(
      node,
      "back gouging, to sound metal: least depth and radius, mm",
      sheet_mm(preparation, "gouge_depth_mm") + " and " + sheet_mm(preparation, "gouge_radius_mm"));
  const pugi::xml_node row = subject.plan.root().child("consumables").child("gouging");
  if (row) {
    put_item(node, "back gouging: method", text(row, "method"));
  } else {
    put_open(node, "back gouging: method");
  }
}

/// Backing and gouging follow from the decision on the root.
void put_root_items(pugi::xml_node node, const Subject& subject) {
  const std::string root = text(subject.joint.child("preparation"), "root");
  const bool fillet = std::strcmp(text(subject.joint.child("preparation"), "kind"), "fillet") == 0;
  if (root == "open" || root == "gouge" || root == "both-sides") {
    put_item(node, "backing", "none planned");
  } else {
    put_item(node, "backing", root);
    put_open(node, "backing: material and dimensions");
  }
  if (fillet) {
    put_item(node, "back gouging", "none planned");
    put_item(node, "backing gas", "none planned");
  } else {
    put_gouging(node, subject, root);
    put_open(node, "backing gas");
  }
}

/// What is welded beside the length drawn. A segment between others ends nowhere.
void put_additions(pugi::xml_node child, pugi::xml_node seam) {
  constexpr double shown_mm = 0.05;
  const pugi::xml_node welded = seam.child("welded");
  if (std::abs(number(seam, "welded_mm") - number(seam, "length_mm")) > shown_mm) {
    copy_rounded(seam, child, 1, {"welded_mm"});
  }
  copy_rounded(welded, child, 1, {"run_on_mm", "run_off_mm"});
  const bool inner = seam.attribute("segment") && number(seam, "segment") > 1.0 &&
                     number(seam, "segment") < number(seam, "segments");
  if (!inner) copy_rounded(welded, child, 1, {"end_return_mm"});
  copy_rounded(welded, child, 0, {"overlap_mm"});
}

/// Metal on tabs is no part of the work.
void put_tabs(pugi::xml_node node, const Subject& subject) {
  for (const pugi::xml_node named : subject.procedure.children("seam")) {
    const pugi::xml_node welded = subject.plan.seam(text(named, "id")).child("welded");
    if (!welded.attribute("run_on_mm") && !welded.attribute("run_off_mm")) continue;
    put_item(node,
             "run-on and run-off tabs",
             "where the scope gives their lengths; taken off after welding and the ends ground "
             "flush, as the responsible welding coordinator says (common practice)");
    return;
  }
}

}  // namespace

std::string drawn_station(pugi::xml_node seam, double station_mm) {
  if (seam.attribute("begins_mm")) station_mm += number(seam, "begins_mm");
  if (seam.attribute("round_mm")) {
    const double round_mm = number(seam, "round_mm");
    station_mm -= round_mm * std::floor(station_mm / round_mm);
  }
  return rounded(station_mm, 0);
}

void put_scope(pugi::xml_node sheet, const Subject& subject) {
  pugi::xml_node node = sheet.append_child("scope");
  for (const pugi::xml_node named : subject.procedure.children("joint")) {
    const pugi::xml_node joint = subject.plan.entry("joints", "joint", text(named, "id"));
    copy(joint, node.append_child("joint"), {"id", "type", "member_1", "member_2", "purpose"});
  }
  for (const pugi::xml_node named : subject.procedure.children("seam")) {
    const pugi::xml_node seam = subject.plan.seam(text(named, "id"));
    pugi::xml_node child = node.append_child("seam");
    copy(seam, child, {"id", "position"});
    copy_rounded(seam, child, 1, {"length_mm"});
    const char* notation = text(seam.child("welded"), "notation");
    if (*notation != '\0') put(child, "welded", notation);
    put_additions(child, seam);
    copy(seam, child, {"rolling"});
    if (seam.attribute("segment")) copy(seam, child, {"segment", "segments", "rank"});
    for (const pugi::xml_node layer : seam.child("welded").children("layer-start")) {
      pugi::xml_node start = child.append_child("layer-start");
      copy(layer, start, {"layer", "from_end"});
      for (const char* name : {"start_mm", "stop_mm"}) {
        put(start, name, drawn_station(seam, number(layer, name)));
      }
    }
  }
}

void put_parent_metal(pugi::xml_node sheet, const Subject& subject) {
  pugi::xml_node node = sheet.append_child("parent-metal");
  put_part(node, subject, "1");
  put_part(node, subject, "2");
  const bool first_thinner =
      number(subject.procedure, "thickness_1_mm") <= number(subject.procedure, "thickness_2_mm");
  pugi::xml_node range = node.append_child("thickness");
  put(range,
      "least_mm",
      sheet_mm(subject.procedure, first_thinner ? "thickness_1_mm" : "thickness_2_mm"));
  put(range,
      "most_mm",
      sheet_mm(subject.procedure, first_thinner ? "thickness_2_mm" : "thickness_1_mm"));
  put(range, "basis", "as planned only; a wider range needs a qualification record");
  if (*text(subject.procedure, "diameter_mm") != '\0') {
    put_item(node, "diameter of the ring seam, mm", sheet_mm(subject.procedure, "diameter_mm"));
  } else {
    put_item(node, "outside diameter", "not applicable: no ring seam");
  }
}

void put_preparation(pugi::xml_node sheet, const Subject& subject) {
  const pugi::xml_node preparation = subject.joint.child("preparation");
  const pugi::xml_node section =
      subject.joint.find_child_by_attribute("section", "side", text(subject.procedure, "side"));
  pugi::xml_node node = sheet.append_child("preparation");
  put(node, "joint_type", text(subject.joint, "type"));
  copy(preparation, node, {"kind", "cover"});
  copy_rounded(
      preparation, node, 2, {"thickness_mm",       "depth_mm",        "leg_1_mm",
                             "leg_2_mm",           "gap_mm",          "root_face_mm",
                             "included_angle_deg", "bevel_angle_deg", "included_angle_2_deg",
                             "bevel_angle_2_deg",  "first_face_deg",  "lower_depth_mm",
                             "lower_angle_deg",    "cut_1_mm",        "cut_2_mm",
                             "radius_mm",          "radius_2_mm",     "width_mm",
                             "length_mm",          "fill_mm",         "bulge_mm",
                             "reach_mm",           "gouge_depth_mm",  "gouge_radius_mm",
                             "gouge_flank_deg",    "cover_leg_mm",    "cap_height_mm"});
  copy_rounded(section, node, 2, {"throat_mm", "area_mm2"});
  pugi::xml_node sketch = node.append_child("sketch");
  for (const pugi::xml_node corner : section.children("corner")) {
    copy_rounded(corner, sketch.append_child("corner"), 3, {"x_mm", "y_mm"});
  }
  put_item(
      node,
      "welded from",
      subject.joint.child("seam").next_sibling("seam") ? "both sides, one seam each" : "one side");
  if (*text(preparation, "first_share") != '\0') {
    put_item(node,
             "part of side 1's metal laid before side 2 is begun, %",
             rounded(100.0 * number(preparation, "first_share"), 0));
  }
  put_tabs(node, subject);
  put_root_items(node, subject);
  put_open(node, "method of edge preparation");
  put_open(node, "cleaning before and between runs");
  put_open(node, subject.seam.child("tacks").child("tack") ? "jigging" : "tacking and jigging");
  if (!subject.seam.child("fit-up")) put_open(node, "fit-up tolerances");
}

}  // namespace seamturn::procedure_sheet
