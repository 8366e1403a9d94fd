// SPDX-License-Identifier: MIT
#include "plan_reader/plan_reader.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <cstring>
#include <stdexcept>

namespace seamturn::plan_reader {

namespace {

constexpr std::string_view plan_namespace = "urn:seamturn:plan:1";

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

PlanTree::PlanTree(std::string_view plan_xml) {
  const pugi::xml_parse_result result = document_.load_buffer(
      plan_xml.data(), plan_xml.size(), pugi::parse_default, pugi::encoding_utf8);
  if (!result) {
    throw std::runtime_error("plan.xml is broken at byte " + std::to_string(result.offset) + ": " +
                             result.description());
  }
  root_ = document_.document_element();
  if (std::strcmp(root_.name(), "plan") != 0 || text(root_, "xmlns") != plan_namespace) {
    throw std::runtime_error("this is no plan.xml: the root element is <" +
                             std::string(root_.name()) + "> of namespace \"" +
                             text(root_, "xmlns") + "\"");
  }
  if (std::strncmp(text(root_, "schema"), "1.", 2) != 0) {
    throw std::runtime_error("plan.xml has schema \"" + std::string(text(root_, "schema")) +
                             "\", this writer understands 1.x");
  }
}

pugi::xml_node PlanTree::entry(const char* group, const char* element, const char* id) const {
  for (const pugi::xml_node node : root_.child(group).children(element)) {
    if (std::strcmp(text(node, "id"), id) == 0) return node;
  }
  throw std::runtime_error("plan.xml has no " + std::string(element) + " \"" + id + "\"");
}

pugi::xml_node PlanTree::seam(const char* id) const {
  for (const pugi::xml_node joint : root_.child("joints").children("joint")) {
    for (const pugi::xml_node seam : joint.children("seam")) {
      if (std::strcmp(text(seam, "id"), id) == 0) return seam;
    }
  }
  throw std::runtime_error("plan.xml has no seam \"" + std::string(id) + "\"");
}

/// Ids become file names; the core makes them of letters and digits.
std::string ProcedureDocuments::name_of(const std::string& id) const {
  if (id.empty() || id.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"
                                         "0123456789-_") != std::string::npos) {
    throw std::runtime_error("procedure id \"" + id + "\" cannot be a file name");
  }
  return folder_ + "/" + id + "." + ending_;
}

std::vector<std::string> ProcedureDocuments::names(const PlanTree& plan) const {
  std::vector<std::string> all;
  for (const pugi::xml_node procedure : plan.root().child("procedures").children("procedure")) {
    all.push_back(name_of(text(procedure, "id")));
  }
  return all;
}

std::string ProcedureDocuments::procedure_of(const PlanTree& plan, std::string_view name) const {
  for (const pugi::xml_node procedure : plan.root().child("procedures").children("procedure")) {
    const std::string id = text(procedure, "id");
    if (name_of(id) == name) return id;
  }
  throw std::runtime_error("the plan gives no document \"" + std::string(name) + "\"");
}

std::string title_of(pugi::xml_node weldment) {
  const std::string revision = text(weldment, "revision");
  return text(weldment, "title") + (revision.empty() ? revision : ", revision " + revision);
}

const char* text(pugi::xml_node node, const char* attribute) {
  return node.attribute(attribute).value();
}

bool is_true(pugi::xml_node node, const char* attribute) {
  return std::strcmp(text(node, attribute), "true") == 0;
}

double number(pugi::xml_node node, const char* attribute) {
  const std::string_view written = text(node, attribute);
  double value = 0.0;
  const auto end = std::from_chars(written.data(), written.data() + written.size(), value);
  if (end.ec != std::errc() || end.ptr != written.data() + written.size() ||
      !std::isfinite(value)) {
    throw std::runtime_error("plan.xml: attribute " + std::string(attribute) + " of <" +
                             node.name() + "> is \"" + std::string(written) + "\", not a number");
  }
  return value;
}

std::string rounded(double value, int decimals) {
  std::array<char, 400> buffer{};
  const auto end = std::to_chars(
      buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, decimals);
  std::string written(buffer.data(), end.ptr);
  if (written.find('.') != std::string::npos) {
    written.erase(written.find_last_not_of('0') + 1);
    if (written.back() == '.') written.pop_back();
  }
  return written == "-0" ? "0" : written;
}

void copy(pugi::xml_node from, pugi::xml_node to, const std::vector<const char*>& attributes) {
  for (const char* name : attributes) {
    const pugi::xml_attribute attribute = from.attribute(name);
    if (attribute) to.append_attribute(name).set_value(attribute.value());
  }
}

void copy_rounded(pugi::xml_node from,
                  pugi::xml_node to,
                  int decimals,
                  const std::vector<const char*>& attributes) {
  for (const char* name : attributes) {
    if (from.attribute(name)) put(to, name, rounded(number(from, name), decimals));
  }
}

void put_gate_limits(pugi::xml_node gate, pugi::xml_node heat) {
  constexpr double slack_c = 1e-6;  // 120.0000000001 is 120
  put(gate, "at_least_c", rounded(std::ceil(number(heat, "preheat_c") - slack_c), 0));
  put(gate, "at_most_c", rounded(std::floor(number(heat, "interpass_max_c") + slack_c), 0));
}

void put(pugi::xml_node node, const char* attribute, std::string_view value) {
  node.append_attribute(attribute).set_value(std::string(value).c_str());
}

void copy_cautions(pugi::xml_node from, pugi::xml_node to) {
  for (const pugi::xml_node caution : from.children("caution")) {
    copy(caution, to.append_child("caution"), {"code", "text", "defer_to"});
  }
}

pugi::xml_node start_document(pugi::xml_document& document,
                              const char* root,
                              const char* root_namespace) {
  pugi::xml_node declaration = document.append_child(pugi::node_declaration);
  put(declaration, "version", "1.0");
  put(declaration, "encoding", "UTF-8");
  pugi::xml_node node = document.append_child(root);
  put(node, "xmlns", root_namespace);
  put(node, "schema", "1.0");
  return node;
}

std::string document_text(const pugi::xml_document& document) {
  StringWriter writer;
  document.save(writer, " ", pugi::format_indent, pugi::encoding_utf8);
  return writer.take();
}

}  // namespace seamturn::plan_reader
