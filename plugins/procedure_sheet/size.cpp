// SPDX-License-Identifier: MIT
// Are the welds of a sensible size: rules of codes, and the throat that counts.
#include <cstring>

#include "procedure_sheet/sheet.hpp"

namespace seamturn::procedure_sheet {

using plan_reader::copy;
using plan_reader::copy_rounded;
using plan_reader::is_true;
using plan_reader::number;
using plan_reader::put;
using plan_reader::rounded;
using plan_reader::text;

namespace {

std::string source_text(pugi::xml_node cited) {
  const std::string locator = text(cited, "locator");
  return text(cited, "source") + (locator.empty() ? "" : " " + locator);
}

/// "leg 5.66 mm, at least 5 mm: holds".
std::string check_text(pugi::xml_node check) {
  const std::string unit =
      *text(check, "unit") == '\0' ? "" : std::string(" ") + text(check, "unit");
  std::string all = std::string(text(check, "subject")) + " " + rounded(number(check, "found"), 2) +
                    unit + ", " + text(check, "bound") + " " +
                    rounded(number(check, "required"), 2) + unit + ": " +
                    (is_true(check, "holds") ? "holds" : "fails");
  if (*text(check, "otherwise") != '\0') all += std::string("; ") + text(check, "otherwise");
  return all;
}

/// The same words of two joints.
bool says_the_same(pugi::xml_node a, pugi::xml_node b) {
  for (const char* attribute : {"verdict", "refused"}) {
    if (std::strcmp(text(a, attribute), text(b, attribute)) != 0) return false;
  }
  pugi::xml_node one = a.child("check");
  pugi::xml_node other = b.child("check");
  for (; one && other; one = one.next_sibling("check"), other = other.next_sibling("check")) {
    if (std::strcmp(text(one, "rule"), text(other, "rule")) != 0) return false;
    if (std::strcmp(text(one, "text"), text(other, "text")) != 0) return false;
  }
  return !one && !other;
}

pugi::xml_node put_size(pugi::xml_node sheet, pugi::xml_node joint) {
  const pugi::xml_node size = joint.child("weld-size");
  pugi::xml_node node = sheet.append_child("weld-size");
  put(node, "joints", text(joint, "id"));
  copy(size, node, {"verdict", "refused"});
  for (const pugi::xml_node check : size.children("check")) {
    pugi::xml_node line = node.append_child("check");
    copy(check, line, {"rule"});
    put(line, "text", check_text(check));
    put(line, "source", source_text(check));
    copy(check, line, {"status"});
  }
  return node;
}

/// Joints of one sheet differ in length: those of which the same is said stand together.
void put_joint_sizes(pugi::xml_node sheet, const Subject& subject) {
  const pugi::xml_node last = sheet.last_child();
  for (const pugi::xml_node named : subject.procedure.children("joint")) {
    const pugi::xml_node joint = subject.plan.entry("joints", "joint", text(named, "id"));
    if (!joint.child("weld-size")) continue;
    const pugi::xml_node node = put_size(sheet, joint);
    for (pugi::xml_node before = last.next_sibling(); before != node;
         before = before.next_sibling()) {
      if (!says_the_same(before, node)) continue;
      const std::string joints = std::string(text(before, "joints")) + " " + text(joint, "id");
      before.attribute("joints").set_value(joints.c_str());
      sheet.remove_child(node);
      break;
    }
  }
}

}  // namespace

void put_sizes(pugi::xml_node sheet, const Subject& subject) {
  put_joint_sizes(sheet, subject);
  const pugi::xml_node counted = subject.seam.child("counted-throat");
  if (!counted) return;
  pugi::xml_node node = sheet.append_child("throat");
  copy(counted, node, {"refused"});
  if (*text(counted, "refused") != '\0') return;
  put(node, "counted_mm", rounded(number(counted, "throat_mm"), 2));
  copy_rounded(counted, node, 2, {"deduction_mm"});
  copy(counted, node, {"with_cover"});
  put(node, "source", source_text(counted));
  copy(counted, node, {"status"});
}

}  // namespace seamturn::procedure_sheet
