// SPDX-License-Identifier: MIT
// Wires and shielding gases as the library describes them.
#pragma once

#include <optional>
#include <string>

#include "seamturn/base/citation.hpp"

namespace seamturn::process {

/// A wire electrode.
struct Wire {
  std::string id;
  std::string designation;  ///< e.g. "G 46 4 M21 3Si1"
  std::string process;      ///< ISO 4063 number, e.g. "135"
  double diameter_mm = 0.0;
  std::optional<double> linear_mass_kg_m;  ///< cored wires; solid wires follow from the diameter
  double efficiency_ratio = 0.0;           ///< deposited / melted, 0..1
  double hydrogen_ml_100g = 0.0;           ///< diffusible, ISO 3690
  std::optional<double> cet;               ///< of the weld metal, mass-%
  std::optional<double> interpass_max_c;
  double price_per_kg = 0.0;  ///< in the currency of the rates
  base::Status status = base::Status::proposed;
  std::string source;
};

struct Gas {
  std::string id;
  std::string designation;  ///< e.g. "ISO 14175-M21-ArC-18"
  double price_per_m3 = 0.0;
  base::Status status = base::Status::proposed;
  std::string source;
};

}  // namespace seamturn::process
