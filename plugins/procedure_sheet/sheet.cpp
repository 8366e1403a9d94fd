// SPDX-License-Identifier: MIT
#include "procedure_sheet/sheet.hpp"

#include <cstring>
#include <stdexcept>

namespace seamturn::procedure_sheet {

using plan_reader::put;
using plan_reader::text;

namespace {

Subject find_subject(const plan_reader::PlanTree& plan, const std::string& id) {
  const pugi::xml_node procedure = plan.entry("procedures", "procedure", id.c_str());
  const pugi::xml_node first = procedure.child("seam");
  if (!first) throw std::runtime_error("procedure " + id + " has no seam");
  const pugi::xml_node seam = plan.seam(text(first, "id"));
  const pugi::xml_node wire = plan.entry("consumables", "wire", text(procedure, "wire"));
  pugi::xml_node gas;
  if (*text(procedure, "gas") != '\0') {
    gas = plan.entry("consumables", "gas", text(procedure, "gas"));
  }
  return Subject{plan, procedure, seam.parent(), seam, wire, gas};
}

}  // namespace

void put_item(pugi::xml_node parent, const char* name, std::string_view value) {
  if (value.empty()) {
    put_open(parent, name);
    return;
  }
  pugi::xml_node item = parent.append_child("item");
  put(item, "name", name);
  put(item, "value", value);
}

void put_open(pugi::xml_node parent, const char* name) {
  pugi::xml_node item = parent.append_child("item");
  put(item, "name", name);
  put(item, "open", open_text);
}

void put_status(pugi::xml_node sheet, const Subject& subject) {
  pugi::xml_node status = sheet.append_child("status");
  const std::string qualification = text(subject.procedure, "qualification");
  const std::size_t colon = qualification.find(':');
  // A sheet without any word on its qualification is preliminary, whatever else the plan says.
  put(status, "word", qualification.empty() ? "preliminary" : qualification.substr(0, colon));
  std::string reason = colon == std::string::npos ? "" : qualification.substr(colon + 1);
  if (const std::size_t start = reason.find_first_not_of(' '); start != std::string::npos) {
    reason.erase(0, start);
  }
  if (reason.empty()) reason = "the plan names no qualification record";
  put(status, "reason", reason);
}

/// What the file names is told; whether it covers the procedure nobody here judges.
void put_records(pugi::xml_node node, const Subject& subject) {
  std::string named;
  for (const pugi::xml_node entry : subject.procedure.children("joint")) {
    const std::string id = text(entry, "id");
    const std::string record = text(subject.plan.entry("joints", "joint", id.c_str()), "record");
    if (!record.empty()) named += (named.empty() ? "" : ", ") + record + " of joint " + id;
  }
  put_open(node, "supporting qualification record");
  if (named.empty()) return;
  const std::string told = "the file names " + named +
                           "; whether it covers this procedure is for the welding coordinator";
  node.last_child().attribute("open").set_value(told.c_str());
}

void put_identification(pugi::xml_node sheet, const Subject& subject) {
  const pugi::xml_node weldment = subject.plan.root().child("weldment");
  pugi::xml_node node = sheet.append_child("identification");
  put_open(node, "manufacturer");
  put_item(node, "sheet", text(subject.procedure, "id"));
  put_item(node, "weldment", text(weldment, "title"));
  put_item(node, "revision", text(weldment, "revision"));
  put_item(node, "date", text(weldment, "date"));
  put_item(node, "author", text(weldment, "author"));
  put_records(node, subject);
  put_open(node, "approved by");
}

void put_inspection(pugi::xml_node sheet, const Subject& subject) {
  pugi::xml_node node = sheet.append_child("inspection");
  put_item(node, "quality level (ISO 5817)", text(subject.joint, "quality"));
  for (const pugi::xml_node line : subject.procedure.children("inspection")) {
    put(node.append_child("line"), "text", text(line, "text"));
  }
  if (!subject.procedure.child("inspection")) put_open(node, "inspection");
}

void put_cautions(pugi::xml_node sheet, const Subject& subject) {
  pugi::xml_node node = sheet.append_child("cautions");
  const pugi::xml_node from = subject.procedure.child("caution")
                                  ? subject.procedure
                                  : subject.plan.root().child("cautions");
  plan_reader::copy_cautions(from, node);
}

std::string sheet_xml(const plan_reader::PlanTree& plan, const std::string& id) {
  const Subject subject = find_subject(plan, id);
  pugi::xml_document document;
  pugi::xml_node sheet = plan_reader::start_document(document, "sheet", "urn:seamturn:sheet:1");
  put(sheet, "id", id);
  plan_reader::copy(plan.root().child("weldment"), sheet, {"invented"});
  put_status(sheet, subject);
  put_cautions(sheet, subject);
  put_identification(sheet, subject);
  put_scope(sheet, subject);
  put_parent_metal(sheet, subject);
  put_preparation(sheet, subject);
  put_sizes(sheet, subject);
  put_process(sheet, subject);
  put_consumables(sheet, subject);
  put_passes(sheet, subject);
  put_fit_up(sheet, subject);
  put_tacks(sheet, subject);
  put_heat(sheet, subject);
  put_inspection(sheet, subject);
  return plan_reader::document_text(document);
}

}  // namespace seamturn::procedure_sheet
