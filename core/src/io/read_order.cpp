// SPDX-License-Identifier: MIT
// What a file fixes of the order by hand, and where it switches balance off.
#include <algorithm>

#include "detail_drafts.hpp"
#include "detail_utf8.hpp"

namespace seamturn::io::detail {

namespace {

/// "off" with its reason.
struct Off {
  bool is_off = false;
  bool is_clear = true;  ///< what it says could be read
  std::string reason;
};
Off read_off(FileContext& context, AttributeReader& reader) {
  const std::size_t errors_before = context.report.error_count();
  Off off;
  off.is_off = reader.find_yes("off");
  off.is_clear = context.report.error_count() == errors_before;
  off.reason = reader.find_text("reason");
  if (off.is_off && off.reason.empty() && context.report.error_count() == errors_before) {
    reader.error(
        "off",
        "read.balance.reason",
        "balance is switched off without a reason; expected reason=\"...\", who decided it "
        "and why; add it");
  }
  if (!off.is_off && off.is_clear) {
    reader.refuse("reason", "read.balance.reason", "nothing is switched off");
  }
  return off;
}

void tell_empty(AttributeReader& reader, const char* expected) {
  reader.error("read.balance.empty",
               std::string("the element changes nothing: balance is on by itself; expected ") +
                   expected + "; write that, or delete it");
}

/// Entries that name nothing twice.
void read_entries(AttributeReader& reader, joint::HandOrder& order) {
  for (const std::string& text : reader.pieces("seams")) {
    const std::optional<joint::HandEntry> entry = joint::read_hand_entry(text);
    if (!entry) {
      reader.error("seams",
                   "read.hand_order.entry",
                   in_quotes(text) +
                       " is no entry of an order by hand; expected a joint (\"R1\"), one of its "
                       "seams (\"J4.b\"), a segment of one (\"J4.b/2\"), or layers (\"R2.1\", "
                       "\"J4.b.2-3\", \"R2.2-\") or passes (\"R2:4\", \"J4.b:2-\") of them counted "
                       "from the root; correct it");
      continue;
    }
    const auto first = std::find_if(
        order.entries.begin(), order.entries.end(), [&](const joint::HandEntry& other) {
          return joint::overlap(other, *entry);
        });
    if (first != order.entries.end()) {
      reader.error(
          "seams",
          "read.hand_order.twice",
          in_quotes(text) + " is named already by " + in_quotes(first->text) +
              "; expected every layer once in an order, and of a seam layers or passes, not "
              "both; delete one of them, or name layers");
      continue;
    }
    order.entries.push_back(*entry);
  }
}

}  // namespace

void read_balance(FileContext& context, const Element& element, WeldmentDraft& draft) {
  AttributeReader reader(context, element);
  const Off off = read_off(context, reader);
  draft.weldment.balance_off = off.reason;
  if (!off.is_off && off.is_clear) tell_empty(reader, "off=\"yes\" with reason=\"...\"");
  reader.finish("balance", draft.weldment.places);
  check_children(context, element, {});
}

void read_joint_balance(FileContext& context,
                        const Element& joint_element,
                        joint::Joint& joint,
                        joint::Places& places) {
  const Element element = only_child(context, joint_element, "balance", Need::may_be_absent);
  if (!element) return;
  AttributeReader reader(context, element);
  const Off off = read_off(context, reader);
  joint.balance_off = off.reason;
  joint.balance_with = reader.find_id("with");
  if (off.is_off) {
    reader.refuse("with", "read.balance.both", "balance of this joint is switched off");
  } else if (off.is_clear && !reader.has("with")) {
    tell_empty(reader,
               "off=\"yes\" with reason=\"...\", or with=\"...\", the joint to keep step with");
  }
  if (!joint.balance_with.empty() && joint.balance_with == joint.id) {
    reader.error("with",
                 "read.balance.itself",
                 "joint " + in_quotes(joint.id) +
                     " is to keep step with itself; expected another joint; the seams of one joint "
                     "keep step by themselves");
  }
  reader.finish("balance/" + joint.id, places);
  check_children(context, element, {});
}

void read_hand_order(FileContext& context, const Element& element, WeldmentDraft& draft) {
  AttributeReader reader(context, element);
  joint::HandOrder order;
  order.stage = reader.find_id("stage");
  read_entries(reader, order);
  const std::string key = "hand-order/" + std::to_string(draft.weldment.hand_orders.size());
  reader.finish(key, draft.weldment.places);
  check_children(context, element, {});
  draft.weldment.hand_orders.push_back(std::move(order));
}

void check_order_references(const WeldmentDraft& draft, Report& report) {
  const joint::Weldment& weldment = draft.weldment;
  const auto joint_of = [&](const std::string& id) {
    const auto found = std::find_if(draft.joints.begin(),
                                    draft.joints.end(),
                                    [&](const JointDraft& one) { return one.joint.id == id; });
    return found == draft.joints.end() ? nullptr : &*found;
  };
  for (std::size_t i = 0; i < weldment.hand_orders.size(); ++i) {
    const joint::HandOrder& order = weldment.hand_orders[i];
    const std::string key = "hand-order/" + std::to_string(i);
    if (order.stage.empty() && !weldment.stages.empty()) {
      report.error(
          weldment.places.nearest_spot(key, "stage"),
          "read.hand_order.stage",
          "the file states stages and the order by hand names none; expected stage=\"...\", "
          "the one whose seams it orders; add it");
    }
    for (const joint::HandEntry& entry : order.entries) {
      const JointDraft* draft_of = joint_of(entry.joint);
      if (draft_of == nullptr || entry.side == 0 || draft_of->seams.size() == 2) continue;
      report.error(weldment.places.nearest_spot(key, "seams"),
                   "read.seam.unknown",
                   in_quotes(entry.text) + " names a side of joint " + in_quotes(entry.joint) +
                       ", which has one seam; expected " + in_quotes(entry.joint) +
                       "; correct the name");
    }
  }
  for (const JointDraft& joint : draft.joints) {
    const JointDraft* other = joint_of(joint.joint.balance_with);
    if (other == nullptr || other->joint.balance_off.empty()) continue;
    report.error(weldment.places.nearest_spot("balance/" + joint.joint.id, "with"),
                 "read.balance.contradicts",
                 "joint " + in_quotes(joint.joint.id) + " is to keep step with joint " +
                     in_quotes(other->joint.id) +
                     ", whose balance is switched off; expected one or the other; delete one of "
                     "these <balance>");
  }
}

}  // namespace seamturn::io::detail
