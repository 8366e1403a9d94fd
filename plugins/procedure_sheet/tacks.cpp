// SPDX-License-Identifier: MIT
// The tacks of a sheet's seams, and whether they carry their members through the turns.
#include <cmath>
#include <cstring>
#include <iterator>

#include "procedure_sheet/sheet.hpp"

namespace seamturn::procedure_sheet {

using plan_reader::copy;
using plan_reader::copy_rounded;
using plan_reader::number;
using plan_reader::put;
using plan_reader::rounded;
using plan_reader::text;

namespace {

std::string before_welding(const std::string& fate) {
  if (fate == "remelted") return "ends feathered; the first run takes them in (common practice)";
  if (fate == "gouged out") return "taken out with the gouging (common practice)";
  return "ground back to the first run's thickness, ends feathered (common practice)";
}

/// Of the first of the sheet's seams that is tacked; all of them are tacked alike.
pugi::xml_node first_tacks(const Subject& subject) {
  for (const pugi::xml_node id : subject.procedure.children("seam")) {
    const pugi::xml_node tacks = subject.plan.seam(text(id, "id")).child("tacks");
    if (tacks.child("tack")) return tacks;
  }
  return {};
}

std::string centres(pugi::xml_node seam) {
  std::string all;
  for (const pugi::xml_node tack : seam.child("tacks").children("tack")) {
    const double centre_mm = 0.5 * (number(tack, "from_mm") + number(tack, "to_mm"));
    all += (all.empty() ? "" : " ") + drawn_station(seam, centre_mm);
  }
  return all;
}

/// "20.3 kg on 8 tacks: 3.1 of 217 MPa in turn to S07, site factor 3".
std::string carried_text(pugi::xml_node carried) {
  const std::string tacks = text(carried, "tacks");
  const std::string head = rounded(number(carried, "mass_kg"), 1) + " kg on " + tacks +
                           (tacks == "1" ? " tack: " : " tacks: ");
  if (!carried.attribute("stress_mpa")) return head + text(carried, "refused");
  std::string all = head + rounded(number(carried, "stress_mpa"), 1) + " of " +
                    rounded(number(carried, "permitted_mpa"), 0) + " MPa (" +
                    text(carried, "permitted_status") + "), worst attitude " +
                    text(carried, "attitude") + ", site factor " +
                    rounded(number(carried, "site_factor"), 1);
  if (carried.attribute("more_needed")) {
    all += std::string("; NOT ENOUGH: ") + text(carried, "more_needed") + " more are needed";
  }
  if (*text(carried, "no_more") != '\0') {
    all += std::string("; NOT ENOUGH: ") + text(carried, "no_more");
  }
  return all;
}

/// Members of the sheet's joints, in every stage that turns them on tacks.
void put_carried(pugi::xml_node node, const Subject& subject) {
  for (const pugi::xml_node carried : subject.plan.root().child("build").children("carried")) {
    const char* member = text(carried, "member");
    bool ours = false;
    for (const pugi::xml_node id : subject.procedure.children("joint")) {
      const pugi::xml_node joint = subject.plan.entry("joints", "joint", text(id, "id"));
      ours = ours || std::strcmp(text(joint, "member_1"), member) == 0 ||
             std::strcmp(text(joint, "member_2"), member) == 0;
    }
    if (!ours) continue;
    pugi::xml_node line = node.append_child("carried");
    if (*text(carried, "stage") != '\0') copy(carried, line, {"stage"});
    put(line, "member", member);
    put(line, "text", carried_text(carried));
  }
}

}  // namespace

void put_tacks(pugi::xml_node sheet, const Subject& subject) {
  const pugi::xml_node first = first_tacks(subject);
  if (!first) return;
  pugi::xml_node node = sheet.append_child("tacks");
  copy_rounded(first, node, 0, {"length_mm"});
  copy(first, node, {"runs"});
  copy_rounded(first, node, 1, {"throat_mm"});
  put(node, "preheat_at_least_c", rounded(std::ceil(number(first, "preheat_c") - 1e-6), 0));
  copy(first, node, {"clear_of_ends_mm"});
  copy_rounded(first, node, 0, {"widest_pitch_mm"});
  if (*text(first, "stage") != '\0') copy(first, node, {"stage"});
  put(node, "before_welding", before_welding(text(first, "fate")));
  put(node, "hold_point", "before the first turn: every tack looked at, none cracked; signed");
  put(node, "rule", text(first, "why"));
  copy(first, node, {"status"});
  for (const pugi::xml_node id : subject.procedure.children("seam")) {
    const pugi::xml_node planned = subject.plan.seam(text(id, "id"));
    const pugi::xml_node tacks = planned.child("tacks");
    if (!tacks.child("tack")) continue;
    pugi::xml_node seam = node.append_child("seam");
    put(seam, "id", text(id, "id"));
    const auto all = tacks.children("tack");
    put(seam, "number", std::to_string(std::distance(all.begin(), all.end())));
    put(seam, "centres_mm", centres(planned));
  }
  put_carried(node, subject);
}

}  // namespace seamturn::procedure_sheet
