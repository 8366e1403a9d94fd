// SPDX-License-Identifier: MIT
// Which preheat governs a joint, on its own and as a neighbour of others.
#include <algorithm>
#include <cmath>

#include "detail_heat.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/cooling/warm_strip.hpp"
#include "seamturn/heat/preheat_cet.hpp"
#include "seamturn/heat/preheat_zone.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::fixed_text;
using base::Severity;
using procedure::HeatLimits;
using procedure::PreheatAnswer;

std::string basis_of(const std::string& method) {
  if (method == "cet") return "CET method (formula from memory of EN 1011-2)";
  if (method == "aws-category") return "AWS D1.1 table of categories";
  if (method == "table-c1") return "EN 1011-2 table C.1, no preheat";
  return "Ito-Bessyo (older practice)";
}

/// The highest of the answers that may govern; ties: the first.
const PreheatAnswer& highest(const std::vector<PreheatAnswer>& answers) {
  const PreheatAnswer* best = nullptr;
  for (const PreheatAnswer& answer : answers) {
    if (!answer.may_govern) continue;
    if (best == nullptr || *answer.preheat_c > *best->preheat_c) best = &answer;
  }
  SEAMTURN_REQUIRE(best != nullptr, answers.size());  // the CET method always may
  return *best;
}

bool is_single_run_fillet(const JointWork& work) {
  return joint::is_fillet(work.joint->preparation) &&
         std::all_of(work.seams.begin(), work.seams.end(), [](const SeamWork& seam) {
           return std::all_of(seam.stacks.begin(), seam.stacks.end(), [](const StackChoice& c) {
             return c.stack.passes.size() == 1;
           });
         });
}

class Choice {
 public:
  Choice(const Inputs& inputs, const JointWork& work, HeatLimits& limits, std::vector<Finding>& all)
      : inputs_(inputs), work_(work), stated_(work.joint->heat), limits_(limits), findings_(all) {}

  bool make() {
    const PreheatAnswer& top = highest(limits_.answers);
    asked_c_ = *top.preheat_c;
    asked_by_ = basis_of(top.method);
    if (stated_.preheat_c) {
      take(*stated_.preheat_c, "stated in the weldment file: " + stated_.preheat_reason);
      return true;
    }
    if (!stated_.preheat_by.empty()) return take_named();
    if (stated_.single_run_reduction) return take_reduced();
    take(asked_c_, asked_by_);
    return true;
  }

 private:
  void tell(Severity severity, std::string code, const std::string& text) {
    findings_.push_back(joint_finding(inputs_, *work_.joint, severity, std::move(code), text));
  }

  void take(double preheat_c, const std::string& basis) {
    if (preheat_c < asked_c_) {
      tell(Severity::warning,
           "heat.preheat.stated_below_computed",
           "the file leads to a preheat of " + fixed_text(preheat_c, 0) + " degC, the " +
               asked_by_ + " asks for " + fixed_text(asked_c_, 0) + " degC; reason given: \"" +
               stated_.preheat_reason + "\"; the welding coordinator must agree");
    }
    const double ambient_c = inputs_.weldment.ambient_c;
    limits_.needs_heating = preheat_c > ambient_c;
    limits_.preheat_c = std::max(preheat_c, ambient_c);
    limits_.own_preheat_c = limits_.preheat_c;
    limits_.preheat_basis = basis;
  }

  bool take_named() {
    const auto named = std::find_if(
        limits_.answers.begin(), limits_.answers.end(), [this](const PreheatAnswer& answer) {
          return answer.method == stated_.preheat_by;
        });
    SEAMTURN_REQUIRE(named != limits_.answers.end(), stated_.preheat_by);
    if (!named->may_govern && !named->no_preheat) {
      tell(Severity::error,
           "heat.preheat.method_silent",
           "preheat-by names " + stated_.preheat_by + ", which does not speak here: " +
               named->says + "; name another method, or state preheat= with its reason");
      return false;
    }
    take(named->preheat_c.value_or(inputs_.weldment.ambient_c),
         basis_of(named->method) + ", named in the weldment file: " + stated_.preheat_reason);
    return true;
  }

  bool take_reduced() {
    if (!may_be_reduced(work_, limits_.cet_plate)) {
      findings_.push_back(reduction_refused(inputs_, work_));
      return false;
    }
    // The reduction belongs to the CET method; what others ask for stays.
    std::vector<PreheatAnswer> answers = limits_.answers;
    const auto cet = std::find_if(answers.begin(), answers.end(), [](const PreheatAnswer& answer) {
      return answer.method == "cet";
    });
    *cet->preheat_c -= heat::single_run_fillet_reduction_k;
    const PreheatAnswer& top = highest(answers);
    const std::string less = "CET method less " +
                             fixed_text(heat::single_run_fillet_reduction_k, 0) +
                             " K for a single-run fillet (both from memory of EN 1011-2)";
    take(*top.preheat_c,
         (&top == &*cet ? less : basis_of(top.method) + ", above the " + less) + ": " +
             stated_.preheat_reason);
    return true;
  }

  const Inputs& inputs_;
  const JointWork& work_;
  const joint::StatedHeat& stated_;
  HeatLimits& limits_;
  std::vector<Finding>& findings_;
  double asked_c_ = 0.0;
  std::string asked_by_;
};

/// A gate the heating itself overshoots: it ends so far above the preheat.
void tell_narrow_gate(const Inputs& inputs, const JointWork& work, std::vector<Finding>& findings) {
  const HeatLimits& limits = work.heat;
  const double open_k = limits.interpass_max_c - limits.preheat_c;
  if (!limits.needs_heating || open_k >= cooling::heated_above_preheat_k) return;
  findings.push_back(joint_finding(
      inputs,
      *work.joint,
      Severity::warning,
      "heat.preheat.narrow_gate",
      "only " + fixed_text(open_k, 1) + " K lie between preheat " +
          fixed_text(limits.preheat_c, 0) + " degC and interpass maximum " +
          fixed_text(limits.interpass_max_c, 0) + " degC (" + limits.interpass_basis +
          "): heating ends " + fixed_text(cooling::heated_above_preheat_k, 0) +
          " K above the preheat, too hot to weld, and the clock holds waits nobody keeps; ways "
          "out: lower-hydrogen wire, more heat input, a real analysis instead of the grade's "
          "limits, or a higher maximum where steel, wire and record allow it"));
}

}  // namespace

bool may_be_reduced(const JointWork& work, double cet_plate) {
  const bool keeps_margin =
      work.wire->cet && heat::governing_cet(cet_plate, *work.wire->cet) <= cet_plate;
  return keeps_margin && is_single_run_fillet(work);
}

Finding reduction_refused(const Inputs& inputs, const JointWork& work) {
  return joint_finding(
      inputs,
      *work.joint,
      Severity::error,
      "heat.preheat.reduction",
      "preheat-less asks for the reduction of a single-run fillet; it needs a fillet of one "
      "run in every position, and a wire whose CET is stated and at least 0.03 % below the "
      "plates'; delete preheat-less=, or change weld or wire");
}

bool choose_preheat(const Inputs& inputs,
                    const JointWork& work,
                    HeatLimits& limits,
                    std::vector<Finding>& findings) {
  return Choice(inputs, work, limits, findings).make();
}

bool check_conflict(const Inputs& inputs, const JointWork& work, std::vector<Finding>& findings) {
  const HeatLimits& limits = work.heat;
  if (limits.preheat_c < limits.interpass_max_c) {
    tell_narrow_gate(inputs, work, findings);
    return true;
  }
  findings.push_back(joint_finding(
      inputs,
      *work.joint,
      Severity::error,
      "heat.preheat.above_interpass",
      "preheat " + fixed_text(limits.preheat_c, 0) + " degC" +
          (limits.neighbour.empty() ? ""
                                    : " (asked for by joint " + limits.neighbour + " beside it)") +
          " is not below the interpass maximum of " + fixed_text(limits.interpass_max_c, 0) +
          " degC (" + limits.interpass_basis +
          "); ways out: lower-hydrogen wire, more heat input, a real analysis instead of the "
          "grade's limits, another steel"));
  return false;
}

}  // namespace seamturn::planner::detail
