// SPDX-License-Identifier: MIT
// `seamturn figure nozzle-access`: room of the nozzle for one bead of a preparation.
#include <algorithm>

#include "detail_figures.hpp"
#include "detail_preparation.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/pass/nozzle_access.hpp"

namespace seamturn::figures::detail {

namespace {

using base::Angle;

void check_number(Arguments& arguments, std::string_view key, bool holds, std::string_view want) {
  if (arguments.has(key) && !holds) {
    arguments.add_bad_value(std::string(key) + " must be " + std::string(want));
  }
}

pass::NozzleAccessRequest request_of(Arguments& arguments) {
  pass::NozzleAccessRequest request;
  process::Nozzle& nozzle = request.nozzle;
  nozzle.outer_diameter_mm = arguments.number("nozzle");
  nozzle.recess_mm = arguments.number("recess");
  nozzle.stick_out_min_mm = arguments.number("stick-out-min");
  nozzle.stick_out_max_mm = arguments.number("stick-out-max", 1000.0);
  request.clearance_mm = arguments.number("clearance", request.clearance_mm);
  request.left_rise = Angle::rad(arguments.number("left-rise"));
  request.right_rise = Angle::rad(arguments.number("right-rise"));
  check_number(arguments, "nozzle", nozzle.outer_diameter_mm > 0.0, "above zero");
  check_number(arguments, "stick-out", arguments.number("stick-out") > 0.0, "above zero");
  check_number(arguments, "clearance", request.clearance_mm >= 0.0, "zero or more");
  check_number(arguments, "stick-out-min", nozzle.stick_out_min_mm >= 0.0, "zero or more");
  if (nozzle.stick_out_min_mm > nozzle.stick_out_max_mm) {
    arguments.add_bad_value("stick-out-min must be at most stick-out-max");
  }
  for (const std::string_view key : {"left-rise", "right-rise"}) {
    const double rise = arguments.number(key);
    check_number(arguments, key, rise >= 0.0 && rise <= Angle::deg(90.0).rad(), "0 to 90 deg");
  }
  return request;
}

/// The bead looked at: aimed midway between the walls, its torch as laid or as stated.
std::vector<pass::Pass> bead_of(Arguments& arguments, const section::WeldSection& section) {
  const double height_mm = arguments.number("height");
  if (height_mm < 0.0 || height_mm >= section.height_mm) {
    arguments.add_bad_value("height lies between 0 and below the section's " +
                            base::digits_text(section.height_mm) + " mm");
    return {};
  }
  pass::Pass bead = pass::bead_at_height(section, height_mm);
  if (const auto torch = arguments.find_number("torch")) {
    const Angle most = Angle::deg(80.0);
    bead.work_angle = Angle::rad(*torch);
    check_number(
        arguments, "torch", -most <= bead.work_angle && bead.work_angle <= most, "-80 to 80 deg");
  }
  bead.tip_distance_mm = arguments.number("stick-out");
  bead.settings = "as stated";
  return {bead};
}

void add_way_out(ResultMaker& result,
                 const std::string& name,
                 const std::optional<double>& value,
                 const std::string& unit) {
  if (value) {
    result.value(name, *value, unit);
  } else {
    result.value(name, "none");
  }
}

Answer access_answer(const pass::NozzleAccessRequest& request) {
  const pass::NozzleAccess access = pass::find_nozzle_access(request);
  const pass::PassAccess& bead = access.passes.front();
  const pass::Pass& aimed = request.passes.front();
  ResultMaker result("nozzle-access");
  result.principal(access.is_reached ? "yes" : "no")
      .value("clearance_mm", access.clearance_mm, "mm")
      .value("short_mm", std::max(0.0, request.clearance_mm - access.clearance_mm), "mm")
      .value("nearest_wall", std::string(pass::nozzle_wall_name(bead.wall)))
      .value("mouth_mm", aimed.tip_distance_mm - request.nozzle.recess_mm, "mm")
      .value("aim_x_mm", aimed.aim.x_mm, "mm")
      .value("aim_y_mm", aimed.aim.y_mm, "mm")
      .value("torch_deg", aimed.work_angle.deg(), "deg");
  add_way_out(result, "largest_nozzle_mm", access.slim_diameter_mm, "mm");
  add_way_out(result, "least_stick_out_mm", access.stick_out_mm, "mm");
  if (!access.is_reached) {
    const auto angle = access.included;
    add_way_out(
        result, "least_included_deg", angle ? std::optional(angle->deg()) : std::nullopt, "deg");
  }
  return result.findings(access.findings).done();
}

}  // namespace

Answer nozzle_access_figure(Arguments& arguments) {
  section::SectionParams params = section_params(arguments);
  params.side = side_of_call(arguments, params);
  if (std::holds_alternative<joint::Plug>(params.preparation)) {
    arguments.add_usage("preparation " + arguments.text("preparation") +
                        " has no walls along a seam; take a fillet or a groove");
  }
  pass::NozzleAccessRequest request = request_of(arguments);
  if (!arguments.good()) return FigureResult{};
  const auto section = section::weld_section(params);
  if (!section) return section.error();
  const std::vector<pass::Pass> beads = bead_of(arguments, *section);
  if (!arguments.good()) return FigureResult{};
  request.section = &section.value();
  request.passes = beads;
  return access_answer(request);
}

}  // namespace seamturn::figures::detail
