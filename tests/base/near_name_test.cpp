// SPDX-License-Identifier: MIT
#include "seamturn/base/near_name.hpp"

#include <string_view>

#include "oracle.hpp"

namespace seamturn::tests {

using base::edit_distance;
using base::find_near_name;

TEST_SUITE("base/near_name") {
  TEST_CASE("given the textbook pairs of words, the edit distance is theirs") {
    CHECK(edit_distance("kitten", "sitting") == 3);  // two changed letters and one more
    CHECK(edit_distance("", "throat") == 6);
    CHECK(edit_distance("throat", "throat") == 0);
    CHECK(edit_distance("thraot", "throat") == 1);  // neighbours swapped
    CHECK(edit_distance("ca", "abc") == 3);         // alignment does not edit a swapped pair
  }

  TEST_CASE("for any two words, law: the distance is the same both ways and at most the longer") {
    const std::string_view words[] = {"", "leg", "leg-1", "throat", "thickness", "included", "gap"};
    for (const std::string_view a : words) {
      for (const std::string_view b : words) {
        CHECK(edit_distance(a, b) == edit_distance(b, a));
        CHECK(edit_distance(a, b) <= std::max(a.size(), b.size()));
        CHECK((edit_distance(a, b) == 0) == (a == b));
      }
    }
  }

  TEST_CASE("given a mistyped name, the nearest known one is offered, and none when too far") {
    const std::string_view known[] = {"throat", "leg", "leg-1", "thickness"};
    CHECK(find_near_name("thraot", known) == "throat");
    CHECK(find_near_name("lag", known) == "leg");
    CHECK(find_near_name("leg1", known) == "leg");  // as near as leg-1, and first in the list
    CHECK_FALSE(find_near_name("colour", known).has_value());
    CHECK_FALSE(find_near_name("", known).has_value());
    CHECK_FALSE(find_near_name(std::string(500, 't'), known).has_value());
    CHECK_FALSE(find_near_name("leg", {}).has_value());
  }
}

}  // namespace seamturn::tests
