// SPDX-License-Identifier: MIT
// Solid, metal-cored and flux-cored wires: kind from the process, mass from a stated fill, typical
// deposition efficiencies as published.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "seamturn/base/citation.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/process/consumables.hpp"

namespace seamturn::process {

enum class WireKind { solid, metal_cored, flux_cored, self_shielded };

/// "solid wire", "metal-cored wire", ...
[[nodiscard]] std::string_view kind_name(WireKind kind);
/// Kind by ISO 4063 number: 131, 135 solid, 133, 138 metal-cored, 132, 136 flux-cored, 114
/// self-shielded; nothing for a number that does not say.
/// Source: [ISO 4063] from memory. Tests: process/wire_kind - remembered.
[[nodiscard]] std::optional<WireKind> find_wire_kind(std::string_view process);
[[nodiscard]] bool is_cored(WireKind kind);

/// What the sheath of a cored wire holds.
struct CoreFill {
  double mass_share_ratio = 0.0;  ///< fill / whole wire, by mass
  double density_kg_mm3 = 0.0;    ///< of the packed fill
};

/// Mass of a metre of cored wire from its fill: the sheath takes what the fill leaves of the
/// section. Units: mm -> kg/m.  Pre: finite. Outside: refuses process.wire.fill (share above 0 and
/// below 0.6, density above 0 up to that of
///   steel, diameter above 0).
/// Source: [MASS] section / (share of steel / density + share of fill / density).
/// Accuracy: exact for the nominal diameter. Tests: process/wire_kind - closed-form, law.
[[nodiscard]] base::Outcome<double> cored_linear_mass_kg_m(double diameter_mm,
                                                           const CoreFill& fill);

/// Mass of a metre of a wire, and no guess: a cored wire must state it.
/// Outside: refuses process.wire.mass_unknown. Source: as wire_linear_mass_kg_m.
/// Tests: process/wire_kind - law.
[[nodiscard]] base::Outcome<double> find_linear_mass_kg_m(const Wire& wire);

/// A published deposition efficiency.
struct TypicalEfficiency {
  std::string_view what;  ///< "Ar-25CO2", "E70T-1, E70T-2", ...
  WireKind kind = WireKind::solid;
  double least_ratio = 0.0;
  double most_ratio = 0.0;
  base::Citation citation;
};
/// Source: each row's own. Tests: process/wire_kind - published.
[[nodiscard]] std::span<const TypicalEfficiency> typical_efficiencies();
struct EfficiencyRange {
  double least_ratio = 0.0;
  double most_ratio = 0.0;
};
/// The least and the most of all rows of a kind.
[[nodiscard]] EfficiencyRange efficiency_range(WireKind kind);

/// What looks wrong about a wire: process.wire.mass_unknown (error), process.wire.mass_unusual
/// (solid: more than 3 % off its diameter, cored: outside 0.75 to 1.02 of solid wire),
/// process.wire.efficiency (outside the published range of its kind). A process that does not tell
/// the kind: nothing. Source: ranges [MIGH-10], [MCW] widened by project choice. Tests:
/// process/wire_kind - published.
[[nodiscard]] std::vector<base::Finding> check_wire(const Wire& wire);

}  // namespace seamturn::process
