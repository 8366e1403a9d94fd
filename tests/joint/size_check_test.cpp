// SPDX-License-Identifier: MIT
#include "seamturn/joint/size_check.hpp"

#include <cmath>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using base::Status;
using joint::make_size_check;
using joint::size_verdict;
using joint::SizeBound;
using joint::SizeCheck;
using joint::SizeVerdict;

namespace {

SizeCheck rule(const std::string& question, double required, double found, Status status) {
  return make_size_check({"rule-of-" + question,
                          question,
                          "leg",
                          SizeBound::at_least,
                          required,
                          found,
                          "mm",
                          false,
                          {"KEY", "clause", status},
                          "do this"});
}

}  // namespace

TEST_SUITE("joint/size_check") {
  TEST_CASE("for any bound, law: the limit itself holds and a hair beyond does not") {
    CHECK(rule("a", 5.0, 5.0, Status::verified).holds);
    CHECK_FALSE(rule("a", 5.0, 4.99999, Status::verified).holds);
    SizeCheck most = rule("a", 5.0, 5.00001, Status::verified);
    most.bound = SizeBound::at_most;
    CHECK_FALSE(make_size_check(most).holds);
    most.found = 5.0;
    CHECK(make_size_check(most).holds);
    CHECK_THROWS_AS((void)rule("a", std::nan(""), 1.0, Status::verified), base::ContractViolation);
  }

  TEST_CASE("for any rule from memory, law: it may condemn but never alone declares sound") {
    for (const Status weak : {Status::from_memory, Status::proposed, Status::common_practice}) {
      const SizeCheck held[] = {rule("a", 5.0, 6.0, weak)};
      CHECK(size_verdict(held) == SizeVerdict::not_proved);
      const SizeCheck broken[] = {rule("a", 5.0, 4.0, weak)};
      CHECK(size_verdict(broken) == SizeVerdict::fails);
      // A verified rule of another question does not stand in for it; one of the same does.
      const SizeCheck other[] = {rule("a", 5.0, 6.0, weak), rule("b", 5.0, 6.0, Status::verified)};
      CHECK(size_verdict(other) == SizeVerdict::not_proved);
      CHECK(size_verdict(other, "b") == SizeVerdict::holds);
      const SizeCheck same[] = {rule("a", 5.0, 6.0, weak), rule("a", 5.0, 6.0, Status::verified)};
      CHECK(size_verdict(same) == SizeVerdict::holds);
    }
    CHECK(size_verdict({}) == SizeVerdict::not_proved);
  }

  TEST_CASE("given checks, findings warn of broken rules and note what nobody has read") {
    const SizeCheck checks[] = {rule("a", 5.0, 4.0, Status::verified),
                                rule("b", 5.0, 6.0, Status::from_memory),
                                rule("c", 5.0, 6.0, Status::verified)};
    const auto findings = joint::size_findings(checks);
    REQUIRE(findings.size() == 2);
    CHECK(findings[0].code == "joint.size.rule_broken");
    CHECK(findings[0].severity == base::Severity::warning);
    CHECK(findings[0].text.find("leg 4 mm, at least 5 mm: fails [KEY clause, verified]. do this") !=
          std::string::npos);
    CHECK(findings[1].code == "joint.size.not_proved");
    CHECK(findings[1].severity == base::Severity::note);
    CHECK(findings[1].text.find("from memory") != std::string::npos);
  }
}

}  // namespace seamturn::tests
