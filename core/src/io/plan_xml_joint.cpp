// SPDX-License-Identifier: MIT
#include "detail_plan_xml.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::io::detail {

namespace {

using joint::GrooveForm;

/// Angles of one side, named by what the drawing shows: included where both faces lean.
void put_side(pugi::xml_node node, const joint::Groove& groove, int number) {
  const joint::GrooveSide& side = number == 1 ? groove.side_1 : groove.side_2;
  const bool both_lean = groove.form == GrooveForm::v || groove.form == GrooveForm::compound_v;
  const std::string tail = number == 1 ? "" : "_2";
  put_number(node,
             ((both_lean ? "included_angle" : "bevel_angle") + tail + "_deg").c_str(),
             side.angle.deg());
  if (groove.is_double && side.depth_mm > 0.0) {
    put_number(node, number == 1 ? "cut_1_mm" : "cut_2_mm", side.depth_mm);
  }
  if (side.radius_mm > 0.0) put_number(node, ("radius" + tail + "_mm").c_str(), side.radius_mm);
  if (side.first_face) put_number(node, "first_face_deg", side.first_face->deg());
  if (groove.form != GrooveForm::compound_v) return;
  put_number(node, "lower_depth_mm", side.lower_depth_mm);
  put_number(node, "lower_angle_deg", side.lower_angle.deg());
}

struct PutPreparation {
  pugi::xml_node node;

  void operator()(const joint::Fillet& fillet) {
    put_number(node, "leg_1_mm", fillet.leg_1_mm);
    put_number(node, "leg_2_mm", fillet.leg_2_mm);
    if (fillet.bulge_mm != 0.0) put_number(node, "bulge_mm", fillet.bulge_mm);
    if (fillet.gap_mm > 0.0) put_number(node, "gap_mm", fillet.gap_mm);
    if (fillet.reach_mm > 0.0) put_number(node, "reach_mm", fillet.reach_mm);
  }
  void operator()(const joint::Groove& groove) {
    put_number(node, "gap_mm", groove.gap_mm);
    if (groove.form == GrooveForm::square) return;
    put_number(node, "root_face_mm", groove.root_face_mm);
    put_side(node, groove, 1);
    if (groove.is_double) put_side(node, groove, 2);
  }
  void operator()(const joint::Plug& plug) {
    put_number(node, "width_mm", plug.width_mm);
    put_number(node, "length_mm", plug.length_mm);
    put_number(node, "fill_mm", plug.fill_mm);
  }
};

void put_preparation(pugi::xml_node parent, const joint::Joint& joint) {
  pugi::xml_node node = parent.append_child("preparation");
  put_text(node, "kind", joint::preparation_name(joint.preparation));
  put_text(node, "root", joint::root_decision_name(joint.root));
  if (joint::has_two_sides(joint)) {
    put_number(node, "first_share", joint::first_share_of(joint));
  }
  put_number(node, "thickness_mm", joint.thickness_mm);
  put_number(node, "depth_mm", joint.depth_mm);
  put_number(node, "cap_height_mm", joint.cap.height_mm);
  put_number(node, "cap_toe_lap_mm", joint.cap.toe_lap_mm);
  if (joint.cap.shape != joint::CoverShape::cap) {
    put_text(node, "cover", joint::cover_shape_name(joint.cap.shape));
    put_number(node, "cover_leg_mm", joint.cap.leg_mm);
  }
  if (joint.gouge.depth_mm > 0.0) {
    put_number(node, "gouge_depth_mm", joint.gouge.depth_mm);
    put_number(node, "gouge_radius_mm", joint.gouge.radius_mm);
    put_number(node, "gouge_flank_deg", joint.gouge.flank.deg());
  }
  std::visit(PutPreparation{node}, joint.preparation);
}

void put_section(pugi::xml_node parent, const section::WeldSection& section, int side) {
  pugi::xml_node node = parent.append_child("section");
  put_count(node, "side", side);
  put_number(node, "area_mm2", section.area_mm2);
  put_number(node, "cap_area_mm2", section.cap_area_mm2);
  put_number(node, "opening_mm", section.opening_mm);
  put_number(node, "height_mm", section.height_mm);
  put_number(node, "throat_mm", section.throat_mm);
  put_number(node, "cap_width_mm", section.cap_width_mm);
  put_number(node, "seam_line_x_mm", section.seam_line_x_mm);
  put_number(node, "seam_line_y_mm", section.seam_line_y_mm);
  for (const section::Point& point : section.outline) {
    pugi::xml_node corner = node.append_child("corner");
    put_number(corner, "x_mm", point.x_mm);
    put_number(corner, "y_mm", point.y_mm);
  }
}

}  // namespace

void put_joints(pugi::xml_node root, const plan::Plan& plan) {
  pugi::xml_node joints = root.append_child("joints");
  for (const plan::PlannedJoint& planned : plan.joints) {
    const joint::Joint* described = joint::find_joint(plan.weldment, planned.id);
    SEAMTURN_REQUIRE(described != nullptr, planned.id);
    pugi::xml_node node = joints.append_child("joint");
    put_text(node, "id", planned.id);
    put_text(node, "type", joint::joint_type_name(described->type));
    put_text(node, "member_1", described->member_1);
    put_text(node, "member_2", described->member_2);
    put_text(node, "steel_1", planned.steel_1);
    put_text(node, "steel_2", planned.steel_2);
    put_text(node, "quality", described->quality);
    put_text_if(node, "purpose", described->purpose);
    put_text(node, "duty", joint::duty_name(described->duty));
    put_text_if(node, "record", described->heat.record);
    for (const std::string& before : described->after) {
      put_text(node.append_child("after"), "joint", before);
    }
    put_preparation(node, *described);
    int side = 0;
    for (const section::WeldSection* section : plan::sections_of(planned)) {
      put_section(node, *section, ++side);
    }
    put_heat(node, planned);
    if (planned.size) put_weld_size(node, *planned.size);
    for (const plan::PlannedSeam& seam : planned.seams) put_seam(node, plan, *described, seam);
  }
}

}  // namespace seamturn::io::detail
