// SPDX-License-Identifier: MIT
#include "seamturn/figures/explain.hpp"

#include <algorithm>
#include <array>

#include "detail_explain.hpp"
#include "seamturn/base/near_name.hpp"

namespace seamturn::figures {

namespace {

using base::Refusal;

struct Explained {
  std::string_view name;
  void (*explain)(const detail::Subject&, std::vector<ExplainStep>&);
};
constexpr std::array<Explained, 17> explained = {
    {{"section", detail::explain_section},
     {"metal", detail::explain_metal},
     {"weld-size", detail::explain_weld_size},
     {"passes", detail::explain_passes},
     {"position", detail::explain_position},
     {"heat-input", detail::explain_heat_input},
     {"carbon-equivalent", detail::explain_carbon_equivalent},
     {"combined-thickness", detail::explain_combined_thickness},
     {"preheat", detail::explain_preheat},
     {"preheat-methods", detail::explain_methods},
     {"interpass", detail::explain_interpass},
     {"waits", detail::explain_waits},
     {"cooling-time", detail::explain_cooling_time},
     {"heat-band", detail::explain_window},
     {"hardness", detail::explain_hardness},
     {"hold-time", detail::explain_hold_time},
     {"lamellar-tearing", detail::explain_tearing}}};
constexpr auto explained_names = [] {
  std::array<std::string_view, explained.size()> all;
  for (std::size_t i = 0; i < all.size(); ++i) all[i] = explained[i].name;
  return all;
}();

Refusal unknown(const std::string& code,
                const std::string& what,
                const std::string& asked,
                const std::vector<std::string_view>& known) {
  std::string list;
  for (const std::string_view name : known) list += (list.empty() ? "" : ", ") + std::string(name);
  const auto near = base::find_near_name(asked, known);
  return Refusal{code,
                 "there is no " + what + " \"" + asked + "\"" +
                     (near ? "; did you mean " + *near + "?" : ".") + " There are: " + list};
}

std::string place_text(const std::optional<base::Place>& place) {
  if (!place || place->file.empty()) return {};
  return place->file + ":" + std::to_string(place->line) + ":" + std::to_string(place->column);
}

}  // namespace

namespace detail {

std::string Subject::of_joint(std::string_view attribute) const {
  const std::string key = "joint/" + described.id + "@" + std::string(attribute);
  const std::string place = place_text(inputs.weldment.places.find(key));
  return place.empty() ? "default" : place;
}

std::string Subject::of_library(const std::string& row, std::string_view attribute) const {
  const auto exact = inputs.library.places.find(row + "@" + std::string(attribute));
  const std::string place = place_text(exact ? exact : inputs.library.places.find(row));
  return place.empty() ? "library" : place;
}

std::string Subject::of_member(const std::string& member, std::string_view attribute) const {
  const auto exact = inputs.weldment.places.find("member/" + member + "@" + std::string(attribute));
  const std::string place =
      place_text(exact ? exact : inputs.weldment.places.find("member/" + member));
  return place.empty() ? "member " + member : "member " + member + ", " + place;
}

const process::Wire& Subject::wire() const {
  return planner::wire_of(inputs, described);
}

const process::LinkedSettings* Subject::settings(const std::string& id) const {
  for (const process::LinkedSettings& row : inputs.library.settings) {
    if (row.id == id) return &row;
  }
  return nullptr;
}

ExplainStep step_of(const base::FigureCard& card, std::string figure, std::string subject) {
  ExplainStep step;
  step.figure = std::move(figure);
  step.subject = std::move(subject);
  step.formula = std::string(card.formula);
  step.range = std::string(card.range);
  for (const base::Citation& citation : card.sources) {
    step.sources.push_back(std::string(citation.key) + ", " + std::string(citation.locator) + " (" +
                           std::string(base::status_name(citation.status)) + ")");
  }
  return step;
}

}  // namespace detail

std::span<const std::string_view> explained_figures() {
  return explained_names;
}

std::string joint_named(const plan::Plan& plan, const std::string& text) {
  const auto is_joint = [&](const plan::PlannedJoint& joint) { return joint.id == text; };
  if (std::any_of(plan.joints.begin(), plan.joints.end(), is_joint)) return text;
  for (const plan::PlannedJoint& joint : plan.joints) {
    for (const plan::PlannedSeam& seam : joint.seams) {
      if (seam.id == text || seam.drawn == text) return joint.id;
    }
  }
  return text;
}

base::Outcome<std::vector<ExplainStep>> explain(const planner::Inputs& inputs,
                                                const plan::Plan& plan,
                                                const std::string& asked,
                                                const std::string& figure) {
  const std::string joint = joint_named(plan, asked);
  std::vector<std::string_view> joints;
  const plan::PlannedJoint* planned = nullptr;
  for (const plan::PlannedJoint& candidate : plan.joints) {
    joints.push_back(candidate.id);
    if (candidate.id == joint) planned = &candidate;
  }
  if (planned == nullptr) return unknown("explain.joint.unknown", "joint", joint, joints);
  const joint::Joint* described = joint::find_joint(plan.weldment, joint);
  SEAMTURN_REQUIRE(described != nullptr, joint);
  const detail::Subject subject{inputs, plan, *described, *planned};
  std::vector<ExplainStep> steps;
  bool known = figure.empty();
  for (const Explained& entry : explained) {
    if (!figure.empty() && entry.name != figure) continue;
    known = true;
    entry.explain(subject, steps);
  }
  if (!known) {
    return unknown("explain.figure.unknown",
                   "figure to explain",
                   figure,
                   std::vector<std::string_view>(explained_names.begin(), explained_names.end()));
  }
  return steps;
}

}  // namespace seamturn::figures
