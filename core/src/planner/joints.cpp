// SPDX-License-Identifier: MIT
#include <algorithm>

#include "detail_heat.hpp"
#include "detail_joints.hpp"
#include "detail_preheating.hpp"
#include "detail_stances.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/segments.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;

const material::Steel* find_steel(const Library& library, const std::string& designation) {
  for (const material::Steel& steel : library.steels) {
    if (steel.designation == designation) return &steel;
  }
  return nullptr;
}

/// Extent of a part that can take up heat: of a plate across the seam in its own plane (its smaller
/// side when the seam has no place), the length of a tube, bar or forging, the width of a ring.
double heated_width_mm(const joint::Member& member, const joint::Seam& seam) {
  const joint::Shape& shape = member.shape;
  if (const auto* plate = std::get_if<joint::Plate>(&shape)) {
    if (!seam.path) return std::min(plate->length_mm, plate->width_mm);
    const geom::Mat3& R_JM = member.X_JM.rotation;
    const geom::Vec3 across = R_JM.col(2).cross(geom::path_middle(*seam.path).tangent);
    return std::abs(across.dot(R_JM.col(0))) * plate->length_mm +
           std::abs(across.dot(R_JM.col(1))) * plate->width_mm;
  }
  if (const auto* tube = std::get_if<joint::Tube>(&shape)) return tube->length_mm;
  if (const auto* bar = std::get_if<joint::Bar>(&shape)) return bar->length_mm;
  if (const auto* forging = std::get_if<joint::Forging>(&shape)) {
    double length_mm = 0.0;
    for (const joint::ForgingStep& step : forging->steps) length_mm += step.length_mm;
    return length_mm;
  }
  const joint::Ring& ring = std::get<joint::Ring>(shape);
  return 0.5 * (ring.outer_diameter_mm - ring.inner_diameter_mm);
}

/// Positions the shop works in for a family: those with a working tolerance and settings.
std::vector<process::WeldPosition> usable_positions(const Library& library,
                                                    process::WeldFamily family,
                                                    const std::string& wire) {
  std::vector<process::WeldPosition> usable;
  for (const process::WeldPosition position :
       pass::positions_with_settings(library.settings, wire)) {
    const bool has_tolerance =
        std::any_of(library.tolerances.begin(), library.tolerances.end(), [&](const auto& row) {
          return row.position == position;
        });
    const bool no_such_fillet =
        family == process::WeldFamily::groove && position == process::WeldPosition::pb;
    if (has_tolerance && !no_such_fillet) usable.push_back(position);
  }
  return usable;
}

std::optional<section::WeldSection> make_section(const Inputs& inputs,
                                                 const joint::Joint& joint,
                                                 const joint::Seam& seam,
                                                 std::vector<Finding>& findings) {
  base::Outcome<section::WeldSection> section = section::weld_section(section_params(joint, seam));
  if (!section) {
    findings.push_back(
        joint_finding(inputs, joint, Severity::error, section.error().code, section.error().text));
    return std::nullopt;
  }
  return std::move(section).value();
}

/// A position in which a seam cannot be laid, and why not.
struct NotLaid {
  process::WeldPosition position;
  base::Refusal why;
};

/// One fault is told once: for all segments of a seam, and for all positions with one code.
void tell_not_laid(const Inputs& inputs,
                   const JointWork& work,
                   const joint::Seam& seam,
                   const std::vector<NotLaid>& refused,
                   std::vector<Finding>& findings) {
  std::vector<Finding> told;
  for (const NotLaid& one : refused) {
    const std::string position(process::position_name(one.position));
    const auto same = std::find_if(told.begin(), told.end(), [&](const Finding& finding) {
      return finding.code == one.why.code;
    });
    if (same != told.end()) {
      same->text += "; nor does it close in " + position;
      continue;
    }
    told.push_back(
        Finding{Severity::error,
                one.why.code,
                "seam " + joint::drawn_id(seam) + " in " + position + ": " + one.why.text,
                place_of(inputs.weldment, "joint/" + work.joint->id),
                {}});
  }
  for (const Finding& finding : told) {
    const bool again = std::any_of(findings.begin(), findings.end(), [&](const Finding& before) {
      return before.code == finding.code && before.text == finding.text;
    });
    if (!again) findings.push_back(finding);
  }
}

void lay_stacks(const Inputs& inputs,
                const JointWork& work,
                SeamWork& seam,
                std::vector<Finding>& findings) {
  const process::WeldFamily family = joint::position_family(*work.joint);
  std::vector<NotLaid> refused;
  for (const process::WeldPosition position :
       usable_positions(inputs.library, family, work.wire->id)) {
    base::Outcome<pass::PassStack> stack =
        pass::make_pass_stack(stack_request(inputs, work, seam, position));
    if (stack) {
      seam.stacks.push_back(StackChoice{position, std::move(stack).value(), {}});
    } else {
      refused.push_back({position, stack.error()});
    }
  }
  if (!seam.stacks.empty()) return;
  tell_not_laid(inputs, work, *seam.seam, refused, findings);
  if (refused.empty()) {
    findings.push_back(Finding{
        Severity::error,
        "plan.position.none",
        "seam " + seam.seam->id + ": no library has both settings for wire " + work.wire->id +
            " and a working tolerance for one position; add <settings> or <working-tolerance> rows",
        place_of(inputs.weldment, "joint/" + work.joint->id),
        {}});
  }
}

void set_gaps(const Inputs& inputs,
              const JointWork& work,
              SeamWork& seam,
              std::vector<Finding>& findings) {
  for (StackChoice& choice : seam.stacks) {
    std::vector<double> heat_inputs;
    for (const pass::Pass& pass : choice.stack.passes) {
      heat_inputs.push_back(pass.heat_input_kj_mm);
    }
    base::Outcome<Gaps> gaps = find_gaps(inputs, work, heat_inputs);
    if (!gaps) {
      findings.push_back(joint_finding(
          inputs, *work.joint, Severity::error, gaps.error().code, gaps.error().text));
      return;
    }
    choice.gaps = std::move(gaps).value();
  }
}

std::ptrdiff_t error_count(const std::vector<Finding>& findings) {
  return std::count_if(findings.begin(), findings.end(), [](const Finding& finding) {
    return finding.severity == Severity::error;
  });
}

/// A tight weld is laid in two passes at least, so that no pore goes through: no bead may be more
/// than half of it.
void set_duty_limits(const Inputs& inputs, const JointWork& work, SeamWork& seam) {
  if (work.joint->duty != joint::Duty::tight) return;
  seam.limits = inputs.library.bead_limits;
  process::BeadLimit half;
  half.id = "tight-two-passes";
  half.family = bead_family(*work.joint);
  half.area_max_mm2 = 0.5 * seam.section.area_mm2 * (1.0 + 1e-9);
  half.status = base::Status::common_practice;
  half.source = "common practice";
  seam.limits.push_back(std::move(half));
}

/// What settings cannot lay in two passes is laid in one; the plan then says that it is tight by
/// one pass only (plan.duty.one_pass).
void lay_for_duty(const Inputs& inputs,
                  const JointWork& work,
                  SeamWork& seam,
                  std::vector<Finding>& findings) {
  set_duty_limits(inputs, work, seam);
  if (!seam.limits.empty()) {
    std::vector<Finding> tried;
    lay_stacks(inputs, work, seam, tried);
    if (!seam.stacks.empty()) return base::append_findings(findings, tried);
    seam.limits.clear();
  }
  lay_stacks(inputs, work, seam, findings);
}

std::optional<JointWork> work_joint(const Inputs& inputs,
                                    const joint::Joint& joint,
                                    std::vector<Finding>& findings) {
  JointWork work;
  work.joint = &joint;
  work.member_1 = joint::find_member(inputs.weldment, joint.member_1);
  work.member_2 = joint::find_member(inputs.weldment, joint.member_2);
  SEAMTURN_REQUIRE(work.member_1 != nullptr && work.member_2 != nullptr, joint.id);
  work.steel_1 = find_steel(inputs.library, work.member_1->steel);
  work.steel_2 = find_steel(inputs.library, work.member_2->steel);
  work.wire = &wire_of(inputs, joint);
  SEAMTURN_REQUIRE(work.steel_1 != nullptr && work.steel_2 != nullptr, joint.id);
  work.cooling_case = heat::cooling_case_of(joint.type);
  check_preparation(inputs, joint, findings);

  const auto errors_before = error_count(findings);
  for (const joint::Seam& seam : joint.seams) {
    std::optional<section::WeldSection> section = make_section(inputs, joint, seam, findings);
    if (!section) return std::nullopt;
    const bool of_course = !seam.segment || seam.segment->number == 1;
    if (&seam == &joint.seams.front() || (joint::has_two_sides(joint) && of_course)) {
      base::append_findings(findings, section->findings);
    }
    work.seams.push_back(SeamWork{&seam, std::move(*section), {}, {}});
    lay_for_duty(inputs, work, work.seams.back(), findings);
  }
  if (error_count(findings) != errors_before) return std::nullopt;

  const std::optional<procedure::HeatLimits> heat = heat_limits(inputs, work, findings);
  if (!heat) return std::nullopt;
  work.heat = *heat;
  return work;
}

}  // namespace

process::WeldFamily bead_family(const joint::Joint& joint) {
  return joint::is_fillet(joint.preparation) ? process::WeldFamily::fillet
                                             : process::WeldFamily::groove;
}

double thinner_mm(const JointWork& work) {
  return std::min(joint::wall_thickness_mm(work.member_1->shape),
                  joint::wall_thickness_mm(work.member_2->shape));
}

double thicker_mm(const JointWork& work) {
  return std::max(joint::wall_thickness_mm(work.member_1->shape),
                  joint::wall_thickness_mm(work.member_2->shape));
}

section::SectionParams section_params(const joint::Joint& joint, const joint::Seam& seam) {
  section::SectionParams params = drawn_params(joint, seam);
  if (auto* fillet = std::get_if<joint::Fillet>(&params.preparation)) {
    *fillet = joint::laid_fillet(*fillet);
  }
  return params;
}

section::SectionParams drawn_params(const joint::Joint& joint, const joint::Seam& seam) {
  section::SectionParams params;
  params.preparation = joint.preparation;
  params.thickness_mm = joint.thickness_mm;
  params.depth_mm = joint.depth_mm;
  params.cap = joint.cap;
  params.side = seam.side;
  params.gouge = joint.gouge;
  if (joint.type != joint::JointType::butt) params.between_plates = seam.between_walls;
  params.along_plate = joint.type == joint::JointType::tee;
  return params;
}

pass::StackRequest stack_request(const Inputs& inputs,
                                 const JointWork& work,
                                 const SeamWork& seam,
                                 process::WeldPosition position) {
  pass::StackRequest request;
  request.section = &seam.section;
  request.family = bead_family(*work.joint);
  request.position = position;
  request.length_mm = joint::welded_length_mm(*seam.seam);
  request.wire = work.wire;
  request.settings = inputs.library.settings;
  request.limits = inputs.library.bead_limits;
  if (!seam.limits.empty()) request.limits = seam.limits;
  if (work.heat.window && work.heat.window->kept) {
    request.heat_input_min_kj_mm = work.heat.window->heat_input_least_kj_mm;
    request.heat_input_max_kj_mm = work.heat.window->heat_input_most_kj_mm;
  }
  return request;
}

cooling::CoolingPlate cooling_plate(const Inputs& inputs, const JointWork& work) {
  cooling::CoolingPlate plate;
  plate.thickness_mm = thinner_mm(work);
  plate.heat_paths = work.cooling_case == heat::CoolingCase::fillet_tee ? 3 : 2;
  // Two paths' worth of plate: of three, each takes a third of the heat.
  const joint::Seam& seam = work.joint->seams.front();
  plate.width_mm = (heated_width_mm(*work.member_1, seam) + heated_width_mm(*work.member_2, seam)) *
                   2.0 / plate.heat_paths;
  plate.ambient_c = inputs.weldment.ambient_c;
  plate.start_c = work.heat.preheat_c;
  return plate;
}

base::Outcome<Gaps> find_gaps(const Inputs& inputs,
                              const JointWork& work,
                              const std::vector<double>& heat_inputs_kj_mm) {
  const auto waits = cooling::waits_between_passes(
      cooling_plate(inputs, work), heat_inputs_kj_mm, work.heat.interpass_max_c);
  if (!waits) return waits.error();
  Gaps gaps{{0.0}, {0.0}};
  for (const cooling::Wait& wait : waits.value()) {
    gaps.longer_s.push_back(wait.longer_s());
    gaps.shorter_s.push_back(std::min(wait.tail_s, wait.lump_s));
  }
  return gaps;
}

std::vector<JointWork> work_joints(const Inputs& inputs, std::vector<Finding>& findings) {
  std::vector<JointWork> joints;
  joints.reserve(inputs.weldment.joints.size());
  for (const joint::Joint& joint : inputs.weldment.joints) {
    if (std::optional<JointWork> work = work_joint(inputs, joint, findings)) {
      joints.push_back(std::move(*work));
    }
  }
  share_zones(inputs, joints);
  std::vector<JointWork> closed;
  for (JointWork& work : joints) {
    if (!check_conflict(inputs, work, findings)) continue;
    set_window(work);
    keep_window(inputs, work, findings);
    for (SeamWork& seam : work.seams) {
      add_light_stacks(inputs, work, seam);
      set_layer_times(work, seam);
      set_gaps(inputs, work, seam, findings);
    }
    closed.push_back(std::move(work));
  }
  return closed;
}

std::optional<double> stated_yield_mpa(const material::Steel& steel, const joint::Member& member) {
  const auto* band = material::find_band(steel, joint::wall_thickness_mm(member.shape));
  return band != nullptr ? band->yield_mpa : std::nullopt;
}

std::vector<SeamRef> all_seams(const std::vector<JointWork>& joints) {
  std::vector<SeamRef> seams;
  for (const JointWork& joint : joints) {
    for (const SeamWork& seam : joint.seams) seams.push_back(SeamRef{&joint, &seam});
  }
  return seams;
}

Finding joint_finding(const Inputs& inputs,
                      const joint::Joint& joint,
                      Severity severity,
                      std::string code,
                      const std::string& text) {
  const base::Place place = place_of(inputs.weldment, "joint/" + joint.id);
  return base::said_of_joints(Finding{severity, std::move(code), text, place, {}}, {joint.id});
}

base::Place place_of(const joint::Weldment& weldment, const std::string& key) {
  return weldment.places.find(key).value_or(base::Place{});
}

}  // namespace seamturn::planner::detail
