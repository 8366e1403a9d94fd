// SPDX-License-Identifier: MIT
#include "seamturn/base/same_text.hpp"

#include <doctest/doctest.h>

#include <array>
#include <string>
#include <string_view>

namespace seamturn::tests {

TEST_SUITE("base/same_text") {
  TEST_CASE("for any two short texts, law: the answer is that of ==") {
    for (std::size_t size = 0; size < 40; ++size) {
      const std::string text(size, 'a');
      CAPTURE(size);
      CHECK(base::same_text(text, std::string(size, 'a')));
      CHECK_FALSE(base::same_text(text, std::string(size + 1, 'a')));
      for (std::size_t i = 0; i < size; ++i) {
        std::string other = text;
        other[i] = 'b';
        CHECK_FALSE(base::same_text(text, other));
      }
    }
    CHECK(base::same_text({}, ""));
  }

  TEST_CASE("given several texts, one of them is among them and no other is") {
    const std::array<std::string_view, 3> texts = {"", "a", "bc"};
    CHECK(base::is_among("", texts));
    CHECK(base::is_among("bc", texts));
    CHECK_FALSE(base::is_among("b", texts));
    CHECK_FALSE(base::is_among("", {}));
  }
}

}  // namespace seamturn::tests
