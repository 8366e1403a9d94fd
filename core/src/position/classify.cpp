// SPDX-License-Identifier: MIT
#include "seamturn/position/classify.hpp"

#include <algorithm>
#include <cmath>
#include <span>
#include <string_view>

#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::position {

namespace {

using geom::Vec3;
using process::WeldFamily;
using process::WeldPosition;

/// A value on a border belongs to the easier row; sines and arcs put it some 1e-15 off.
constexpr double border_slack_deg = 1e-6;
constexpr double along_axis_deg = 1.0;

/// A rectangle of slope and bank, both without sign. `code`: the position uphill; downhill differs
/// only for PF (PG).
template <class Code>
struct Row {
  double slope_from_deg, slope_to_deg, bank_from_deg, bank_to_deg;
  Code code;
};

// ISO 6947 tables 1 and 2 (production ranges), turned into absolute bank angles; from memory.
using IsoRow = Row<WeldPosition>;
constexpr IsoRow iso_groove[] = {{0, 15, 0, 30, WeldPosition::pa},
                                 {0, 15, 30, 100, WeldPosition::pc},
                                 {15, 80, 0, 100, WeldPosition::pf},
                                 {0, 80, 100, 180, WeldPosition::pe},
                                 {80, 90, 0, 180, WeldPosition::pf}};
constexpr IsoRow iso_fillet[] = {{0, 15, 0, 30, WeldPosition::pa},
                                 {0, 15, 30, 55, WeldPosition::pb},
                                 {0, 15, 55, 100, WeldPosition::pc},
                                 {15, 80, 0, 100, WeldPosition::pf},
                                 {0, 80, 100, 145, WeldPosition::pd},
                                 {0, 80, 145, 180, WeldPosition::pe},
                                 {80, 90, 0, 180, WeldPosition::pf}};

// AWS D1.1 diagrams "positions of groove welds" and "of fillet welds"; rows D and E of the groove
// diagram as printed in the notes of AWS D3.6 figure 5.1, the others from memory.
using AwsRow = Row<std::string_view>;
constexpr AwsRow aws_groove[] = {{0, 15, 0, 30, "1G"},
                                 {0, 15, 30, 100, "2G"},
                                 {15, 80, 0, 100, "3G"},
                                 {0, 80, 100, 180, "4G"},
                                 {80, 90, 0, 180, "3G"}};
constexpr AwsRow aws_fillet[] = {{0, 15, 0, 30, "1F"},
                                 {0, 15, 30, 55, "2F"},
                                 {15, 80, 0, 55, "3F"},
                                 {0, 80, 55, 180, "4F"},
                                 {80, 90, 0, 180, "3F"}};

/// Slope and bank in degrees, both without sign.
struct Lie {
  double slope_deg;
  double bank_deg;
};

/// The first row whose upper borders are not passed: rows stand easier first.
template <class Code>
const Row<Code>& row_of(std::span<const Row<Code>> rows, const Lie& lie) {
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Row<Code>& row) {
    return lie.slope_deg <= row.slope_to_deg + border_slack_deg &&
           lie.bank_deg <= row.bank_to_deg + border_slack_deg;
  });
  SEAMTURN_REQUIRE(found != rows.end(), lie.slope_deg, lie.bank_deg);
  return *found;
}

/// By how much slope and bank may both change before another code holds.
double margin_deg(std::span<const IsoRow> rows, const Lie& lie, WeldPosition code) {
  double margin = 180.0;
  for (const IsoRow& row : rows) {
    if (row.code == code) continue;
    const double slope_off =
        std::max(row.slope_from_deg - lie.slope_deg, lie.slope_deg - row.slope_to_deg);
    const double bank_off =
        std::max(row.bank_from_deg - lie.bank_deg, lie.bank_deg - row.bank_to_deg);
    margin = std::min(margin, std::max({slope_off, bank_off, 0.0}));
  }
  return margin;
}

/// Slope off nominal with its sign, bank without.
struct Off {
  Angle slope;
  Angle bank;
};
Off off_nominal(const WorkingTolerance& tolerance, const Attitude& attitude, Angle pb_bank) {
  const Attitude nominal = nominal_attitude(tolerance.position, pb_bank);
  const bool upright =
      tolerance.position == WeldPosition::pf || tolerance.position == WeldPosition::pg;
  const Angle bank =
      upright ? Angle() : Angle::rad(std::abs(std::abs(attitude.bank.rad()) - nominal.bank.rad()));
  return {attitude.slope - nominal.slope, bank};
}

/// How much of a row's slope and bank an attitude takes, each 0 to 1.
struct Shares {
  double slope = 0.0;
  double bank = 0.0;
};
Shares shares_used(const WorkingTolerance& tolerance, const Attitude& attitude, Angle pb_bank) {
  const auto share = [](Angle off, Angle limit) {
    return limit > Angle() ? std::clamp(off.rad() / limit.rad(), 0.0, 1.0) : 0.0;
  };
  const Off off = off_nominal(tolerance, attitude, pb_bank);
  const Angle limit = off.slope < Angle() ? tolerance.downhill : tolerance.uphill;
  return {share(Angle::rad(std::abs(off.slope.rad())), limit), share(off.bank, tolerance.bank)};
}

constexpr base::FigureKey position_keys[] = {
    {"weld", base::Dimension::none, "family of the weld", "groove or fillet", true, true},
    {"axis",
     base::Dimension::none,
     "direction of travel, world axes with z up",
     "x,y,z, any length but zero",
     true,
     true},
    {"normal",
     base::Dimension::none,
     "normal of the weld face, from the root outwards",
     "x,y,z, at least 1 deg off the axis",
     true,
     true}};
constexpr base::Citation position_sources[] = {
    {"ISO 6947", "2019, tables 1 and 2, production ranges", base::Status::from_memory},
    {"AWS D1.1", "figures of groove and fillet positions", base::Status::from_memory},
    {"AWS D3.6", "notes of figure 5.1, rows D and E", base::Status::verified}};

}  // namespace

base::Outcome<Attitude> attitude(const geom::Vec3& travel,
                                 const geom::Vec3& normal,
                                 const geom::Vec3& up) {
  const Vec3 t = geom::unit(travel);
  const Vec3 z = geom::unit(up);
  const Angle between = geom::angle_between(t, normal);
  const Angle off_axis = std::min(between, Angle::deg(180.0) - between);
  if (off_axis < Angle::deg(along_axis_deg)) {
    return base::Refusal{"position.normal.along_axis",
                         "the normal of the weld face lies " + base::fixed_text(off_axis.deg(), 2) +
                             " deg off the axis of the weld; it must stand across it, at least 1 "
                             "deg off"};
  }
  const Vec3 n = geom::unit(normal - normal.dot(t) * t);
  const Vec3 s = n.cross(t);
  const Vec3 u = z - z.dot(t) * t;
  // A weld straight up has no bank: every face looks sideways.
  constexpr double upright = 1e-9;
  const Angle bank = u.norm() < upright ? Angle() : Angle::rad(std::atan2(u.dot(s), u.dot(n)));
  return Attitude{Angle::rad(std::atan2(t.dot(z), u.norm())), bank};
}

base::Outcome<Classified> classify(process::WeldFamily family,
                                   const geom::Vec3& travel,
                                   const geom::Vec3& normal,
                                   const geom::Vec3& up) {
  const base::Outcome<Attitude> found = attitude(travel, normal, up);
  if (!found) return found.error();
  const Lie lie{std::abs(found->slope.deg()), std::abs(found->bank.deg())};
  const bool fillet = family == WeldFamily::fillet;
  const std::span<const IsoRow> iso_rows =
      fillet ? std::span<const IsoRow>(iso_fillet) : std::span<const IsoRow>(iso_groove);
  const std::span<const AwsRow> aws_rows =
      fillet ? std::span<const AwsRow>(aws_fillet) : std::span<const AwsRow>(aws_groove);

  Classified out;
  const WeldPosition code = row_of(iso_rows, lie).code;
  out.iso = code == WeldPosition::pf && found->slope < Angle() ? WeldPosition::pg : code;
  out.aws = std::string(row_of(aws_rows, lie).code);
  out.attitude = *found;
  out.margin = Angle::deg(margin_deg(iso_rows, lie, code));
  return out;
}

const base::FigureCard& position_card() {
  static const base::FigureCard card{
      "position",
      "welding position of a seam that lies still",
      "slope = arcsin(axis . up); bank = angle from straight up to the face normal about the axis, "
      "positive when up . (normal x axis) > 0; the position is read off the ranges of both",
      "",
      "any axis and normal at least 1 deg apart; a value on a border belongs to the easier "
      "position",
      position_keys,
      position_sources};
  return card;
}

Angle pb_bank_near(Angle level) {
  return std::clamp(level, Angle::deg(31.0), Angle::deg(54.0));
}

Attitude nominal_attitude(process::WeldPosition position, Angle pb_bank) {
  switch (position) {
    case WeldPosition::pa:
      return {};
    case WeldPosition::pb:
      return {Angle(), pb_bank};
    case WeldPosition::pc:
      return {Angle(), Angle::deg(90.0)};
    case WeldPosition::pd:
      return {Angle(), Angle::deg(135.0)};
    case WeldPosition::pe:
      return {Angle(), Angle::deg(180.0)};
    case WeldPosition::pf:
      return {Angle::deg(90.0), Angle()};
    case WeldPosition::pg:
      return {Angle::deg(-90.0), Angle()};
  }
  return {};
}

bool is_within(const WorkingTolerance& tolerance, const Attitude& attitude, Angle pb_bank) {
  const Angle slack = Angle::deg(border_slack_deg);
  const Off off = off_nominal(tolerance, attitude, pb_bank);
  return off.slope <= tolerance.uphill + slack && off.slope >= -tolerance.downhill - slack &&
         off.bank <= tolerance.bank + slack;
}

double strain_ratio(const WorkingTolerance& tolerance, const Attitude& attitude, Angle pb_bank) {
  const Shares used = shares_used(tolerance, attitude, pb_bank);
  return std::max(used.slope, used.bank);
}

double bead_share_ratio(const WorkingTolerance& tolerance,
                        const Attitude& attitude,
                        Angle pb_bank) {
  const Shares used = shares_used(tolerance, attitude, pb_bank);
  return std::max(0.0, 1.0 - (1.0 - tolerance.bead_at_edge_ratio) * (used.slope + used.bank));
}

}  // namespace seamturn::position
