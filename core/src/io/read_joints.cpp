// SPDX-License-Identifier: MIT
#include <algorithm>
#include <array>

#include "detail_drafts.hpp"
#include "detail_utf8.hpp"

namespace seamturn::io::detail {

namespace {

constexpr std::array<std::string_view, 4> joint_types = {"butt", "tee", "corner", "lap"};
constexpr std::array<std::string_view, 5> roots = {
    "open", "steel-backing", "ceramic-backing", "gouge", "both-sides"};
constexpr std::array<std::string_view, 3> quality_levels = {"B", "C", "D"};  // ISO 5817

void read_members_of(AttributeReader& reader, joint::Joint& joint) {
  const std::size_t given = reader.has("members") ? 1 : 0;
  const std::vector<std::string> members = reader.ids("members");
  if (members.size() == 2) {
    joint.member_1 = members[0];
    joint.member_2 = members[1];
    if (members[0] == members[1]) {
      reader.error("members",
                   "read.joint.members",
                   "both members are " + in_quotes(members[0]) +
                       "; expected two different ones; a tee names the through member first");
    }
  } else if (given > 0) {
    reader.error("members",
                 "read.joint.members",
                 std::to_string(members.size()) +
                     " member(s) found; expected two, e.g. members=\"base web\"; a tee names the "
                     "through member first");
  }
}

void check_preparation_of_type(AttributeReader& reader, const JointDraft& draft) {
  const joint::Preparation& preparation = draft.joint.preparation;
  const bool fillet = joint::is_fillet(preparation);
  const bool plug = std::holds_alternative<joint::Plug>(preparation);
  const joint::JointType type = draft.joint.type;
  const std::string name(joint::preparation_name(preparation));
  const auto refuse = [&](const std::string& expected) {
    reader.error("type",
                 "read.joint.preparation",
                 "a " + std::string(joint::joint_type_name(type)) + " joint with a " + name +
                     " preparation; expected " + expected +
                     "; correct the type or the preparation");
  };
  if (type == joint::JointType::butt && (fillet || plug)) refuse("a groove");
  if (type == joint::JointType::tee && !fillet && !joint::is_one_edge_cut(preparation)) {
    refuse("fillet, or a bevel or J: the second member stands on the first");
  }
  if (type == joint::JointType::corner && plug) refuse("fillet or a groove");
  if (type == joint::JointType::lap && !fillet && !plug) refuse("fillet, plug or slot");
  if (fillet || plug) {
    reader.refuse("root", "read.joint.root_of_fillet", "a " + name + " has no open root");
  }
}

std::vector<std::string_view> words_of_joint() {
  const std::span<const std::string_view> preparations = joint::preparation_names();
  std::vector<std::string_view> words(preparations.begin(), preparations.end());
  for (const char* word : {"cap",
                           "cover",
                           "gouge",
                           "welded",
                           "balance",
                           "line",
                           "arc",
                           "polyline",
                           "circle",
                           "run",
                           "holes"}) {
    words.push_back(word);
  }
  return words;
}

}  // namespace

void read_joint(FileContext& context,
                const Element& element,
                JointDraft& draft,
                joint::Places& places) {
  const std::size_t errors_before = context.report.error_count();
  AttributeReader reader(context, element);
  joint::Joint& joint = draft.joint;
  joint.id = reader.id("id");
  if (joint.id.find('.') != std::string::npos) {
    reader.error("id",
                 "read.id.malformed",
                 "joint id " + in_quotes(joint.id) +
                     " holds a point; expected none: \".a\" and \".b\" name the seams of a joint; "
                     "rename it");
  }
  draft.key = "joint/" + joint.id;
  const std::size_t errors_before_type = context.report.error_count();
  joint.type = static_cast<joint::JointType>(reader.word("type", joint_types));
  const bool type_is_known = context.report.error_count() == errors_before_type;
  read_members_of(reader, joint);
  joint.quality = quality_levels.at(reader.find_word("quality", quality_levels).value_or(1));
  joint.purpose = reader.find_text("purpose");
  joint.after = reader.find_ids("after");
  joint.wire = reader.find_id("wire");
  joint.fit_up = reader.find_id("fit-up");
  joint.stage = reader.find_id("stage");
  joint.duty = static_cast<joint::Duty>(reader.find_word("duty", joint::duty_names()).value_or(0));
  constexpr std::array<std::string_view, 1> proofs = {"proved"};
  joint.reach_proved = reader.find_word("reach", proofs).has_value();
  if (reader.has("tacks")) joint.tacks = reader.count("tacks", 0, 1000);
  joint.root = static_cast<joint::RootDecision>(reader.find_word("root", roots).value_or(0));
  joint.first_share = reader.find_quantity("first-share", ranges::share);
  read_stated_heat(reader, joint.heat);

  static const std::vector<std::string_view> known = words_of_joint();
  check_children(context, element, known);
  const std::size_t errors_of_preparation = context.report.error_count();
  const Element preparation = read_preparation(context, element, draft, places);
  if (context.report.error_count() == errors_of_preparation && type_is_known) {
    check_preparation_of_type(reader, draft);
  }
  read_cap(context, element, draft, places);
  read_gouge(context, element, draft, places);
  read_joint_balance(context, element, joint, places);
  read_seams(context, element, draft, places);
  if (!joint::has_two_sides(joint)) {
    reader.refuse("first-share", "read.joint.first_share", "the joint is closed from one side");
  }
  reader.finish();
  draft.is_sound = context.report.error_count() == errors_before;
  // Sizes are asked for by the joint they belong to.
  keep_unique(reader, draft.key, places, preparation);
}

}  // namespace seamturn::io::detail
