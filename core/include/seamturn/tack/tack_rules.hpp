// SPDX-License-Identifier: MIT
// What a shop rules about tacks: length, pitch, throat, widest gap, and the stress their throats
// may see while they alone carry the part. Every value says where it comes from.
#pragma once

#include <optional>
#include <string>

#include "seamturn/base/angle.hpp"
#include "seamturn/base/citation.hpp"
#include "seamturn/base/outcome.hpp"

namespace seamturn::tack {

using base::Angle;

/// One value of the rule, its status and source in words.
struct RuleValue {
  double value = 0.0;
  base::Status status = base::Status::proposed;
  std::string source;
};

/// The defaults are the standard's where it speaks and proposals elsewhere (docs/methods/tacks.md).
struct TackRules {
  RuleValue length_min_mm{
      50.0, base::Status::verified, "EN 1011-2:2001 clause 13, quoted by TACK-PAGE"};
  RuleValue length_factor{
      4.0, base::Status::verified, "EN 1011-2:2001 clause 13, quoted by TACK-PAGE"};
  /// "Longer", says the standard of thick or strong parts, and no number.
  RuleValue long_factor{1.5, base::Status::proposed, "seamturn"};
  /// Centre to centre.
  RuleValue pitch_mm{250.0, base::Status::proposed, "seamturn, between TACK-PITCH and TACK-WORKS"};
  /// Of both ends of an open seam and of corners.
  RuleValue clear_of_ends_mm{20.0, base::Status::common_practice, "TACK-WORKS"};
  /// Gap as fitted beyond the drawn one.
  RuleValue gap_max_mm{2.0, base::Status::proposed, "seamturn"};
  std::optional<RuleValue> throat_mm;  ///< absent: that of the root run
  /// The shop's own permitted stress; absent: the rule of permitted_stress.
  std::optional<RuleValue> stress_mpa;
  RuleValue gamma_m2{1.25, base::Status::from_memory, "EN 1993-1-8:2005 table 2.1"};
};

/// What is not a number or cannot be a rule. Pre of every function that takes rules.
/// True when every value is finite, lengths and factors are above 0 (long_factor from 1, gamma_m2
/// from 1, clear_of_ends_mm and gap_max_mm from 0).
[[nodiscard]] bool are_rules(const TackRules& rules);

struct TackLength {
  double length_mm = 0.0;
  int runs = 1;
  base::Status status = base::Status::verified;  ///< of the weakest value in it
  std::string why;                               ///< rule and source in words
};

/// Length of one tack: at least 50 mm, below 12 mm four times the thicker part; above 50 mm or
/// 500 MPa longer, and of two runs. 12, 50 and 500 are the standard's and no rule of a shop.
/// Units: mm, MPa -> mm.
/// Pre: thicker > 0, yield > 0, are_rules.
/// Outside: none; how much longer is our own proposal (long_factor).
/// Source: [EN 1011-2] clause 13, quoted by [TACK-PAGE].
/// Accuracy: exact. Tests: tack/tack_rules - published, law.
[[nodiscard]] TackLength tack_length(double thicker_mm, double yield_mpa, const TackRules& rules);

/// Throat of an equal-leg fillet of an area between plates at an angle: sqrt(A / tan(angle / 2)),
/// at 90 deg sqrt(A).
/// Units: mm2 -> mm. Pre: area > 0, angle above 0 and below 180 deg.
/// Source: [GEOMETRY]. Tests: tack/tack_rules - closed-form.
[[nodiscard]] double fillet_throat_mm(double area_mm2, Angle between_plates = Angle::deg(90.0));

/// Least tensile strength of structural steel by the yield of its grade (235 to 460 MPa), as the
/// product standards print it for 3 to 100 mm. Between two grades the lower one's.
/// Units: MPa -> MPa. Pre: yield > 0.
/// Outside: below 235 MPa yield that of the yield itself times 1.5; above 460 MPa that of 460,
/// never below the
///   yield.
/// Source: EN 10025-2:2019 and EN 10025-3:2019, FROM MEMORY. Accuracy: a least value of grades.
/// Tests: tack/tack_rules - remembered.
[[nodiscard]] double remembered_ultimate_mpa(double yield_mpa);

struct PermittedStress {
  double stress_mpa = 0.0;
  std::optional<double> beta_w_ratio;  ///< none: the shop stated the stress
  base::Status status = base::Status::from_memory;
  std::string why;
};

/// Stress the throat of a tack may see, whatever its direction: the shop's, or
/// fu / (sqrt 3 beta_w gamma_M2).
/// Units: MPa. fu: nominal tensile strength of the weaker part.
/// Pre: ultimate and yield finite, above 0, yield not above ultimate; are_rules.
/// Outside: refuses tack.stress.no_factor above 460 MPa yield, where table 4.1 ends. A yield
///   between two rows of the table takes the row of the higher factor.
/// Source: [EN 1993-1-8] 4.5.3.3 and table 4.1, both FROM MEMORY.
/// Accuracy: a design stress of a code for finished welds; a simple rule, never a release.
/// Tests: tack/tack_rules - remembered, closed-form.
[[nodiscard]] base::Outcome<PermittedStress> permitted_stress(double ultimate_mpa,
                                                              double yield_mpa,
                                                              const TackRules& rules);

}  // namespace seamturn::tack
