// SPDX-License-Identifier: MIT
// The permitted band of heat input, handed to the choice of settings once and then checked once:
// what does not close is said, never iterated.
#include <algorithm>

#include "detail_heat.hpp"
#include "detail_joints.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/heat/heat_input.hpp"
#include "seamturn/heat/heat_input_band.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::fixed_text;
using base::Severity;
using procedure::HeatWindow;

/// The file's own window; else what both steels state has in common. What is remembered only is
/// shown and binds nobody.
std::optional<HeatWindow> window_of(const JointWork& work) {
  const joint::StatedHeat& stated = work.joint->heat;
  if (stated.t85_min_s && stated.t85_max_s) {
    HeatWindow window{*stated.t85_min_s, *stated.t85_max_s, "weldment file", {}, true, {}, {}, {}};
    window.status = base::Status::proposed;
    return window;
  }
  std::optional<HeatWindow> common;
  for (const material::Steel* steel : {work.steel_1, work.steel_2}) {
    if (!steel->t85) continue;
    const material::CoolingWindow& row = *steel->t85;
    if (!common) {
      common = HeatWindow{row.least_s, row.most_s, "", row.status, false, {}, {}, {}};
      common->stated_by = "steel " + steel->designation + " (" + row.source + ")";
      common->binds = row.status != base::Status::from_memory;
      continue;
    }
    common->t85_least_s = std::max(common->t85_least_s, row.least_s);
    common->t85_most_s = std::min(common->t85_most_s, row.most_s);
    common->binds = common->binds || row.status != base::Status::from_memory;
  }
  if (common && common->t85_least_s >= common->t85_most_s) return std::nullopt;
  return common;
}

/// Settings with the travel that keeps the heat input between the ends; rows that cannot are left
/// out. Tacks are left as they are: the preheat counts them, the window does not.
std::vector<process::LinkedSettings> settings_inside(
    const std::vector<process::LinkedSettings>& all, const HeatWindow& window) {
  std::vector<process::LinkedSettings> inside;
  for (process::LinkedSettings row : all) {
    if (row.role != process::PassRole::tack) {
      const auto at_1_mm_s =
          heat::heat_input_kj_mm(row.process, {row.voltage_v, row.current_a, 1.0});
      if (!at_1_mm_s) continue;
      row.travel_min_mm_s =
          std::max(row.travel_min_mm_s, *at_1_mm_s / *window.heat_input_most_kj_mm);
      row.travel_max_mm_s =
          std::min(row.travel_max_mm_s, *at_1_mm_s / *window.heat_input_least_kj_mm);
      if (row.travel_min_mm_s > row.travel_max_mm_s) continue;
      row.travel_preferred_mm_s =
          std::clamp(row.travel_preferred_mm_s, row.travel_min_mm_s, row.travel_max_mm_s);
    }
    inside.push_back(row);
  }
  return inside;
}

/// Stacks laid again, one a seam and position; nothing where a seam closes in no position.
std::optional<std::vector<std::vector<StackChoice>>> stacks_inside(const Inputs& inputs,
                                                                   const JointWork& work) {
  const std::vector<process::LinkedSettings> settings =
      settings_inside(inputs.library.settings, *work.heat.window);
  std::vector<std::vector<StackChoice>> all;
  for (const SeamWork& seam : work.seams) {
    all.emplace_back();
    for (const StackChoice& choice : seam.stacks) {
      pass::StackRequest request = stack_request(inputs, work, seam, choice.position);
      request.settings = settings;
      base::Outcome<pass::PassStack> stack = pass::make_pass_stack(request);
      if (stack) all.back().push_back({choice.position, std::move(stack).value(), {}});
    }
    if (all.back().empty()) return std::nullopt;
  }
  return all;
}

bool is_kept(const JointWork& work) {
  const HeatWindow& window = *work.heat.window;
  for (const SeamWork& seam : work.seams) {
    for (const StackChoice& choice : seam.stacks) {
      if (choice.stack.heat_input_min_kj_mm < *window.heat_input_least_kj_mm - 1e-9 ||
          choice.stack.heat_input_max_kj_mm > *window.heat_input_most_kj_mm + 1e-9) {
        return false;
      }
    }
  }
  return true;
}

void tell_open(const Inputs& inputs,
               const JointWork& work,
               const std::string& why,
               std::vector<Finding>& findings) {
  const HeatWindow& window = *work.heat.window;
  findings.push_back(
      Finding{Severity::warning,
              "heat.window.not_closed",
              "joint " + work.joint->id + ": the t8/5 of " + base::digits_text(window.t85_least_s) +
                  " to " + base::digits_text(window.t85_most_s) + " s (" + window.stated_by +
                  ") is not kept: " + why +
                  "; ways out: other settings or wire, another preheat or interpass maximum, fewer "
                  "positions; until then the sheet shows what the settings give",
              place_of(inputs.weldment, "joint/" + work.joint->id),
              {}});
}

}  // namespace

double t85_thickness_mm(const JointWork& work) {
  return std::min(joint::wall_thickness_mm(work.member_1->shape),
                  joint::wall_thickness_mm(work.member_2->shape));
}

void set_window(JointWork& work) {
  procedure::HeatLimits& limits = work.heat;
  limits.window = window_of(work);
  if (!limits.window) return;
  HeatWindow& window = *limits.window;
  heat::BandParams params;
  params.weld = work.cooling_case;
  params.thickness_mm = t85_thickness_mm(work);
  params.coolest_start_c = limits.preheat_c;
  params.hottest_start_c = limits.interpass_max_c;
  params.t85_least_s = window.t85_least_s;
  params.t85_most_s = window.t85_most_s;
  const auto band = heat::heat_input_band(params);
  if (!band) {
    window.refused = band.error().text;
    return;
  }
  window.heat_input_least_kj_mm = band->least_kj_mm;
  window.heat_input_most_kj_mm = band->most_kj_mm;
}

void keep_window(const Inputs& inputs, JointWork& work, std::vector<Finding>& findings) {
  if (!work.heat.window || !work.heat.window->binds) return;
  const HeatWindow& window = *work.heat.window;
  if (!window.refused.empty()) {
    tell_open(inputs, work, window.refused, findings);
    return;
  }
  if (is_kept(work)) return;
  const std::string band = fixed_text(*window.heat_input_least_kj_mm, 2) + " to " +
                           fixed_text(*window.heat_input_most_kj_mm, 2) + " kJ/mm";
  auto stacks = stacks_inside(inputs, work);
  if (!stacks) {
    tell_open(inputs, work, "no settings of the library lie within " + band, findings);
    return;
  }
  for (std::size_t i = 0; i < work.seams.size(); ++i) {
    work.seams[i].stacks = std::move((*stacks)[i]);
  }
  if (lowest_heat_input_kj_mm(inputs, work) < work.heat.lowest_heat_input_kj_mm - 1e-9) {
    tell_open(inputs,
              work,
              "settings within " + band + " bring less heat than the preheat was found with",
              findings);
  }
}

}  // namespace seamturn::planner::detail
