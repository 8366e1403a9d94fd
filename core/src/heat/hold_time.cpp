// SPDX-License-Identifier: MIT
#include "seamturn/heat/hold_time.hpp"

#include "detail_checks.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::heat {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Status;

constexpr double low_strength_up_to_mpa = 420.0;
constexpr double hot_above_kj_mm = 3.0;
// [EN 1011-2] as quoted by a national specification: at least 16 h, longer above 50 mm or 500 MPa.
constexpr double general_hours = 16.0, general_size_mm = 50.0, general_yield_mpa = 500.0;

struct HoldRow {
  const char* text;
  double low_hours;   ///< S235 to S420
  double high_hours;  ///< S460 and above
};

// [EN 1090-2] 2008, table 23.
constexpr HoldRow thin{"size up to 6 mm, any heat input", 0.0, 24.0};
constexpr HoldRow middle_cool{"size > 6 to 12 mm, heat input up to 3 kJ/mm", 8.0, 24.0};
constexpr HoldRow middle_hot{"size > 6 to 12 mm, heat input above 3 kJ/mm", 16.0, 40.0};
constexpr HoldRow thick_cool{"size above 12 mm, heat input up to 3 kJ/mm", 16.0, 40.0};
constexpr HoldRow thick_hot{"size above 12 mm, heat input above 3 kJ/mm", 40.0, 48.0};

const HoldRow& hold_row(double size_mm, double heat_input_kj_mm) {
  const bool hot = heat_input_kj_mm > hot_above_kj_mm;
  if (size_mm <= 6.0) return thin;
  if (size_mm <= 12.0) return hot ? middle_hot : middle_cool;
  return hot ? thick_hot : thick_cool;
}

}  // namespace

HoldTime hold_time(const HoldTimeParams& params) {
  SEAMTURN_REQUIRE(base::is_positive(params.size_mm), params.size_mm);
  SEAMTURN_REQUIRE(base::is_positive(params.heat_input_kj_mm), params.heat_input_kj_mm);
  SEAMTURN_REQUIRE(base::is_positive(params.yield_mpa), params.yield_mpa);
  const HoldRow& row = hold_row(params.size_mm, params.heat_input_kj_mm);
  const bool high = params.yield_mpa > low_strength_up_to_mpa;
  HoldTime hold;
  hold.hours = high ? row.high_hours : row.low_hours;
  hold.cooling_only = hold.hours <= 0.0;
  hold.row = row.text;
  hold.column = high ? "S460 and above" : "S235 to S420";
  const bool longer = params.size_mm > general_size_mm || params.yield_mpa > general_yield_mpa;
  if (hold.hours < general_hours || longer) {
    hold.findings.push_back(
        detail::finding(base::Severity::note,
                        "heat.hold.general_advice",
                        std::string("the general advice of EN 1011-2 is at least 16 h") +
                            (longer ? ", longer above 50 mm or 500 MPa" : "") +
                            "; let the welding coordinator decide between it and table 23"));
  }
  return hold;
}

const base::FigureCard& hold_time_card() {
  static const FigureKey keys[] = {
      {"size",
       Dimension::length,
       "throat of a fillet, plate thickness at full penetration, depth at partial penetration; of "
       "two welded together the sum",
       "> 0"},
      {"heat-input", Dimension::heat_input, "highest heat input of the weld", "> 0"},
      {"yield", Dimension::stress, "nominal yield of the grade, e.g. 355 MPa for S355", "> 0"},
  };
  static const Citation sources[] = {
      {"EN 1090-2", "2008, table 23: all cells", Status::verified},
      {"EN 1011-2", "general 16 h, as quoted by a national specification", Status::verified},
  };
  static const base::FigureCard card{
      "hold-time",
      "least wait before the final testing of a weld, against cracks that come late",
      "cell of size (up to 6, 12 mm, above), heat input (up to 3 kJ/mm, above) and strength (S235 "
      "to S420, S460 and above); 0: once it is cold",
      "h",
      "any size; yield above 420 MPa takes the column of S460. Times may be cut by a hydrogen soak "
      "where the standard says so. The 2018 edition was not seen: the edition in force governs. "
      "The "
      "start of the wait stands in the test report",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::heat
