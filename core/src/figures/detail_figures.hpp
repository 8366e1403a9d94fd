// SPDX-License-Identifier: MIT
// The figures room's own entries: each takes checked arguments and calls one calculation.
#pragma once

#include "detail_arguments.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/figures/catalogue.hpp"
#include "seamturn/material/composition.hpp"

namespace seamturn::figures::detail {

/// Result, or the refusal of the calculation. Problems with the call go into the arguments.
using Answer = base::Outcome<FigureResult>;

/// A result under construction.
class ResultMaker {
 public:
  explicit ResultMaker(std::string name) { result_.name = std::move(name); }
  ResultMaker& principal(double value, const std::string& unit) {
    result_.principal = FigureValue{value, unit};
    return *this;
  }
  ResultMaker& principal(const std::string& word) {
    result_.principal = FigureValue{word, ""};
    return *this;
  }
  ResultMaker& in_words(const std::string& text) {
    result_.in_words = text;
    return *this;
  }
  ResultMaker& value(const std::string& name, double number, const std::string& unit) {
    result_.values.push_back({name, FigureValue{number, unit}});
    return *this;
  }
  ResultMaker& value(const std::string& name, const std::string& word) {
    result_.values.push_back({name, FigureValue{word, ""}});
    return *this;
  }
  ResultMaker& table(FigureTable table) {
    result_.table = std::move(table);
    return *this;
  }
  ResultMaker& findings(const std::vector<base::Finding>& more) {
    base::append_findings(result_.findings, more);
    return *this;
  }
  ResultMaker& card(const base::FigureCard& of_method) {
    result_.card = &of_method;
    return *this;
  }
  [[nodiscard]] FigureResult done() const { return result_; }

 private:
  FigureResult result_;
};

[[nodiscard]] Answer carbon_equivalent_figure(Arguments& arguments);
[[nodiscard]] Answer section_figure(Arguments& arguments);
[[nodiscard]] Answer passes_figure(Arguments& arguments);
[[nodiscard]] Answer nozzle_access_figure(Arguments& arguments);
[[nodiscard]] Answer deposit_figure(Arguments& arguments);
[[nodiscard]] Answer bead_figure(Arguments& arguments);
[[nodiscard]] Answer burn_off_figure(Arguments& arguments);
[[nodiscard]] Answer spool_figure(Arguments& arguments);
[[nodiscard]] Answer weld_size_figure(Arguments& arguments);
[[nodiscard]] Answer arc_energy_figure(Arguments& arguments);
[[nodiscard]] Answer heat_input_figure(Arguments& arguments);
[[nodiscard]] Answer preheat_figure(Arguments& arguments);
[[nodiscard]] const base::FigureCard& preheat_methods_card();
[[nodiscard]] Answer cooling_time_figure(Arguments& arguments);
[[nodiscard]] Answer part_cooling_figure(Arguments& arguments);
[[nodiscard]] Answer steel_heat_figure(Arguments& arguments);
[[nodiscard]] Answer heat_band_figure(Arguments& arguments);
[[nodiscard]] Answer combined_thickness_figure(Arguments& arguments);
[[nodiscard]] Answer interpass_figure(Arguments& arguments);
[[nodiscard]] Answer preheat_zone_figure(Arguments& arguments);
[[nodiscard]] Answer hold_time_figure(Arguments& arguments);
[[nodiscard]] Answer hydrogen_soak_figure(Arguments& arguments);
[[nodiscard]] Answer hardness_figure(Arguments& arguments);
[[nodiscard]] Answer lamellar_tearing_figure(Arguments& arguments);
[[nodiscard]] Answer shrinkage_figure(Arguments& arguments);
[[nodiscard]] Answer tolerance_figure(Arguments& arguments);
[[nodiscard]] material::Composition composition_of(Arguments& arguments);
[[nodiscard]] Answer position_figure(Arguments& arguments);
[[nodiscard]] Answer stance_figure(Arguments& arguments);
[[nodiscard]] Answer move_time_figure(Arguments& arguments);
[[nodiscard]] Answer torque_figure(Arguments& arguments);

}  // namespace seamturn::figures::detail
