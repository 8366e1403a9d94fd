// SPDX-License-Identifier: MIT
// What tests/good/by_hand.xml fixes of the order, read. Expected values: the file itself.
#include <doctest/doctest.h>

#include "repository.hpp"
#include "scratch.hpp"
#include "seamturn/io/read.hpp"

namespace seamturn::tests {

TEST_SUITE("io/read_order") {
  TEST_CASE("given orders by hand, balance and priorities, they are read") {
    const planner::Inputs inputs = io::read_inputs(repository() / "tests/good/by_hand.xml");
    const joint::Weldment& weldment = inputs.weldment;
    CHECK(weldment.balance_off == "a trial");
    REQUIRE(weldment.hand_orders.size() == 2);
    const joint::HandOrder& order = weldment.hand_orders.front();
    CHECK(order.stage == "tee");
    REQUIRE(order.entries.size() == 2);
    CHECK(order.entries[0].text == "J1.b.1");
    CHECK(order.entries[0].joint == "J1");
    CHECK(order.entries[0].side == 'b');
    CHECK(order.entries[0].to == 1);
    CHECK(order.entries[1].joint == "J2");
    CHECK(order.entries[1].side == 0);
    CHECK_FALSE(order.entries[1].to);
    CHECK(weldment.hand_orders[1].entries.size() == 1);
    CHECK(joint::find_joint(weldment, "J1")->balance_off ==
          "the welding coordinator: free to shrink");
    CHECK(joint::find_joint(weldment, "J1")->balance_with.empty());
    CHECK(joint::find_joint(weldment, "J2")->balance_with == "J3");
    CHECK(joint::find_joint(weldment, "J2")->balance_off.empty());
    CHECK(weldment.places.contains("hand-order/1@seams"));
    REQUIRE(inputs.library.priorities);
    CHECK(inputs.library.priorities->worth.entry_s == 120.0);
    CHECK(inputs.library.priorities->worth.stance_s == 5.0);
    CHECK(inputs.library.priorities->source == "test");
  }

  TEST_CASE("given a segment in an order by hand, it is read as written") {
    const auto folder = scratch_folder("read_order");
    std::filesystem::copy(repository() / "tests/good",
                          folder,
                          std::filesystem::copy_options::recursive |
                              std::filesystem::copy_options::overwrite_existing);
    std::string text = text_of(folder / "by_hand.xml");
    const std::string written = "seams=\"J3\"";
    text.replace(text.find(written), written.size(), "seams=\"J3/2  J3/1.2-\n\"");
    write_bytes(folder / "by_hand.xml", text);
    const planner::Inputs inputs = io::read_inputs(folder / "by_hand.xml");
    const auto& entries = inputs.weldment.hand_orders.at(1).entries;
    REQUIRE(entries.size() == 2);
    CHECK(entries[0].text == "J3/2");
    CHECK(entries[0].segment == 2);
    CHECK(entries[1].segment == 1);
    CHECK(entries[1].from == 2);
    CHECK_FALSE(entries[1].to);
  }

  TEST_CASE("given files without them, balance is on and nothing is fixed") {
    const planner::Inputs inputs = io::read_inputs(repository() / "tests/good/ordered.xml");
    CHECK(inputs.weldment.balance_off.empty());
    CHECK(inputs.weldment.hand_orders.empty());
    CHECK_FALSE(inputs.library.priorities);
    for (const joint::Joint& joint : inputs.weldment.joints) {
      CHECK(joint.balance_off.empty());
      CHECK(joint.balance_with.empty());
    }
  }
}

}  // namespace seamturn::tests
