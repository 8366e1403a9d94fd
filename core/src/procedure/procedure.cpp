// SPDX-License-Identifier: MIT
#include "seamturn/procedure/procedure.hpp"

#include <algorithm>
#include <cmath>
#include <variant>

#include "seamturn/base/number_text.hpp"

namespace seamturn::procedure {
namespace {

using base::fixed_text;
using joint::Joint;

// Sizes that differ by rounding only are the same size on the sheet.
[[nodiscard]] bool is_same(double a, double b) {
  return std::abs(a - b) <= 1e-6 * std::max({1.0, std::abs(a), std::abs(b)});
}
[[nodiscard]] bool is_same(base::Angle a, base::Angle b) {
  return is_same(a.deg(), b.deg());
}

[[nodiscard]] bool is_same(const joint::Fillet& a, const joint::Fillet& b) {
  return is_same(a.leg_1_mm, b.leg_1_mm) && is_same(a.leg_2_mm, b.leg_2_mm) &&
         is_same(a.bulge_mm, b.bulge_mm) && is_same(a.gap_mm, b.gap_mm) &&
         is_same(a.reach_mm, b.reach_mm) && is_same(a.over_weld_ratio, b.over_weld_ratio);
}
[[nodiscard]] bool is_same(const joint::GrooveSide& a, const joint::GrooveSide& b) {
  return is_same(a.depth_mm, b.depth_mm) && is_same(a.angle, b.angle) &&
         is_same(a.first_face.value_or(a.angle / 2.0), b.first_face.value_or(b.angle / 2.0)) &&
         is_same(a.radius_mm, b.radius_mm) && is_same(a.lower_depth_mm, b.lower_depth_mm) &&
         is_same(a.lower_angle, b.lower_angle);
}
[[nodiscard]] bool is_same(const joint::Groove& a, const joint::Groove& b) {
  return a.form == b.form && a.is_double == b.is_double && is_same(a.gap_mm, b.gap_mm) &&
         is_same(a.root_face_mm, b.root_face_mm) && is_same(a.side_1, b.side_1) &&
         is_same(a.side_2, b.side_2);
}
[[nodiscard]] bool is_same(const joint::Plug& a, const joint::Plug& b) {
  return is_same(a.width_mm, b.width_mm) && is_same(a.length_mm, b.length_mm) &&
         is_same(a.fill_mm, b.fill_mm);
}

[[nodiscard]] bool is_same_preparation(const joint::Preparation& a, const joint::Preparation& b) {
  return a.index() == b.index() && std::visit(
                                       [&](const auto& mine) {
                                         using Mine = std::decay_t<decltype(mine)>;
                                         return is_same(mine, *std::get_if<Mine>(&b));
                                       },
                                       a);
}

[[nodiscard]] bool is_same_joint(const SeamWork& a, const SeamWork& b) {
  const Joint& mine = *a.joint;
  const Joint& other = *b.joint;
  return mine.type == other.type && mine.root == other.root && mine.quality == other.quality &&
         mine.duty == other.duty && is_same_preparation(mine.preparation, other.preparation) &&
         is_same(mine.cap.height_mm, other.cap.height_mm) &&
         is_same(mine.cap.toe_lap_mm, other.cap.toe_lap_mm) && mine.cap.shape == other.cap.shape &&
         is_same(mine.cap.leg_mm, other.cap.leg_mm) &&
         is_same(mine.gouge.depth_mm, other.gouge.depth_mm) &&
         is_same(mine.gouge.radius_mm, other.gouge.radius_mm) && a.seam->side == b.seam->side &&
         is_same(mine.thickness_mm, other.thickness_mm) && is_same(mine.depth_mm, other.depth_mm) &&
         is_same(a.seam->between_walls, b.seam->between_walls) &&
         is_same(a.section->area_mm2, b.section->area_mm2);
}

[[nodiscard]] bool is_same_metal(const SeamWork& a, const SeamWork& b) {
  return a.steel_1 == b.steel_1 && a.steel_2 == b.steel_2 && a.group_1 == b.group_1 &&
         a.group_2 == b.group_2 && is_same(a.thickness_1_mm, b.thickness_1_mm) &&
         is_same(a.thickness_2_mm, b.thickness_2_mm) && a.closed == b.closed &&
         is_same(a.diameter_mm, b.diameter_mm) && a.wire->id == b.wire->id &&
         a.gas->id == b.gas->id && is_same(a.heat->preheat_c, b.heat->preheat_c) &&
         is_same(a.heat->interpass_max_c, b.heat->interpass_max_c) &&
         is_same(a.hold->hours, b.hold->hours);
}

// Arc time is left out: it follows from the length of the seam.
[[nodiscard]] bool is_same_pass(const pass::Pass& a, const pass::Pass& b) {
  return a.role == b.role && a.layer == b.layer && a.bead == b.bead && a.settings == b.settings &&
         is_same(a.area_mm2, b.area_mm2) && is_same(a.travel_mm_s, b.travel_mm_s) &&
         is_same(a.feed_mm_s, b.feed_mm_s) && is_same(a.voltage_v, b.voltage_v) &&
         is_same(a.current_a, b.current_a) && is_same(a.work_angle, b.work_angle) &&
         is_same(a.push, b.push) && is_same(a.aim.x_mm, b.aim.x_mm) &&
         is_same(a.aim.y_mm, b.aim.y_mm);
}

[[nodiscard]] bool is_welded_alike(const SeamWork& a, const SeamWork& b) {
  return a.stack->position == b.stack->position && is_same_joint(a, b) && is_same_metal(a, b) &&
         std::equal(a.stack->passes.begin(),
                    a.stack->passes.end(),
                    b.stack->passes.begin(),
                    b.stack->passes.end(),
                    is_same_pass);
}

// A least size as the drawing asks for it, never rounded above: "8.0", "9.52".
[[nodiscard]] std::string least_text(double mm) {
  const double down_mm = std::floor(mm * 100.0 + 1e-6) / 100.0;
  std::string text = fixed_text(down_mm, 2);
  if (text.back() == '0') text.pop_back();
  return text;
}

// In the words of the drawing; what is laid beyond it on purpose is no limit.
[[nodiscard]] std::string fillet_line(const joint::Fillet& fillet) {
  if (fillet.stated_throat_mm) {
    return "size: throat at least " + least_text(*fillet.stated_throat_mm) +
           " mm, by gauge, both legs";
  }
  const std::string first = least_text(fillet.leg_1_mm);
  if (is_same(fillet.leg_1_mm, fillet.leg_2_mm)) {
    return "size: both legs at least " + first + " mm, by gauge";
  }
  return "size: leg at least " + first + " mm along the first member, " +
         least_text(fillet.leg_2_mm) + " mm along the second, by gauge";
}

[[nodiscard]] std::string size_line(const SeamWork& work) {
  if (const auto* fillet = std::get_if<joint::Fillet>(&work.joint->preparation)) {
    return fillet_line(*fillet);
  }
  if (const auto* plug = std::get_if<joint::Plug>(&work.joint->preparation)) {
    return "size: every hole filled " + least_text(plug->fill_mm) + " mm deep, fused all round";
  }
  if (work.joint->cap.leg_mm > 0.0) {
    return "size: groove filled, and a fillet with legs of at least " +
           least_text(work.joint->cap.leg_mm) + " mm over it, by gauge";
  }
  return work.joint->depth_mm + 1e-6 < work.joint->thickness_mm
             ? "size: penetration " + least_text(work.joint->depth_mm) +
                   " mm cannot be seen from outside; by the procedure's own proof"
             : "size: groove filled flush or above over the whole length";
}

[[nodiscard]] std::string root_line(const SeamWork& work) {
  const bool plug = std::holds_alternative<joint::Plug>(work.joint->preparation);
  if (work.section->is_fillet || plug) {
    return {};
  }
  switch (work.joint->root) {
    case joint::RootDecision::steel_backing:
      return "root: the backing stays; its fusion cannot be seen from outside";
    case joint::RootDecision::ceramic_backing:
      return "root: visual after the ceramic is taken off";
    case joint::RootDecision::gouge:
      return "root: after gouging: sound metal over the whole length, visual and by crack test, "
             "before the second side is welded";
    case joint::RootDecision::both_sides:
      return "root: closed from both sides, cannot be seen; its fusion is proved by the procedure "
             "test";
    case joint::RootDecision::open:
      break;
  }
  return "root: visual from the far side wherever it can be reached";
}

[[nodiscard]] std::string hold_line(const SeamWork& work) {
  const heat::HoldTime& hold = *work.hold;
  const std::string time = hold.cooling_only
                               ? "when the weld is cold"
                               : "at least " + fixed_text(hold.hours, 0) + " h after the last pass";
  return "hold time before final testing: " + time + " (" + hold.row + ", " + hold.column +
         "; EN 1090-2:2008 table 23, later editions not seen; EN 1011-2 advises 16 h in general); "
         "longer for thick, restrained or high-strength joints as the coordinator says; the start "
         "of "
         "the wait goes into the test report";
}

[[nodiscard]] std::vector<std::string> inspection_lines(const SeamWork& work) {
  std::vector<std::string> lines = {"quality level ISO 5817-" + work.joint->quality,
                                    "visual: the whole length, before any other test (ISO 17637)",
                                    size_line(work)};
  if (std::string root = root_line(work); !root.empty()) {
    lines.push_back(std::move(root));
  }
  lines.push_back(hold_line(work));
  lines.push_back(
      "further tests: method and extent by the contract, the execution class and the responsible "
      "welding coordinator; none is decided here");
  return lines;
}

[[nodiscard]] std::string procedure_id(std::size_t number) {
  return (number < 10 ? "P0" : "P") + std::to_string(number);
}

[[nodiscard]] Procedure new_procedure(const SeamWork& work, std::size_t number) {
  Procedure made;
  made.id = procedure_id(number);
  made.position = work.stack->position;
  made.wire = work.wire->id;
  made.gas = work.gas->id;
  made.steel_1 = work.steel_1;
  made.steel_2 = work.steel_2;
  made.group_1 = work.group_1;
  made.group_2 = work.group_2;
  made.thickness_1_mm = work.thickness_1_mm;
  made.thickness_2_mm = work.thickness_2_mm;
  made.side = work.seam->side;
  made.closed = work.closed;
  made.diameter_mm = work.diameter_mm;
  made.inspection = inspection_lines(work);
  made.qualification =
      "preliminary: no qualification record covers this procedure; release only by the "
      "responsible welding coordinator";
  return made;
}

}  // namespace

std::vector<Procedure> group_procedures(const std::vector<SeamWork>& work) {
  std::vector<Procedure> procedures;
  std::vector<const SeamWork*> first_of;
  for (const SeamWork& seam : work) {
    SEAMTURN_REQUIRE(seam.joint != nullptr && seam.seam != nullptr && seam.section != nullptr);
    SEAMTURN_REQUIRE(seam.stack != nullptr && seam.heat != nullptr && seam.hold != nullptr &&
                     seam.wire != nullptr && seam.gas != nullptr);
    const auto like = std::find_if(first_of.begin(), first_of.end(), [&](const SeamWork* first) {
      return is_welded_alike(*first, seam);
    });
    const auto index = static_cast<std::size_t>(like - first_of.begin());
    if (like == first_of.end()) {
      first_of.push_back(&seam);
      procedures.push_back(new_procedure(seam, procedures.size() + 1));
    }
    Procedure& procedure = procedures[index];
    procedure.seams.push_back(seam.seam->id);
    auto& joints = procedure.joints;
    if (std::find(joints.begin(), joints.end(), seam.joint->id) == joints.end()) {
      joints.push_back(seam.joint->id);
    }
  }
  return procedures;
}

}  // namespace seamturn::procedure
