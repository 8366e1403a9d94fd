// SPDX-License-Identifier: MIT
#include "seamturn/base/finding.hpp"

#include "oracle.hpp"
#include "seamturn/base/citation.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/money.hpp"
#include "seamturn/base/outcome.hpp"

namespace seamturn::tests {

using base::Finding;
using base::Severity;

TEST_SUITE("base/finding") {
  TEST_CASE("given a place and an excerpt, the caret stands under the column") {
    Finding finding;
    finding.code = "read.unit.missing";
    finding.text = "throat=\"5\" has no unit";
    finding.place = {"bracket.xml", 12, 5};
    finding.excerpt = "\tab\xC3\xA4 throat";  // a tab, two letters, one of two bytes
    CHECK(base::finding_text(finding) ==
          "bracket.xml:12:5: error: throat=\"5\" has no unit [read.unit.missing]\n"
          "    \tab\xC3\xA4 throat\n    \t   ^");
    finding.place = {};
    finding.excerpt.clear();
    finding.severity = Severity::warning;
    CHECK(base::finding_text(finding) == "warning: throat=\"5\" has no unit [read.unit.missing]");
  }

  TEST_CASE("given findings, only errors count as errors and appending keeps the order") {
    Finding note, error;
    note.severity = Severity::note;
    std::vector<Finding> all{note};
    CHECK_FALSE(base::has_errors(all));
    base::append_findings(all, {error, note});
    REQUIRE(all.size() == 3);
    CHECK(all[1].severity == Severity::error);
    CHECK(base::has_errors(all));
  }

  // closed-form: written out.
  TEST_CASE("given a finding, it is said of joints, of more of them, and without them") {
    Finding finding;
    finding.code = "heat.preheat.out_of_range";
    finding.text = "joint work: CET 0.6 % lies outside";
    CHECK(base::said_without_joints(finding) == "joint work: CET 0.6 % lies outside");
    const Finding one = base::said_of_joints(finding, {"J1"});
    CHECK(one.text == "joint J1: joint work: CET 0.6 % lies outside");
    CHECK(base::said_without_joints(one) == finding.text);
    const Finding both = base::said_of_joints(one, {"J1", "J: 2"});
    CHECK(both.text == "joints J1, J: 2: joint work: CET 0.6 % lies outside");
    CHECK(base::said_without_joints(both) == finding.text);
    CHECK(both.joints.ids == std::vector<std::string>{"J1", "J: 2"});
    CHECK(both.code == finding.code);
    CHECK_THROWS_AS((void)base::said_of_joints(finding, {}), base::ContractViolation);
  }

  TEST_CASE("given a status, its name reads back, and other words are none") {
    using base::Status;
    for (const Status status : {Status::verified,
                                Status::from_memory,
                                Status::computed,
                                Status::common_practice,
                                Status::proposed}) {
      CHECK(base::find_status(base::status_name(status)) == status);
    }
    CHECK_FALSE(base::find_status("sure").has_value());
  }

  TEST_CASE("given an outcome, its value or its refusal is had, never both") {
    const base::Outcome<int> yes(3), no(base::Refusal{"a.b", "because"});
    CHECK(yes.value() == 3);
    CHECK(no.error().code == "a.b");
    CHECK_THROWS_AS((void)no.value(), base::ContractViolation);
    CHECK_THROWS_AS((void)yes.error(), base::ContractViolation);
  }
}

TEST_SUITE("base/money") {
  TEST_CASE("given amounts of one currency, they add, and of two, adding is refused") {
    const base::Money sum = base::Money{1.5, "EUR"} + base::Money{2.25, "EUR"};
    CHECK(sum == base::Money{3.75, "EUR"});
    CHECK_THROWS_AS((void)(base::Money{1.0, "EUR"} + base::Money{1.0, "USD"}),
                    base::ContractViolation);
  }
}

}  // namespace seamturn::tests
