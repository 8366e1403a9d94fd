// SPDX-License-Identifier: MIT
// The figures weld-size, burn-off and spool beyond their one worked call.
#include "figures/figure_calls.hpp"

namespace seamturn::tests {

TEST_SUITE("figures/size_figures") {
  TEST_CASE("given a throat on an edge, weld-size judges it and says what is only remembered") {
    const FigureResult result =
        result_of("weld-size", {{"thinner", "12 mm"}, {"throat", "4 mm"}, {"edge", "6 mm"}});
    // remembered: metric column, 12 mm: 5 mm. published: edge of 6 mm: 4 mm at most.
    CHECK(principal(result) == 5.0);
    CHECK(number(result, "leg_mm") == doctest::Approx(5.6569).epsilon(1e-4));
    CHECK(number(result, "counted_throat_mm") == doctest::Approx(4.0));
    CHECK(number(result, "largest_edge_leg_mm") == 4.0);
    CHECK(word(result, "verdict") == "fails");
    CHECK(word(result, "governed_by") == "least-leg-aws");
    CHECK(word(result, "least_leg_aws") == "at least 5 mm: holds (from memory)");
    CHECK(word(result, "largest_leg_edge") == "at most 4 mm: fails (verified)");
    REQUIRE(result.findings.size() == 2);
    CHECK(result.findings[0].code == "joint.size.rule_broken");
    CHECK(result.findings[1].code == "joint.size.not_proved");
  }

  TEST_CASE("given a long end-loaded fillet of 150 legs, nine tenths of it count") {
    const FigureResult result = result_of("weld-size",
                                          {{"thinner", "12 mm"},
                                           {"leg", "6 mm"},
                                           {"length", "900 mm"},
                                           {"load", "end"},
                                           {"column", "inch"}});
    CHECK(number(result, "length_share") == doctest::Approx(0.90));
    CHECK(word(result, "longest_end_loaded") == "at most 600 mm: fails (verified)");
    CHECK(number(result, "counted_leg_mm") == 6.0);
  }

  TEST_CASE("given a bevel of 10 mm welded upwards under a fillet of 8 mm, 10.61 mm count") {
    const FigureResult result = result_of("weld-size",
                                          {{"weld", "partial"},
                                           {"thinner", "20 mm"},
                                           {"depth", "10 mm"},
                                           {"position", "PF"},
                                           {"leg", "8 mm"}});
    CHECK(principal(result) == 8.0);
    CHECK(number(result, "counted_throat_mm") == 7.0);
    CHECK(number(result, "combined_throat_mm") == doctest::Approx(10.6066).epsilon(1e-5));
    CHECK(word(result, "least_partial_throat") == "at least 8 mm: fails (verified)");
    CHECK(code_of("weld-size",
                  {{"weld", "partial"},
                   {"thinner", "20 mm"},
                   {"depth", "10 mm"},
                   {"groove", "v"},
                   {"angle", "50 deg"}}) == "joint.size.groove_angle");
  }

  TEST_CASE("given plug and slot in 12 mm plate, widths run from 20 to 27 mm") {
    const FigureResult plug = result_of("weld-size", {{"weld", "plug"}, {"thinner", "12 mm"}});
    CHECK(principal(plug) == 20.0);
    CHECK(number(plug, "largest_width_mm") == 27.0);
    const FigureResult slot = result_of(
        "weld-size",
        {{"weld", "slot"}, {"thinner", "12 mm"}, {"width", "20 mm"}, {"slot-length", "121 mm"}});
    CHECK(word(slot, "largest_slot_length") == "at most 120 mm: fails (verified)");
    CHECK(usage_of("weld-size", {{"weld", "slot"}, {"thinner", "12 mm"}, {"width", "20 mm"}})
              .find("slot-length=") != std::string::npos);
  }

  TEST_CASE("refuses weld-size calls that say too much, too little or what cannot be") {
    const auto with = [](Arguments more) {
      more.push_back({"thinner", "12 mm"});
      return more;
    };
    CHECK(usage_of("weld-size", with({{"leg", "6 mm"}, {"throat", "4 mm"}})).find("not both") !=
          std::string::npos);
    CHECK(usage_of("weld-size", with({{"process", "111"}})).find("hydrogen=") != std::string::npos);
    CHECK(usage_of("weld-size", with({{"leg", "6 mm"}, {"clear", "100 mm"}})).find("length=") !=
          std::string::npos);
    CHECK(code_of("weld-size", with({{"leg", "-6 mm"}})) == "joint.size.value");
    CHECK(code_of("weld-size", with({{"angle", "140 deg"}})) == "joint.size.angle");
    CHECK(code_of("weld-size", with({{"angle", "45 deg"}})) == "joint.size.root_loss");
    CHECK(code_of("weld-size", with({{"rules", "japanese"}})) == "figure.word.unknown");
    CHECK(code_of("weld-size", with({{"weld", "partial"}, {"position", "PX"}})) ==
          "figure.word.unknown");
    CHECK(code_of("weld-size", {{"weld", "plug"}, {"thinner", "0 mm"}}) ==
          "figure.value.out_of_range");
    // A covered electrode that is not low-hydrogen looks at the thicker part.
    CHECK(principal(result_of(
              "weld-size",
              with({{"process", "111"}, {"hydrogen", "other"}, {"thicker", "25 mm"}}))) == 8.0);
  }

  TEST_CASE("given a feed, burn-off gives back the current it came from") {
    const Arguments wire = {{"wire", "1.2 mm"}, {"extension", "15 mm"}};
    Arguments forward = wire;
    forward.push_back({"current", "250 A"});
    const FigureResult feed = result_of("burn-off", forward);
    // remembered: 250 A, 15 mm: 7.31 m/min.
    CHECK(principal(feed) == doctest::Approx(7.31).epsilon(1e-3));
    CHECK(feed.principal.unit == "m/min");
    CHECK(word(feed, "coefficients") == "from memory");
    Arguments back = wire;
    back.push_back({"feed", std::to_string(principal(feed)) + " m/min"});
    const FigureResult current = result_of("burn-off", back);
    CHECK(principal(current) == doctest::Approx(250.0).epsilon(1e-5));
    CHECK(current.principal.unit == "A");
    CHECK(usage_of("burn-off", wire).find("one of them") != std::string::npos);
    Arguments half = forward;
    half.push_back({"current-1", "200 A"});
    CHECK(usage_of("burn-off", half).find("all of") != std::string::npos);
    Arguments stray = forward;
    stray.push_back({"trial-length", "15 mm"});
    CHECK(usage_of("burn-off", stray).find("needs the two trial points") != std::string::npos);
    Arguments far = wire;
    far.push_back({"current", "450 A"});
    CHECK(code_of("burn-off", far) == "process.burn_off.out_of_range");
    Arguments loose = far;
    loose.push_back({"extrapolation", "20 %"});
    CHECK(result_of("burn-off", loose).findings.front().code == "process.burn_off.extrapolated");
    loose.back().second = "100 %";
    CHECK(code_of("burn-off", loose) == "figure.value.out_of_range");
  }

  TEST_CASE("given wire by mass, by metal or by length, spool counts the same changes") {
    const FigureResult by_mass = result_of("spool", {{"wire", "1.2 mm"}, {"used", "100 kg"}});
    const FigureResult by_metal =
        result_of("spool", {{"wire", "1.2 mm"}, {"metal", "95 kg"}, {"efficiency", "95 %"}});
    const FigureResult by_length =
        result_of("spool", {{"wire", "1.2 mm"}, {"length", "11263.9 m"}});
    CHECK(principal(by_mass) == 6.0);
    CHECK(principal(by_metal) == 6.0);
    CHECK(number(by_metal, "needed_kg") == doctest::Approx(100.0));
    CHECK(number(by_length, "needed_kg") == doctest::Approx(100.0).epsilon(1e-4));
    CHECK(principal(by_length) == 6.0);
    CHECK(number(by_mass, "spool_m") == doctest::Approx(1689.6).epsilon(1e-4));
    CHECK(number(by_mass, "thrown_m") == doctest::Approx(60.0));
    CHECK(principal(result_of("spool",
                              {{"wire", "1.2 mm"},
                               {"used", "100 kg"},
                               {"spool", "250 kg"},
                               {"leftover", "0 m"},
                               {"started", "100 m"}})) == 1.0);
    CHECK(usage_of("spool", {{"wire", "1.2 mm"}}).find("one of used=") != std::string::npos);
    CHECK(usage_of("spool", {{"wire", "1.2 mm"}, {"metal", "1 kg"}}).find("go together") !=
          std::string::npos);
    CHECK(code_of("spool", {{"wire", "1.2 mm"}, {"used", "-1 kg"}}) == "process.spool.value");
    CHECK(code_of("spool", {{"wire", "1.2 mm"}, {"metal", "1 kg"}, {"efficiency", "110 %"}}) ==
          "figure.value.out_of_range");
  }
}

}  // namespace seamturn::tests
