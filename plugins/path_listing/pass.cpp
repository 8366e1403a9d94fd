// SPDX-License-Identifier: MIT
#include <cstring>
#include <stdexcept>

#include "path_listing/listing.hpp"

namespace seamturn::path_listing {

using plan_reader::copy;
using plan_reader::copy_rounded;
using plan_reader::number;
using plan_reader::put;
using plan_reader::rounded;
using plan_reader::text;

namespace {

pugi::xml_node find_pass(pugi::xml_node seam, const char* wanted) {
  for (const pugi::xml_node pass : seam.children("pass")) {
    if (std::strcmp(text(pass, "number"), wanted) == 0) return pass;
  }
  throw std::runtime_error("seam " + std::string(text(seam, "id")) + " has no pass " + wanted);
}

/// Measure here, weld only between these temperatures. The wait is the plan's, not a permission.
void put_gate(pugi::xml_node visit, pugi::xml_node seam, pugi::xml_node pass, double wait_s) {
  const pugi::xml_node heat = seam.parent().child("heat");
  pugi::xml_node gate = visit.append_child("gate");
  put(gate, "seam", text(seam, "id"));
  put(gate, "pass", text(pass, "number"));
  plan_reader::put_gate_limits(gate, heat);
  put(gate, "measure", text(heat, "where_to_measure"));
  put(gate, "planned_wait_s", rounded(wait_s, 1));
  if (number(pass, "gap_long_s") > 0.0) {
    copy_rounded(pass, gate, 0, {"gap_short_s", "gap_long_s"});
  }
}

/// Which axis turns while the arc burns, by how much and how fast.
void put_rolling(pugi::xml_node node, pugi::xml_node visit, pugi::xml_node pass) {
  pugi::xml_node last;
  for (const pugi::xml_node axis : visit.children("axis")) last = axis;
  pugi::xml_node rolling = node.append_child("rolling");
  put(rolling, "axis", text(last, "name"));
  const bool wound = bool(pass.attribute("roll_from_deg"));
  put(rolling,
      "from_deg",
      wound ? rounded(number(pass, "roll_from_deg"), 3) : text(last, "angle_deg"));
  if (!pass.attribute("roll_deg")) {
    put(rolling, "open", "the plan does not say how far and which way; ask before welding");
    return;
  }
  put(rolling, "turn_deg", rounded(number(pass, "roll_deg"), 3));
  put(rolling, "speed_deg_s", rounded(number(pass, "roll_deg_s"), 4));
  put(rolling, "torch", "keeps its place in the cell as far as the ring runs true to the axis");
}

const char* course_of(pugi::xml_node seam) {
  for (const char* course : {"circle", "arc", "polyline"}) {
    if (seam.child(course)) return course;
  }
  return "line";
}

void put_points(pugi::xml_node node, pugi::xml_node pass) {
  int count = 0;
  for (const pugi::xml_node from : pass.children("point")) {
    pugi::xml_node point = node.append_child("point");
    put(point, "number", std::to_string(++count));
    put(point, "arc", text(from, "arc"));
    copy_rounded(from, point, 3, {"x_mm", "y_mm", "z_mm"});
    copy_rounded(
        from, point, 6, {"torch_x", "torch_y", "torch_z", "travel_x", "travel_y", "travel_z"});
  }
}

}  // namespace

void put_pass(pugi::xml_node visit,
              const plan_reader::PlanTree& plan,
              pugi::xml_node arc_event,
              double wait_s) {
  const pugi::xml_node seam = plan.seam(text(arc_event, "seam"));
  const pugi::xml_node pass = find_pass(seam, text(arc_event, "pass"));
  put_gate(visit, seam, pass, wait_s);
  pugi::xml_node node = visit.append_child("pass");
  put(node, "seam", text(seam, "id"));
  copy(pass, node, {"number", "role", "layer", "bead"});
  copy(seam, node, {"position", "procedure"});
  copy_rounded(arc_event, node, 2, {"start_s", "end_s"});
  copy(pass, node, {"reversed"});
  copy_rounded(pass, node, 1, {"slope_deg", "bank_deg"});
  const double travel_mm_s = number(pass, pass.attribute("tip_mm_s") ? "tip_mm_s" : "travel_mm_s");
  put(node, "travel_mm_s", rounded(travel_mm_s, 3));
  put(node, "travel_mm_min", rounded(travel_mm_s * 60.0, 0));
  copy_rounded(pass,
               node,
               3,
               {"feed_mm_s",
                "voltage_v",
                "current_a",
                "gas_flow_l_min",
                "tip_distance_mm",
                "weave_width_mm",
                "weave_frequency_hz",
                "work_angle_deg",
                "push_deg",
                "heading_from_deg",
                "heading_to_deg"});
  copy(pass, node, {"torch_meets", "settings"});
  put(node, "course", course_of(seam));
  const pugi::xml_node welded = seam.child("welded");
  copy(welded, node, {"notation"});
  copy_rounded(welded, node, 3, {"run_on_mm", "run_off_mm", "overlap_mm", "end_return_mm"});
  if (plan_reader::is_true(visit, "rolling")) put_rolling(node, visit, pass);
  put_points(node, pass);
}

}  // namespace seamturn::path_listing
