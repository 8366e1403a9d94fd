// SPDX-License-Identifier: MIT
// tests/good/ordered.xml, twins of every kind in several layers, changed in code by each test.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "staged_part.hpp"

namespace seamturn::tests {

inline planner::Inputs ordered_part() {
  return io::read_inputs(repository() / "tests/good/ordered.xml");
}

inline joint::HandOrder hand_order(const std::vector<std::string>& entries,
                                   const std::string& stage = "") {
  joint::HandOrder order;
  order.stage = stage;
  for (const std::string& text : entries) {
    const auto entry = joint::read_hand_entry(text);
    REQUIRE_MESSAGE(entry, text);
    order.entries.push_back(*entry);
  }
  return order;
}

/// Layers of a seam in which a pass is finished by then.
inline int layers_done(const plan::PlannedSeam& seam, double at_s) {
  int layers = 0;
  for (const plan::PlannedPass& pass : seam.passes) {
    const bool later = std::any_of(seam.passes.begin(), seam.passes.end(), [&](const auto& other) {
      return other.pass.layer == pass.pass.layer && *other.end_s > at_s;
    });
    if (!later) layers = std::max(layers, pass.pass.layer);
  }
  return layers;
}

/// No layer of the first is begun before the second has finished the one below, if it has one.
inline bool follows(const plan::PlannedSeam& seam, const plan::PlannedSeam& twin) {
  return std::all_of(seam.passes.begin(), seam.passes.end(), [&](const plan::PlannedPass& pass) {
    return layers_done(twin, *pass.start_s) >= std::min(pass.pass.layer - 1, twin.stack.layers);
  });
}
inline bool keep_step(const Plan& plan, const std::string& one, const std::string& two) {
  const plan::PlannedSeam& first = seam_of(plan, one);
  const plan::PlannedSeam& second = seam_of(plan, two);
  return follows(first, second) && follows(second, first);
}

inline const plan::PlannedTwins* find_twins_of(const Plan& plan, const std::string& first) {
  for (const plan::PlannedTwins& twins : plan.twins) {
    if (twins.first == first) return &twins;
  }
  return nullptr;
}

/// Texts of the findings with a code.
inline std::vector<std::string> texts_of(const Plan& plan, const std::string& code) {
  std::vector<std::string> texts;
  for (const base::Finding& finding : plan.findings) {
    if (finding.code == code) texts.push_back(finding.text);
  }
  return texts;
}

/// Errors that keep a plan from being made, "code: text" one a line.
inline std::string errors_of(const planner::Inputs& inputs) {
  std::string errors;
  try {
    (void)quick_plan(inputs);
  } catch (const base::InputError& error) {
    for (const base::Finding& finding : error.findings()) {
      if (finding.severity != base::Severity::error) continue;
      errors += finding.code + ": " + finding.text + "\n";
    }
  }
  return errors;
}

}  // namespace seamturn::tests
