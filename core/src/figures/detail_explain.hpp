// SPDX-License-Identifier: MIT
// Builds the steps of an explanation: one function a figure, origins from the files' places.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/valid_range.hpp"
#include "seamturn/figures/explain.hpp"

namespace seamturn::figures::detail {

/// The joint explained, in all its forms.
struct Subject {
  const planner::Inputs& inputs;
  const plan::Plan& plan;
  const joint::Joint& described;
  const plan::PlannedJoint& planned;

  /// Where an attribute of the joint (or of its preparation) stands; "default" when it does not.
  [[nodiscard]] std::string of_joint(std::string_view attribute) const;
  /// Where an attribute of a library's row stands, e.g. "wire/G3Si1-1.2", "efficiency".
  [[nodiscard]] std::string of_library(const std::string& row, std::string_view attribute) const;
  [[nodiscard]] std::string of_member(const std::string& member, std::string_view attribute) const;
  [[nodiscard]] const process::Wire& wire() const;
  /// The row of settings a pass is laid with; null when a library no longer holds it.
  [[nodiscard]] const process::LinkedSettings* settings(const std::string& id) const;
};

inline void add(std::vector<Given>& list,
                std::string name,
                double value,
                std::string unit,
                std::string origin) {
  list.push_back(Given{std::move(name), value, std::move(unit), std::move(origin)});
}

inline void add_word(std::vector<Given>& list,
                     std::string name,
                     std::string word,
                     std::string origin) {
  list.push_back(Given{std::move(name), std::move(word), "", std::move(origin)});
}

/// Formula, range and sources of a card.
[[nodiscard]] ExplainStep step_of(const base::FigureCard& card,
                                  std::string figure,
                                  std::string subject);

inline constexpr const char* cet_method = "CET method, EN 1011-2 C.3, from memory";

/// The limits a value is held against.
struct Limits {
  std::optional<double> least;
  std::optional<double> largest;
  std::string origin;
};
[[nodiscard]] inline Limits within(const base::ValidRange& range, std::string origin) {
  return Limits{range.least, range.largest, std::move(origin)};
}
[[nodiscard]] inline Limits up_to(double largest, std::string origin) {
  return Limits{std::nullopt, largest, std::move(origin)};
}

/// How close a value is; of two limits the one it is nearer to.
/// Pre: a limit at least, all finite.
[[nodiscard]] HowClose how_close(std::string name, double value, std::string unit, Limits limits);

void explain_section(const Subject& subject, std::vector<ExplainStep>& steps);
void explain_metal(const Subject& subject, std::vector<ExplainStep>& steps);
void explain_passes(const Subject& subject, std::vector<ExplainStep>& steps);
void explain_position(const Subject& subject, std::vector<ExplainStep>& steps);
void explain_weld_size(const Subject& subject, std::vector<ExplainStep>& steps);
void explain_heat_input(const Subject& subject, std::vector<ExplainStep>& steps);
void explain_preheat(const Subject& subject, std::vector<ExplainStep>& steps);
void explain_interpass(const Subject& subject, std::vector<ExplainStep>& steps);
void explain_cooling_time(const Subject& subject, std::vector<ExplainStep>& steps);
void explain_carbon_equivalent(const Subject& subject, std::vector<ExplainStep>& steps);
void explain_combined_thickness(const Subject& subject, std::vector<ExplainStep>& steps);
void explain_methods(const Subject& subject, std::vector<ExplainStep>& steps);
void explain_waits(const Subject& subject, std::vector<ExplainStep>& steps);
void explain_window(const Subject& subject, std::vector<ExplainStep>& steps);
void explain_hold_time(const Subject& subject, std::vector<ExplainStep>& steps);
void explain_hardness(const Subject& subject, std::vector<ExplainStep>& steps);
void explain_tearing(const Subject& subject, std::vector<ExplainStep>& steps);

}  // namespace seamturn::figures::detail
