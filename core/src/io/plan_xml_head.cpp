// SPDX-License-Identifier: MIT
#include "detail_plan_xml.hpp"

namespace seamturn::io::detail {

namespace {

struct PutShape {
  pugi::xml_node member;

  void operator()(const joint::Plate& plate) {
    pugi::xml_node node = member.append_child("plate");
    put_number(node, "length_mm", plate.length_mm);
    put_number(node, "width_mm", plate.width_mm);
    put_number(node, "thickness_mm", plate.thickness_mm);
  }
  void operator()(const joint::Tube& tube) {
    pugi::xml_node node = member.append_child("tube");
    put_number(node, "outer_diameter_mm", tube.outer_diameter_mm);
    put_number(node, "wall_mm", tube.wall_mm);
    put_number(node, "length_mm", tube.length_mm);
  }
  void operator()(const joint::Ring& ring) {
    pugi::xml_node node = member.append_child("ring");
    put_number(node, "outer_diameter_mm", ring.outer_diameter_mm);
    put_number(node, "inner_diameter_mm", ring.inner_diameter_mm);
    put_number(node, "thickness_mm", ring.thickness_mm);
  }
  void operator()(const joint::Bar& bar) {
    pugi::xml_node node = member.append_child("bar");
    put_text(node, "shape", joint::bar_shape_name(bar.shape));
    put_number(node, "width_mm", bar.width_mm);
    put_number(node, "height_mm", bar.height_mm);
    put_number(node, "length_mm", bar.length_mm);
  }
  void operator()(const joint::Forging& forging) {
    pugi::xml_node node = member.append_child("forging");
    put_number(node, "bore_mm", forging.bore_mm);
    for (const joint::ForgingStep& step : forging.steps) {
      pugi::xml_node child = node.append_child("step");
      put_number(child, "length_mm", step.length_mm);
      put_number(child, "start_diameter_mm", step.start_diameter_mm);
      put_number(child, "end_diameter_mm", step.end_diameter_mm);
    }
  }
};

void put_band(pugi::xml_node steel, const material::SteelBand& band) {
  pugi::xml_node node = steel.append_child("band");
  put_number(node, "up_to_mm", band.up_to_mm);
  put_number_if(node, "yield_mpa", band.yield_mpa);
  put_number_if(node, "cev_max", band.cev_max);
  if (band.c_is_open) put_flag(node, "c_is_open", true);
  if (band.mn_is_open) put_flag(node, "mn_is_open", true);
  put_text(node, "source", band.source);
  put_text(node, "status", base::status_name(band.status));
  put_composition(node, "maxima", band.maxima);
}

/// What is stated of a steel beside its bands.
void put_stated(pugi::xml_node node, const material::Steel& steel) {
  if (steel.interpass_max_c) {
    put_number(node, "interpass_max_c", *steel.interpass_max_c);
    put_text(node, "interpass_source", steel.interpass_source);
    put_text(node, "interpass_status", base::status_name(steel.interpass_status));
  }
  if (steel.t85) {
    put_number(node, "t85_min_s", steel.t85->least_s);
    put_number(node, "t85_max_s", steel.t85->most_s);
    put_text(node, "t85_source", steel.t85->source);
    put_text(node, "t85_status", base::status_name(steel.t85->status));
  }
  if (steel.later_heating_max) {
    put_number(node, "later_heating_max_c", steel.later_heating_max->value_c);
    put_text(node, "later_heating_source", steel.later_heating_max->source);
    put_text(node, "later_heating_status", base::status_name(steel.later_heating_max->status));
  }
  if (steel.aws_category) {
    put_text(node, "aws_category", steel.aws_category->name);
    put_text(node, "aws_source", steel.aws_category->source);
    put_text(node, "aws_status", base::status_name(steel.aws_category->status));
  }
}

void put_finding(pugi::xml_node parent, const base::Finding& finding) {
  pugi::xml_node node = parent.append_child("finding");
  put_text(node, "severity", base::severity_name(finding.severity));
  put_text(node, "code", finding.code);
  put_text_if(node, "file", finding.place.file);
  if (finding.place.line > 0) put_count(node, "line", finding.place.line);
  if (finding.place.column > 0) put_count(node, "column", finding.place.column);
  put_text(node, "text", finding.text);
  put_text_if(node, "excerpt", finding.excerpt);
}

}  // namespace

void put_head(pugi::xml_node root, const plan::Plan& plan) {
  const joint::Weldment& weldment = plan.weldment;
  pugi::xml_node node = root.append_child("weldment");
  put_text(node, "title", weldment.title);
  put_text(node, "revision", weldment.revision);
  put_text(node, "date", weldment.date);
  put_text(node, "author", weldment.author);
  put_text_if(node, "wire", weldment.wire);
  put_number(node, "ambient_c", weldment.ambient_c);
  put_count(node, "batch_parts", weldment.batch.parts);
  put_flag(node, "invented", weldment.invented);
  for (const std::string& library : weldment.libraries) {
    put_text(node.append_child("library"), "file", library);
  }
  if (!weldment.cell.empty()) put_text(node.append_child("cell-file"), "file", weldment.cell);
}

void put_notices(pugi::xml_node root, const plan::Plan& plan) {
  pugi::xml_node cautions = root.append_child("cautions");
  for (const procedure::Caution& caution : plan.cautions) put_caution(cautions, caution);
  pugi::xml_node findings = root.append_child("findings");
  for (const base::Finding& finding : plan.findings) put_finding(findings, finding);
}

void put_steels(pugi::xml_node root, const plan::Plan& plan) {
  pugi::xml_node steels = root.append_child("steels");
  for (const material::Steel& steel : plan.steels) {
    pugi::xml_node node = steels.append_child("steel");
    put_text(node, "designation", steel.designation);
    put_text(node, "standard", steel.standard);
    put_text_if(node, "group", steel.group);
    put_stated(node, steel);
    for (const material::SteelBand& band : steel.bands) put_band(node, band);
  }
}

void put_members(pugi::xml_node root, const plan::Plan& plan) {
  pugi::xml_node members = root.append_child("members");
  for (const joint::Member& member : plan.weldment.members) {
    pugi::xml_node node = members.append_child("member");
    put_text(node, "id", member.id);
    put_text(node, "steel", member.steel);
    put_number(node, "mass_kg", joint::mass_kg(member));
    std::visit(PutShape{node}, member.shape);
    put_pose(node, "pose", member.X_JM);
    if (member.analysis) put_composition(node, "analysis", *member.analysis);
  }
}

}  // namespace seamturn::io::detail
