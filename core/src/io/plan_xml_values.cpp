// SPDX-License-Identifier: MIT
#include <string>

#include "detail_plan_xml.hpp"
#include "detail_utf8.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::io::detail {

void put_text(pugi::xml_node node, const char* name, std::string_view value) {
  // pugixml passes on what no XML file may hold; a plan made by a program may have it.
  node.append_attribute(name).set_value(printable(value).c_str());
}

void put_number(pugi::xml_node node, const char* name, double value) {
  node.append_attribute(name).set_value(base::shortest_text(value).c_str());
}

void put_count(pugi::xml_node node, const char* name, long long value) {
  node.append_attribute(name).set_value(value);
}

void put_flag(pugi::xml_node node, const char* name, bool value) {
  node.append_attribute(name).set_value(value ? "true" : "false");
}

void put_text_if(pugi::xml_node node, const char* name, std::string_view value) {
  if (!value.empty()) put_text(node, name, value);
}

void put_number_if(pugi::xml_node node, const char* name, const std::optional<double>& value) {
  if (value) put_number(node, name, *value);
}

void put_stage_if(pugi::xml_node node, const plan::Plan& plan, std::size_t index) {
  if (index < plan.stages.size()) put_text_if(node, "stage", plan.stages[index].id);
}

pugi::xml_node put_place(pugi::xml_node parent, const char* name, const geom::Vec3& point) {
  pugi::xml_node node = parent.append_child(name);
  put_number(node, "x_mm", point.x());
  put_number(node, "y_mm", point.y());
  put_number(node, "z_mm", point.z());
  return node;
}

pugi::xml_node put_direction(pugi::xml_node parent, const char* name, const geom::Vec3& direction) {
  pugi::xml_node node = parent.append_child(name);
  put_number(node, "x", direction.x());
  put_number(node, "y", direction.y());
  put_number(node, "z", direction.z());
  return node;
}

void put_pose(pugi::xml_node parent, const char* name, const geom::Pose& pose) {
  pugi::xml_node node = parent.append_child(name);
  put_place(node, "origin", pose.translation);
  put_direction(node, "x-axis", pose.rotation.col(0));
  put_direction(node, "z-axis", pose.rotation.col(2));
}

void put_caution(pugi::xml_node parent, const procedure::Caution& caution) {
  pugi::xml_node node = parent.append_child("caution");
  put_text(node, "code", caution.code);
  put_text(node, "text", caution.text);
  put_text(node, "defer_to", caution.defer_to);
}

void put_composition(pugi::xml_node parent,
                     const char* name,
                     const material::Composition& content) {
  const struct {
    const char* symbol;
    double value;
  } elements[] = {{"c", content.c},
                  {"si", content.si},
                  {"mn", content.mn},
                  {"p", content.p},
                  {"s", content.s},
                  {"cr", content.cr},
                  {"mo", content.mo},
                  {"v", content.v},
                  {"ni", content.ni},
                  {"cu", content.cu},
                  {"nb", content.nb},
                  {"ti", content.ti},
                  {"al", content.al},
                  {"b", content.b},
                  {"n", content.n}};
  pugi::xml_node node = parent.append_child(name);
  for (const auto& element : elements) {
    if (element.value != 0.0) put_number(node, element.symbol, element.value);
  }
}

}  // namespace seamturn::io::detail
