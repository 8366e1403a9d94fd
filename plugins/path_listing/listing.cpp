// SPDX-License-Identifier: MIT
#include "path_listing/listing.hpp"

#include <cstring>

namespace seamturn::path_listing {

using plan_reader::copy;
using plan_reader::copy_rounded;
using plan_reader::number;
using plan_reader::put;
using plan_reader::text;

namespace {

/// Places to the micrometre, directions to six decimals.
void put_pose(pugi::xml_node parent, pugi::xml_node pose) {
  pugi::xml_node node = parent.append_child(pose.name());
  copy_rounded(pose.child("origin"), node.append_child("origin"), 3, {"x_mm", "y_mm", "z_mm"});
  for (const char* axis : {"x-axis", "z-axis"}) {
    copy_rounded(pose.child(axis), node.append_child(axis), 6, {"x", "y", "z"});
  }
}

void put_head(pugi::xml_node listing, const plan_reader::PlanTree& plan) {
  const pugi::xml_node root = plan.root();
  copy(root.child("weldment"), listing, {"title", "revision", "date", "author", "invented"});
  put(listing.append_child("note"),
      "text",
      "Points are the wire tip on the work, in the part's frame J. Reach and clearance are not "
      "proved: run every path without arc at reduced speed before the first weld.");
  plan_reader::copy_cautions(root.child("cautions"), listing.append_child("cautions"));
  const pugi::xml_node cell = root.child("cell");
  pugi::xml_node positioner = listing.append_child("positioner");
  copy(cell.child("positioner"), positioner, {"id", "kind"});
  for (const pugi::xml_node setup : root.child("setups").children("setup")) {
    pugi::xml_node child = listing.append_child("setup");
    copy(setup, child, {"id"});
    put_pose(child, setup.child("part-on-faceplate"));
  }
  pugi::xml_node retract = listing.append_child("retract");
  put(retract, "distance_mm", text(cell.child("robot"), "retract_mm"));
  put(retract, "way", "back along the torch direction of the point, before and after every pass");
  for (const pugi::xml_node seam : root.child("timeline").children("not-turned")) {
    copy(seam, listing.append_child("not-listed"), {"seam"});
  }
}

/// A stay at one stance; axis values are kept until the next visit.
pugi::xml_node put_visit(pugi::xml_node listing,
                         const plan_reader::PlanTree& plan,
                         const char* id,
                         int count) {
  const pugi::xml_node stance = plan.entry("stances", "stance", id);
  pugi::xml_node visit = listing.append_child("visit");
  put(visit, "number", std::to_string(count));
  put(visit, "stance", id);
  copy(stance, visit, {"setup"});
  copy(stance, visit, {"rolling"});
  for (const pugi::xml_node axis : stance.children("axis")) {
    pugi::xml_node child = visit.append_child("axis");
    copy(axis, child, {"name"});
    copy_rounded(axis, child, 3, {"angle_deg"});
    copy_rounded(axis, child, 1, {"torque_nm"});
  }
  return visit;
}

void put_interval(pugi::xml_node parent, const char* name, pugi::xml_node event) {
  pugi::xml_node node = parent.append_child(name);
  copy(event, node, {"seam"});
  copy_rounded(event, node, 2, {"start_s", "end_s"});
}

bool is_heated_in(pugi::xml_node joint, const std::string& stage) {
  if (!plan_reader::is_true(joint.child("heat"), "needs_heating")) return false;
  const pugi::xml_node seam = joint.child("seam");
  return stage.empty() || stage == text(seam, "stage");
}

/// Mats that stay on bring every joint of the stage to its preheat at once; a torch one seam.
void put_heat(pugi::xml_node visit, const plan_reader::PlanTree& plan, pugi::xml_node event) {
  put_interval(visit, "heat", event);
  pugi::xml_node node = visit.last_child();
  if (!plan_reader::is_true(plan.root().child("consumables").child("heating"), "holds")) return;
  node.remove_attribute("seam");
  for (const pugi::xml_node joint : plan.root().child("joints").children("joint")) {
    if (!is_heated_in(joint, text(event, "stage"))) continue;
    pugi::xml_node heated = node.append_child("joint");
    put(heated, "id", text(joint, "id"));
    plan_reader::put_gate_limits(heated, joint.child("heat"));
  }
}

/// What the axes hold on a turn and how near the floor the load comes, where the plan says so.
void put_turn_load(pugi::xml_node turn,
                   const plan_reader::PlanTree& plan,
                   pugi::xml_node event,
                   const std::string& from) {
  for (const pugi::xml_node planned : plan.root().child("turns").children("turn")) {
    const bool is_way = from == text(planned, "from") &&
                        std::strcmp(text(planned, "to"), text(event, "stance")) == 0;
    const bool is_stage = std::strcmp(text(planned, "stage"), text(event, "stage")) == 0;
    if (!is_way || !is_stage) continue;
    copy_rounded(planned, turn, 1, {"lowest_mm"});
    copy(planned, turn, {"lowest_of"});
    for (const pugi::xml_node halt : planned.children("halt")) {
      pugi::xml_node by = turn.append_child("halt");
      for (const pugi::xml_node axis : halt.children("axis")) {
        pugi::xml_node child = by.append_child("axis");
        copy(axis, child, {"name"});
        copy_rounded(axis, child, 3, {"angle_deg"});
      }
    }
    for (const pugi::xml_node axis : planned.children("axis")) {
      pugi::xml_node child = turn.append_child("axis");
      copy(axis, child, {"name"});
      copy_rounded(axis, child, 1, {"torque_nm", "moving_nm", "stop_nm"});
    }
    return;
  }
}

bool is_kind(pugi::xml_node event, const char* kind) {
  return std::strcmp(text(event, "kind"), kind) == 0;
}

/// Work of people, at its place between the passes.
void put_operation(pugi::xml_node parent, const plan_reader::PlanTree& plan, pugi::xml_node event) {
  pugi::xml_node node = parent.append_child("operation");
  put(node, "id", text(event, "operation"));
  for (const pugi::xml_node operation : plan.root().child("build").children("operation")) {
    if (std::strcmp(text(operation, "id"), text(event, "operation")) != 0) continue;
    copy(operation, node, {"kind", "stage", "people", "note"});
  }
  copy_rounded(event, node, 2, {"start_s", "end_s"});
}

void put_hang(pugi::xml_node listing, pugi::xml_node event) {
  pugi::xml_node node = listing.append_child("hang");
  put(node, "what", text(event, "operation"));
  copy_rounded(event, node, 2, {"start_s", "end_s"});
}

/// What a stance is taken for.
bool is_work(pugi::xml_node event) {
  return is_kind(event, "gouge") || is_kind(event, "heat") || is_kind(event, "touch") ||
         is_kind(event, "work") || is_kind(event, "arc");
}

/// Walks the clock; a visit lasts while the part is held in one stance.
class Lister {
 public:
  Lister(const plan_reader::PlanTree& plan, pugi::xml_node listing)
      : plan_(plan), listing_(listing) {}

  void list() {
    for (const pugi::xml_node event : plan_.root().child("timeline").children("event")) {
      const char* stance = text(event, "stance");
      if (is_kind(event, "turn")) {
        take_turn(event, stance);
      } else if (is_kind(event, "wait")) {
        wait_s_ += number(event, "end_s") - number(event, "start_s");
      } else if (is_kind(event, "clean") && visit_) {
        put_interval(visit_, "clean", event);
      } else if (is_kind(event, "hang") || (is_work(event) && *stance == '\0')) {
        end_visit();
        is_kind(event, "hang") ? put_hang(listing_, event) : put_operation(listing_, plan_, event);
      } else if (is_work(event)) {
        visit(stance);
        put_work(event);
      }
      held_ = is_kind(event, "hang") ? "" : stance;
    }
    end_visit();
  }

 private:
  [[nodiscard]] bool holds(const char* stance) const {
    return visit_ && std::strcmp(text(visit_, "stance"), stance) == 0;
  }

  /// A turn leads to the visit that follows; one more in that stance brings a limited rolling axis
  /// to where its pass starts, or back.
  void take_turn(pugi::xml_node event, const char* stance) {
    if (turn_ && *stance != '\0' && std::strcmp(text(turn_, "stance"), stance) == 0) visit(stance);
    if (holds(stance)) {
      put_interval(visit_, "unwind", event);
      return;
    }
    end_visit();
    turn_ = event;
    from_ = held_;
  }

  void visit(const char* stance) {
    if (!holds(stance)) visit_ = put_visit(listing_, plan_, stance, ++visits_);
    put_turn(visit_);
  }

  void end_visit() {
    visit_ = {};
    put_turn(listing_);
  }

  void put_turn(pugi::xml_node parent) {
    if (!turn_) return;
    put_interval(parent, "turn", turn_);
    put_turn_load(parent.last_child(), plan_, turn_, from_);
    turn_ = {};
  }

  void put_work(pugi::xml_node event) {
    if (is_kind(event, "work")) put_operation(visit_, plan_, event);
    if (is_kind(event, "gouge")) put_interval(visit_, "gouge", event);
    if (is_kind(event, "heat")) put_heat(visit_, plan_, event);
    if (is_kind(event, "touch")) put_interval(visit_, "touch", event);
    if (!is_kind(event, "arc")) return;
    put_pass(visit_, plan_, event, wait_s_);
    wait_s_ = 0.0;
  }

  const plan_reader::PlanTree& plan_;
  pugi::xml_node listing_;
  pugi::xml_node visit_;
  pugi::xml_node turn_;  ///< not yet written: it belongs to the visit it leads to
  std::string held_;     ///< stance of the event before; empty: at rest
  std::string from_;     ///< where turn_ begins
  int visits_ = 0;
  double wait_s_ = 0.0;
};

}  // namespace

bool has_listing(const plan_reader::PlanTree& plan) {
  for (const pugi::xml_node event : plan.root().child("timeline").children("event")) {
    if (is_kind(event, "arc") && *text(event, "stance") != '\0') return true;
  }
  return false;
}

std::string listing_xml(const plan_reader::PlanTree& plan) {
  pugi::xml_document document;
  pugi::xml_node listing = plan_reader::start_document(document, "paths", "urn:seamturn:paths:1");
  put_head(listing, plan);
  Lister(plan, listing).list();
  return plan_reader::document_text(document);
}

}  // namespace seamturn::path_listing
