// SPDX-License-Identifier: MIT
// What is turned beside going to stances, and units, as people read them.
#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>

#include "process.hpp"
#include "seamturn/io/read.hpp"
#include "seamturn/plan/order_to_edit.hpp"
#include "seamturn/planner/planner.hpp"

namespace seamturn::tests {

namespace {

std::string printed(const std::string& arguments, const std::string& file) {
  const Ran ran = run_seamturn(arguments + " --quiet '" + (repository() / file).string() + "'",
                               scratch("text"));
  INFO(arguments, " ", file, "\n", ran.err);
  CHECK(ran.exit_code == 0);
  return ran.out;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_SUITE("cli/turning_text") {
  // closed-form: no seam of the box is a ring, so nothing can be wound; its table turns to rest
  // where members are fitted.
  TEST_CASE("given a part without rings, turns to rest are not called winding of rings") {
    const std::string text = printed("turns", "tests/good/box_stages.xml");
    CHECK_FALSE(has(text, "rings are wound"));
    CHECK(has(text, "Turns to rest take 0:09 more. 0:29 of turning in all."));
  }

  TEST_CASE("given rolled rings and fitting at rest, both are told apart") {
    const std::string text = printed("turns", "joints/grab_hub.xml");
    CHECK(has(text, "Turns to rest take "));
    CHECK(has(text, "Rolled rings are wound to their starts and back for "));
  }

  // law: what is printed is put into the file as it says, and read.
  TEST_CASE("given the order to edit, the file that takes it up has every order of the plan") {
    for (const char* file :
         {"joints/grab_hub.xml", "tests/good/by_hand.xml", "tests/good/tee.xml"}) {
      INFO(std::string(file));
      const std::filesystem::path path = repository() / file;
      const std::string text = printed("turns --to-edit", file);
      std::string weldment = text_of(path);
      while (weldment.find("<hand-order") != std::string::npos) {
        const std::size_t at = weldment.find("<hand-order");
        weldment.erase(at, weldment.find("/>", at) + 2 - at);
      }
      weldment.insert(weldment.find("<joint "), text);
      const std::filesystem::path folder = scratch("edited-order");
      for (const char* beside : {"library", "cells"}) {
        std::filesystem::create_directory_symlink(path.parent_path() / beside, folder / beside);
      }
      std::ofstream(folder / "edited.xml") << weldment;
      const planner::Inputs inputs = io::read_inputs(folder / "edited.xml");
      const auto wanted = plan::order_to_edit(planner::make_plan(io::read_inputs(path)));
      const auto& orders = inputs.weldment.hand_orders;
      REQUIRE(orders.size() == wanted.size());
      for (std::size_t i = 0; i < orders.size(); ++i) {
        CHECK(orders[i].stage == wanted[i].stage);
        CHECK(orders[i].entries == wanted[i].entries);
      }
    }
  }

  TEST_CASE("given a part without a cell, there is no order to change") {
    const std::filesystem::path folder = scratch("uncelled");
    const std::filesystem::path good = repository() / "tests/good";
    std::filesystem::create_directory_symlink(good / "library", folder / "library");
    std::string text = text_of(good / "tee.xml");
    const std::size_t at = text.find("<use cell=");
    text.erase(at, text.find("/>", at) + 2 - at);
    std::ofstream(folder / "tee.xml") << text;
    const Ran ran = run_seamturn("turns --to-edit tee.xml", folder);
    INFO(ran.err);
    CHECK(ran.exit_code == 0);
    CHECK(ran.out == "Nothing is turned: there is no order to change.\n");
  }

  // closed-form: 1800 N m are 1328 ft lb; two digits of it are 1300.
  TEST_CASE("given US units, the moment of all shrinkage has two digits as well") {
    CHECK(has(printed("turns", "tests/good/stages.xml"), "at most 1800 N m"));
    CHECK(has(printed("turns --units us", "tests/good/stages.xml"), "at most 1300 ft lb"));
  }

  // [AWS] heat input is U I / v, EN 1011-1 has k in it: docs/methods/heat-input.md.
  TEST_CASE("given US units, joints says which energy its heat input is") {
    CHECK(has(printed("joints --units us", "tests/good/tee.xml"), "factor k of EN 1011-1"));
    CHECK_FALSE(has(printed("joints", "tests/good/tee.xml"), "factor k of EN 1011-1"));
  }

  // What stands above the formula must be what was put into it.
  TEST_CASE("given sheet of 2 mm, explain shows the thickness the method was asked with") {
    const Ran ran = run_seamturn(
        "explain --quiet '" + (repository() / "tests/good/sheet.xml").string() + "' S1 preheat",
        scratch("text"));
    CHECK(ran.exit_code == 0);
    CHECK(has(ran.out, "the least the method speaks of: all members are thinner"));
    CHECK_FALSE(has(ran.out, "thickest member of the joint"));
  }
}

}  // namespace seamturn::tests
