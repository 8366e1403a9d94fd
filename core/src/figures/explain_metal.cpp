// SPDX-License-Identifier: MIT
// Section, metal and passes of a joint, link by link.
#include <cmath>

#include "detail_explain.hpp"
#include "seamturn/pass/caps.hpp"
#include "seamturn/process/deposit.hpp"
#include "seamturn/section/weld_section.hpp"

namespace seamturn::figures::detail {

namespace {

/// Where the size of a fillet was written, whichever way.
std::string leg_origin(const Subject& subject, std::string_view leg) {
  for (const std::string_view attribute : {leg, std::string_view("leg")}) {
    const std::string place = subject.of_joint(attribute);
    if (place != "default") return place;
  }
  return "from the throat, " + subject.of_joint("throat");
}

void add_side(const Subject& subject,
              const joint::GrooveSide& side,
              bool second,
              std::vector<Given>& inputs) {
  const std::string tail = second ? "-2" : "";
  const std::string own = subject.of_joint("angle" + tail);
  add(inputs,
      "angle" + tail,
      side.angle.deg(),
      "deg",
      own == "default" ? subject.of_joint("angle") : own);
  if (side.radius_mm > 0.0) {
    add(inputs, "radius" + tail, side.radius_mm, "mm", subject.of_joint("radius"));
  }
  if (side.depth_mm > 0.0) {
    const std::string name = second ? "depth-2" : "depth-1";
    add(inputs, name, side.depth_mm, "mm", subject.of_joint(name));
  }
}

struct PreparationInputs {
  const Subject& subject;
  std::vector<Given>& inputs;

  void operator()(const joint::Fillet& fillet) const {
    add(inputs, "leg-1", fillet.leg_1_mm, "mm", leg_origin(subject, "leg-1"));
    add(inputs, "leg-2", fillet.leg_2_mm, "mm", leg_origin(subject, "leg-2"));
    add(inputs, "bulge", fillet.bulge_mm, "mm", subject.of_joint("bulge"));
    add(inputs, "gap", fillet.gap_mm, "mm", subject.of_joint("gap"));
    add(inputs, "over-weld", fillet.over_weld_ratio, "", subject.of_joint("over-weld"));
  }
  void operator()(const joint::Groove& groove) const {
    const joint::Joint& joint = subject.described;
    add(inputs,
        "thickness",
        joint.thickness_mm,
        "mm",
        subject.of_member(joint.member_2, "thickness"));
    const std::string depth = subject.of_joint("penetration");
    add(inputs,
        "depth",
        joint.depth_mm,
        "mm",
        depth == "default" ? "full penetration, unless the joint states less" : depth);
    add(inputs, "gap", groove.gap_mm, "mm", subject.of_joint("gap"));
    if (groove.form == joint::GrooveForm::square) return;
    add(inputs, "root-face", groove.root_face_mm, "mm", subject.of_joint("root-face"));
    add_side(subject, groove.side_1, false, inputs);
    if (groove.is_double) add_side(subject, groove.side_2, true, inputs);
    if (joint.cap.height_mm > 0.0) {
      add(inputs, "cap height", joint.cap.height_mm, "mm", "<cap> or <cover> of the joint");
    }
  }
  void operator()(const joint::Plug& plug) const {
    const bool round = plug.length_mm <= plug.width_mm;
    const std::string width = round ? "diameter" : "width";
    add(inputs, width, plug.width_mm, "mm", subject.of_joint(width));
    if (!round) add(inputs, "length", plug.length_mm, "mm", subject.of_joint("length"));
    add(inputs, "fill", plug.fill_mm, "mm", subject.of_joint("fill"));
  }
};

/// The gap drawn against the one at which the welder stops, and a fillet's plates against the
/// angles fillets are made at.
void add_section_limits(const Subject& subject, const plan::PlannedSeam& seam, ExplainStep& step) {
  const joint::Joint& joint = subject.described;
  if (seam.fit_up && seam.fit_up->gaps) {
    const fitup::StopLimit& stop = seam.fit_up->gaps->stop;
    step.how_close.push_back(how_close("gap",
                                       joint::root_gap_mm(joint.preparation),
                                       "mm",
                                       up_to(stop.gap_mm, "stop and call: " + stop.reason)));
  }
  if (!joint::is_fillet(joint.preparation)) return;
  step.how_close.push_back(how_close("angle between the plates",
                                     joint.seams.front().between_walls.deg(),
                                     "deg",
                                     within(joint::fillet_corner_deg, "fillets, SKEWED-TEE")));
}

/// Keeps the one that is nearer to its limit, by its share of the range.
void keep_nearer(std::optional<HowClose>& kept, HowClose found) {
  if (!kept || found.share_ratio.value_or(0.0) < kept->share_ratio.value_or(0.0)) {
    kept = std::move(found);
  }
}

/// Of all passes the one nearest to the cap of its area, to that of its leg, and to its settings'
/// travel.
void add_pass_limits(const Subject& subject, const plan::PlannedSeam& seam, ExplainStep& step) {
  std::optional<HowClose> area;
  std::optional<HowClose> leg;
  std::optional<HowClose> travel;
  for (const plan::PlannedPass& planned : seam.passes) {
    const pass::Pass& pass = planned.pass;
    const std::string name = "pass " + std::to_string(pass.number);
    const pass::Caps caps = pass::find_caps(
        subject.inputs.library.bead_limits,
        {seam.section.is_fillet ? process::WeldFamily::fillet : process::WeldFamily::groove,
         seam.position,
         pass.role});
    const auto row_limit = [&](const pass::Bound& bound) {
      return up_to(bound.value, "bead limit " + std::string(bound.id));
    };
    if (std::isfinite(caps.area_mm2.value)) {
      keep_nearer(area, how_close(name + ", area", pass.area_mm2, "mm2", row_limit(caps.area_mm2)));
    }
    const bool in_one = seam.section.is_fillet && pass.role == process::PassRole::single;
    if (in_one && std::isfinite(caps.leg_mm.value)) {
      const double longer_mm = std::max(seam.section.leg_1_mm, seam.section.leg_2_mm);
      keep_nearer(leg, how_close(name + ", leg", longer_mm, "mm", row_limit(caps.leg_mm)));
    }
    if (const process::LinkedSettings* row = subject.settings(pass.settings)) {
      keep_nearer(travel,
                  how_close(name + ", travel",
                            pass.travel_mm_s * 6.0,
                            "cm/min",
                            Limits{row->travel_min_mm_s * 6.0,
                                   row->travel_max_mm_s * 6.0,
                                   "travel-min and travel-max of settings " + row->id}));
    }
  }
  for (std::optional<HowClose>* one : {&area, &leg, &travel}) {
    if (*one) step.how_close.push_back(std::move(**one));
  }
}

}  // namespace

void explain_section(const Subject& subject, std::vector<ExplainStep>& steps) {
  int side = 0;
  for (const section::WeldSection* section : plan::sections_of(subject.planned)) {
    ++side;
    const std::string name = std::string(joint::preparation_name(subject.described.preparation)) +
                             (side > 1 ? ", second side" : "");
    ExplainStep step = step_of(section::section_card(), "section", name);
    std::visit(PreparationInputs{subject, step.inputs}, subject.described.preparation);
    if (subject.described.gouge.depth_mm > 0.0 && side == 2) {
      add(step.inputs, "gouge depth", subject.described.gouge.depth_mm, "mm", "<gouge>");
    }
    add(step.results, "opening", section->opening_mm, "mm", "");
    add(step.results, "throat", section->throat_mm, "mm", "");
    add(step.results, "cap area", section->cap_area_mm2, "mm2", "");
    add(step.results, "section", section->area_mm2, "mm2", "");
    for (const plan::PlannedSeam& seam : subject.planned.seams) {
      if (&seam.section == section) add_section_limits(subject, seam, step);
    }
    steps.push_back(std::move(step));
  }
}

void explain_metal(const Subject& subject, std::vector<ExplainStep>& steps) {
  for (const plan::PlannedSeam& seam : subject.planned.seams) {
    ExplainStep step;
    step.figure = "metal";
    step.subject = "seam " + seam.id;
    step.formula =
        "section x welded length x density; on a circle or arc the path of the section's centroid "
        "counts (Pappus)";
    step.sources = {
        "steel density 7850 kg/m3, EN 1991-1-1 table A.4 gives 77 to 78.5 kN/m3 "
        "(common practice)"};
    step.range = "deposited metal; the wire bought is more by its efficiency";
    add(step.inputs, "section", seam.section.area_mm2, "mm2", "section above");
    const bool holes = std::holds_alternative<joint::Plug>(subject.described.preparation);
    add(step.inputs,
        "path length",
        seam.length_mm,
        "mm",
        holes                   ? "holes times volume over section"
        : seam.id == seam.drawn ? "the seam's path in the file"
                                : "its part of the path of " + seam.drawn + " in the file");
    add(step.inputs,
        "welded length",
        seam.welded_mm,
        "mm",
        seam.id == seam.drawn ? "path, less and plus what <welded> asks for"
                              : "the same, its overlap and stagger, mean over the layers");
    add(step.inputs, "density", process::steel_density_kg_mm3 * 1e9, "kg/m3", "constant");
    add(step.results, "metal", seam.metal_kg, "kg", "");
    steps.push_back(std::move(step));
  }
}

void explain_passes(const Subject& subject, std::vector<ExplainStep>& steps) {
  const process::Wire& wire = subject.wire();
  const std::string row = "wire/" + wire.id;
  for (const plan::PlannedSeam& seam : subject.planned.seams) {
    ExplainStep step =
        step_of(process::bead_card(),
                "passes",
                "seam " + seam.id + " in " + std::string(process::position_name(seam.position)));
    step.formula =
        "fewest passes within the limits of role and position; areas add up to the section; travel "
        "= wire section x feed x efficiency / bead area (docs/methods/pass-stack.md)";
    add(step.inputs, "section", seam.section.area_mm2, "mm2", "section above");
    add(step.inputs, "wire diameter", wire.diameter_mm, "mm", subject.of_library(row, "diameter"));
    add(step.inputs,
        "efficiency",
        wire.efficiency_ratio,
        "",
        subject.of_library(row, "efficiency"));
    std::string last;
    for (const plan::PlannedPass& planned : seam.passes) {
      const pass::Pass& pass = planned.pass;
      const std::string name =
          "pass " + std::to_string(pass.number) + " " + std::string(process::role_name(pass.role));
      if (pass.settings != last) {
        add(step.inputs,
            "feed of " + pass.settings,
            pass.feed_mm_s * 0.06,
            "m/min",
            subject.of_library("settings/" + pass.settings, "feed"));
      }
      last = pass.settings;
      add(step.results,
          name + ", area",
          pass.area_mm2,
          "mm2",
          pass.limited_by.empty() ? "" : "limited by " + pass.limited_by);
      add(step.results, name + ", travel", pass.travel_mm_s * 6.0, "cm/min", pass.settings);
    }
    add(step.results, "passes", static_cast<double>(seam.passes.size()), "", "");
    add(step.results, "arc time", seam.stack.arc_time_s, "s", "");
    add_pass_limits(subject, seam, step);
    steps.push_back(std::move(step));
  }
}

}  // namespace seamturn::figures::detail
