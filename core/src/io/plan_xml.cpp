// SPDX-License-Identifier: MIT
#include "seamturn/io/plan_xml.hpp"

#include "detail_plan_xml.hpp"

namespace seamturn::io {

namespace {

class StringWriter : public pugi::xml_writer {
 public:
  void write(const void* data, size_t size) override {
    text_.append(static_cast<const char*>(data), size);
  }
  [[nodiscard]] std::string take() { return std::move(text_); }

 private:
  std::string text_;
};

}  // namespace

std::string plan_xml(const plan::Plan& plan) {
  pugi::xml_document document;
  pugi::xml_node declaration = document.append_child(pugi::node_declaration);
  declaration.append_attribute("version").set_value("1.0");
  declaration.append_attribute("encoding").set_value("UTF-8");
  pugi::xml_node root = document.append_child("plan");
  root.append_attribute("xmlns").set_value(std::string(plan_namespace).c_str());
  root.append_attribute("schema").set_value("1.0");
  detail::put_head(root, plan);
  detail::put_notices(root, plan);
  detail::put_steels(root, plan);
  detail::put_members(root, plan);
  detail::put_setups(root, plan);
  detail::put_build(root, plan);
  detail::put_cell(root, plan);
  detail::put_consumables(root, plan);
  detail::put_joints(root, plan);
  detail::put_procedures(root, plan);
  detail::put_stances(root, plan);
  detail::put_turns(root, plan);
  detail::put_timeline(root, plan);
  detail::put_estimate(root, plan);
  detail::put_totals(root, plan);
  StringWriter writer;
  document.save(writer, " ", pugi::format_indent, pugi::encoding_utf8);
  return writer.take();
}

}  // namespace seamturn::io
