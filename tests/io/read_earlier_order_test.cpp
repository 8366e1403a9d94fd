// SPDX-License-Identifier: MIT
// What a search may begin with, read from a saved plan. Law: what was written is read back.
#include <doctest/doctest.h>

#include <algorithm>

#include "sample_plan.hpp"
#include "scratch.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "seamturn/io/read.hpp"

namespace seamturn::tests {

namespace {

const joint::Weldment& weldment() {
  static const joint::Weldment sample = sample_plan().weldment;
  return sample;
}

planner::EarlierOrder read(const std::string& xml, const joint::Weldment& of = weldment()) {
  const auto file = scratch_folder("read_earlier_order") / "earlier.xml";
  write_bytes(file, xml);
  return io::read_earlier_order(file, of);
}

std::string sample() {
  return io::plan_xml(sample_plan());
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

/// "code line:column" of the first finding.
std::string refusal(const std::string& xml) {
  try {
    static_cast<void>(read(xml));
  } catch (const base::InputError& error) {
    const base::Finding& first = error.findings().front();
    CHECK(first.place.file.ends_with("earlier.xml"));
    return first.code + " " + std::to_string(first.place.line) + ":" +
           std::to_string(first.place.column);
  }
  return "";
}

/// "line:column" where the last value of `piece` begins, after its name=".
std::string place_behind(const std::string& xml, const std::string& piece) {
  const std::size_t at = xml.find(piece) + piece.rfind("=\"") + 2;
  const auto line = 1 + std::count(xml.begin(), xml.begin() + std::ptrdiff_t(at), '\n');
  const std::size_t start = xml.rfind('\n', at - 1) + 1;
  return std::to_string(line) + ":" + std::to_string(at - start + 1);
}

}  // namespace

TEST_SUITE("io/read_earlier_order") {
  TEST_CASE("given the plan of the sample, its arcs are read in order with stance and direction") {
    plan::Plan plan = sample_plan();
    plan.joints[0].seams[1].passes[0].reversed = true;  // J1.b, pass 1
    const planner::EarlierOrder order = read(io::plan_xml(plan));
    const std::vector<std::pair<std::string, int>> expected = {
        {"J1.a", 1}, {"J1.b", 1}, {"J1.a", 2}, {"J2", 1}, {"J2", 2}, {"J1.b", 2}};
    REQUIRE(order.steps.size() == expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i) {
      const planner::EarlierStep& step = order.steps[i];
      CHECK(step.seam == expected[i].first);
      CHECK(step.pass == expected[i].second);
      CHECK(step.operation == "");
      CHECK(step.reversed == (i == 1));
      CHECK(step.stance.rolling == (step.seam == "J2"));
      REQUIRE(step.stance.axes.size() == 2);
      CHECK(step.stance.axes[0].deg() == doctest::Approx(45.0));
      CHECK(step.stance.axes[1].deg() == doctest::Approx(-90.0));
    }
    CHECK(order.findings.empty());
    CHECK(order.file.ends_with("earlier.xml"));
  }

  TEST_CASE("given work of people, it is read with its stage, and without a stance it is at rest") {
    plan::Plan plan = sample_plan();
    plan.stages.resize(1);
    plan.stages[0].id = "core";
    plan::PlannedEvent work;
    work.kind = timeline::SecondKind::work;
    work.operation = "O1";
    plan.timeline.insert(plan.timeline.begin(), work);
    const planner::EarlierOrder order = read(io::plan_xml(plan));
    REQUIRE(order.steps.size() == 7);
    CHECK(order.steps[0].operation == "O1");
    CHECK(order.steps[0].seam == "");
    CHECK(order.steps[0].stage == "core");
    CHECK(order.steps[0].stance.axes.empty());
  }

  TEST_CASE("given seams the weldment has not, they are left out with one note") {
    joint::Weldment other = weldment();
    std::erase_if(other.joints, [](const joint::Joint& joint) { return joint.id == "J1"; });
    const planner::EarlierOrder order = read(sample(), other);
    CHECK(order.steps.size() == 2);
    REQUIRE(order.findings.size() == 1);
    CHECK(order.findings[0].severity == base::Severity::note);
    CHECK(order.findings[0].code == "read.earlier.seam_unknown");
    CHECK(order.findings[0].text.find("J1.a, J1.b;") != std::string::npos);
    const std::string xml = sample();
    const auto before = xml.begin() + std::ptrdiff_t(xml.find("<timeline"));
    CHECK(order.findings[0].place.line == 1 + std::count(xml.begin(), before, '\n'));
  }

  TEST_CASE("given a plan in which nothing is turned, there is nothing to begin with") {
    CHECK(read(io::plan_xml(plan::Plan{})).steps.empty());
  }

  TEST_CASE("refuses what is no plan of this version because its order would be guessed") {
    const std::string good = sample();
    CHECK(refusal("<weldment xmlns=\"urn:seamturn:weldment:1\" schema=\"1.0\"/>") ==
          "read.root.wrong 1:2");
    const std::string major = replaced(good, "plan:1", "plan:2");
    CHECK(refusal(major) == "read.namespace.wrong " + place_behind(major, "xmlns=\""));
    const std::string schema = replaced(good, "schema=\"1.0\"", "schema=\"2.0\"");
    CHECK(refusal(schema) == "read.schema.newer_major " + place_behind(schema, "schema=\""));
    CHECK(refusal(good.substr(0, good.size() / 2)).rfind("read.xml.malformed ", 0) == 0);
    CHECK(refusal("").rfind("read.file.empty", 0) == 0);
    CHECK(refusal("<plan xmlns=\"urn:seamturn:plan:1\" schema=\"1.0\"/>") ==
          "read.element.missing 1:2");
    CHECK(refusal(replaced(good, "schema=\"1.0\"", "schema=\"1.7\"")) == "");
  }

  TEST_CASE("refuses a plan that was changed by hand because it contradicts itself") {
    const std::string good = sample();
    const auto refused = [&](const std::string& from, const std::string& to, const char* code) {
      const std::string bad = replaced(good, from, to);
      const std::string expected = std::string(code) + " " + place_behind(bad, to);
      INFO(to);
      CHECK(refusal(bad) == expected);
    };
    const std::string arc = "kind=\"arc\" start_s=\"10\" end_s=\"60\" ";
    refused(arc + "stance=\"S01\"", arc + "stance=\"S07\"", "read.earlier.contradicts");
    const std::string whole = arc + "stance=\"S01\" seam=\"J1.a\" pass=\"";
    refused(whole + "1\"", whole + "9\"", "read.earlier.contradicts");
    refused(whole + "1\"", whole + "1.5\"", "read.number.not_whole");
    refused("angle_deg=\"45\"", "angle_deg=\"45 deg\"", "read.number.malformed");
    refused("angle_deg=\"45\"", "angle_deg=\"nan\"", "read.number.malformed");
    refused("angle_deg=\"45\"", "angle_deg=\"1e9\"", "read.value.out_of_range");
    refused("rolling=\"true\" turn", "rolling=\"maybe\" turn", "read.word.unknown");
  }

  TEST_CASE("refuses a file that cannot be read, with the system's reason") {
    CHECK_THROWS_AS((void)io::read_earlier_order("/nowhere/plan.xml", weldment()),
                    base::UnavailableError);
  }
}

}  // namespace seamturn::tests
