// SPDX-License-Identifier: MIT
// The loop preheat - heat input - settings is cut open here: preheat from the lowest heat input the
// joint may see, tacks included, whatever position is chosen later.
#include <algorithm>
#include <limits>

#include "detail_heat.hpp"
#include "detail_joints.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/heat/interpass.hpp"
#include "seamturn/heat/preheat_cet.hpp"
#include "seamturn/heat/preheat_zone.hpp"
#include "seamturn/material/carbon_equivalent.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::fixed_text;
using base::Severity;
using material::CarbonFormula;

/// The highest of both members by one formula; nothing when a formula refuses one of them.
std::optional<double> highest(CarbonFormula formula, const Chemistry& a, const Chemistry& b) {
  const auto first = carbon_equivalent_of(formula, a);
  const auto second = carbon_equivalent_of(formula, b);
  if (!first || !second) return std::nullopt;
  return std::max(first->value, second->value);
}

std::optional<heat::InterpassLimit> interpass_of(const Inputs& inputs, const JointWork& work) {
  std::vector<heat::InterpassLimit> limits;
  for (const material::Steel* steel : {work.steel_1, work.steel_2}) {
    if (steel->interpass_max_c) {
      limits.push_back(
          heat::InterpassLimit{*steel->interpass_max_c,
                               "steel " + steel->designation + " (" + steel->interpass_source + ")",
                               steel->interpass_status});
    }
  }
  if (work.wire->interpass_max_c) {
    limits.push_back(heat::InterpassLimit{
        *work.wire->interpass_max_c, "wire " + work.wire->id, work.wire->status});
  }
  if (work.joint->heat.interpass_max_c) {
    limits.push_back(heat::InterpassLimit{*work.joint->heat.interpass_max_c,
                                          "weldment file, joint " + work.joint->id,
                                          base::Status::proposed});
  }
  for (const procedure::Record& record : inputs.library.records) {
    if (record.id != work.joint->heat.record) continue;
    limits.push_back(heat::InterpassLimit{
        record.interpass_max_c, "record " + record.id + " (" + record.source + ")", record.status});
  }
  return heat::governing_interpass(limits);
}

class Limits {
 public:
  Limits(const Inputs& inputs, const JointWork& work, std::vector<Finding>& findings)
      : inputs_(inputs), work_(work), findings_(findings) {}

  std::optional<procedure::HeatLimits> make() {
    const Chemistry first = chemistry_of(*work_.member_1, *work_.steel_1);
    const Chemistry second = chemistry_of(*work_.member_2, *work_.steel_2);
    limits_.from_grade_maxima = first.from_maxima || second.from_maxima;
    limits_.composition_basis = composition_basis(first, second);
    limits_.cev_plate = highest(CarbonFormula::iiw, first, second);
    limits_.pcm_plate = highest(CarbonFormula::pcm, first, second);
    limits_.cen_plate = highest(CarbonFormula::cen, first, second);
    limits_.jis_plate = highest(CarbonFormula::jis, first, second);
    limits_.thickness_mm = thicker_mm(work_);
    set_thickness_seen();
    set_zone();
    limits_.hydrogen_ml_100g = work_.wire->hydrogen_ml_100g;
    limits_.lowest_heat_input_kj_mm = lowest_heat_input_kj_mm(inputs_, work_);
    const std::optional<double> cet = highest(CarbonFormula::cet, first, second);
    if (!set_preheat(cet, first, second) || !set_interpass()) return std::nullopt;
    return limits_;
  }

 private:
  /// Where each member's composition is from, in words.
  [[nodiscard]] std::string composition_basis(const Chemistry& first,
                                              const Chemistry& second) const {
    const auto of = [](const joint::Member& member, const Chemistry& chemistry) {
      if (!chemistry.from_maxima) return member.id + ": its analysis";
      return member.id + ": no analysis, limits of " + member.steel +
             (chemistry.cev_cap ? " with CEV at most " + base::shortest_text(*chemistry.cev_cap)
                                : std::string());
    };
    return of(*work_.member_1, first) + "; " + of(*work_.member_2, second);
  }

  void set_thickness_seen() {
    const joint::StatedHeat& stated = work_.joint->heat;
    limits_.paths = heat_paths(work_);
    if (stated.combined_thickness_mm) {
      limits_.combined_thickness_mm = *stated.combined_thickness_mm;
      limits_.combined_text = "stated in the weldment file";
      return;
    }
    limits_.combined_thickness_mm =
        heat::combined_thickness_mm(limits_.paths, stated.sides_together);
    limits_.combined_text = heat::combined_thickness_text(limits_.paths, stated.sides_together);
  }

  void set_zone() {
    limits_.measure_distance_mm = heat::measure_distance_mm(limits_.thickness_mm);
    limits_.where_to_measure = heat::where_to_measure(limits_.thickness_mm);
    limits_.zone_width_mm = heat::zone_width_mm(limits_.thickness_mm);
    limits_.soak_s = heat::soak_time_s(limits_.thickness_mm);
  }

  void tell(Severity severity, const std::string& code, const std::string& text) {
    findings_.push_back(joint_finding(inputs_, *work_.joint, severity, code, text));
  }

  /// A method's warning about its range.
  void pass_on(const Finding& finding, const std::string& of = {}) {
    limits_.outside_range = true;
    tell(finding.severity, finding.code, of + finding.text);
  }

  /// Elements outside the range of CET; that of CET itself the method tells.
  void tell_composition(const joint::Member& member, const Chemistry& chemistry) {
    const auto cet = carbon_equivalent_of(CarbonFormula::cet, chemistry);
    for (const Finding& finding : cet->findings) {
      if (finding.code != "material.composition.out_of_range") continue;
      pass_on(finding, "part " + member.id + ": ");
    }
  }

  void tell_refusal(const Chemistry& first, const Chemistry& second) {
    for (const Chemistry* chemistry : {&first, &second}) {
      const auto refused = carbon_equivalent_of(CarbonFormula::cet, *chemistry);
      if (!refused) tell(Severity::error, refused.error().code, refused.error().text);
    }
  }

  [[nodiscard]] bool tacks_are_coldest() const {
    const auto tack = pass::tack_heat_input_kj_mm(inputs_.library.settings, *work_.wire);
    return tack && *tack <= limits_.lowest_heat_input_kj_mm;
  }

  /// Sheet whose preheat the file states: what the method asks of the thinnest plate it speaks of,
  /// which is more, stands beside it.
  double as_of_plate() {
    limits_.outside_range = true;
    tell(Severity::warning,
         "heat.preheat.out_of_range",
         "thickness " + base::digits_text(limits_.thickness_mm) +
             " mm: the CET method says nothing of sheet below " +
             base::shortest_text(heat::preheat_least_thickness_mm) +
             " mm; the preheat of the file is taken, and what the method asks of that thickness is "
             "shown: let the welding coordinator decide");
    return heat::preheat_least_thickness_mm;
  }

  bool set_preheat(const std::optional<double>& cet,
                   const Chemistry& first,
                   const Chemistry& second) {
    if (!cet) {
      tell_refusal(first, second);
      return false;
    }
    tell_composition(*work_.member_1, first);
    tell_composition(*work_.member_2, second);
    limits_.cet_plate = *cet;
    limits_.cet_governing = heat::governing_cet(*cet, work_.wire->cet.value_or(0.0));
    heat::PreheatParams params;
    params.cet = limits_.cet_governing;
    params.thickness_mm = limits_.thickness_mm;
    const bool sheet = limits_.thickness_mm < heat::preheat_least_thickness_mm;
    if (sheet && work_.joint->heat.preheat_c) params.thickness_mm = as_of_plate();
    params.hydrogen_ml_100g = limits_.hydrogen_ml_100g;
    params.heat_input_kj_mm = limits_.lowest_heat_input_kj_mm;
    const base::Outcome<heat::Preheat> preheat = heat::preheat_cet(params);
    if (!preheat) {
      tell(Severity::error,
           preheat.error().code,
           preheat.error().text + (sheet ? ", and state preheat= with its reason" : ""));
      return false;
    }
    for (const Finding& finding : preheat->findings) {
      const bool of_tacks = finding.quantity == heat::preheat_heat_input && tacks_are_coldest();
      pass_on(finding, of_tacks ? "the tacks' " : "");
    }
    limits_.preheat_computed_c = preheat->preheat_c;
    limits_.answers = ask_methods(work_, limits_, inputs_.weldment.ambient_c);
    return choose_preheat(inputs_, work_, limits_, findings_);
  }

  bool set_interpass() {
    const std::optional<heat::InterpassLimit> governing = interpass_of(inputs_, work_);
    if (!governing) {
      tell(Severity::error,
           "heat.interpass.none",
           "nobody states an interpass maximum (steel, wire, record or file); there is no default: "
           "add "
           "interpass-max=");
      return false;
    }
    limits_.interpass_max_c = governing->max_c;
    limits_.interpass_basis =
        governing->stated_by + ", " + std::string(base::status_name(governing->status));
    tell_hot_start();
    return true;
  }

  /// The hottest start of a run against what the formula of t8/5 speaks about.
  void tell_hot_start() {
    const auto time = heat::cooling_time({work_.cooling_case,
                                          limits_.lowest_heat_input_kj_mm,
                                          thinner_mm(work_),
                                          limits_.interpass_max_c});
    if (!time) {
      tell(Severity::warning, time.error().code, time.error().text + "; t8/5 is left out");
      return;
    }
    for (const Finding& finding : time->findings) pass_on(finding);
  }

  const Inputs& inputs_;
  const JointWork& work_;
  std::vector<Finding>& findings_;
  procedure::HeatLimits limits_;
};

}  // namespace

Chemistry chemistry_of(const joint::Member& member, const material::Steel& steel) {
  if (member.analysis) return Chemistry{*member.analysis, false, std::nullopt};
  const material::SteelBand* band =
      material::find_band(steel, joint::wall_thickness_mm(member.shape));
  SEAMTURN_REQUIRE(
      band != nullptr && material::bounds_carbon_equivalent(*band), steel.designation, member.id);
  return Chemistry{band->maxima, true, band->cev_max};
}

base::Outcome<material::CarbonEquivalent> carbon_equivalent_of(CarbonFormula formula,
                                                               const Chemistry& chemistry) {
  return material::highest_carbon_equivalent(formula, chemistry.composition, chemistry.cev_cap);
}

double lowest_heat_input_kj_mm(const Inputs& inputs, const JointWork& work) {
  double lowest = std::numeric_limits<double>::infinity();
  for (const SeamWork& seam : work.seams) {
    for (const StackChoice& choice : seam.stacks) {
      lowest = std::min(lowest, choice.stack.heat_input_min_kj_mm);
    }
  }
  const auto tack = pass::tack_heat_input_kj_mm(inputs.library.settings, *work.wire);
  return tack ? std::min(lowest, *tack) : lowest;
}

std::optional<procedure::HeatLimits> heat_limits(const Inputs& inputs,
                                                 const JointWork& work,
                                                 std::vector<Finding>& findings) {
  return Limits(inputs, work, findings).make();
}

}  // namespace seamturn::planner::detail
