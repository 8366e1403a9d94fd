// SPDX-License-Identifier: MIT
// The steels of joints/library against what was read in the documents, and laws among the rest.
// That a row holds a printed limit guards against slips of typing and proves no physics.
#include "oracles/steel_rows.hpp"

#include <set>

#include "joints/steel_library.hpp"

namespace seamturn::tests {

namespace {

using material::Steel;
using material::SteelBand;

const Steel& steel_of(const std::string& designation) {
  const auto& steels = all_steels();
  const auto found = std::find_if(steels.begin(), steels.end(), [&](const Steel& steel) {
    return steel.designation == designation;
  });
  REQUIRE_MESSAGE(found != steels.end(), designation);
  return *found;
}

/// The bands that a row speaks of; at least one.
template <class Value>
void check_class_row(const ClassRow& row, const char* source, const Value& value) {
  int checked = 0;
  for (const Steel& steel : all_steels()) {
    if (steel.standard != "EN 10025-2:2019" || !steel.designation.starts_with(row.steel_class)) {
      continue;
    }
    const SteelBand* band = material::find_band(steel, row.thickness_mm);
    if (band == nullptr) continue;
    ++checked;
    check_expected(steel.designation + " at " + std::to_string(row.thickness_mm) + " mm",
                   value(*band),
                   {row.value, 1e-12, Origin::published, source});
  }
  INFO(row.steel_class, " at ", row.thickness_mm);
  CHECK(checked > 0);
}

bool starts_with_any(const std::string& text, std::initializer_list<const char*> starts) {
  return std::any_of(
      starts.begin(), starts.end(), [&](const char* one) { return text.starts_with(one); });
}

/// ISO/TR 15608:2000 by yield and delivery; "" where the rule does not decide.
std::string group_by_rule(const Steel& steel) {
  const SteelBand& thinnest = steel.bands.front();
  if (!thinnest.yield_mpa || !material::bounds_carbon_equivalent(thinnest)) return "";
  const double yield_mpa = *thinnest.yield_mpa;
  if (thinnest.maxima.c > 0.25) return thinnest.maxima.cr > 0.75 ? "" : "11";
  if (steel.standard.starts_with("EN 10025-6")) return yield_mpa <= 690 ? "3.1" : "3.2";
  if (yield_mpa <= 275) return "1.1";
  if (yield_mpa <= 360) return "1.2";
  if (steel.standard.starts_with("EN 10025-4")) return yield_mpa <= 460 ? "2.1" : "2.2";
  return starts_with_any(steel.standard, {"EN 10025-3", "EN 10210"}) ? "1.3" : "";
}

}  // namespace

TEST_SUITE("joints/steel_rows") {
  TEST_CASE("given EN 10025-2 table 5, every steel of it holds the CEV limit of each band") {
    for (const ClassRow& row : cev_rows) {
      check_class_row(
          row, cev_source, [](const SteelBand& band) { return band.cev_max.value_or(0.0); });
    }
  }

  TEST_CASE("given EN 10025-2 table 7, every steel of it holds the yield of each band") {
    for (const ClassRow& row : yield_rows) {
      check_class_row(
          row, yield_source, [](const SteelBand& band) { return band.yield_mpa.value_or(0.0); });
    }
  }

  TEST_CASE("given EN 10025-2 table 2, every steel seen there holds its composition") {
    for (const ClassRow& row : carbon_rows) {
      check_class_row(row, composition_source, [](const SteelBand& band) { return band.maxima.c; });
    }
    for (const LimitRow& row : limit_rows) {
      for (const SteelBand& band : steel_of(row.steel).bands) {
        const std::pair<double, double> pairs[] = {{band.maxima.si, row.si},
                                                   {band.maxima.mn, row.mn},
                                                   {band.maxima.p, row.p},
                                                   {band.maxima.s, row.s},
                                                   {band.maxima.n, row.n},
                                                   {band.maxima.cu, row.cu},
                                                   {band.maxima.cr, row.cr},
                                                   {band.maxima.mo, row.mo},
                                                   {band.maxima.ni, row.ni}};
        for (const auto& [got, printed] : pairs) {
          check_expected(row.steel, got, {printed, 0.0, Origin::published, composition_source});
        }
      }
    }
  }

  TEST_CASE("given pages and sheets of other steels, the bands hold all they print and no more") {
    for (const SeenRow& row : seen_rows) {
      INFO(row.steel, " at ", row.thickness_mm, " mm, published: ", row.source);
      const SteelBand* band = material::find_band(steel_of(row.steel), row.thickness_mm);
      REQUIRE(band != nullptr);
      CHECK(band->maxima == row.limits);
      CHECK(band->mn_is_open == (row.limits.mn == 0.0));
      CHECK(band->source.find(row.source) != std::string::npos);
      if (row.yield_mpa == 0.0) continue;
      CHECK(band->status == base::Status::verified);
      check_expected(row.steel,
                     band->yield_mpa.value_or(0.0),
                     {row.yield_mpa, 0.0, Origin::published, row.source});
    }
  }

  TEST_CASE("given a maker's sheet, wear plate of 400 HBW holds its limits and no yield") {
    const Steel& steel = steel_of("WEAR400");
    REQUIRE(steel.bands.size() == 1);
    CHECK(steel.bands[0].maxima == wear_400_limits);  // published: WEAR-SHEET
    CHECK(steel.bands[0].status == base::Status::verified);
    for (const char* wear : {"WEAR400", "WEAR450", "WEAR500"}) {
      INFO(wear);
      CHECK(steel_of(wear).group.empty());
      CHECK_FALSE(steel_of(wear).bands[0].yield_mpa.has_value());
      CHECK_FALSE(steel_of(wear).t85.has_value());
    }
  }

  TEST_CASE("given the steels two manuals list by category of AWS D1.1, the rows say so") {
    std::set<std::string> listed;
    for (const SteelCategoryRow& row : steel_category_rows) {
      INFO(row.steel);
      listed.insert(row.steel);
      REQUIRE(steel_of(row.steel).aws_category.has_value());
      CHECK(steel_of(row.steel).aws_category->name.find(row.category) != std::string::npos);
      CHECK(steel_of(row.steel).aws_category->source.starts_with(row.source));
    }
    for (const Steel& steel : all_steels()) {  // law: no category without having been seen
      INFO(steel.designation);
      CHECK(steel.aws_category.has_value() == (listed.count(steel.designation) == 1));
    }
  }

  TEST_CASE("given the rule of ISO/TR 15608, every steel stands in the group of its yield") {
    // published: ISO/TR 15608:2000, rules by yield and delivery. Against the rule or without one,
    // each with its reason in the library:
    const std::set<std::string> by_list = {"16Mo3", "A588-A"};
    const std::set<std::string> without = {
        "A36", "A572-60", "A913-50", "A913-65", "E470", "25CrMo4", "42CrMo4", "GE200", "GE240"};
    for (const Steel& steel : all_steels()) {
      INFO(steel.designation);
      if (by_list.count(steel.designation) == 1) continue;
      CHECK(steel.group == (without.count(steel.designation) == 1 ? "" : group_by_rule(steel)));
    }
    CHECK(steel_of("16Mo3").group == "1.2");   // remembered: ISO/TR 20172
    CHECK(steel_of("A588-A").group == "1.4");  // published: weathering steel
    CHECK(steel_of("S690QL").group == "3.1");  // published, so that the rule above is no mirror
    CHECK(steel_of("S355ML").group == "1.2");  // published: 355 is below 360, so not group 2
    CHECK(steel_of("S960QL").group == "3.2");  // published
    CHECK(steel_of("S460NL").group == "1.3");  // published
    CHECK(steel_of("S460M").group == "2.1");   // published
    CHECK(steel_of("C45").group == "11");      // published rule, steel from memory
    CHECK(steel_of("S460J2").group.empty());
  }

  TEST_CASE("for any steel, law: yield never rises with thickness and a CEV limit never falls") {
    for (const Steel& steel : all_steels()) {
      for (std::size_t i = 0; i < steel.bands.size(); ++i) {
        const SteelBand& band = steel.bands[i];
        INFO(steel.designation, " up to ", band.up_to_mm);
        CHECK_FALSE(band.source.empty());
        if (i == 0) continue;
        const SteelBand& thinner = steel.bands[i - 1];
        CHECK(band.up_to_mm > thinner.up_to_mm);
        CHECK(band.yield_mpa.has_value() == thinner.yield_mpa.has_value());
        CHECK(band.yield_mpa.value_or(0.0) <= thinner.yield_mpa.value_or(0.0));
        CHECK(band.cev_max.has_value() == thinner.cev_max.has_value());
        CHECK(band.cev_max.value_or(0.0) >= thinner.cev_max.value_or(0.0));
        CHECK(band.maxima.c >= thinner.maxima.c);
      }
    }
  }

  TEST_CASE("for a steel named by its yield, law: the thinnest band has that yield") {
    // published: EN 10027-1 as STEEL-NAMES quotes it: the number behind S, P or E is the least
    // yield of the smallest thickness.
    int checked = 0;
    for (const Steel& steel : all_steels()) {
      const std::string& name = steel.designation;
      if (name.size() < 4 || !starts_with_any(name, {"S", "P", "E"})) continue;
      INFO(name);
      CHECK(steel.bands.front().yield_mpa.value_or(0.0) == std::stod(name.substr(1, 3)));
      ++checked;
    }
    CHECK(checked >= 60);
  }

  TEST_CASE("for any steel, law: later heating may reach what is permitted between passes") {
    for (const Steel& steel : all_steels()) {
      INFO(steel.designation);
      if (!steel.later_heating_max || !steel.interpass_max_c) continue;
      CHECK(steel.later_heating_max->value_c >= *steel.interpass_max_c);
    }
  }

  TEST_CASE("for a stronger quenched steel, law: the window of t8/5 never widens upwards") {
    // remembered windows: nothing outside holds them, only their order is checked.
    double last_s = 1e9;
    for (const char* name : {"S355J2", "S460QL", "S550QL", "S690QL", "S890QL", "S960QL"}) {
      INFO(name);
      REQUIRE(steel_of(name).t85.has_value());
      CHECK(steel_of(name).t85->most_s <= last_s);
      CHECK(steel_of(name).t85->status == base::Status::from_memory);
      last_s = steel_of(name).t85->most_s;
    }
    CHECK(last_s == 15.0);
  }

  TEST_CASE("for the families of the handbook page, law: each is there and none is listed twice") {
    std::set<std::string> names;
    std::set<std::string> standards;
    for (const Steel& steel : all_steels()) {
      INFO(steel.designation);
      CHECK(names.insert(steel.designation).second);
      standards.insert(steel.standard.substr(0, steel.standard.find(':')));
    }
    for (const char* family : {"EN 10025-2",
                               "EN 10025-3",
                               "EN 10025-4",
                               "EN 10025-6",
                               "EN 10028-2",
                               "EN 10028-3",
                               "EN 10083-2",
                               "EN 10083-3",
                               "EN 10210-1",
                               "EN 10219-1",
                               "EN 10293",
                               "EN 10297-1",
                               "none, makers differ"}) {
      INFO(family);
      CHECK(standards.count(family) == 1);
      CHECK((family[0] == 'n' || file_bytes(repository() / "docs/methods/steels.md").find(family) !=
                                     std::string::npos));
    }
  }
}

}  // namespace seamturn::tests
