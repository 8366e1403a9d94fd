// SPDX-License-Identifier: MIT
#include <algorithm>

#include "detail_plan_xml.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/plan/lie.hpp"

namespace seamturn::io::detail {

namespace {

struct PutPath {
  pugi::xml_node seam;

  void operator()(const geom::LinePath& line) {
    pugi::xml_node node = seam.append_child("line");
    put_place(node, "from", line.from);
    put_place(node, "to", line.to);
  }
  void operator()(const geom::CirclePath& circle) {
    pugi::xml_node node = seam.append_child("circle");
    put_number(node, "radius_mm", circle.radius_mm);
    put_place(node, "centre", circle.centre);
    put_direction(node, "axis", circle.axis);
    put_direction(node, "start", circle.start);
  }
  void operator()(const geom::ArcPath& arc) {
    pugi::xml_node node = seam.append_child("arc");
    put_number(node, "radius_mm", arc.radius_mm);
    put_number(node, "sweep_deg", arc.sweep.deg());
    put_place(node, "centre", arc.centre);
    put_direction(node, "axis", arc.axis);
    put_direction(node, "start", arc.start);
  }
  void operator()(const geom::PolylinePath& polyline) {
    pugi::xml_node node = seam.append_child("polyline");
    put_flag(node, "closed", polyline.closed);
    for (const geom::Vec3& point : polyline.points) put_place(node, "at", point);
  }
};

void put_geometry(pugi::xml_node node, const joint::Seam& seam) {
  if (!seam.path) return;
  std::visit(PutPath{node}, *seam.path);
  pugi::xml_node faces = node.append_child("faces");
  put_number(faces, "between_walls_deg", seam.between_walls.deg());
  put_direction(faces, "wall-1", seam.wall_1);
  put_direction(faces, "wall-2", seam.wall_2);
  put_direction(faces, "face", seam.face);
}

/// What is welded of the seam; stations count from the start of its path, of a closed one from
/// where the passes start.
void put_welded(pugi::xml_node parent,
                const joint::Seam& seam,
                const std::vector<joint::LayerStops>& starts) {
  pugi::xml_node node = parent.append_child("welded");
  put_text_if(node, "notation", joint::length_notation(seam.asked));
  if (seam.asked.run_on_mm > 0.0) put_number(node, "run_on_mm", seam.asked.run_on_mm);
  if (seam.asked.run_off_mm > 0.0) put_number(node, "run_off_mm", seam.asked.run_off_mm);
  if (seam.asked.overlap_mm > 0.0) put_number(node, "overlap_mm", seam.asked.overlap_mm);
  if (seam.asked.end_return_mm > 0.0) put_number(node, "end_return_mm", seam.asked.end_return_mm);
  if (seam.asked.corner_clear_mm > 0.0) {
    put_number(node, "corner_clear_mm", seam.asked.corner_clear_mm);
  }
  if (seam.asked.stop_stagger_mm > 0.0 && !starts.empty()) {
    put_number(node, "stop_stagger_mm", seam.asked.stop_stagger_mm);
  }
  put_number_if(node, "crater_s", seam.asked.crater_s);
  for (const joint::LayerStops& layer : starts) {
    pugi::xml_node child = node.append_child("layer-start");
    put_count(child, "layer", layer.layer);
    put_number(child, "start_mm", layer.start_mm);
    put_number(child, "stop_mm", layer.stop_mm);
    put_flag(child, "from_end", layer.reversed);
  }
  for (const joint::Stretch& stretch : joint::stretches_of(seam)) {
    pugi::xml_node child = node.append_child("stretch");
    put_number(child, "from_mm", stretch.from_mm);
    put_number(child, "to_mm", stretch.to_mm);
  }
}

void put_settings(pugi::xml_node node, const pass::Pass& pass) {
  put_text(node, "settings", pass.settings);
  put_number(node, "feed_mm_s", pass.feed_mm_s);
  put_number(node, "voltage_v", pass.voltage_v);
  put_number(node, "current_a", pass.current_a);
  put_number(node, "travel_mm_s", pass.travel_mm_s);
  put_number(node, "weave_width_mm", pass.weave_width_mm);
  put_number(node, "weave_frequency_hz", pass.weave_frequency_hz);
  put_number(node, "gas_flow_l_min", pass.gas_flow_l_min);
  put_number(node, "tip_distance_mm", pass.tip_distance_mm);
  put_number(node, "work_angle_deg", pass.work_angle.deg());
  put_number(node, "push_deg", pass.push.deg());
  put_number(node, "arc_time_s", pass.arc_time_s);
  put_number(node, "arc_energy_kj_mm", pass.arc_energy_kj_mm);
  put_number(node, "heat_input_kj_mm", pass.heat_input_kj_mm);
}

/// Where and when: nothing for seams that are not turned.
void put_place_in_order(pugi::xml_node node,
                        const plan::Plan& plan,
                        const plan::PlannedPass& planned) {
  if (planned.stance >= 0) {
    const auto index = static_cast<std::size_t>(planned.stance);
    SEAMTURN_REQUIRE(index < plan.stances.size(), index, plan.stances.size());
    put_text(node, "stance", plan.stances[index].id);
  }
  put_number_if(node, "start_s", planned.start_s);
  put_number_if(node, "end_s", planned.end_s);
  put_flag(node, "reversed", planned.reversed);
  put_number_if(node, "tip_mm_s", planned.tip_mm_s);
  if (planned.headings) {
    put_number(node, "heading_from_deg", planned.headings->from.deg());
    put_number(node, "heading_to_deg", planned.headings->to.deg());
  }
  put_text_if(node, "torch_meets", planned.torch_meets);
  if (!planned.roll) return;
  put_number(node, "roll_deg", planned.roll->deg());
  if (planned.roll_from) put_number(node, "roll_from_deg", planned.roll_from->deg());
  if (planned.pass.arc_time_s > 0.0) {
    put_number(node, "roll_deg_s", planned.roll->deg() / planned.pass.arc_time_s);
  }
}

/// Straight up where the pass starts: across the section, out of it, and along the path; and how
/// it lies then. Nothing for seams without a place or a positioner.
void put_up(pugi::xml_node node,
            const plan::Plan& plan,
            const joint::Joint& joint,
            const joint::Seam& seam,
            const plan::PlannedPass& planned) {
  if (planned.stance < 0 || !seam.path || !plan.cell) return;
  const geom::Mat3 R_WJ = plan::rotation_WJ(plan, planned);
  const joint::SectionFrame frame =
      joint::section_frame(joint, seam, plan::start_station_mm(seam, planned));
  const auto rise = [&](const geom::Vec3& direction_J) { return (R_WJ * direction_J).z(); };
  put_number(node, "up_x", rise(frame.x));
  put_number(node, "up_y", rise(frame.y));
  put_number(node, "up_along", rise(frame.tangent));
  const auto lies = plan::lie_at_start(plan, joint, seam, planned);
  if (!lies) return;
  put_number(node, "slope_deg", lies->slope.deg());
  put_number(node, "bank_deg", lies->bank.deg());
}

void put_point(pugi::xml_node pass, const reach::TorchPose& pose) {
  pugi::xml_node node = put_place(pass, "point", pose.point);
  put_text(node, "arc", reach::arc_name(pose.arc));
  put_number(node, "torch_x", pose.torch.x());
  put_number(node, "torch_y", pose.torch.y());
  put_number(node, "torch_z", pose.torch.z());
  put_number(node, "travel_x", pose.travel.x());
  put_number(node, "travel_y", pose.travel.y());
  put_number(node, "travel_z", pose.travel.z());
}

pugi::xml_node put_pass(pugi::xml_node parent,
                        const plan::Plan& plan,
                        const plan::PlannedPass& planned) {
  const pass::Pass& pass = planned.pass;
  pugi::xml_node node = parent.append_child("pass");
  put_count(node, "number", pass.number);
  put_text(node, "role", process::role_name(pass.role));
  put_count(node, "layer", pass.layer);
  put_count(node, "bead", pass.bead);
  put_number(node, "area_mm2", pass.area_mm2);
  put_number(node, "centre_x_mm", pass.centre.x_mm);
  put_number(node, "centre_y_mm", pass.centre.y_mm);
  put_number(node, "aim_x_mm", pass.aim.x_mm);
  put_number(node, "aim_y_mm", pass.aim.y_mm);
  put_text_if(node, "limited_by", pass.limited_by);
  put_settings(node, pass);
  put_number_if(node, "start_low_c", planned.start_low_c);
  put_number_if(node, "start_high_c", planned.start_high_c);
  put_number(node, "gap_short_s", planned.gap_short_s);
  put_number(node, "gap_long_s", planned.gap_long_s);
  put_number(node, "t85_short_s", planned.t85_s);
  put_number(node, "t85_long_s", planned.t85_long_s);
  put_place_in_order(node, plan, planned);
  for (const reach::TorchPose& pose : planned.points) put_point(node, pose);
  return node;
}

}  // namespace

void put_seam(pugi::xml_node parent,
              const plan::Plan& plan,
              const joint::Joint& joint,
              const plan::PlannedSeam& seam) {
  const auto described =
      std::find_if(joint.seams.begin(), joint.seams.end(), [&](const joint::Seam& candidate) {
        return candidate.id == seam.id;
      });
  SEAMTURN_REQUIRE(described != joint.seams.end(), joint.id, seam.id);
  pugi::xml_node node = parent.append_child("seam");
  put_text(node, "id", seam.id);
  put_count(node, "side", seam.side);
  if (described->segment) {
    put_text(node, "drawn", described->segment->drawn);
    put_count(node, "segment", described->segment->number);
    put_count(node, "segments", described->segment->of);
    put_count(node, "rank", described->segment->rank + 1);
    put_number(node, "begins_mm", described->segment->begins_mm);
    if (geom::is_closed(described->segment->course)) {
      put_number(node, "round_mm", geom::path_length_mm(described->segment->course));
    }
  }
  put_text(node, "position", process::position_name(seam.position));
  put_text(node, "procedure", seam.procedure);
  put_text_if(node, "stage", seam.stage);
  put_flag(node, "turned", seam.turned);
  put_flag(node, "rolling", seam.rolling);
  put_number(node, "length_mm", seam.length_mm);
  put_number(node, "welded_mm", seam.welded_mm);
  put_number(node, "metal_kg", seam.metal_kg);
  put_number(node, "over_weld_area_ratio", seam.over_weld_area_ratio);
  put_count(node, "layers", seam.stack.layers);
  put_number(node, "arc_time_s", seam.stack.arc_time_s);
  put_number(node, "heat_input_min_kj_mm", seam.stack.heat_input_min_kj_mm);
  put_number(node, "heat_input_max_kj_mm", seam.stack.heat_input_max_kj_mm);
  put_geometry(node, *described);
  put_welded(node, *described, seam.starts);
  for (const plan::PlannedPass& pass : seam.passes) {
    put_up(put_pass(node, plan, pass), plan, joint, *described, pass);
  }
  if (seam.counted) put_counted_throat(node, *seam.counted);
  if (seam.fit_up) put_fit_up(node, *seam.fit_up);
  put_tacks(node, plan, seam.id);
}

}  // namespace seamturn::io::detail
