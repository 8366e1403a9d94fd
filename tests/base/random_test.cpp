// SPDX-License-Identifier: MIT
#include "seamturn/base/random.hpp"

#include <cmath>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using base::Random;

TEST_SUITE("base/random") {
  TEST_CASE("given seed 1234567, the first numbers are those of the SplitMix64 reference") {
    // remembered: outputs of the public-domain reference program for this seed.
    Random random(1234567);
    CHECK(random.next() == 6457827717110365317ULL);
    CHECK(random.next() == 3203168211198807973ULL);
    CHECK(random.next() == 9817491932198370423ULL);
  }

  TEST_CASE("given the empty text and the letter a, the seed is mixed as FNV-1a does") {
    // remembered: FNV-1a 64 bit, offset basis and hash of "a".
    CHECK(base::named_seed(0, "") == 0xCBF29CE484222325ULL);
    CHECK(base::named_seed(0, "a") == 0xAF63DC4C8601EC8CULL);
    CHECK(base::named_seed(1, "a") != base::named_seed(2, "a"));
  }

  TEST_CASE("for any seed, law: numbers stay in their range and spread evenly over it") {
    Random random(base::named_seed(31, "spread"));
    const int count = 100000;
    double sum = 0.0, squares = 0.0;
    int bins[7] = {};
    for (int i = 0; i < count; ++i) {
      const double u = random.between(-1.0, 1.0);
      REQUIRE((u >= -1.0 && u < 1.0));
      sum += u;
      squares += u * u;
      ++bins[random.below(7)];
    }
    // closed-form: mean 0, variance 1/3, five standard errors.
    CHECK(std::abs(sum / count) < 5.0 * std::sqrt(1.0 / 3.0 / count));
    CHECK(std::abs(squares / count - 1.0 / 3.0) < 5.0 * std::sqrt(4.0 / 45.0 / count));
    for (const int bin : bins) CHECK(std::abs(bin - count / 7.0) < 5.0 * std::sqrt(count / 7.0));
  }

  TEST_CASE("refuses to choose from nothing") {
    Random random(1);
    CHECK_THROWS_AS((void)random.below(0), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
