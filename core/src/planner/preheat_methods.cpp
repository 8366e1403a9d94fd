// SPDX-License-Identifier: MIT
// Every method of preheat is asked, each by its own inputs; docs/methods/preheat-choice.md.
#include <algorithm>
#include <cmath>

#include "detail_heat.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/heat/preheat_cet.hpp"
#include "seamturn/heat/preheat_ito_bessyo.hpp"
#include "seamturn/heat/preheat_tables.hpp"

namespace seamturn::planner::detail {

namespace {

using base::fixed_text;
using base::Status;
using procedure::HeatLimits;
using procedure::PreheatAnswer;

// A plate below 0 degC is warmed to this where a cell says 0 degC; [AWS D1.1] from memory.
constexpr double cold_plate_to_c = 20.0;

PreheatAnswer silent(std::string method, std::string says, Status status) {
  return PreheatAnswer{std::move(method), std::nullopt, std::move(says), status, false};
}

/// A least temperature is never rounded down.
std::string degrees(double temperature_c) {
  constexpr double rounding_c = 1e-6;
  return fixed_text(std::ceil(temperature_c - rounding_c), 0) + " degC";
}

PreheatAnswer ask_cet(const HeatLimits& limits) {
  PreheatAnswer answer{"cet", limits.preheat_computed_c, "", Status::from_memory, true};
  answer.says = degrees(limits.preheat_computed_c) + " (CET " +
                fixed_text(limits.cet_governing, 3) + ", " +
                fixed_text(std::max(limits.thickness_mm, heat::preheat_least_thickness_mm), 0) +
                " mm, hydrogen " + base::digits_text(limits.hydrogen_ml_100g) + " ml/100 g, " +
                fixed_text(limits.lowest_heat_input_kj_mm, 2) + " kJ/mm)";
  return answer;
}

/// The table never gives a temperature: it may say that none is needed.
PreheatAnswer ask_table_c1(const HeatLimits& limits) {
  const std::string name = "table-c1";
  if (!limits.cev_plate) return silent(name, "no CEV within its range", Status::verified);
  const auto cell =
      heat::table_c1({*limits.cev_plate, limits.lowest_heat_input_kj_mm, limits.hydrogen_ml_100g});
  if (!cell) return silent(name, cell.error().text, Status::verified);
  const std::string sum = fixed_text(limits.combined_thickness_mm, 0) + " mm combined here";
  const std::string most = fixed_text(cell->largest_combined_mm, 0) + " mm";
  if (cell->no_preheat(limits.combined_thickness_mm)) {
    PreheatAnswer answer = silent(name, "no preheat up to " + most + "; " + sum, Status::verified);
    answer.no_preheat = true;
    return answer;
  }
  return silent(name,
                "silent above " + most + "; " + sum + ": consult figure C.2 of the standard",
                Status::verified);
}

/// "A/B" goes by the process: wire under gas is low-hydrogen welding.
char category_letter(const material::Steel& steel) {
  return steel.aws_category->name.back();
}

PreheatAnswer ask_aws_category(const JointWork& work, const HeatLimits& limits, double ambient_c) {
  const std::string name = "aws-category";
  PreheatAnswer answer{name, std::nullopt, "", Status::verified, false};
  for (const material::Steel* steel : {work.steel_1, work.steel_2}) {
    if (!steel->aws_category) {
      return silent(name, steel->designation + " is in no category known here", Status::verified);
    }
    const auto cell = heat::aws_category_preheat(
        {category_letter(*steel), limits.thickness_mm, limits.hydrogen_ml_100g});
    if (!cell) return silent(name, cell.error().text, Status::verified);
    const bool is_cold = cell->heats_cold_plate && ambient_c < cell->preheat_c;
    const double preheat_c = is_cold ? cold_plate_to_c : cell->preheat_c;
    if (answer.preheat_c && preheat_c <= *answer.preheat_c) continue;
    answer.preheat_c = preheat_c;
    answer.says = degrees(preheat_c) + " (category " + category_letter(*steel) + ", " + cell->band +
                  (is_cold ? ", the plate is colder than 0 degC)" : ")");
    answer.status = steel->aws_category->status == Status::verified ? cell->status_c
                                                                    : steel->aws_category->status;
  }
  answer.may_govern = true;
  return answer;
}

PreheatAnswer ask_aws_hydrogen(const JointWork& work, const HeatLimits& limits) {
  const std::string name = "aws-hydrogen";
  if (!limits.pcm_plate) return silent(name, "no Pcm within its range", Status::from_memory);
  const joint::StatedHeat& stated = work.joint->heat;
  const auto cell = heat::aws_hydrogen_preheat(
      {*limits.pcm_plate, limits.hydrogen_ml_100g, stated.restraint, limits.thickness_mm});
  if (!cell) return silent(name, cell.error().text, Status::from_memory);
  PreheatAnswer answer{name, cell->preheat_c, "", cell->status, false};
  answer.says =
      (cell->below_room ? "below 20 degC" : degrees(cell->preheat_c)) + " (Pcm " +
      fixed_text(*limits.pcm_plate, 3) + ", level H" + std::to_string(cell->hydrogen_level) + ", " +
      std::string(joint::restraint_name(stated.restraint)) + " restraint" +
      (stated.restraint_stated ? "" : " assumed") + "); unconfirmed: shown, never governing";
  return answer;
}

PreheatAnswer ask_ito_bessyo(const HeatLimits& limits) {
  const std::string name = "ito-bessyo";
  if (!limits.pcm_plate) return silent(name, "no Pcm within its range", Status::verified);
  const auto glycerine = heat::glycerine_hydrogen_ml_100g(limits.hydrogen_ml_100g);
  const double hydrogen_ml_100g = glycerine ? *glycerine : 1.0;  // as the refusal says
  const auto result = heat::preheat_ito_bessyo(
      {*limits.pcm_plate, hydrogen_ml_100g, limits.thickness_mm, limits.lowest_heat_input_kj_mm});
  if (!result) return silent(name, result.error().text, Status::verified);
  PreheatAnswer answer{name, result->preheat_c, "", Status::from_memory, false};
  answer.may_govern = glycerine.has_value() && result->findings.empty();
  answer.says = degrees(result->preheat_c) + " (Pcm " + fixed_text(*limits.pcm_plate, 3) +
                ", glycerine hydrogen " + fixed_text(hydrogen_ml_100g, 1) + " ml/100 g)";
  if (!answer.may_govern) answer.says += "; outside its range: shown only";
  return answer;
}

}  // namespace

std::vector<PreheatAnswer> ask_methods(const JointWork& work,
                                       const HeatLimits& limits,
                                       double ambient_c) {
  return {ask_cet(limits),
          ask_table_c1(limits),
          ask_aws_category(work, limits, ambient_c),
          ask_aws_hydrogen(work, limits),
          ask_ito_bessyo(limits)};
}

}  // namespace seamturn::planner::detail
