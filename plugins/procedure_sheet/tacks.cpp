// SPDX-License-Identifier: MIT
// The tacks of a sheet's seams, and whether they carry their members through the turns.
#include <algorithm>
#include <cmath>
#include <cstring>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

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

/// Along the seam as drawn, rising: those of an arc over its start begin anew.
std::string centres(pugi::xml_node seam) {
  std::vector<std::pair<double, std::string>> stations;
  for (const pugi::xml_node tack : seam.child("tacks").children("tack")) {
    const double centre_mm = 0.5 * (number(tack, "from_mm") + number(tack, "to_mm"));
    const std::string station = drawn_station(seam, centre_mm);
    stations.emplace_back(std::stod(station), station);
  }
  std::sort(stations.begin(), stations.end());
  std::string all;
  for (const auto& station : stations) all += (all.empty() ? "" : " ") + station.second;
  return all;
}

/// Tacks of the sheet's seams, one node a seam; without those that have none.
std::vector<pugi::xml_node> tacked_seams(const Subject& subject) {
  std::vector<pugi::xml_node> seams;
  for (const pugi::xml_node id : subject.procedure.children("seam")) {
    const pugi::xml_node seam = subject.plan.seam(text(id, "id"));
    if (seam.child("tacks").child("tack")) seams.push_back(seam);
  }
  return seams;
}

/// The widest of all seams.
double widest_pitch_mm(const std::vector<pugi::xml_node>& seams) {
  double widest_mm = 0.0;
  for (const pugi::xml_node seam : seams) {
    widest_mm = std::max(widest_mm, number(seam.child("tacks"), "widest_pitch_mm"));
  }
  return widest_mm;
}

/// In which all of them are tacked; empty where they differ: then each seam says its own.
std::string common_stage(const std::vector<pugi::xml_node>& seams) {
  const std::string first = text(seams.front().child("tacks"), "stage");
  const bool common = std::all_of(seams.begin(), seams.end(), [&](pugi::xml_node seam) {
    return first == text(seam.child("tacks"), "stage");
  });
  return common ? first : "";
}

/// "with A, B welded to it before; ", "".
std::string welded_text(pugi::xml_node carried) {
  std::string all;
  for (const pugi::xml_node welded : carried.children("welded")) {
    all += (all.empty() ? "with " : ", ") + std::string(text(welded, "member"));
  }
  return all.empty() ? "" : all + " welded to it before; ";
}

/// "20.3 kg on 8 tacks: 3.1 of 217 MPa in turn to S07, site factor 3".
std::string carried_text(pugi::xml_node carried) {
  const bool shared = plan_reader::is_true(carried, "shared");
  const std::string tacks = text(carried, "tacks");
  const std::string head =
      welded_text(carried) + rounded(number(carried, "mass_kg"), 1) + " kg" +
      (shared ? " (what hangs on others too counts whole on each, on the safe side)" : "") +
      " on " + tacks + (tacks == "1" ? " tack: " : " tacks: ");
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

bool is_about(pugi::xml_node carried, const char* member) {
  if (std::strcmp(text(carried, "member"), member) == 0) return true;
  const auto welded = carried.children("welded");
  return std::any_of(welded.begin(), welded.end(), [&](pugi::xml_node one) {
    return std::strcmp(text(one, "member"), member) == 0;
  });
}

/// Members of the sheet's joints, in every stage that turns them on tacks.
void put_carried(pugi::xml_node node, const Subject& subject) {
  for (const pugi::xml_node carried : subject.plan.root().child("build").children("carried")) {
    bool ours = false;
    for (const pugi::xml_node id : subject.procedure.children("joint")) {
      const pugi::xml_node joint = subject.plan.entry("joints", "joint", text(id, "id"));
      ours = ours || is_about(carried, text(joint, "member_1")) ||
             is_about(carried, text(joint, "member_2"));
    }
    if (!ours) continue;
    pugi::xml_node line = node.append_child("carried");
    if (*text(carried, "stage") != '\0') copy(carried, line, {"stage"});
    copy(carried, line, {"member"});
    put(line, "text", carried_text(carried));
  }
}

}  // namespace

void put_tacks(pugi::xml_node sheet, const Subject& subject) {
  const std::vector<pugi::xml_node> seams = tacked_seams(subject);
  if (seams.empty()) return;
  const pugi::xml_node first = seams.front().child("tacks");  // all are tacked alike
  pugi::xml_node node = sheet.append_child("tacks");
  copy_rounded(first, node, 0, {"length_mm"});
  copy(first, node, {"runs"});
  copy_rounded(first, node, 1, {"throat_mm"});
  put(node, "preheat_at_least_c", rounded(std::ceil(number(first, "preheat_c") - 1e-6), 0));
  copy_rounded(first, node, 1, {"clear_of_ends_mm"});
  put(node, "widest_pitch_mm", rounded(widest_pitch_mm(seams), 0));
  const std::string stage = common_stage(seams);
  if (!stage.empty()) put(node, "stage", stage);
  put(node, "before_welding", before_welding(text(first, "fate")));
  put(node, "hold_point", "before the first turn: every tack looked at, none cracked; signed");
  put(node, "rule", text(first, "why"));
  copy(first, node, {"status"});
  for (const pugi::xml_node planned : seams) {
    const auto all = planned.child("tacks").children("tack");
    pugi::xml_node seam = node.append_child("seam");
    copy(planned, seam, {"id"});
    put(seam, "number", std::to_string(std::distance(all.begin(), all.end())));
    put(seam, "centres_mm", centres(planned));
    if (stage.empty()) copy(planned.child("tacks"), seam, {"stage"});
  }
  put_carried(node, subject);
}

}  // namespace seamturn::procedure_sheet
