// SPDX-License-Identifier: MIT
// Set-ups, stages and operations in plan.xml, of the small part in stages. Expected values: law,
// what the plan holds; closed-form where the file states the number.
#include "planner/staged_part.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "xml_check.hpp"

namespace seamturn::tests {

namespace {

const Plan& plan_of_part() {
  static const Plan plan = [] {
    Plan made = planner::make_plan(staged_part());
    made.stages[1].closes = {{"rib_1", {"J1", "J2"}}};  // as if it were so
    return made;
  }();
  return plan;
}

const std::string& xml_of_part() {
  static const std::string xml = io::plan_xml(plan_of_part());
  return xml;
}

/// From the tag that begins so to the first `</name>` or `/>` that ends it.
std::string element(const std::string& begins, const std::string& ends) {
  const std::size_t from = xml_of_part().find(begins);
  REQUIRE(from != std::string::npos);
  return xml_of_part().substr(from, xml_of_part().find(ends, from) - from);
}

void holds(const std::string& text, const std::vector<std::string>& pieces) {
  for (const std::string& piece : pieces) {
    INFO(piece, " in ", text);
    CHECK(text.find(piece) != std::string::npos);
  }
}

std::string number(const char* name, double value) {
  return std::string(name) + "=\"" + base::shortest_text(value) + "\"";
}

}  // namespace

TEST_SUITE("io/plan_xml_build") {
  TEST_CASE("given set-ups, solids and clamps, they stand in the plan") {
    holds(element("<setup id=\"flat\"", "</setup>"),
          {"<solid kind=\"fixture\" mass_kg=\"85\"",
           "<size x_mm=\"450\" y_mm=\"350\" z_mm=\"60\"",
           "<solid kind=\"riser\" mass_kg=\"12\"",
           "<centre x_mm=\"0\" y_mm=\"0\" z_mm=\"-5\""});
    const std::string quarter = element("<setup id=\"quarter\"", "</setup>");
    holds(quarter, {"<clamp id=\"K1\" radius_mm=\"25\"", "x_mm=\"30\" y_mm=\"30\" z_mm=\"25\""});
    CHECK(count_of(quarter, "<size") == 0);
    CHECK(count_of(xml_of_part(), "<setup id=") == 2);
  }

  TEST_CASE("given stages, what is there, hung and closed off stands in the plan with its times") {
    const plan::PlannedStage& ribs = stage_in(plan_of_part(), "ribs");
    const std::string text = element("<stage id=\"ribs\"", "</stage>");
    holds(text,
          {"setup=\"quarter\"",
           "rehang_s=\"1200\" rehang_people=\"3\"",
           number("start_s", *ribs.start_s),
           number("end_s", ribs.end_s),
           number("lower_bound_s", ribs.lower_bound_s),
           ribs.proved_best ? "proved_best=\"true\"" : "proved_best=\"false\"",
           "<part " + number("mass_kg", ribs.part.mass_kg),
           "<load " + number("mass_kg", ribs.load.mass_kg),
           "<closes member=\"rib_1\">",
           "<weld seam=\"J1\"",
           "<weld seam=\"J2\""});
    CHECK(count_of(text, "<fitted ") == 2);
    CHECK(count_of(text, "<present ") == 4);
    const std::string away = element("<stage id=\"furnace\"", "</stage>");
    CHECK(count_of(away, "setup=") + count_of(away, "start_s") + count_of(away, "<load") == 0);
    CHECK(count_of(element("<stage id=\"tee\"", "</stage>"), "rehang") == 0);
    CHECK(schema_verdict("plan.xsd", xml_of_part(), "plan_xml_build") == "");
  }

  TEST_CASE(
      "given operations, each stands in the plan with time, stance, people, what it is about") {
    for (const plan::PlannedOperation& operation : plan_of_part().operations) {
      const std::string tag = element("<operation id=\"" + operation.id + "\"", ">");
      holds(tag,
            {"kind=\"" + std::string(joint::operation_name(operation.kind)) + "\"",
             "stage=\"" + operation.stage + "\"",
             number("time_s", operation.time_s),
             "people=\"" + std::to_string(operation.people) + "\""});
      CHECK(count_of(tag, " stance=\"" + operation.stance + "\"") ==
            (operation.stance.empty() ? 0 : 1));
      CHECK(count_of(tag, " start_s=") == (operation.start_s ? 1 : 0));
      if (operation.start_s) holds(tag, {number("start_s", *operation.start_s)});
      CHECK(count_of(tag, " note=") == (operation.note.empty() ? 0 : 1));
    }
    holds(element("<operation id=\"VT_back\"", "</operation>"), {"<about joint=\"J1\""});
    holds(element("<operation id=\"grind\"", "</operation>"), {"<about member=\"web\""});
    CHECK(count_of(xml_of_part(), "<operation id=") == 11);
    CHECK(count_of(xml_of_part(), "operation=\"hang quarter\"") == 1);
  }

  TEST_CASE("given an order by hand and twins, price, drift and moment stand in the plan") {
    Plan plan = plan_of_part();
    plan.stages[1].by_hand = plan::HandOrderPrice{120.5, 100.25, true, 4, 3, {"J3", "J5.1"}};
    plan.twins = {{"J1",
                   "J2",
                   plan::TwinKind::rings,
                   false,
                   "a \"trial\"",
                   25.0,
                   26.5,
                   12.5,
                   "J2",
                   70.0,
                   0.5},
                  {"J3", "J4", plan::TwinKind::stated, true, "", 1.0, 1.0, 1.0, "J3", 5.0, 0.25}};
    plan.shrink_moment = plan::ShrinkageMoment{1500.0, 250.0, 'y', "J6", 80.0};
    const std::string xml = io::plan_xml(plan);
    CHECK(schema_verdict("plan.xsd", xml, "plan_xml_order") == "");
    holds(xml,
          {"<by-hand by_hand_s=\"120.5\" own_s=\"100.25\" own_proved_best=\"true\" "
           "by_hand_turns=\"4\" own_turns=\"3\">",
           "<entry names=\"J3\"",
           "<entry names=\"J5.1\"",
           "<twins first=\"J1\" second=\"J2\" kind=\"twin rings\" keeps_step=\"false\" "
           "why_not=\"a &quot;trial&quot;\" metal_1_mm2=\"25\" metal_2_mm2=\"26.5\" "
           "ahead_mm2=\"12.5\" ahead=\"J2\" ahead_from_s=\"70\" ahead_kj_mm=\"0.5\"",
           "<twins first=\"J3\" second=\"J4\" kind=\"stated\" keeps_step=\"true\" metal_1",
           "<shrink-moment largest_nm=\"1500\" final_nm=\"250\" axis=\"y\" seam=\"J6\" "
           "at_s=\"80\""});
    CHECK(count_of(xml, "<by-hand ") == 1);
  }

  TEST_CASE("given stances of a part in stages, they name set-up and heaviest load") {
    for (const plan::PlannedStance& stance : plan_of_part().stances) {
      holds(element("<stance id=\"" + stance.id + "\"", ">"),
            {"setup=\"" + stance.setup + "\"", number("load_kg", stance.load.mass_kg)});
    }
  }
}

}  // namespace seamturn::tests
