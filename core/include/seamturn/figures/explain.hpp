// SPDX-License-Identifier: MIT
// How a number of the plan came about: the chain behind `seamturn explain`. Nothing is computed a
// second way: values are those of the plan, formulas, ranges and sources those of the figures'
// cards.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "seamturn/base/outcome.hpp"
#include "seamturn/plan/plan.hpp"
#include "seamturn/planner/inputs.hpp"

namespace seamturn::figures {

/// A value with what it is called and where it came from: "joints/bracket.xml:45:20", "default",
/// "section above".
struct Given {
  std::string name;
  std::variant<double, std::string> value;
  std::string unit;  ///< "" for bare numbers and words
  std::string origin;
};

/// How far a value stands from the nearest limit it is checked against. The limits are those of the
/// check itself.
struct HowClose {
  std::string name;  ///< what is measured: "thickness", "leg" ...
  double value = 0.0;
  std::string unit;
  std::optional<double> least;  ///< one of the two at least
  std::optional<double> largest;
  double nearest = 0.0;   ///< the limit the value is nearest to
  double distance = 0.0;  ///< to it, in the unit; below 0: the value lies outside
  /// The distance as a share of the range between both limits, or of the only limit; none when that
  /// is 0.
  std::optional<double> share_ratio;
  std::string origin;  ///< whose limit it is
};

/// One link of the chain.
struct ExplainStep {
  std::string figure;   ///< name asked for: "section", "metal" ...
  std::string subject;  ///< seam or pass it is about
  std::string formula;  ///< in words and symbols
  std::vector<Given> inputs;
  std::vector<Given> results;        ///< intermediates first, the figure itself last
  std::vector<std::string> sources;  ///< key, clause, status
  std::string range;                 ///< where it is valid
  std::vector<HowClose> how_close;   ///< to the limits that are numbers; empty: none is
};

/// Names that can be asked for, in the order of the chain.
[[nodiscard]] std::span<const std::string_view> explained_figures();

/// Id of the joint a text names: its own, or that of one of its seams ("J4.b") or of a segment
/// ("L1/2"). The text itself where it names none. Source: none. Tests: figures/explain.
[[nodiscard]] std::string joint_named(const plan::Plan& plan, const std::string& text);

/// The chain of one joint; figure empty: all of it. `joint` as joint_named reads it.
/// Pre: the plan was made from these inputs.
/// Outside: refuses explain.joint.unknown and explain.figure.unknown, each naming what there is.
/// Source: none - reads the plan. Tests: figures/explain - the numbers are the plan's, origins are
///   places of the file.
[[nodiscard]] base::Outcome<std::vector<ExplainStep>> explain(const planner::Inputs& inputs,
                                                              const plan::Plan& plan,
                                                              const std::string& joint,
                                                              const std::string& figure);

}  // namespace seamturn::figures
