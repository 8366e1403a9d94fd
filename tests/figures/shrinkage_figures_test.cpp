// SPDX-License-Identifier: MIT
#include "figures/figure_calls.hpp"

namespace seamturn::tests {

TEST_SUITE("figures/shrinkage_figures") {
  TEST_CASE("given each rule of shrinkage, both ends are those worked out by hand") {
    const FigureResult butt = result_of(
        "shrinkage",
        {{"rule", "across-butt"}, {"area", "435.8 mm2"}, {"thickness", "25 mm"}, {"gap", "3 mm"}});
    CHECK(number(butt, "low_mm") == doctest::Approx(1.743).epsilon(1e-3));
    CHECK(principal(butt) == doctest::Approx(3.636).epsilon(1e-3));
    CHECK(word(butt, "by_mean_width_status") == "verified");
    const FigureResult tee =
        result_of("shrinkage", {{"rule", "across-tee"}, {"leg", "8 mm"}, {"thickness", "20 mm"}});
    CHECK(number(tee, "low_mm") == doctest::Approx(0.408));
    CHECK(principal(tee) == doctest::Approx(1.6));
    CHECK(word(tee, "by_rule_status") == "from memory");
    const FigureResult lap =
        result_of("shrinkage", {{"rule", "across-lap"}, {"leg", "8 mm"}, {"thickness", "20 mm"}});
    CHECK(number(lap, "low_mm") == doctest::Approx(0.608));
    const FigureResult along = result_of("shrinkage",
                                         {{"rule", "along-butt"},
                                          {"current", "300 A"},
                                          {"length", "3000 mm"},
                                          {"thickness", "12 mm"}});
    CHECK(number(along, "low_mm") == doctest::Approx(2.2875));
    CHECK(principal(along) == doctest::Approx(3.0));
    const FigureResult fillet = result_of("shrinkage",
                                          {{"rule", "along-fillet"},
                                           {"area", "64 mm2"},
                                           {"section-area", "7600 mm2"},
                                           {"length", "4000 mm"},
                                           {"heat-input", "2.432 kJ/mm"}});
    CHECK(number(fillet, "by_rule_mm") == doctest::Approx(0.8421).epsilon(1e-3));
    CHECK(principal(fillet) == doctest::Approx(1.2427).epsilon(1e-3));
  }

  TEST_CASE("given a bow downwards, its amount is the larger end and the sign stays") {
    const FigureResult bow = result_of("shrinkage",
                                       {{"rule", "bow"},
                                        {"area", "64 mm2"},
                                        {"heat-input", "2.432 kJ/mm"},
                                        {"arm", "-63.1 mm"},
                                        {"length", "4000 mm"},
                                        {"second-moment", "75.64e6"}});
    CHECK(principal(bow) == doctest::Approx(-4.271).epsilon(1e-3));
    CHECK(word(bow, "by_force_status") == "from memory");
    CHECK(number(bow, "low_mm") == doctest::Approx(-3.939).epsilon(1e-3));
  }

  TEST_CASE("given plates beyond the published part, the low end is 0 and says so") {
    const FigureResult tilt =
        result_of("shrinkage",
                  {{"rule", "tilt"}, {"width", "200 mm"}, {"leg", "8 mm"}, {"thickness", "20 mm"}});
    CHECK(number(tilt, "low_mm") == 0.0);
    CHECK(principal(tilt) == doctest::Approx(1.437).epsilon(1e-3));
    CHECK(word(tilt, "published_lean") == "silent here: the low end is 0");
    const FigureResult thin =
        result_of("shrinkage",
                  {{"rule", "tilt"}, {"width", "200 mm"}, {"leg", "8 mm"}, {"thickness", "12 mm"}});
    CHECK(number(thin, "low_mm") == doctest::Approx(3.491).epsilon(1e-3));
    CHECK(principal(thin) == doctest::Approx(10.48).epsilon(1e-3));
    const FigureResult tee =
        result_of("shrinkage", {{"rule", "across-tee"}, {"leg", "16 mm"}, {"thickness", "20 mm"}});
    CHECK(number(tee, "low_mm") == 0.0);
    REQUIRE(tee.findings.size() == 1);
    CHECK(tee.findings[0].code == "shrinkage.fillet.leg");
  }

  TEST_CASE("refuses keys of another rule, missing ones and values beyond the rule") {
    CHECK(usage_of("shrinkage", {{"rule", "across-butt"}, {"area", "10 mm2"}})
              .find("thickness= is missing for rule=across-butt") != std::string::npos);
    CHECK(usage_of(
              "shrinkage",
              {{"rule", "across-tee"}, {"leg", "8 mm"}, {"thickness", "20 mm"}, {"current", "1 A"}})
              .find("current= does not belong to rule=across-tee") != std::string::npos);
    CHECK(code_of("shrinkage", {{"rule", "guess"}}) == "figure.word.unknown");
    CHECK(code_of("shrinkage",
                  {{"rule", "across-butt"},
                   {"area", "10 mm2"},
                   {"thickness", "5 mm"},
                   {"gap", "-1 mm"}}) == "figure.value.out_of_range");
    CHECK(code_of("shrinkage",
                  {{"rule", "along-fillet"},
                   {"area", "50 mm2"},
                   {"section-area", "1000 mm2"},
                   {"length", "1000 mm"}}) == "shrinkage.long_fillet.share");
  }

  TEST_CASE("given classes of tolerance, length and angle or form are answered, sizes refused") {
    const FigureResult length = result_of("tolerance", {{"class", "B"}, {"size", "700 mm"}});
    CHECK(principal(length) == 3.0);
    CHECK(word(length, "status") == "from memory");
    CHECK(number(length, "angle_minutes") == 30.0);
    CHECK(number(length, "angle_mm_per_m") == 9.0);
    const FigureResult form = result_of("tolerance", {{"class", "F"}, {"size", "700 mm"}});
    CHECK(principal(form) == 3.0);
    CHECK(word(form, "status") == "verified");
    CHECK(code_of("tolerance", {{"class", "E"}, {"size", "30 mm"}}) == "shrinkage.tolerance.size");
    CHECK(code_of("tolerance", {{"class", "I"}, {"size", "300 mm"}}) == "figure.word.unknown");
    CHECK(code_of("tolerance", {{"class", "A"}, {"size", "0 mm"}}) == "figure.value.out_of_range");
  }
}

}  // namespace seamturn::tests
