// SPDX-License-Identifier: MIT
#include "seamturn/procedure/caution.hpp"

#include <algorithm>
#include <cmath>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using procedure::Caution;
using procedure::CautionTriggers;
using procedure::find_cautions;

namespace {

/// Nothing but the caution that always stands.
CautionTriggers nothing() {
  CautionTriggers triggers;
  triggers.any_arc = false;
  triggers.without_record = false;
  return triggers;
}

CautionTriggers everything() {
  CautionTriggers triggers;
  triggers.on_positioner = true;
  triggers.tilting = true;
  triggers.rolling_over = true;
  triggers.part_mass_kg = 800.0;
  triggers.thickness_max_mm = 60.0;
  triggers.cet_max = 0.36;
  triggers.preheat_max_c = 130.0;
  triggers.closed_cavity = true;
  triggers.outside_range = true;
  triggers.may_tear = true;
  return triggers;
}

std::vector<std::string> codes_of(const CautionTriggers& triggers) {
  std::vector<std::string> codes;
  for (const Caution& caution : find_cautions(triggers)) codes.push_back(caution.code);
  return codes;
}

/// The codes beside the one that always stands.
std::vector<std::string> added(const CautionTriggers& triggers) {
  std::vector<std::string> codes = codes_of(triggers);
  REQUIRE(codes.front() == "caution.planning");
  codes.erase(codes.begin());
  return codes;
}

using Codes = std::vector<std::string>;

}  // namespace

TEST_SUITE("procedure/caution") {
  TEST_CASE("given nothing at all, the planning caution still stands") {
    CHECK(codes_of(nothing()) == Codes{"caution.planning"});
  }

  TEST_CASE("given everything, all cautions stand in their fixed order") {
    CHECK(codes_of(everything()) == Codes{"caution.planning",
                                          "caution.without_record",
                                          "caution.outside_range",
                                          "caution.hydrogen",
                                          "caution.tearing",
                                          "caution.fume",
                                          "caution.arc",
                                          "caution.fire",
                                          "caution.crush",
                                          "caution.turning",
                                          "caution.tilting",
                                          "caution.rolling_over",
                                          "caution.lifting",
                                          "caution.burns",
                                          "caution.cavity"});
  }

  TEST_CASE("given one trigger at a time, it adds its own cautions and no other") {
    CautionTriggers t = nothing();
    t.without_record = true;
    CHECK(added(t) == Codes{"caution.without_record"});
    t = nothing();
    t.any_arc = true;
    CHECK(added(t) == Codes{"caution.fume", "caution.arc", "caution.fire"});
    t = nothing();
    t.outside_range = true;
    CHECK(added(t) == Codes{"caution.outside_range"});
    t = nothing();
    t.may_tear = true;
    CHECK(added(t) == Codes{"caution.tearing"});
    t = nothing();
    t.on_positioner = true;
    CHECK(added(t) == Codes{"caution.crush", "caution.turning"});
    t = nothing();
    t.tilting = true;
    CHECK(added(t) == Codes{"caution.tilting"});
    t = nothing();
    t.rolling_over = true;
    CHECK(added(t) == Codes{"caution.rolling_over"});
    t = nothing();
    t.closed_cavity = true;
    CHECK(added(t) == Codes{"caution.cavity"});
  }

  TEST_CASE("given values at and just above a limit, a caution appears only above it") {
    CautionTriggers t = nothing();
    t.cet_max = 0.30;
    t.thickness_max_mm = 30.0;
    t.preheat_max_c = 60.0;
    t.part_mass_kg = 25.0;
    CHECK(added(t).empty());
    t.cet_max = 0.301;
    CHECK(added(t) == Codes{"caution.hydrogen"});
    t.cet_max = 0.30;
    t.thickness_max_mm = 30.1;
    CHECK(added(t) == Codes{"caution.hydrogen"});
    t.thickness_max_mm = 30.0;
    t.preheat_max_c = 60.1;
    CHECK(added(t) == Codes{"caution.burns"});
    t.preheat_max_c = 60.0;
    t.part_mass_kg = 25.1;
    CHECK(added(t) == Codes{"caution.lifting"});
  }

  TEST_CASE(
      "for any caution, law: it says something, defers to somebody, and its code is its own") {
    const std::vector<Caution> all = find_cautions(everything());
    std::vector<std::string> codes = codes_of(everything());
    for (const Caution& caution : all) {
      INFO(caution.code);
      CHECK(caution.code.rfind("caution.", 0) == 0);
      CHECK(caution.text.size() > 40);
      CHECK(caution.text.back() == '.');
      CHECK(caution.defer_to.find("does not replace") != std::string::npos);
    }
    std::sort(codes.begin(), codes.end());
    CHECK(std::adjacent_find(codes.begin(), codes.end()) == codes.end());
  }

  TEST_CASE("given mass and preheat, their cautions name them") {
    for (const Caution& caution : find_cautions(everything())) {
      if (caution.code == "caution.lifting")
        CHECK(caution.text.find("800 kg") != std::string::npos);
      if (caution.code == "caution.burns")
        CHECK(caution.text.find("130 degC") != std::string::npos);
    }
  }

  TEST_CASE("refuses a mass that is no number because it would silently switch a caution off") {
    CautionTriggers t = nothing();
    t.part_mass_kg = std::nan("");
    CHECK_THROWS_AS((void)find_cautions(t), base::ContractViolation);
    t = nothing();
    t.cet_max = std::nan("");
    CHECK_THROWS_AS((void)find_cautions(t), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
