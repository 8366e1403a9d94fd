// SPDX-License-Identifier: MIT
// Lamellar tearing: which through-thickness class a plate pulled at its surface needs.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/joint/restraint.hpp"

namespace seamturn::heat {

/// Shape and place of the weld on the through plate, in the order of the table.
enum class TearingShape {
  not_in_tension,     ///< the plate's thickness is not pulled
  bevel_through,      ///< corner joint, the bevel goes through the through plate
  single_run_fillet,  ///< or Za = 0, or fillets on a buttered surface of low-strength metal
  multi_run_fillet,
  sequenced_penetration,  ///< partial or full, welded in a sequence that lowers shrinkage
  penetration,            ///< partial or full
  corner                  ///< corner joint
};
[[nodiscard]] std::string_view tearing_shape_name(TearingShape shape);  ///< "multi-run-fillet" ...

enum class ZClass { none, z15, z25, z35 };
[[nodiscard]] std::string_view z_class_name(ZClass z);  ///< "none", "Z15", "Z25", "Z35"
[[nodiscard]] std::optional<ZClass> find_z_class(std::string_view name);

struct TearingParams {
  double effective_depth_mm = 0.0;  ///< a_eff: leg of fillets; depth of penetration welds
  TearingShape shape = TearingShape::multi_run_fillet;
  double through_thickness_mm = 0.0;   ///< s, of the plate pulled through its thickness
  bool compressed_statically = false;  ///< only static, only compression: Zc is halved
  joint::Restraint restraint = joint::Restraint::medium;
  double preheat_c = 0.0;  ///< what the joint is really heated to
};

/// The terms as they add up, and what they ask for.
struct Tearing {
  double za = 0.0;  ///< weld depth
  double zb = 0.0;  ///< shape and place
  double zc = 0.0;  ///< thickness of the through plate
  double zd = 0.0;  ///< restraint
  double ze = 0.0;  ///< preheat
  double total = 0.0;
  ZClass required = ZClass::none;
  std::vector<base::Finding> findings;
};

/// Z_Ed = Za + Zb + Zc + Zd + Ze and the class it asks for. A caution, never a release.
/// Units: mm, degC -> points (percent of reduction of area).
/// Pre: lengths finite, > 0; preheat finite.
/// Outside: heat.lamellar.needs_class warns when a class is required, heat.lamellar.not_released
///   notes that remembered points release nothing when none is.
/// Source: [EN 1993-1-10] table 3.2 and [EN 1993-1-1] table 3.2, both FROM MEMORY.
/// Accuracy: exact sum of remembered points.
/// Tests: heat/lamellar_tearing - remembered, laws.
[[nodiscard]] Tearing lamellar_tearing(const TearingParams& params);

/// Whether a plate's class meets the one required.
enum class TearingVerdict { none_required, met, not_met };
[[nodiscard]] std::string_view tearing_verdict_name(TearingVerdict verdict);
[[nodiscard]] TearingVerdict compare(ZClass required, ZClass plate);

[[nodiscard]] const base::FigureCard& lamellar_tearing_card();

}  // namespace seamturn::heat
