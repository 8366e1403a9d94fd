// SPDX-License-Identifier: MIT
#include "seamturn/figures/catalogue.hpp"

#include "detail_figures.hpp"
#include "seamturn/base/near_name.hpp"
#include "seamturn/cooling/part_cooling.hpp"
#include "seamturn/cooling/steel_heat.hpp"
#include "seamturn/heat/cooling_time.hpp"
#include "seamturn/heat/hardness.hpp"
#include "seamturn/heat/heat_input.hpp"
#include "seamturn/heat/heat_input_band.hpp"
#include "seamturn/heat/hold_time.hpp"
#include "seamturn/heat/hydrogen_soak.hpp"
#include "seamturn/heat/interpass.hpp"
#include "seamturn/heat/lamellar_tearing.hpp"
#include "seamturn/heat/preheat_zone.hpp"
#include "seamturn/heat/thickness_seen.hpp"
#include "seamturn/joint/weld_size.hpp"
#include "seamturn/material/carbon_equivalent.hpp"
#include "seamturn/pass/nozzle_access.hpp"
#include "seamturn/pass/pass_stack.hpp"
#include "seamturn/position/classify.hpp"
#include "seamturn/process/burn_off.hpp"
#include "seamturn/process/deposit.hpp"
#include "seamturn/process/spool.hpp"
#include "seamturn/section/weld_section.hpp"
#include "seamturn/shrinkage/rules.hpp"
#include "seamturn/shrinkage/tolerance_class.hpp"
#include "seamturn/turn/load.hpp"
#include "seamturn/turn/move_time.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::figures {

namespace {

struct Entry {
  const base::FigureCard& (*card)();
  detail::Answer (*answer)(detail::Arguments&);
};

constexpr Entry entries[] = {
    {material::carbon_equivalent_card, detail::carbon_equivalent_figure},
    {heat::arc_energy_card, detail::arc_energy_figure},
    {heat::heat_input_card, detail::heat_input_figure},
    {detail::preheat_methods_card, detail::preheat_figure},
    {heat::preheat_zone_card, detail::preheat_zone_figure},
    {heat::combined_thickness_card, detail::combined_thickness_figure},
    {heat::interpass_card, detail::interpass_figure},
    {heat::cooling_time_card, detail::cooling_time_figure},
    {cooling::part_cooling_card, detail::part_cooling_figure},
    {cooling::steel_heat_card, detail::steel_heat_figure},
    {heat::heat_band_card, detail::heat_band_figure},
    {heat::hardness_card, detail::hardness_figure},
    {heat::hold_time_card, detail::hold_time_figure},
    {heat::hydrogen_soak_card, detail::hydrogen_soak_figure},
    {heat::lamellar_tearing_card, detail::lamellar_tearing_figure},
    {shrinkage::shrinkage_card, detail::shrinkage_figure},
    {shrinkage::tolerance_card, detail::tolerance_figure},
    {section::section_card, detail::section_figure},
    {joint::weld_size_card, detail::weld_size_figure},
    {pass::pass_stack_card, detail::passes_figure},
    {pass::nozzle_access_card, detail::nozzle_access_figure},
    {process::deposit_card, detail::deposit_figure},
    {process::bead_card, detail::bead_figure},
    {process::burn_off_card, detail::burn_off_figure},
    {process::spool_card, detail::spool_figure},
    {position::position_card, detail::position_figure},
    {turn::stance_card, detail::stance_figure},
    {turn::move_time_card, detail::move_time_figure},
    {turn::torque_card, detail::torque_figure},
};

const Entry* find_entry(std::string_view name) {
  for (const Entry& entry : entries) {
    if (entry.card().name == name) return &entry;
  }
  return nullptr;
}

FigureUsage unknown_figure(std::string_view name) {
  std::vector<std::string_view> names;
  std::string list;
  for (const Entry& entry : entries) {
    names.push_back(entry.card().name);
    list += (list.empty() ? "" : " ") + std::string(entry.card().name);
  }
  const std::optional<std::string> near = base::find_near_name(name, names);
  return FigureUsage{"there is no figure \"" + std::string(name) + "\"" +
                     (near ? "; did you mean " + *near + "?" : "") + " Figures: " + list};
}

/// Wrong keys come first: the values may belong to keys that were meant otherwise.
std::optional<FigureAnswer> what_is_wrong(const detail::Arguments& arguments) {
  if (!arguments.usage().empty()) return FigureUsage{arguments.usage()};
  if (!arguments.bad_values().empty()) return arguments.bad_values();
  return std::nullopt;
}

}  // namespace

std::vector<const base::FigureCard*> all_cards() {
  std::vector<const base::FigureCard*> cards;
  for (const Entry& entry : entries) cards.push_back(&entry.card());
  return cards;
}

const base::FigureCard* find_card(std::string_view name) {
  const Entry* entry = find_entry(name);
  return entry == nullptr ? nullptr : &entry->card();
}

FigureAnswer evaluate_figure(std::string_view name,
                             const std::vector<std::pair<std::string, std::string>>& arguments) {
  const Entry* entry = find_entry(name);
  if (entry == nullptr) return unknown_figure(name);
  detail::Arguments checked(entry->card(), arguments);
  if (const std::optional<FigureAnswer> wrong = what_is_wrong(checked)) return *wrong;
  detail::Answer answer = entry->answer(checked);
  if (const std::optional<FigureAnswer> wrong = what_is_wrong(checked)) return *wrong;
  if (!answer) {
    return std::vector<base::Finding>{
        base::Finding{base::Severity::error, answer.error().code, answer.error().text, {}, {}}};
  }
  return std::move(answer).value();
}

}  // namespace seamturn::figures
