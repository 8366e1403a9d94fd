// SPDX-License-Identifier: MIT
// The rules a fillet's size is held against, one function a question.
#include <algorithm>
#include <cmath>

#include "detail_size_check.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"
#include "seamturn/base/rounding.hpp"
#include "seamturn/joint/weld_size.hpp"

namespace seamturn::joint {

namespace {

using base::Citation;
using base::Status;

constexpr double least_throat_en_mm = 3.0;
constexpr double cyclic_leg_mm = 5.0;
constexpr double throats_in_length = 6.0;
constexpr double least_length_en_mm = 30.0;
constexpr double least_segment_mm = 38.0;
constexpr double clear_thicknesses = 24.0;
constexpr double clear_most_mm = 300.0;
constexpr double end_loaded_legs = 100.0;
constexpr double annex_throat_ratio = 0.7;
constexpr double annex_root_less_mm = 0.5;
constexpr double sharp_below_deg = 60.0 - 1e-9;

constexpr const char* least_size = "least size";
constexpr const char* largest_size = "largest size";
constexpr const char* length_question = "length";

// EN 1993-1-8:2005 4.1, from memory: its rules of welds hold from 4 mm; sheet is EN 1993-1-3.
constexpr double european_from_mm = 4.0;

/// Of all rules those of Europe speak from their least thickness; asked for alone they always do.
bool asks(const FilletSize& size, SizeRules rules) {
  if (size.rules != SizeRules::all) return size.rules == rules;
  return rules != SizeRules::european || size.thinner_mm >= european_from_mm;
}

/// What a sharp root swallows; nothing from 60 deg on.
double root_loss_mm(const FilletSize& size) {
  return size.between_plates.deg() < sharp_below_deg ? size.root_loss_mm.value_or(0.0) : 0.0;
}

double triangle_throat_mm(const FilletSize& size) {
  return size.leg_mm * std::cos(0.5 * size.between_plates.rad()) - root_loss_mm(size);
}

Citation thickness_citation(SizeColumn column) {
  return column == SizeColumn::inch
             ? Citation{"AWS D1.1",
                        "least fillet sizes, inch values, quoted by AWS-LEAST",
                        Status::verified}
             : Citation{"AWS D1.1", "least fillet sizes, metric column", Status::from_memory};
}

void add(std::vector<SizeCheck>& checks, SizeCheck check) {
  checks.push_back(make_size_check(std::move(check)));
}

void add_american_least(std::vector<SizeCheck>& checks, const FilletSize& size) {
  const double governing_mm = size.low_hydrogen ? size.thinner_mm : size.thicker_mm;
  const double table_mm = least_leg_by_thickness_mm(governing_mm, size.column);
  add(checks,
      {"least-leg-aws",
       least_size,
       "leg",
       SizeBound::at_least,
       std::min(table_mm, size.thinner_mm),
       size.leg_mm,
       "mm",
       false,
       thickness_citation(size.column),
       "A small weld on a thick plate cools too fast: larger leg, or preheat and a tested "
       "procedure"});
  if (!size.cyclic_load) return;
  add(checks,
      {"least-leg-cyclic",
       least_size,
       "leg",
       SizeBound::at_least,
       cyclic_leg_mm,
       size.leg_mm,
       "mm",
       false,
       {"AWS D1.1", "least fillet under cyclic load, quoted by AWS-LEAST", Status::verified},
       ""});
}

void add_european_least(std::vector<SizeCheck>& checks, const FilletSize& size) {
  add(checks,
      {"least-throat-en",
       least_size,
       "throat",
       SizeBound::at_least,
       least_throat_en_mm,
       triangle_throat_mm(size),
       "mm",
       false,
       {"EN 1993-1-8", "2005 4.5.2", Status::from_memory},
       "A throat below 3 mm carries no load by this code"});
  if (!size.german_annex) return;
  add(checks,
      {"least-throat-annex-de",
       least_size,
       "throat",
       SizeBound::at_least,
       std::sqrt(size.thicker_mm) - annex_root_less_mm,
       triangle_throat_mm(size),
       "mm",
       false,
       {"EN 1993-1-8", "German annex: sqrt(thicker) - 0.5", Status::from_memory},
       ""});
}

SizeCheck edge_check(double leg_mm, double edge_thickness_mm) {
  return make_size_check(
      {"largest-leg-edge",
       largest_size,
       "leg",
       SizeBound::at_most,
       largest_edge_leg_mm(edge_thickness_mm),
       leg_mm,
       "mm",
       false,
       {"AWS D1.1", "largest fillet along an edge, EDGE-THREADS, AWS-DIGEST", Status::verified},
       "The edge melts away and the leg cannot be measured: smaller leg, or build out to full "
       "throat on the drawing"});
}

void add_largest(std::vector<SizeCheck>& checks, const FilletSize& size) {
  if (size.edge_thickness_mm) checks.push_back(edge_check(size.leg_mm, *size.edge_thickness_mm));
  if (size.german_annex && asks(size, SizeRules::european)) {
    add(checks,
        {"largest-throat-annex-de",
         largest_size,
         "throat",
         SizeBound::at_most,
         annex_throat_ratio * size.thinner_mm,
         triangle_throat_mm(size),
         "mm",
         false,
         {"EN 1993-1-8", "German annex: 0.7 x thinner", Status::from_memory},
         ""});
  }
}

void add_american_length(std::vector<SizeCheck>& checks, const FilletSize& size) {
  const double length_mm = *size.length_mm;
  add(checks,
      {"least-length-aws",
       length_question,
       "length",
       SizeBound::at_least,
       detail::legs_in_length * size.leg_mm,
       length_mm,
       "mm",
       false,
       {"AWS D1.1", "2010 2.4.2: four legs", Status::verified},
       "The leg counts only as " + base::digits_text(counted_leg_mm(size.leg_mm, length_mm)) +
           " mm"});
  if (!size.end_loaded) return;
  add(checks,
      {"longest-end-loaded",
       "end-loaded length",
       "length",
       SizeBound::at_most,
       end_loaded_legs * size.leg_mm,
       length_mm,
       "mm",
       false,
       {"AWS D1.1", "2010 2.4.2: 100 legs", Status::verified},
       "Only " + base::digits_text(length_mm * end_loaded_share_ratio(size.leg_mm, length_mm)) +
           " mm of the length count"});
}

void add_length(std::vector<SizeCheck>& checks, const FilletSize& size) {
  if (!size.length_mm) return;
  if (asks(size, SizeRules::american)) add_american_length(checks, size);
  if (!asks(size, SizeRules::european)) return;
  add(checks,
      {"least-length-en",
       length_question,
       "length",
       SizeBound::at_least,
       std::max(throats_in_length * triangle_throat_mm(size), least_length_en_mm),
       *size.length_mm,
       "mm",
       false,
       {"EN 1993-1-8", "2005 4.5.1: six throats, 30 mm", Status::from_memory},
       "A shorter weld carries no load by this code"});
}

void add_intermittent(std::vector<SizeCheck>& checks, const FilletSize& size) {
  if (!size.intermittent || !asks(size, SizeRules::american)) return;
  add(checks,
      {"least-segment-aws",
       "intermittent segment",
       "segment",
       SizeBound::at_least,
       least_segment_mm,
       size.intermittent->segment_mm,
       "mm",
       false,
       {"AWS D1.1", "2010 2.4.2, AWS-DIGEST", Status::verified},
       ""});
  add(checks,
      {"largest-clear-aws",
       "intermittent spacing",
       "clear spacing",
       SizeBound::at_most,
       std::min(clear_thicknesses * size.thinner_mm, clear_most_mm),
       size.intermittent->clear_mm,
       "mm",
       false,
       {"AWS-DIGEST", "24 x thickness (taken: the thinner) or 300 mm", Status::verified},
       ""});
}

/// Only of plates that stand askew; between square plates nothing is asked.
void add_angle(std::vector<SizeCheck>& checks, const FilletSize& size) {
  constexpr double square_deg = 90.0;
  constexpr double square_slack_deg = 1e-6;
  const double deg = size.between_plates.deg();
  if (std::abs(deg - square_deg) <= square_slack_deg) return;
  const bool wide = deg > square_deg;
  const std::string side = wide ? "widest-angle-" : "sharpest-angle-";
  const SizeBound bound = wide ? SizeBound::at_most : SizeBound::at_least;
  if (asks(size, SizeRules::american)) {
    add(checks,
        {side + "aws",
         "angle",
         "angle",
         bound,
         wide ? 135.0 : 30.0,
         deg,
         "deg",
         false,
         {"AWS D1.1", "2010 2.4.2 from 30 deg; SKEWED-TEE up to 135 deg", Status::verified},
         ""});
  }
  if (!asks(size, SizeRules::european)) return;
  add(checks,
      {side + "en",
       "angle",
       "angle",
       bound,
       wide ? 120.0 : 60.0,
       deg,
       "deg",
       false,
       {"EN 1993-1-8", "2005 4.3.2: fillet rules for 60 to 120 deg", Status::from_memory},
       wide ? "Prove by test" : "Treat as a partial-penetration butt weld"});
}

std::optional<base::Refusal> what_is_wrong(const FilletSize& size) {
  std::vector<std::string> wrong;
  detail::note_bad_size(wrong, "leg", size.leg_mm);
  detail::note_bad_size(wrong, "thinner part", size.thinner_mm);
  detail::note_bad_size(wrong, "thicker part", size.thicker_mm);
  if (size.thinner_mm > size.thicker_mm) wrong.push_back("the thinner part is above the thicker");
  if (size.edge_thickness_mm) detail::note_bad_size(wrong, "edge", *size.edge_thickness_mm);
  if (size.length_mm && !(*size.length_mm > 0.0)) wrong.push_back("length must be above 0 mm");
  if (size.end_loaded && !size.length_mm) wrong.push_back("an end-loaded weld needs its length");
  if (size.intermittent) {
    detail::note_bad_size(wrong, "segment", size.intermittent->segment_mm);
    if (!(size.intermittent->clear_mm >= 0.0)) wrong.push_back("clear spacing is below 0 mm");
  }
  if (!wrong.empty()) return base::Refusal{"joint.size.value", detail::joined(wrong)};
  const auto throat = counted_throat(size.leg_mm, size.between_plates, size.root_loss_mm);
  if (!throat) return throat.error();
  return std::nullopt;
}

}  // namespace

base::Outcome<std::vector<SizeCheck>> check_fillet_size(const FilletSize& size) {
  if (const auto refusal = what_is_wrong(size)) return *refusal;
  std::vector<SizeCheck> checks;
  if (asks(size, SizeRules::american)) add_american_least(checks, size);
  if (asks(size, SizeRules::european)) add_european_least(checks, size);
  add_largest(checks, size);
  add_length(checks, size);
  add_intermittent(checks, size);
  add_angle(checks, size);
  return checks;
}

std::vector<base::Finding> edge_leg_findings(double leg_mm, double edge_thickness_mm) {
  SEAMTURN_REQUIRE(base::is_positive(leg_mm), leg_mm);
  const SizeCheck check = edge_check(leg_mm, edge_thickness_mm);
  using base::rounding_ratio;
  if (leg_mm > edge_thickness_mm * (1.0 + rounding_ratio)) {
    return {base::Finding{
        base::Severity::error,
        "joint.size.beyond_edge",
        "the leg along the edge is " + base::digits_text(leg_mm) + " mm and the edge " +
            base::digits_text(edge_thickness_mm) + " mm high; expected above 0 and at most " +
            base::digits_text(check.required) + " mm there (" + std::string(check.citation.key) +
            ", " + std::string(check.citation.locator) + "); take a smaller leg or a thicker plate",
        {},
        {}}};
  }
  const SizeCheck one[] = {check};
  return size_findings(one);
}

base::Outcome<LeastLeg> least_fillet_leg(FilletSize size) {
  // Any leg will do, none of the least sizes depends on it; the largest keeps a root loss below it.
  size.leg_mm = detail::largest_size_mm;
  size.length_mm.reset();
  size.end_loaded = false;
  const base::Outcome<std::vector<SizeCheck>> checks = check_fillet_size(size);
  if (!checks) return checks.error();
  LeastLeg least;
  for (const SizeCheck& check : *checks) {
    if (check.question != least_size) continue;
    const double leg_mm = check.subject == "throat" ? (check.required + root_loss_mm(size)) /
                                                          std::cos(0.5 * size.between_plates.rad())
                                                    : check.required;
    if (leg_mm > least.leg_mm) least = LeastLeg{leg_mm, check.rule, check.citation};
  }
  return least;
}

}  // namespace seamturn::joint
