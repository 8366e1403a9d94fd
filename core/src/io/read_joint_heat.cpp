// SPDX-License-Identifier: MIT
// What a joint states of its heat.
#include <array>
#include <initializer_list>

#include "detail_drafts.hpp"

namespace seamturn::io::detail {

namespace {

constexpr std::array<std::string_view, 4> methods = {
    "cet", "table-c1", "aws-category", "ito-bessyo"};
constexpr std::array<std::string_view, 3> restraints = {"low", "medium", "high"};
constexpr std::array<std::string_view, 1> reductions = {"single-run-fillet"};

void read_reason(AttributeReader& reader, joint::StatedHeat& heat) {
  heat.preheat_reason = reader.find_text("preheat-reason");
  const bool has_reason = reader.has("preheat-reason");
  bool is_due = false;
  for (const MarkedName name :
       std::initializer_list<MarkedName>{"preheat", "preheat-by", "preheat-less"}) {
    if (!reader.has(name)) continue;
    is_due = true;
    if (has_reason) continue;
    reader.error(name.text(),
                 "read.joint.preheat_reason",
                 "a preheat is decided without a reason; expected preheat-reason=\"...\", for it "
                 "replaces what the methods ask for; add who decided it and why");
  }
  if (has_reason && !is_due) {
    reader.error("preheat-reason",
                 "read.joint.preheat_reason",
                 "a reason is stated without a preheat; expected preheat=, preheat-by= or "
                 "preheat-less= beside it; add it or delete the reason");
  }
  if (reader.has("preheat") && (reader.has("preheat-by") || reader.has("preheat-less"))) {
    reader.error("preheat",
                 "read.joint.preheat_twice",
                 "a temperature and a method are both stated; expected one of preheat=, "
                 "preheat-by= and preheat-less=; delete one");
  }
}

void read_window(AttributeReader& reader, joint::StatedHeat& heat) {
  heat.t85_min_s = reader.find_quantity("t85-min", ranges::cooling_time);
  heat.t85_max_s = reader.find_quantity("t85-max", ranges::cooling_time);
  if (reader.has("t85-min") != reader.has("t85-max")) {
    reader.error(reader.has("t85-min") ? "t85-min" : "t85-max",
                 "read.joint.t85",
                 "one end of a window of t8/5; expected both t85-min= and t85-max=; add the other");
  } else if (heat.t85_min_s && heat.t85_max_s && *heat.t85_min_s >= *heat.t85_max_s) {
    reader.error("t85-max",
                 "read.joint.t85",
                 "the longest t8/5 is not above the shortest; expected t85-max= above t85-min=; "
                 "correct one of them");
  }
}

}  // namespace

void read_stated_heat(AttributeReader& reader, joint::StatedHeat& heat) {
  heat.preheat_c = reader.find_quantity("preheat", ranges::preheat);
  if (const std::optional<std::size_t> by = reader.find_word("preheat-by", methods)) {
    heat.preheat_by = methods.at(*by);
  }
  heat.single_run_reduction = reader.find_word("preheat-less", reductions).has_value();
  read_reason(reader, heat);
  heat.interpass_max_c = reader.find_quantity("interpass-max", ranges::interpass);
  heat.record = reader.find_id("record");
  if (heat.preheat_c && heat.interpass_max_c && *heat.interpass_max_c <= *heat.preheat_c) {
    reader.error("interpass-max",
                 "read.joint.interpass",
                 "the interpass maximum is not above the preheat; expected room between them; "
                 "correct one of them");
  }
  heat.combined_thickness_mm = reader.find_quantity("combined-thickness", ranges::size);
  heat.sides_together = reader.find_yes("sides-together");
  const std::optional<std::size_t> restraint = reader.find_word("restraint", restraints);
  heat.restraint_stated = restraint.has_value();
  heat.restraint = static_cast<joint::Restraint>(restraint.value_or(1));
  read_window(reader, heat);
}

}  // namespace seamturn::io::detail
