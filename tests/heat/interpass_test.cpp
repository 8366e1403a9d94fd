// SPDX-License-Identifier: MIT
#include "seamturn/heat/interpass.hpp"

#include <cmath>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using heat::governing_interpass;
using heat::InterpassLimit;

TEST_SUITE("heat/interpass") {
  TEST_CASE("for any limits, law: the lowest governs, whatever its status") {
    const InterpassLimit limits[] = {{250.0, "steel", base::Status::common_practice},
                                     {210.0, "wire", base::Status::verified},
                                     {225.0, "weldment file", base::Status::proposed}};
    const auto governing = governing_interpass(limits);
    REQUIRE(governing.has_value());
    CHECK(governing->max_c == 210.0);
    CHECK(governing->stated_by == "wire");
    CHECK(governing->status == base::Status::verified);
  }

  TEST_CASE("for any tie, law: the limit stated first is named") {
    const InterpassLimit limits[] = {{225.0, "steel", base::Status::verified},
                                     {225.0, "wire", base::Status::verified}};
    CHECK(governing_interpass(limits)->stated_by == "steel");
  }

  TEST_CASE("refuses to invent a limit because there is no blanket default") {
    CHECK_FALSE(governing_interpass({}).has_value());
    const InterpassLimit broken[] = {{std::nan(""), "steel", base::Status::verified}};
    CHECK_THROWS_AS((void)governing_interpass(broken), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
