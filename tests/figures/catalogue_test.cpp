// SPDX-License-Identifier: MIT
#include "seamturn/figures/catalogue.hpp"

#include <cmath>
#include <set>

#include "oracle.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

namespace {

using Arguments = std::vector<std::pair<std::string, std::string>>;
using figures::FigureAnswer;
using figures::FigureResult;
using figures::FigureUsage;

/// One call that must work for every figure, with the value it must give.
struct Call {
  const char* name;
  Arguments arguments;
  Expected expected;
};

const std::vector<Call>& calls() {
  static const std::vector<Call> all = {
      {"carbon-equivalent",
       {{"method", "cet"},
        {"C", "0.18"},
        {"Mn", "1.40"},
        {"Mo", "0.05"},
        {"Cr", "0.20"},
        {"Cu", "0.15"},
        {"Ni", "0.10"}},
       {0.345, 0.0005, Origin::published, "teaching exercise (weak)", "printed to 3 decimals"}},
      {"arc-energy",
       {{"voltage", "24 V"}, {"current", "100 A"}, {"travel", "2 mm/s"}},
       {1.2, 1e-9, Origin::published, "IIT Kharagpur virtual lab, post-test"}},
      {"heat-input",
       {{"process", "135"}, {"voltage", "28 V"}, {"current", "280 A"}, {"travel", "400 mm/min"}},
       {0.9408, 1e-6, Origin::computed, "k U I / v"}},
      {"preheat",
       {{"method", "cet"},
        {"cet", "0.30"},
        {"thickness", "30 mm"},
        {"hydrogen", "5"},
        {"heat-input", "1 kJ/mm"}},
       {85.07, 0.01, Origin::computed, "EN 1011-2:2001 C.3 from memory"}},
      {"preheat-zone",
       {{"thickness", "90 mm"}},
       {90.0, 0.0, Origin::remembered, "AWS D1.1: the thickness, at least 3 in"}},
      {"combined-thickness",
       {{"thickness-1", "20 mm"}, {"thickness-2", "20 mm"}, {"thickness-3", "12 mm"}},
       {52.0, 1e-9, Origin::closed_form, "sum by hand"}},
      {"interpass",
       {{"steel", "225 degC"}, {"wire", "210 degC"}},
       {210.0, 0.0, Origin::closed_form, "the lower of two"}},
      {"heat-band",
       {{"case", "butt"},
        {"thickness", "8 mm"},
        {"preheat", "100 degC"},
        {"interpass", "110 degC"},
        {"t85-min", "10 s"},
        {"t85-max", "30 s"}},
       {0.6607, 5e-5, Origin::computed, "SSAB-17, 2-D formula turned round"}},
      {"hardness",
       {{"t85", "10 s"},
        {"C", ".17"},
        {"Si", ".35"},
        {"Mn", "1.45"},
        {"Cr", ".05"},
        {"Mo", ".01"},
        {"V", ".005"},
        {"Ni", ".05"},
        {"Cu", ".05"},
        {"Nb", ".02"}},
       {327.2, 0.06, Origin::computed, "Suzuki, the highest of three remembered formulas"}},
      {"hold-time",
       {{"size", "8 mm"}, {"heat-input", "1 kJ/mm"}, {"yield", "355 MPa"}},
       {8.0, 0.0, Origin::published, "EN 1090-2:2008 table 23"}},
      {"hydrogen-soak", {{"thickness", "100 mm"}}, {4.0, 0.0, Origin::practice, "1 h per 25 mm"}},
      {"lamellar-tearing",
       {{"depth", "25 mm"},
        {"shape", "corner"},
        {"through-thickness", "50 mm"},
        {"restraint", "high"}},
       {32.0, 0.0, Origin::remembered, "9 + 8 + 10 + 5 by hand"}},
      {"cooling-time",
       {{"case", "run-on-plate"},
        {"heat-input", "1.5 kJ/mm"},
        {"thickness", "40 mm"},
        {"start", "20 degC"}},
       {7.9, 0.05, Origin::published, "teaching exercise (weak)", "printed to 1 decimal"}},
      {"part-cooling",
       {{"thickness", "20 mm"}, {"from", "250 degC"}, {"to", "150 degC"}, {"face-loss", "25"}},
       {895.8, 0.05, Origin::computed, "rho c d/(2 h) ln(230/130), by a separate script"}},
      {"steel-heat",
       {{"temperature", "735 degC"}},
       {5000.0, 1e-9, Origin::closed_form, "EN 1993-1-2: 545 + 17820/4"}},
      {"shrinkage",
       {{"rule", "across-butt"}, {"area", "0.5 in2"}, {"thickness", "0.5 in"}, {"gap", "0.125 in"}},
       {5.239, 5e-4, Origin::closed_form, "0.20625 in"}},
      {"tolerance",
       {{"class", "F"}, {"size", "3000 mm"}},
       {6.0, 0.0, Origin::published, "ISO 13920:1996 table 3"}},
      {"section",
       {{"preparation", "single-v"},
        {"thickness", "20 mm"},
        {"gap", "2 mm"},
        {"root-face", "0 mm"},
        {"angle", "60 deg"}},
       {271.0, 0.6, Origin::published, "electrode consumption table, V t20 gap 2 60 deg"}},
      {"deposit",
       {{"wire", "1.2 mm"}, {"feed", "10 m/min"}, {"efficiency", "95 %"}},
       {5.061, 0.001, Origin::computed, "identity at 7850 kg/m3"}},
      {"bead",
       {{"wire", "1.2 mm"}, {"feed", "8 m/min"}, {"efficiency", "0.96"}, {"travel", "400 mm/min"}},
       {21.7, 0.05, Origin::computed, "conservation of mass"}},
      {"burn-off",
       {{"wire", "1.1 mm"},
        {"linear-mass", "7.5 g/m"},
        {"extension", "20 mm"},
        {"current", "275 A"},
        {"current-1", "120 A"},
        {"feed-1", "135 in/min"},
        {"current-2", "340 A"},
        {"feed-2", "650 in/min"}},
       {450.0 * 0.0254,
        0.04 * 450.0 * 0.0254,
        Origin::published,
        "MCW, 275 A",
        "4 %: see oracles"}},
      {"spool",
       {{"wire", "1.2 mm"}, {"metal", "95 kg"}, {"efficiency", "95 %"}},
       {6.0, 0.0, Origin::computed, "100 kg / 8.878 g/m over 1690 - 10 m usable, one spool on"}},
      {"weld-size",
       {{"thinner", "12.7 mm"}, {"column", "inch"}, {"rules", "american"}},
       {4.7625, 1e-9, Origin::published, "AWS-LEAST, 1/2 in: 3/16 in"}},
      {"passes",
       {{"preparation", "fillet"},
        {"leg", "12.1 mm"},
        {"position", "PA"},
        {"wire", "1.2 mm"},
        {"efficiency", "95 %"},
        {"feed", "10 m/min"},
        {"voltage", "31 V"},
        {"current", "300 A"},
        {"travel-min", "2 cm/min"},
        {"travel", "40 cm/min"},
        {"travel-max", "200 cm/min"},
        {"leg-max", "12 mm"}},
       {3.0,
        0.0,
        Origin::published,
        "AWS D1.1 2020 table 5.1: 12 mm in one pass",
        "rule of layers"}},
      {"stance",
       {{"positioner", "tilt-rotate"}, {"axis", "0,1,0"}, {"normal", "1,0,1"}, {"want", "PA"}},
       {45.0, 1e-9, Origin::computed, "closed form, table case T3"}},
      {"move-time",
       {{"distance", "180 deg"}, {"speed", "20 deg/s"}, {"acceleration", "20 deg/s2"}},
       {10.0, 1e-9, Origin::computed, "trapezoid D/v + v/a"}},
      {"torque",
       {{"mass", "4000 lb"}, {"overhang", "6 in"}, {"offset", "10 in"}, {"eccentricity", "4 in"}},
       {64000.0 * 0.45359237 * 9.80665 * 0.0254, 1e-6, Origin::computed, "W (OH + d)"}},
  };
  return all;
}

const FigureResult& result_of(const FigureAnswer& answer) {
  if (const auto* usage = std::get_if<FigureUsage>(&answer)) FAIL(usage->text);
  if (const auto* refused = std::get_if<std::vector<base::Finding>>(&answer)) {
    FAIL(refused->front().text);
  }
  return std::get<FigureResult>(answer);
}

double value_named(const FigureResult& result, const std::string& name) {
  for (const auto& [key, value] : result.values) {
    if (key == name) return std::get<double>(value.value);
  }
  FAIL("no value named ", name);
  return 0.0;
}

/// A written number of an argument as another; the unit stays.
std::string with_number(const std::string& text, const std::string& number) {
  const std::size_t end = std::min(text.find_first_not_of("0123456789.+-"), text.size());
  return number + text.substr(end);
}

bool is_number(const std::string& figure, const std::string& key) {
  for (const base::FigureKey& one : figures::find_card(figure)->keys) {
    if (one.name == key) return !one.is_text;
  }
  return false;
}

std::string call_text(const std::string& name, const Arguments& arguments) {
  std::string text = name;
  for (const auto& [key, value] : arguments) text += ' ' + key + "=\"" + value + '"';
  return text;
}

/// Every number of a result is one; what cannot be answered is told.
void check_answered(const std::string& name, const Arguments& arguments) {
  INFO(call_text(name, arguments));
  const FigureAnswer answer = figures::evaluate_figure(name, arguments);
  if (const auto* refused = std::get_if<std::vector<base::Finding>>(&answer)) {
    CHECK(base::has_errors(*refused));
  }
  const auto* result = std::get_if<FigureResult>(&answer);
  if (result == nullptr) return;
  std::vector<figures::FigureValue> values = {result->principal};
  for (const auto& [key, value] : result->values) values.push_back(value);
  for (const figures::FigureValue& value : values) {
    if (const auto* number = std::get_if<double>(&value.value)) CHECK(std::isfinite(*number));
  }
}

}  // namespace

TEST_SUITE("figures/catalogue") {
  TEST_CASE("for numbers of any size, law: a figure answers or says why not") {
    base::Random random(base::named_seed(21, "any size"));
    for (const Call& call : calls()) {
      for (std::size_t k = 0; k < call.arguments.size(); ++k) {
        if (!is_number(call.name, call.arguments[k].first)) continue;
        for (const char* number :
             {"0", "1e300", "-1e300", "1e-300", "1e30", "1e-30", "1e6", "1e-6"}) {
          Arguments arguments = call.arguments;
          arguments[k].second = with_number(arguments[k].second, number);
          check_answered(call.name, arguments);
        }
      }
      for (int i = 0; i < 100; ++i) {
        Arguments arguments = call.arguments;
        for (auto& [key, value] : arguments) {
          if (!is_number(call.name, key)) continue;
          const double factor = std::pow(10.0, random.between(-2.0, 2.0));
          value = with_number(value, base::shortest_text(std::stod(value) * factor));
        }
        check_answered(call.name, arguments);
      }
    }
  }

  TEST_CASE("given a worked call of every figure, the principal value is the known one") {
    std::set<std::string> called = {"position", "nozzle-access"};  // words, tested apart
    for (const Call& call : calls()) {
      const FigureAnswer answer = figures::evaluate_figure(call.name, call.arguments);
      const FigureResult& result = result_of(answer);
      called.insert(call.name);
      check_expected(call.name, std::get<double>(result.principal.value), call.expected);
    }
    for (const base::FigureCard* card : figures::all_cards()) {
      INFO(std::string(card->name));
      CHECK(called.count(std::string(card->name)) == 1);
    }
  }

  TEST_CASE("given published decisions, position gives the codes as words") {
    // published: practitioner reading of AWS D1.1 fig. 4.1: inclination 10, rotation 200 -> flat.
    const FigureAnswer flat = figures::evaluate_figure(
        "position",
        {{"weld", "groove"}, {"axis", ".9848,0,.1736"}, {"normal", "-.1632,.3420,.9254"}});
    CHECK(std::get<std::string>(result_of(flat).principal.value) == "PA");
    const FigureAnswer overhead = figures::evaluate_figure(
        "position", {{"weld", "fillet"}, {"axis", "1,0,0"}, {"normal", "0,0.8660,0.5"}});
    const FigureResult& fillet = result_of(overhead);
    CHECK(std::get<std::string>(fillet.principal.value) == "PC");
    CHECK(value_named(fillet, "bank_deg") == doctest::Approx(-60.0).epsilon(1e-4));
  }

  TEST_CASE("given a stance for PB without down, both plates are answered") {
    const FigureAnswer answer = figures::evaluate_figure(
        "stance",
        {{"positioner", "tilt-rotate"}, {"axis", "0,1,0"}, {"normal", "1,0,1"}, {"want", "PB"}});
    const FigureResult& result = result_of(answer);
    CHECK(value_named(result, "tilt_deg") == doctest::Approx(0.0).scale(1.0));
    CHECK(value_named(result, "bank_deg") == doctest::Approx(45.0));
    CHECK(value_named(result, "bank_deg_2") == doctest::Approx(-45.0));
    CHECK(value_named(result, "tilt_deg_2") == doctest::Approx(90.0));
  }

  TEST_CASE("refuses wrong keys as usage and wrong values as findings, naming all of them") {
    const auto usage = [](const std::string& name, const Arguments& arguments) {
      const FigureAnswer answer = figures::evaluate_figure(name, arguments);
      const auto* text = std::get_if<FigureUsage>(&answer);
      return text == nullptr ? std::string("no usage") : text->text;
    };
    CHECK(usage("arc-enrgy", {}).find("did you mean arc-energy?") != std::string::npos);
    const std::string many =
        usage("arc-energy", {{"voltge", "24 V"}, {"current", "1 A"}, {"current", "2 A"}});
    CHECK(many.find("did you mean voltage=?") != std::string::npos);
    CHECK(many.find("current= is given twice") != std::string::npos);
    CHECK(many.find("travel= is missing") != std::string::npos);
    CHECK(usage("section", {{"preparation", "fillet"}, {"leg", "6 mm"}, {"throat", "4 mm"}})
              .find("exactly one of") != std::string::npos);

    const auto codes = [](const std::string& name, const Arguments& arguments) {
      std::vector<std::string> out;
      const FigureAnswer answer = figures::evaluate_figure(name, arguments);
      if (const auto* findings = std::get_if<std::vector<base::Finding>>(&answer)) {
        for (const base::Finding& finding : *findings) out.push_back(finding.code);
      }
      return out;
    };
    CHECK(codes("arc-energy", {{"voltage", "24"}, {"current", "100 kg"}, {"travel", "2 mm/s"}}) ==
          std::vector<std::string>{"read.unit.missing", "read.unit.wrong_dimension"});
    CHECK(codes("arc-energy", {{"voltage", "-24 V"}, {"current", "100 A"}, {"travel", "2 mm/s"}}) ==
          std::vector<std::string>{"figure.value.out_of_range"});
    CHECK(codes("preheat",
                {{"method", "guess"},
                 {"cet", "0.3"},
                 {"thickness", "30 mm"},
                 {"hydrogen", "5"},
                 {"heat-input", "1 kJ/mm"}}) == std::vector<std::string>{"figure.word.unknown"});
    CHECK(codes("position", {{"weld", "groove"}, {"axis", "1,0"}, {"normal", "0,0,1"}}) ==
          std::vector<std::string>{"figure.direction.malformed"});
    CHECK(codes("position", {{"weld", "groove"}, {"axis", "1,0,0"}, {"normal", "1,0,0.001"}}) ==
          std::vector<std::string>{"position.normal.along_axis"});
  }

  TEST_CASE("for every card, law: meaning, formula, range, keys and sources are filled in") {
    for (const base::FigureCard* card : figures::all_cards()) {
      INFO(std::string(card->name));
      CHECK_FALSE(card->meaning.empty());
      CHECK_FALSE(card->formula.empty());
      CHECK_FALSE(card->range.empty());
      CHECK_FALSE(card->keys.empty());
      CHECK_FALSE(card->sources.empty());
      for (const base::FigureKey& key : card->keys) CHECK_FALSE(key.meaning.empty());
    }
  }
}

}  // namespace seamturn::tests
