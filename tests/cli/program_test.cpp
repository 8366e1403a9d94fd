// SPDX-License-Identifier: MIT
// The program from outside: exit codes, JSON, files written, same bytes twice.
#include <doctest/doctest.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "process.hpp"

namespace seamturn::tests {

namespace {

using nlohmann::json;
namespace fs = std::filesystem;

std::string demo(const std::string& name) {
  return "'" + (repository() / "joints" / name).string() + "'";
}

json json_of(const std::string& arguments) {
  const Ran ran = run_seamturn(arguments, scratch("json"));
  INFO(arguments, "\n", ran.err);
  REQUIRE(ran.exit_code == 0);
  return json::parse(ran.out);
}

double sum_of(const json& list, const std::string& key) {
  double total = 0.0;
  for (const json& entry : list) total += entry.at(key).get<double>();
  return total;
}

std::set<std::string> files_in(const fs::path& folder) {
  std::set<std::string> names;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    if (entry.is_regular_file()) names.insert(fs::relative(entry.path(), folder).generic_string());
  }
  return names;
}

}  // namespace

TEST_SUITE("cli/program") {
  TEST_CASE("for explain as JSON, law: what is close to a limit tells value, limit and distance") {
    std::size_t seen = 0;
    const json got = json_of("explain --json --quiet " + demo("bracket.xml") + " J2");
    for (const json& step : got.at("steps")) {
      for (const json& close : step.at("how_close")) {
        ++seen;
        INFO(close.dump());
        const double value = close.at("value");
        const double nearest = close.at("nearest");
        CHECK((close.contains("least") || close.contains("largest")));
        CHECK(std::abs(close.at("distance").get<double>()) ==
              doctest::Approx(std::abs(value - nearest)));
        CHECK(close.at("share_ratio").is_number());
        CHECK(close.at("origin").is_string());
        CHECK(close.at("unit").is_string());
      }
    }
    CHECK(seen >= 8);
  }

  TEST_CASE("for joints as JSON, law: totals are the sums of the joints and every key is there") {
    for (const std::string file : {"bracket.xml", "grab_hub.xml"}) {
      const json got = json_of("joints --json --quiet " + demo(file));
      CHECK(got.at("weldment").is_string());
      for (const json& joint : got.at("joints")) {
        for (const char* key : {"id",
                                "seams",
                                "type",
                                "preparation",
                                "length_mm",
                                "welded_mm",
                                "section_area_mm2",
                                "weld_size",
                                "throats",
                                "metal_kg",
                                "positions",
                                "passes",
                                "arc_time_s",
                                "heat_input_min_kj_mm",
                                "heat_input_max_kj_mm",
                                "preheat_c",
                                "interpass_max_c",
                                "t85_min_s",
                                "t85_max_s"}) {
          INFO(key);
          CHECK(joint.contains(key));
        }
        CHECK(joint.at("heat_input_min_kj_mm") <= joint.at("heat_input_max_kj_mm"));
        CHECK(joint.at("t85_min_s") <= joint.at("t85_max_s"));
        CHECK(joint.at("preheat_c") < joint.at("interpass_max_c"));
      }
      for (const char* key : {"length_mm", "welded_mm", "metal_kg", "passes", "arc_time_s"}) {
        CHECK(sum_of(got.at("joints"), key) ==
              doctest::Approx(got.at("totals").at(key).get<double>()).epsilon(1e-9));
      }
    }
  }

  TEST_CASE("given an order by hand, turns tells its price and who keeps step, as text and JSON") {
    const std::string file = "'" + (repository() / "tests/good/by_hand.xml").string() + "'";
    const json got = json_of("turns --json --quiet " + file);
    const json& price = got.at("stages").at(0).at("by_hand");
    CHECK(price.at("entries") == json({"J1.b.1", "J2", "J3"}));
    CHECK(price.at("by_hand_s").get<double>() >= price.at("own_s").get<double>());
    CHECK(price.at("by_hand_turns").is_number_integer());
    CHECK(price.at("own_proved_best").is_boolean());
    REQUIRE(got.at("twins").size() == 2);
    CHECK(got.at("twins").at(0).at("keeps_step") == false);
    CHECK(got.at("twins").at(0).at("why_not") == "the welding coordinator: free to shrink");
    CHECK(got.at("twins").at(1).at("kind") == "stated");
    CHECK(got.at("shrink_moment").at("largest_nm").get<double>() > 0.0);
    const Ran ran = run_seamturn("turns --quiet " + file, scratch("text"));
    REQUIRE(ran.exit_code == 0);
    CHECK(ran.out.find("Order by hand, stage tee: J1.b.1, J2, J3. ") != std::string::npos);
    CHECK(ran.out.find("kept: J1.a with J1.b (the") != std::string::npos);
    CHECK(ran.out.find("no forecast") != std::string::npos);
  }

  TEST_CASE("for turns as JSON, law: the worst way of each axis is what the text calls the worst") {
    const json got = json_of("turns --json --quiet " + demo("turnover_frame.xml"));
    const json& turns = got.at("turns");
    REQUIRE(turns.size() > 10);
    double most_nm = 0.0, lowest_mm = 1e9;
    std::size_t rolling = 0;
    for (const json& turn : turns) {
      CHECK(turn.at("stop_nm").is_null());  // the cell does not say how hard it stops
      CHECK(turn.at("stage").get<std::string>() != "");
      CHECK((turn.at("kind") == "rolling") ==
            (turn.at("from") == turn.at("to") && turn.at("from") != ""));
      rolling += turn.at("kind") == "rolling" ? 1 : 0;
      const double still_nm = std::abs(turn.at("torque_nm").at("turn").get<double>());
      CHECK(std::abs(turn.at("moving_nm").at("turn").get<double>()) >= still_nm);
      most_nm = std::max(most_nm, still_nm);
      lowest_mm = std::min(lowest_mm, turn.at("lowest_mm").get<double>());
    }
    CHECK(rolling >= 1);
    const Ran ran = run_seamturn("turns --quiet " + demo("turnover_frame.xml"), scratch("text"));
    REQUIRE(ran.exit_code == 0);
    const auto whole = [](double value) { return std::to_string(std::lround(value)); };
    CHECK(ran.out.find(" " + whole(most_nm) + " ") != std::string::npos);
    CHECK(ran.out.find(", " + whole(lowest_mm) + " mm above the floor") != std::string::npos);
  }

  TEST_CASE("for turns as JSON, law: kinds add up, one arc at a time, arc time as in joints") {
    for (const std::string file : {"bracket.xml", "grab_hub.xml"}) {
      const json got = json_of("turns --json --quiet " + demo(file));
      double total = 0.0;
      // the contract: these seven, gouging and heating within "other"
      for (const char* kind : {"arc", "turn", "air", "touch", "clean", "wait", "other"}) {
        total += got.at(std::string(kind) + "_time_s").get<double>();
      }
      CHECK(total == doctest::Approx(got.at("cycle_time_s").get<double>()).epsilon(1e-9));
      double last = 0.0;
      for (const json& arc : got.at("sequence")) {
        CHECK(arc.at("start_s").get<double>() >= last);
        last = arc.at("end_s").get<double>();
      }
      CHECK(got.at("lower_bound_s") <= got.at("cycle_time_s"));
      CHECK(got.at("heat_time_s").get<double>() > 900.0);  // strapping the mats on
      const json joints = json_of("joints --json --quiet " + demo(file));
      CHECK(got.at("arc_time_s").get<double>() ==
            doctest::Approx(joints.at("totals").at("arc_time_s").get<double>()).epsilon(1e-9));
      const json cost = json_of("cost --json --quiet " + demo(file));
      CHECK(cost.at("arc_time_s").get<double>() ==
            doctest::Approx(got.at("arc_time_s").get<double>()).epsilon(1e-9));
    }
  }

  TEST_CASE("for cost as JSON, law: disjoint items add up and the band encloses the total") {
    const json got = json_of("cost --json --quiet " + demo("grab_hub.xml"));
    CHECK(sum_of(got.at("items"), "amount") ==
          doctest::Approx(got.at("total").get<double>()).epsilon(1e-9));
    CHECK(got.at("total_low") < got.at("total"));
    CHECK(got.at("total_high") > got.at("total"));
    CHECK(got.at("batch").at("total").get<double>() ==
          doctest::Approx(got.at("total").get<double>() * got.at("batch").at("parts").get<double>())
              .epsilon(1e-9));
  }

  TEST_CASE(
      "for the hub planned into a folder, law: valid documents, the same bytes twice, and "
      "strangers' files stay") {
    const fs::path folder = scratch("plan");
    const std::string line = "plan --quiet " + demo("grab_hub.xml") + " -o ";
    REQUIRE(run_seamturn(line + "one", folder).exit_code == 0);
    REQUIRE(run_seamturn(line + "two", folder).exit_code == 0);
    const std::set<std::string> names = files_in(folder / "one");
    CHECK(names == files_in(folder / "two"));
    CHECK(names.count("plan.xml") == 1);
    CHECK(names.count("paths/listing.xml") == 1);
    CHECK(names.count("sheets/P01.xml") == 1);
    for (const std::string& name : names) {
      INFO(name);
      CHECK(text_of(folder / "one" / name) == text_of(folder / "two" / name));
      std::string schema;
      if (name == "plan.xml") schema = "plan.xsd";
      if (name.rfind("sheets/", 0) == 0) schema = "sheet.xsd";
      if (name.rfind("paths/", 0) == 0) schema = "paths.xsd";
      if (schema.empty()) continue;
      const std::string check = "xmllint --noout --schema '" +
                                (repository() / "docs/schemas" / schema).string() + "' '" +
                                (folder / "one" / name).string() + "' 2>/dev/null";
      CHECK(std::system(check.c_str()) == 0);
    }
    std::ofstream(folder / "one" / "mine.txt") << "keep me";
    REQUIRE(run_seamturn(line + "one", folder).exit_code == 0);
    CHECK(text_of(folder / "one" / "mine.txt") == "keep me");
  }

  TEST_CASE("given an earlier plan to start from, it is used, told, and no worse on the clock") {
    const fs::path folder = scratch("start");
    const std::string file = demo("bracket.xml");
    REQUIRE(run_seamturn("plan --quiet " + file + " -o one", folder).exit_code == 0);
    const std::string from = " --effort quick --start-from one/plan.xml ";
    const Ran ran = run_seamturn("turns --json" + from + file, folder);
    REQUIRE(ran.exit_code == 0);
    CHECK(ran.err.find("one/plan.xml:") != std::string::npos);
    CHECK(ran.err.find("note: the search began with the order of this plan") != std::string::npos);
    const json got = json::parse(ran.out);
    const json before = json_of("turns --json --quiet " + file);
    CHECK(got.at("sequence") == before.at("sequence"));
    CHECK(run_seamturn("turns --json" + from + file, folder).out == ran.out);
    for (const char* verb : {"plan", "joints", "cost"}) {
      CHECK(run_seamturn(verb + from + file, folder).err.find("plan.start.used") !=
            std::string::npos);
    }
    CHECK(run_seamturn("explain" + from + file + " J1", folder).exit_code == 0);
    CHECK(run_seamturn("write path-listing" + from + file + " -o -", folder).exit_code == 0);
  }

  TEST_CASE("refuses to start from what is no plan, is not there or is not wanted") {
    const fs::path folder = scratch("start");
    const std::string file = demo("bracket.xml");
    const Ran wrong = run_seamturn("plan -o out --start-from " + file + " " + file, folder);
    CHECK(wrong.exit_code == 1);
    CHECK(wrong.err.find("bracket.xml:") != std::string::npos);
    CHECK(wrong.err.find("expected <plan xmlns=") != std::string::npos);
    CHECK_FALSE(fs::exists(folder / "out"));
    CHECK(run_seamturn("turns --start-from none.xml " + file, folder).exit_code == 3);
    REQUIRE(run_seamturn("plan --quiet " + file + " -o one", folder).exit_code == 0);
    const std::string from = " --start-from one/plan.xml ";
    CHECK(run_seamturn("check" + from + file, folder).exit_code == 2);
    const Ran saved = run_seamturn("write path-listing" + from + "one/plan.xml -o -", folder);
    CHECK(saved.exit_code == 2);
    CHECK(saved.err.find("is a plan already") != std::string::npos);
  }

  TEST_CASE("refuses broken input with exit 1 because nothing may be half-written") {
    const fs::path folder = scratch("refuse");
    for (const auto& entry : fs::directory_iterator(repository() / "tests/bad")) {
      if (entry.path().extension() != ".xml") continue;
      const Ran ran = run_seamturn("plan '" + entry.path().string() + "' -o out", folder);
      INFO(entry.path().string(), "\n", ran.err);
      CHECK(ran.exit_code == 1);
      CHECK(ran.err.find("error: ") != std::string::npos);
      CHECK_FALSE(fs::exists(folder / "out"));
    }
  }

  TEST_CASE("given wrong words, the exit code is 2 and a suggestion is made") {
    const fs::path folder = scratch("usage");
    const Ran verb = run_seamturn("jonts x.xml", folder);
    CHECK(verb.exit_code == 2);
    CHECK(verb.err.find("did you mean joints?") != std::string::npos);
    CHECK(run_seamturn("", folder).exit_code == 2);
    CHECK(run_seamturn("joints", folder).exit_code == 2);
    CHECK(run_seamturn("joints --frobnicate x.xml", folder).exit_code == 2);
    const Ran figure = run_seamturn("figure arc-enrgy voltage='24 V'", folder);
    CHECK(figure.exit_code == 2);
    CHECK(figure.err.find("did you mean arc-energy?") != std::string::npos);
    CHECK(run_seamturn("figure arc-energy voltage='24 V' current='100 A'", folder).exit_code == 2);
    CHECK(run_seamturn("--help", folder).exit_code == 0);
    CHECK(run_seamturn("--version", folder).exit_code == 0);
    CHECK(run_seamturn("joints --help", folder).exit_code == 0);
  }

  TEST_CASE("given a file or plugin that cannot be had, the exit code is 3") {
    const fs::path folder = scratch("unavailable");
    const Ran missing = run_seamturn("check nowhere.xml", folder);
    CHECK(missing.exit_code == 3);
    CHECK(missing.err.find("nowhere.xml") != std::string::npos);
    const Ran plugin =
        run_seamturn("write no-such-thing " + demo("bracket.xml") + " -o x.xml", folder);
    CHECK(plugin.exit_code == 3);
    CHECK(plugin.err.find("procedure-sheet") != std::string::npos);
    CHECK_FALSE(fs::exists(folder / "x.xml"));
    CHECK(run_seamturn("plan --quiet " + demo("bracket.xml") + " -o /proc/nowhere/out", folder)
              .exit_code == 3);
  }

  TEST_CASE("given figures, the value, the refusal and the warning come out as documented") {
    const json energy =
        json_of("figure arc-energy --json voltage='24 V' current='100 A' travel='2 mm/s'");
    CHECK(energy.at("value").get<double>() == doctest::Approx(1.2));
    CHECK(energy.at("unit") == "kJ/mm");
    CHECK(energy.at("name") == "arc-energy");
    CHECK(energy.contains("source"));
    CHECK(energy.contains("status"));
    const json position =
        json_of("figure position --json weld=fillet axis='1,0,0' normal='0,.7071,.7071'");
    CHECK(position.at("value") == "PB");
    CHECK(position.at("values").at("aws").at("value") == "2F");
    const json passes = json_of(
        "figure passes --json preparation=fillet leg='12 mm' position=PB wire='1.2 mm' "
        "efficiency=0.95 "
        "feed='10 m/min' voltage='30 V' current='300 A' travel-min='10 cm/min' travel='40 cm/min' "
        "travel-max='200 cm/min' leg-max='10 mm'");
    CHECK(passes.at("value") == 3.0);  // published: AWS D1.1 2020 table 5.1, above 10 mm not in one
    REQUIRE(passes.at("passes").size() == 3);
    CHECK(sum_of(passes.at("passes"), "area_mm2") == doctest::Approx(72.0));
    CHECK(passes.at("passes").at(0).at("limited_by") == "leg-max");
    const fs::path folder = scratch("figure");
    const Ran hot = run_seamturn(
        "figure cooling-time --json case=butt heat-input='1 kJ/mm' thickness='20 mm' start='500 "
        "degC'",
        folder);
    CHECK(hot.exit_code == 1);
    CHECK(json::parse(hot.out).at("findings").at(0).at("code") == "heat.t85.start_too_hot");
    const Ran warm = run_seamturn(
        "figure preheat --json method=cet cet=0.55 thickness='20 mm' hydrogen=5 heat-input='1 "
        "kJ/mm'",
        folder);
    CHECK(warm.exit_code == 0);
    CHECK(json::parse(warm.out).at("findings").at(0).at("severity") == "warning");
  }

  TEST_CASE(
      "for a saved plan, law: a writer makes the same document from it as from the weldment") {
    const fs::path folder = scratch("saved");
    REQUIRE(run_seamturn("plan --quiet " + demo("bracket.xml") + " -o out", folder).exit_code == 0);
    REQUIRE(run_seamturn("write path-listing out/plan.xml -o again.xml", folder).exit_code == 0);
    REQUIRE(
        run_seamturn("write path-listing --quiet " + demo("bracket.xml") + " -o fresh.xml", folder)
            .exit_code == 0);
    CHECK(text_of(folder / "again.xml") == text_of(folder / "out/paths/listing.xml"));
    CHECK(text_of(folder / "fresh.xml") == text_of(folder / "again.xml"));
    const Ran many = run_seamturn("write procedure-sheet out/plan.xml -o x.xml", folder);
    CHECK(many.exit_code == 2);
    CHECK(many.err.find("--item") != std::string::npos);
    CHECK(run_seamturn("write procedure-sheet out/plan.xml --item sheets/P01.xml -o p.xml", folder)
              .exit_code == 0);
    CHECK(text_of(folder / "p.xml") == text_of(folder / "out/sheets/P01.xml"));
  }

  TEST_CASE("for everything printed for people, law: no line is wider than 100 columns") {
    const fs::path folder = scratch("width");
    // The demos, and ids few people would write.
    fs::copy(repository() / "joints", folder / "joints", fs::copy_options::recursive);
    std::string text = text_of(folder / "joints/bracket.xml");
    for (const std::string id : {"base_left", "gusset", "J1", "J5"}) {
      const std::string lengthy = id + std::string(48 - id.size(), 'x');
      text = std::regex_replace(
          text, std::regex("([a-z]=\"|[a-zJ0-9_]+ )" + id + "([ \"])"), "$1" + lengthy + "$2");
    }
    std::ofstream(folder / "joints/long_ids.xml") << text;
    for (const std::string name :
         {"bracket", "grab_hub", "boom_foot", "turnover_frame", "long_ids"}) {
      const std::string file = "joints/" + name + ".xml";
      for (const std::string verb : {"joints", "turns", "cost", "plan"}) {
        for (const std::string units : {"metric", "us"}) {
          const Ran ran =
              run_seamturn(verb + " --effort quick --units " + units + " --quiet " + file, folder);
          INFO(name, ' ', verb, ' ', units, ' ', ran.err);
          CHECK(ran.exit_code == 0);
          std::istringstream in(ran.out);
          for (std::string line; std::getline(in, line);) {
            INFO(line);
            CHECK(line.size() <= 100);
          }
        }
      }
    }
  }
}

}  // namespace seamturn::tests
