// SPDX-License-Identifier: MIT
#include "seamturn/base/same_text.hpp"

#include <doctest/doctest.h>

#include <string>

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
}

}  // namespace seamturn::tests
