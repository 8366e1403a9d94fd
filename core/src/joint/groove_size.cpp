// SPDX-License-Identifier: MIT
#include "seamturn/joint/groove_size.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "detail_size_check.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::joint {

namespace {

using base::Citation;
using base::Status;
using process::WeldPosition;

constexpr double root_deduction_mm = 3.0;
constexpr double slack_deg = 1e-9;
constexpr double plug_over_plate_mm = 8.0;
constexpr double plug_play_mm = 3.0;
constexpr double plug_plate_ratio = 2.25;
constexpr double slot_plates = 10.0;
constexpr double plug_full_mm = 16.0;
constexpr double tack_length_mm = 50.0;
constexpr double tack_thicknesses = 4.0;
constexpr double tack_thin_below_mm = 12.0;

enum class ArcKind { gas_shielded_wire, covered, unknown };

ArcKind arc_kind(const std::string& process) {
  for (const char* wire : {"13", "131", "132", "133", "135", "136", "138"}) {
    if (process == wire) return ArcKind::gas_shielded_wire;
  }
  return process == "111" ? ArcKind::covered : ArcKind::unknown;
}

bool is_vertical_or_overhead(WeldPosition position) {
  return position == WeldPosition::pf || position == WeldPosition::pg ||
         position == WeldPosition::pd || position == WeldPosition::pe;
}

double sharpest_deg(PartialShape shape) {
  switch (shape) {
    case PartialShape::v:
      return 60.0;
    case PartialShape::bevel:
      return 45.0;
    case PartialShape::u_or_j:
      return 20.0;
    case PartialShape::square:
      return 0.0;
  }
  return 0.0;
}

std::optional<base::Refusal> what_is_wrong(const PartialGroove& groove, ArcKind kind) {
  std::vector<std::string> wrong;
  detail::note_bad_size(wrong, "depth of the groove", groove.depth_mm);
  if (!wrong.empty()) return base::Refusal{"joint.size.value", detail::joined(wrong)};
  if (groove.shape == PartialShape::square) {
    return base::Refusal{"joint.size.groove_angle",
                         "a square edge has no groove whose depth could count: bevel the edge, or "
                         "prove the penetration by a procedure test"};
  }
  if (kind == ArcKind::unknown) {
    return base::Refusal{"joint.size.process",
                         "no row for process \"" + groove.process +
                             "\": gas-shielded wire (13, 131 to 138) and covered electrodes (111) "
                             "are known. Prove the penetration by a procedure test"};
  }
  if (!(groove.angle.deg() >= sharpest_deg(groove.shape) - slack_deg)) {
    return base::Refusal{
        "joint.size.groove_angle",
        "an angle of " + base::digits_text(groove.angle.deg()) + " deg is below " +
            base::digits_text(sharpest_deg(groove.shape)) +
            " deg, the sharpest of the code's row for this groove [AWS D1.1]: open "
            "the angle, or prove the penetration by a procedure test"};
  }
  return std::nullopt;
}

Citation bevel_citation(ArcKind kind) {
  return {"AISC-PJP",
          kind == ArcKind::covered ? "BTC-P4, covered electrode" : "BTC-P4-GF",
          Status::verified};
}

CountedGroove uncut(const PartialGroove& groove, ArcKind kind) {
  CountedGroove counted;
  const bool bevel = groove.shape == PartialShape::bevel;
  const bool wide_bevel = bevel && groove.angle.deg() >= 60.0 - slack_deg;
  if (bevel && !wide_bevel) {
    counted.citation = bevel_citation(kind);
  } else if (groove.shape == PartialShape::v && kind == ArcKind::gas_shielded_wire) {
    counted.citation = {"AISC-PJP", "BC-P2-GF", Status::verified};
  } else {
    counted.citation = {"AWS D1.1", "partial-penetration joints, E = S", Status::from_memory};
  }
  const bool cut = bevel && !wide_bevel &&
                   (kind == ArcKind::covered || is_vertical_or_overhead(groove.position));
  counted.deduction_mm = cut ? root_deduction_mm : 0.0;
  counted.throat_mm = groove.depth_mm - counted.deduction_mm;
  return counted;
}

struct PartialBand {
  double up_to_mm;
  double throat_mm;
};
constexpr std::array<PartialBand, 7> partial_bands = {
    {{6.0, 3.0}, {13.0, 5.0}, {19.0, 6.0}, {38.0, 8.0}, {57.0, 10.0}, {150.0, 13.0}, {1e9, 16.0}}};

constexpr Citation plug_rule{"AWS D1.1", "2000 3.10", Status::verified};

std::optional<base::Refusal> what_is_wrong(const PlugSize& size) {
  std::vector<std::string> wrong;
  detail::note_bad_size(wrong, "plate", size.plate_mm);
  detail::note_bad_size(wrong, "width of the hole", size.width_mm);
  detail::note_bad_size(wrong, "fill", size.fill_mm);
  if (size.slot_length_mm && !(*size.slot_length_mm >= size.width_mm)) {
    wrong.push_back("a slot is at least as long as wide; found " +
                    base::digits_text(*size.slot_length_mm) + " mm");
  }
  if (size.fill_mm > size.plate_mm) wrong.push_back("the fill is deeper than the plate");
  if (wrong.empty()) return std::nullopt;
  return base::Refusal{"joint.size.value", detail::joined(wrong)};
}

SizeCheck plug_check(const char* rule,
                     const char* subject,
                     SizeBound bound,
                     double required_mm,
                     double found_mm,
                     const Citation& citation) {
  return make_size_check({rule,
                          std::string("plug ") + subject,
                          subject,
                          bound,
                          required_mm,
                          found_mm,
                          "mm",
                          false,
                          citation,
                          ""});
}

}  // namespace

base::Outcome<CountedGroove> counted_groove_throat(const PartialGroove& groove) {
  const ArcKind kind = arc_kind(groove.process);
  if (const auto refusal = what_is_wrong(groove, kind)) return *refusal;
  const CountedGroove counted = uncut(groove, kind);
  if (counted.throat_mm > 0.0) return counted;
  return base::Refusal{"joint.size.groove_depth",
                       "a groove " + base::digits_text(groove.depth_mm) +
                           " mm deep less 3 mm for the root leaves nothing that counts: make it "
                           "deeper, or weld it in flat or horizontal position [AWS D1.1]"};
}

double combined_throat_mm(double groove_throat_mm, double leg_mm) {
  SEAMTURN_REQUIRE(base::is_positive(groove_throat_mm), groove_throat_mm);
  SEAMTURN_REQUIRE(base::is_amount(leg_mm), leg_mm);
  return leg_mm >= groove_throat_mm ? (groove_throat_mm + leg_mm) / std::numbers::sqrt2
                                    : std::hypot(groove_throat_mm, leg_mm);
}

double reinforcing_leg_mm(double thickness_mm) {
  SEAMTURN_REQUIRE(base::is_positive(thickness_mm), thickness_mm);
  constexpr double thickness_share = 0.25;
  constexpr double need_not_exceed_mm = 10.0;
  return std::min(thickness_share * thickness_mm, need_not_exceed_mm);
}

double least_partial_throat_mm(double thinner_mm) {
  SEAMTURN_REQUIRE(base::is_positive(thinner_mm), thinner_mm);
  for (const PartialBand& band : partial_bands) {
    if (thinner_mm <= band.up_to_mm) return band.throat_mm;
  }
  return partial_bands.back().throat_mm;
}

base::Outcome<std::vector<SizeCheck>> check_partial_size(const PartialSize& size) {
  std::vector<std::string> wrong;
  detail::note_bad_size(wrong, "throat", size.throat_mm);
  detail::note_bad_size(wrong, "thinner part", size.thinner_mm);
  if (!wrong.empty()) return base::Refusal{"joint.size.value", detail::joined(wrong)};
  return std::vector<SizeCheck>{
      make_size_check({"least-partial-throat",
                       "least size",
                       "throat",
                       SizeBound::at_least,
                       least_partial_throat_mm(size.thinner_mm),
                       size.throat_mm,
                       "mm",
                       false,
                       {"STEEL-HANDBOOK", "table 5.4, by the thinner part", Status::verified},
                       "Prepare deeper"})};
}

double least_plug_width_mm(double plate_mm) {
  SEAMTURN_REQUIRE(base::is_positive(plate_mm), plate_mm);
  return plate_mm + plug_over_plate_mm;
}

double largest_plug_width_mm(double plate_mm) {
  return std::max(least_plug_width_mm(plate_mm) + plug_play_mm, plug_plate_ratio * plate_mm);
}

double least_plug_fill_mm(double plate_mm) {
  SEAMTURN_REQUIRE(base::is_positive(plate_mm), plate_mm);
  if (plate_mm <= plug_full_mm) return plate_mm;
  return std::max(0.5 * plate_mm, plug_full_mm);
}

base::Outcome<std::vector<SizeCheck>> check_plug_size(const PlugSize& size) {
  if (const auto refusal = what_is_wrong(size)) return *refusal;
  std::vector<SizeCheck> checks = {plug_check("least-plug-width",
                                              "width",
                                              SizeBound::at_least,
                                              least_plug_width_mm(size.plate_mm),
                                              size.width_mm,
                                              plug_rule),
                                   plug_check("largest-plug-width",
                                              "width",
                                              SizeBound::at_most,
                                              largest_plug_width_mm(size.plate_mm),
                                              size.width_mm,
                                              plug_rule)};
  if (size.slot_length_mm) {
    checks.push_back(plug_check("largest-slot-length",
                                "length",
                                SizeBound::at_most,
                                slot_plates * size.plate_mm,
                                *size.slot_length_mm,
                                plug_rule));
  }
  checks.push_back(plug_check("least-plug-fill",
                              "fill",
                              SizeBound::at_least,
                              least_plug_fill_mm(size.plate_mm),
                              size.fill_mm,
                              {"AWS D1.1", "depth of filling", Status::from_memory}));
  return checks;
}

double least_tack_length_mm(double thicker_mm) {
  SEAMTURN_REQUIRE(base::is_positive(thicker_mm), thicker_mm);
  return thicker_mm < tack_thin_below_mm ? tack_thicknesses * thicker_mm : tack_length_mm;
}

bool needs_two_run_tacks(double thicker_mm, double yield_mpa) {
  SEAMTURN_REQUIRE(
      base::is_positive(thicker_mm) && base::is_positive(yield_mpa), thicker_mm, yield_mpa);
  constexpr double thick_mm = 50.0;
  constexpr double strong_mpa = 500.0;
  return thicker_mm > thick_mm || yield_mpa > strong_mpa;
}

}  // namespace seamturn::joint
