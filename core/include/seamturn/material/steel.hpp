// SPDX-License-Identifier: MIT
// A steel as its standard describes it: limits by thickness band, and what practice adds to them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/base/citation.hpp"
#include "seamturn/material/composition.hpp"

namespace seamturn::material {

/// Limits of one nominal thickness band (over the previous band's limit, up to and including this).
struct SteelBand {
  double up_to_mm = 0.0;
  std::optional<double> yield_mpa;  ///< least yield; absent: none is specified (wear plate)
  Composition maxima;               ///< limits of the standard, NOT a typical analysis
  bool c_is_open = false;           ///< the standard sets no limit on carbon; maxima.c is 0
  bool mn_is_open = false;          ///< same for manganese
  std::optional<double> cev_max;    ///< mass-%
  base::Status status = base::Status::from_memory;
  std::string source;  ///< key and locator as one text
};

/// Cooling time from 800 to 500 degC beside the weld that keeps the properties of the steel.
struct CoolingWindow {
  double least_s = 0.0;
  double most_s = 0.0;  ///< above least_s
  std::string source;
  base::Status status = base::Status::from_memory;
};

/// A temperature that somebody states for a steel.
struct StatedTemperature {
  double value_c = 0.0;
  std::string source;
  base::Status status = base::Status::from_memory;
};

/// Category of AWS D1.1 preheat: "A/B" (by process: A with other than low-hydrogen electrodes, B
/// with low-hydrogen ones and wire), "B", "C" or "D". Which steel belongs where is edition data.
struct AwsCategory {
  std::string name;
  std::string source;
  base::Status status = base::Status::from_memory;
};

struct Steel {
  std::string designation;  ///< e.g. "S355J2"
  std::string standard;     ///< e.g. "EN 10025-2:2019"
  std::string group;        ///< ISO/TR 15608, e.g. "1.2"; empty when none
  std::optional<double> interpass_max_c;
  std::string interpass_source;
  base::Status interpass_status = base::Status::from_memory;
  std::optional<CoolingWindow> t85;
  std::optional<StatedTemperature> later_heating_max;  ///< stress relief, straightening
  std::optional<AwsCategory> aws_category;
  std::vector<SteelBand> bands;  ///< rising thickness
};

/// The band that holds a thickness; nullptr when the steel is not made so thick.
/// Pre: thickness_mm > 0. Tests: material/steel - published band borders.
[[nodiscard]] const SteelBand* find_band(const Steel& steel, double thickness_mm);

/// Whether the limits of a band bound a carbon equivalent: carbon and manganese both have one.
/// When not, only the analysis of the heat can feed a preheat. Pre: none. Outside: n/a.
/// Tests: material/steel - law, io/steel_rows - a cast steel and a plate without such limits.
[[nodiscard]] bool bounds_carbon_equivalent(const SteelBand& band);

/// Why a metal is none of the unalloyed and low-alloy steels that everything here is made for;
/// empty: nothing speaks against it. Units: mass-%. Pre: none. Outside: n/a. Does not know another
/// metal that states neither group nor main element (docs/methods/steels.md).
/// Source: EN 10020 (stainless from 10.5 % Cr), EN 10027-1 (high-alloy from 5 % of an element) and
/// groups of ISO/TR 15608 (nickel to 10 %), all from memory.
/// Tests: material/steel - both sides of each limit.
[[nodiscard]] std::string why_out_of_scope(const Steel& steel, const Composition& composition);

}  // namespace seamturn::material
