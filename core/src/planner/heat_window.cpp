// SPDX-License-Identifier: MIT
// The permitted band of heat input, handed to the choice of settings once and then checked once:
// what does not close is said, never iterated.
#include <algorithm>

#include "detail_heat.hpp"
#include "detail_joints.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/heat/heat_input_band.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::fixed_text;
using base::Severity;
using procedure::HeatWindow;

HeatWindow stated_window(const joint::StatedHeat& stated) {
  HeatWindow window;
  window.t85_least_s = *stated.t85_min_s;
  window.t85_most_s = *stated.t85_max_s;
  window.stated_by = "weldment file";
  window.status = base::Status::proposed;
  window.binds = true;
  return window;
}

/// Steels of a joint that state a window; those that may bind, where there are any.
std::vector<const material::Steel*> steels_with_window(const JointWork& work) {
  std::vector<const material::Steel*> steels;
  for (const material::Steel* steel : {work.steel_1, work.steel_2}) {
    const bool is_told = !steels.empty() && steels.front() == steel;
    if (steel->t85 && !is_told) steels.push_back(steel);
  }
  const auto is_remembered = [](const material::Steel* steel) {
    return steel->t85->status == base::Status::from_memory;
  };
  if (!std::all_of(steels.begin(), steels.end(), is_remembered))
    std::erase_if(steels, is_remembered);
  return steels;
}

/// The file's own window; else what both steels state has in common. What is remembered only is
/// shown and binds nobody.
std::optional<HeatWindow> window_of(const JointWork& work) {
  const joint::StatedHeat& stated = work.joint->heat;
  if (stated.t85_min_s && stated.t85_max_s) return stated_window(stated);
  std::optional<HeatWindow> common;
  for (const material::Steel* steel : steels_with_window(work)) {
    const material::CoolingWindow& row = *steel->t85;
    if (!common) {
      common.emplace();
      common->t85_least_s = row.least_s;
      common->t85_most_s = row.most_s;
      common->status = row.status;
      common->binds = row.status != base::Status::from_memory;
    }
    common->t85_least_s = std::max(common->t85_least_s, row.least_s);
    common->t85_most_s = std::min(common->t85_most_s, row.most_s);
    common->stated_by += (common->stated_by.empty() ? "steel " : ", steel ") + steel->designation +
                         " (" + row.source + ")";
  }
  if (common && common->t85_least_s >= common->t85_most_s) {
    common->refused = "the windows of the two steels have nothing in common";
  }
  return common;
}

/// Both ends on the careful side: the thicker part cools a weld faster, the thinner more slowly.
void set_band(const JointWork& work, HeatWindow& window) {
  heat::BandParams params;
  params.weld = work.cooling_case;
  params.coolest_start_c = work.heat.preheat_c;
  params.hottest_start_c = work.heat.interpass_max_c;
  params.t85_least_s = window.t85_least_s;
  params.t85_most_s = window.t85_most_s;
  params.thickness_mm = thicker_mm(work);
  const auto thick = heat::heat_input_band(params);
  params.thickness_mm = thinner_mm(work);
  const auto thin = heat::heat_input_band(params);
  if (!thick || !thin) {
    window.refused = thick ? thin.error().text : thick.error().text;
    return;
  }
  if (thick->least_kj_mm > thin->most_kj_mm) {
    window.refused = "the thicker part needs at least " + fixed_text(thick->least_kj_mm, 2) +
                     " kJ/mm and the thinner permits at most " + fixed_text(thin->most_kj_mm, 2) +
                     " kJ/mm";
    return;
  }
  window.heat_input_least_kj_mm = thick->least_kj_mm;
  window.heat_input_most_kj_mm = thin->most_kj_mm;
}

/// Stacks laid again inside a band that stack_request keeps, one a seam and position. Nothing where
/// a seam closes in no position; `why` then tells of the last.
std::optional<std::vector<std::vector<StackChoice>>> stacks_inside(const Inputs& inputs,
                                                                   const JointWork& work,
                                                                   std::string& why) {
  std::vector<std::vector<StackChoice>> all;
  for (const SeamWork& seam : work.seams) {
    all.emplace_back();
    for (const StackChoice& choice : seam.stacks) {
      base::Outcome<pass::PassStack> stack =
          pass::make_pass_stack(stack_request(inputs, work, seam, choice.position));
      if (stack) {
        all.back().push_back({choice.position, std::move(stack).value(), {}});
      } else {
        why = stack.error().text;
      }
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

void tell(const Inputs& inputs,
          const JointWork& work,
          const std::string& text,
          std::vector<Finding>& findings) {
  findings.push_back(
      joint_finding(inputs, *work.joint, Severity::warning, "heat.window.not_closed", text));
}

void tell_open(const Inputs& inputs,
               const JointWork& work,
               const std::string& why,
               std::vector<Finding>& findings) {
  const HeatWindow& window = *work.heat.window;
  tell(inputs,
       work,
       "the t8/5 of " + base::digits_text(window.t85_least_s) + " to " +
           base::digits_text(window.t85_most_s) + " s (" + window.stated_by +
           ") is not kept: " + why +
           "; ways out: other settings or wire, another preheat or interpass maximum, fewer "
           "positions; until then the sheet shows what the settings give",
       findings);
}

/// What the preheat was found with must still hold for the stacks laid inside the window.
void check_preheat_again(const Inputs& inputs,
                         const JointWork& work,
                         const std::string& band,
                         std::vector<Finding>& findings) {
  const double now_kj_mm = lowest_heat_input_kj_mm(inputs, work);
  if (now_kj_mm < work.heat.lowest_heat_input_kj_mm - 1e-9) {
    tell(inputs,
         work,
         "the passes inside " + band + " bring " + fixed_text(now_kj_mm, 2) +
             " kJ/mm at least, the preheat was found with " +
             fixed_text(work.heat.lowest_heat_input_kj_mm, 2) +
             " kJ/mm: it is too low; state preheat= with its reason, or another window",
         findings);
  }
  if (work.joint->heat.single_run_reduction && !may_be_reduced(work, work.heat.cet_plate)) {
    findings.push_back(reduction_refused(inputs, work));
  }
}

}  // namespace

void set_window(JointWork& work) {
  procedure::HeatLimits& limits = work.heat;
  limits.window = window_of(work);
  if (limits.window && limits.window->refused.empty()) set_band(work, *limits.window);
}

void keep_window(const Inputs& inputs, JointWork& work, std::vector<Finding>& findings) {
  if (!work.heat.window || !work.heat.window->binds) return;
  HeatWindow& window = *work.heat.window;
  if (!window.refused.empty()) {
    tell_open(inputs, work, window.refused, findings);
    return;
  }
  window.kept = true;
  if (is_kept(work)) return;
  const std::string band = fixed_text(*window.heat_input_least_kj_mm, 2) + " to " +
                           fixed_text(*window.heat_input_most_kj_mm, 2) + " kJ/mm";
  std::string why;
  auto stacks = stacks_inside(inputs, work, why);
  if (!stacks) {
    window.kept = false;
    tell_open(inputs, work, "no settings of the library lie within " + band + ": " + why, findings);
    return;
  }
  for (std::size_t i = 0; i < work.seams.size(); ++i) {
    work.seams[i].stacks = std::move((*stacks)[i]);
  }
  check_preheat_again(inputs, work, band, findings);
}

}  // namespace seamturn::planner::detail
