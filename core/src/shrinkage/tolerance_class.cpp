// SPDX-License-Identifier: MIT
#include "seamturn/shrinkage/tolerance_class.hpp"

#include <array>
#include <iterator>

#include "detail_checks.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::shrinkage {

namespace {

using base::Status;

// [ISO 13920] 1996. Upper ends of the columns; the last column is open.
constexpr double up_to_mm[] = {
    30.0, 120.0, 400.0, 1000.0, 2000.0, 4000.0, 8000.0, 12000.0, 16000.0, 20000.0};
constexpr std::size_t columns = std::size(up_to_mm) + 1;
constexpr double linear_from_mm = 2.0;

// Table 1. The page seen prints B to D with ten values for eleven columns, set from the first one;
// that 1 mm up to 30 mm holds for all four, and so where the others stand, is FROM MEMORY.
constexpr double linear_mm[][columns] = {
    {1, 1, 1, 2, 3, 4, 5, 6, 7, 8, 9},
    {1, 2, 2, 3, 4, 6, 8, 10, 12, 14, 16},
    {1, 3, 4, 6, 8, 11, 14, 18, 21, 24, 27},
    {1, 4, 7, 9, 12, 16, 21, 27, 32, 36, 40},
};
// Table 3, from above 30 mm on. G after its first cell, and H, FROM MEMORY.
constexpr double form_mm[][columns - 1] = {
    {0.5, 1, 1.5, 2, 3, 4, 5, 6, 7, 8},
    {1, 1.5, 3, 4.5, 6, 8, 10, 12, 14, 16},
    {1.5, 3, 5.5, 9, 11, 16, 20, 22, 25, 25},
    {2.5, 5, 9, 14, 18, 26, 32, 36, 40, 40},
};
// Table 2.
constexpr double leg_up_to_mm[] = {400.0, 1000.0};
constexpr double angle_minutes[][3] = {{20, 15, 10}, {45, 30, 20}, {60, 45, 30}, {90, 75, 60}};
constexpr double angle_mm_per_m[][3] = {{6, 4.5, 3}, {13, 9, 6}, {18, 13, 9}, {26, 22, 18}};

constexpr std::string_view size_names[] = {"A", "B", "C", "D"};
constexpr std::string_view form_names[] = {"E", "F", "G", "H"};

template <class Ends>
std::size_t column_of(const Ends& ends, double mm) {
  std::size_t column = 0;
  while (column < std::size(ends) && mm > ends[column]) ++column;
  return column;
}

/// "above 120 to 400 mm", "up to 400 mm", "above 1000 mm".
template <class Ends>
std::string row_text(const Ends& ends, std::size_t column, const std::string& first_from) {
  const std::string from =
      column == 0 ? first_from : "above " + base::shortest_text(ends[column - 1]) + " ";
  return column < std::size(ends) ? from + "to " + base::shortest_text(ends[column]) + " mm"
                                  : from + "mm";
}

std::size_t index_of(SizeClass size_class) {
  const auto index = static_cast<std::size_t>(size_class);
  SEAMTURN_REQUIRE(index < std::size(size_names), index);
  return index;
}

std::size_t index_of(FormClass form_class) {
  const auto index = static_cast<std::size_t>(form_class);
  SEAMTURN_REQUIRE(index < std::size(form_names), index);
  return index;
}

template <class Class, class Names>
std::optional<Class> find_in(const Names& names, std::string_view name) {
  for (std::size_t i = 0; i < std::size(names); ++i) {
    if (names[i] == name) return static_cast<Class>(i);
  }
  return std::nullopt;
}

base::Refusal too_small(const std::string& table, double mm) {
  return {"shrinkage.tolerance.size",
          "ISO 13920 " + table + "; " + base::digits_text(mm) +
              " mm has no general tolerance: state one on the drawing"};
}

}  // namespace

std::string_view size_class_name(SizeClass size_class) {
  return size_names[index_of(size_class)];
}
std::string_view form_class_name(FormClass form_class) {
  return form_names[index_of(form_class)];
}
std::optional<SizeClass> find_size_class(std::string_view name) {
  return find_in<SizeClass>(size_names, name);
}
std::optional<FormClass> find_form_class(std::string_view name) {
  return find_in<FormClass>(form_names, name);
}

base::Outcome<Tolerance> linear_tolerance(SizeClass size_class, double nominal_mm) {
  SEAMTURN_REQUIRE(base::is_positive(nominal_mm), nominal_mm);
  const std::size_t row = index_of(size_class);
  if (nominal_mm < linear_from_mm) return too_small("table 1 begins at 2 mm", nominal_mm);
  const std::size_t column = column_of(up_to_mm, nominal_mm);
  return Tolerance{linear_mm[row][column],
                   row_text(up_to_mm, column, "2 "),
                   {"ISO 13920",
                    "1996, table 1",
                    size_class == SizeClass::a ? Status::verified : Status::from_memory}};
}

AngularTolerance angular_tolerance(SizeClass size_class, double shorter_leg_mm) {
  SEAMTURN_REQUIRE(base::is_positive(shorter_leg_mm), shorter_leg_mm);
  const std::size_t row = index_of(size_class);
  const std::size_t column = column_of(leg_up_to_mm, shorter_leg_mm);
  return {angle_minutes[row][column],
          angle_mm_per_m[row][column],
          row_text(leg_up_to_mm, column, "up "),
          {"ISO 13920", "1996, table 2", Status::verified}};
}

base::Outcome<Tolerance> form_tolerance(FormClass form_class, double longer_side_mm) {
  SEAMTURN_REQUIRE(base::is_positive(longer_side_mm), longer_side_mm);
  const std::size_t row = index_of(form_class);
  const std::size_t column = column_of(up_to_mm, longer_side_mm);
  if (column == 0) return too_small("table 3 begins above 30 mm", longer_side_mm);
  const bool seen = form_class == FormClass::e || form_class == FormClass::f ||
                    (form_class == FormClass::g && column == 1);
  return Tolerance{form_mm[row][column - 1],
                   row_text(up_to_mm, column, ""),
                   {"ISO 13920", "1996, table 3", seen ? Status::verified : Status::from_memory}};
}

}  // namespace seamturn::shrinkage
