// SPDX-License-Identifier: MIT
#include "seamturn/fitup/fit_up.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <span>

#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::fitup {

namespace {

using base::Outcome;
using base::Refusal;
using section::SectionParams;

// What is left of a root face or a face's angle when a tolerance would take it all.
constexpr double least_leg_mm = 0.1;
constexpr double least_cut_mm = 0.1;
constexpr Angle least_angle = Angle::deg(0.1);
constexpr double row_mm = 1.0;
constexpr double same_mm = 1e-9;

/// One corner of the tolerances: signed departures.
struct Departure {
  double gap_mm = 0.0;
  double root_face_mm = 0.0;
  Angle angle;
  double size_mm = 0.0;
};

joint::GrooveSide leaned(joint::GrooveSide side, Angle by) {
  if (side.angle.rad() <= 0.0) return side;  // square edge
  const Angle before = side.angle;
  side.angle = std::max(least_angle, side.angle + by);
  if (side.first_face) {
    side.first_face = (side.first_face->rad() / before.rad()) * side.angle;
  }
  return side;
}

struct Departed {
  const Departure& by;
  double thickness_mm;

  joint::Preparation operator()(joint::Fillet fillet) const {
    fillet.leg_1_mm = std::max(least_leg_mm, fillet.leg_1_mm + by.size_mm);
    fillet.leg_2_mm = std::max(least_leg_mm, fillet.leg_2_mm + by.size_mm);
    fillet.gap_mm = std::max(0.0, fillet.gap_mm + by.gap_mm);
    if (fillet.gap_mm <= 0.0) fillet.reach_mm = 0.0;
    return fillet;
  }
  joint::Preparation operator()(joint::Groove groove) const {
    groove.gap_mm = std::max(0.0, groove.gap_mm + by.gap_mm);
    if (groove.form != joint::GrooveForm::square) {
      const double before_mm = groove.root_face_mm;
      groove.root_face_mm = std::clamp(
          before_mm + by.root_face_mm, 0.0, std::max(before_mm, thickness_mm - least_cut_mm));
      share_root_face(groove, groove.root_face_mm - before_mm);
    }
    groove.side_1 = leaned(groove.side_1, by.angle);
    groove.side_2 = leaned(groove.side_2, by.angle);
    return groove;
  }
  joint::Preparation operator()(const joint::Plug& plug) const { return plug; }

 private:
  /// Stated cuts of a double groove give or take what the root face takes or gives, half each.
  static void share_root_face(joint::Groove& groove, double grown_mm) {
    for (joint::GrooveSide* side : {&groove.side_1, &groove.side_2}) {
      if (side->depth_mm > 0.0) {
        side->depth_mm = std::max(least_cut_mm, side->depth_mm - 0.5 * grown_mm);
      }
    }
  }
};

SectionParams departed(const SectionParams& drawn, const Departure& by) {
  SectionParams params = drawn;
  params.preparation = std::visit(Departed{by, drawn.thickness_mm}, drawn.preparation);
  const auto* before = std::get_if<joint::Groove>(&drawn.preparation);
  const auto* after = std::get_if<joint::Groove>(&params.preparation);
  const bool is_partial = drawn.depth_mm > 0.0 && drawn.depth_mm < drawn.thickness_mm;
  if (before != nullptr && after != nullptr && is_partial) {
    // A thinner root face lets the cut reach deeper; the metal fills it to its bottom.
    const double deeper_mm = std::max(0.0, before->root_face_mm - after->root_face_mm);
    params.depth_mm =
        std::min(drawn.thickness_mm, drawn.depth_mm + (before->is_double ? 0.5 : 1.0) * deeper_mm);
  }
  return params;
}

void lay(FitUpCase& item, pass::StackRequest request) {
  request.section = &item.section;
  base::Outcome<pass::PassStack> stack = pass::make_pass_stack(request);
  if (stack) {
    item.stack = std::move(stack).value();
  } else {
    item.why = stack.error().text;
  }
}

Outcome<FitUpCase> make_case(const SectionParams& params, const pass::StackRequest& request) {
  FitUpCase item;
  item.params = params;
  Outcome<section::WeldSection> made = section::weld_section(params);
  if (!made) return made.error();
  item.section = std::move(made).value();
  lay(item, request);
  return item;
}

/// The corner with least or most metal. Gap, angle and size move the area one way each; a root face
/// moves one side of a double groove either way, for that side fills it: both ends are asked.
template <class Better>
Outcome<FitUpCase> extreme_case(const SectionParams& drawn,
                                Departure by,
                                std::span<const double> root_face_mm,
                                const pass::StackRequest& request,
                                const Better& better) {
  std::optional<SectionParams> best;
  double best_mm2 = 0.0;
  std::optional<Refusal> refused;
  for (const double departure_mm : root_face_mm) {
    by.root_face_mm = departure_mm;
    const SectionParams params = departed(drawn, by);
    const Outcome<section::WeldSection> made = section::weld_section(params);
    if (!made) {
      refused = made.error();
    } else if (!best || better(made->area_mm2, best_mm2)) {
      best = params;
      best_mm2 = made->area_mm2;
    }
  }
  if (refused) return *refused;
  return make_case(*best, request);
}

void require_departures(const Tolerances& t) {
  for (const double value_mm : {t.gap_minus_mm,
                                t.gap_plus_mm,
                                t.root_face_minus_mm,
                                t.root_face_plus_mm,
                                t.angle_minus.rad(),
                                t.angle_plus.rad(),
                                t.size_minus_mm,
                                t.size_plus_mm}) {
    SEAMTURN_REQUIRE(base::is_amount(value_mm), value_mm);
  }
}

}  // namespace

Outcome<FitUpBand> fit_up_band(const SectionParams& drawn,
                               const Tolerances& tolerances,
                               const pass::StackRequest& request) {
  require_departures(tolerances);
  const Tolerances& t = tolerances;
  const Departure least{-t.gap_minus_mm, t.root_face_plus_mm, -t.angle_minus, -t.size_minus_mm};
  const Departure most{t.gap_plus_mm, -t.root_face_minus_mm, t.angle_plus, t.size_plus_mm};
  const double root_face_mm[] = {t.root_face_plus_mm, -t.root_face_minus_mm};
  Outcome<FitUpCase> nominal = make_case(drawn, request);
  if (!nominal) return nominal.error();
  Outcome<FitUpCase> low = extreme_case(drawn, least, root_face_mm, request, std::less<>());
  if (!low) return low.error();
  Outcome<FitUpCase> high = extreme_case(drawn, most, root_face_mm, request, std::greater<>());
  if (!high) return high.error();
  return FitUpBand{std::move(low).value(), std::move(nominal).value(), std::move(high).value()};
}

SectionParams with_gap(SectionParams params, double gap_mm) {
  if (auto* groove = std::get_if<joint::Groove>(&params.preparation)) groove->gap_mm = gap_mm;
  if (auto* fillet = std::get_if<joint::Fillet>(&params.preparation)) {
    fillet->gap_mm = gap_mm;
    if (gap_mm <= 0.0) fillet->reach_mm = 0.0;
  }
  return params;
}

Outcome<GapTable> gap_table(const SectionParams& drawn,
                            const StopLimit& stop,
                            const pass::StackRequest& request) {
  SEAMTURN_REQUIRE(std::isfinite(stop.gap_mm), stop.gap_mm);
  if (stop.gap_mm <= 0.0) {
    return Refusal{"fitup.gap.stop_below_zero",
                   "the gap may be at most " + base::digits_text(stop.gap_mm) + " mm by " +
                       stop.reason + "; a table of gaps needs room above 0 mm"};
  }
  GapTable table;
  table.stop = stop;
  bool opened = false;  // gaps may be too tight for a root as well as too wide
  for (double from_mm = 0.0; from_mm < stop.gap_mm - same_mm; from_mm += row_mm) {
    GapRow row;
    row.from_mm = from_mm;
    row.to_mm = std::min(from_mm + row_mm, stop.gap_mm);
    Outcome<FitUpCase> widest = make_case(with_gap(drawn, row.to_mm), request);
    if (widest) {
      row.area_mm2 = widest->section.area_mm2;
      row.stack = std::move(widest->stack);
      row.why = std::move(widest->why);
    } else {
      row.why = widest.error().text;
    }
    const bool closes = row.stack.has_value();
    table.rows.push_back(std::move(row));
    opened = opened || closes;
    if (closes || !opened) continue;
    table.stop = StopLimit{from_mm, "no settings close beyond it", base::Status::computed};
    break;
  }
  if (!opened) {
    table.rows.resize(1);
    table.stop = StopLimit{0.0, "no settings close beyond it", base::Status::computed};
  }
  return table;
}

}  // namespace seamturn::fitup
