// SPDX-License-Identifier: MIT
// Entries of an order by hand. Expected values: the format as docs/files.md states it.
#include <doctest/doctest.h>

#include <algorithm>

#include "seamturn/joint/stages.hpp"

namespace seamturn::tests {

namespace {

using joint::HandEntry;

HandEntry entry(const char* text) {
  const std::optional<HandEntry> read = joint::read_hand_entry(text);
  REQUIRE_MESSAGE(read, text);
  CHECK(read->text == text);
  return *read;
}

/// A text and what it names.
struct Row {
  const char* text;
  const char* joint;
  char side;
  int segment;
  int from;
  std::optional<int> to;
};

void check_names(const Row& row, const HandEntry& read) {
  CHECK(read.joint == row.joint);
  CHECK(read.side == row.side);
  CHECK(read.segment == row.segment);
  CHECK(read.from == row.from);
  CHECK(read.to == row.to);
}

}  // namespace

TEST_SUITE("joint/hand_order") {
  TEST_CASE("given a joint, a seam, a segment, layers or several of these, the entry says so") {
    const Row rows[] = {{"R1", "R1", 0, 0, 1, {}},
                        {"J4.a", "J4", 'a', 0, 1, {}},
                        {"J4.b", "J4", 'b', 0, 1, {}},
                        {"R2.1", "R2", 0, 0, 1, 1},
                        {"R2.12", "R2", 0, 0, 12, 12},
                        {"R2.2-", "R2", 0, 0, 2, {}},
                        {"R2.2-3", "R2", 0, 0, 2, 3},
                        {"J4.b.2-2", "J4", 'b', 0, 2, 2},
                        {"R1/1", "R1", 0, 1, 1, {}},
                        {"R1/24.2-", "R1", 0, 24, 2, {}},
                        {"J4.b/2", "J4", 'b', 2, 1, {}},
                        {"J4.a/3.1-2", "J4", 'a', 3, 1, 2},
                        {"web-first", "web-first", 0, 0, 1, {}}};
    for (const Row& row : rows) {
      INFO(row.text);
      const HandEntry read = entry(row.text);
      check_names(row, read);
      CHECK_FALSE(read.in_passes);
    }
  }

  TEST_CASE("given passes after a colon, the entry counts passes") {
    const Row rows[] = {{"R2:4", "R2", 0, 0, 4, 4},
                        {"J4.b:2-", "J4", 'b', 0, 2, {}},
                        {"R1/3:2-5", "R1", 0, 3, 2, 5},
                        {"J4.b/2:1", "J4", 'b', 2, 1, 1},
                        {"web-:1-", "web-", 0, 0, 1, {}}};
    for (const Row& row : rows) {
      INFO(row.text);
      const HandEntry read = entry(row.text);
      CHECK(read.in_passes);
      check_names(row, read);
    }
    for (const char* text :
         {"R1:", ":1", "R1:0", "R1:3-2", "R1.2:1", "R1.2-:1", "R1:1:2", "R1:a", "R1:.1"}) {
      INFO(text);
      CHECK_FALSE(joint::read_hand_entry(text));
    }
  }

  TEST_CASE(
      "given one entry by layers and one by passes of a seam, they overlap, of two seams not") {
    CHECK(joint::overlap(entry("J.a.1"), entry("J.a:5")));
    CHECK(joint::overlap(entry("J"), entry("J.b:1")));
    CHECK_FALSE(joint::overlap(entry("J.a.1"), entry("J.b:1")));
    CHECK_FALSE(joint::overlap(entry("J:1-2"), entry("J:3-")));
    CHECK(joint::overlap(entry("J:1-3"), entry("J:3-")));
  }

  TEST_CASE("refuses what is no entry because a guess would weld in another order") {
    for (const char* text :
         {"",         ".",      "R1.",      "R1.0",           "R1.01",   "R1.3-2",  "R1.c",
          "R1.-2",    "R1.1-x", "R1.1.2",   "R1.a.b",         "R1.a.",   ".1",      "R1..1",
          "R1.1--",   "R1.+1",  "R1.1-2-3", "R1.99999999999", "R1.1001", "R1/",     "R1/0",
          "R1/25",    "R1/02",  "R1/1/2",   "R1/a",           "/1",      "/1.2",    "J4/1.a",
          "J4/1.a/1", "J4.b/",  "J4.b2",    "J4.1/2",         "J4.b/1.", "J4.b/1.x"}) {
      INFO(text);
      CHECK_FALSE(joint::read_hand_entry(text));
    }
  }

  TEST_CASE("for all pairs, law: two entries overlap when some layer of some seam is in both") {
    // Written out: seams a and b in two segments with layers 1 to 5 each.
    const char* texts[] = {"J",
                           "J.a",
                           "J.b",
                           "J.1",
                           "J.2",
                           "J.2-3",
                           "J.3-",
                           "J.a.1",
                           "J.b.2-",
                           "J.a.3-4",
                           "J/1",
                           "J.a/2",
                           "J.b/1.2",
                           "J/2.3-",
                           "K.1",
                           "K",
                           "K.a"};
    struct Piece {
      std::string joint;
      char side;
      int segment;
      int layer;
    };
    std::vector<Piece> pieces;
    for (const char* joint : {"J", "K"}) {
      for (const char side : {'a', 'b'}) {
        for (const int segment : {1, 2}) {
          for (int layer = 1; layer <= 5; ++layer) pieces.push_back({joint, side, segment, layer});
        }
      }
    }
    const auto holds = [](const HandEntry& entry, const Piece& piece) {
      return entry.joint == piece.joint && (entry.side == 0 || entry.side == piece.side) &&
             (entry.segment == 0 || entry.segment == piece.segment) && piece.layer >= entry.from &&
             piece.layer <= entry.to.value_or(5);
    };
    for (const char* one : texts) {
      for (const char* two : texts) {
        const bool common = std::any_of(pieces.begin(), pieces.end(), [&](const Piece& piece) {
          return holds(entry(one), piece) && holds(entry(two), piece);
        });
        INFO(one, " ", two);
        CHECK(joint::overlap(entry(one), entry(two)) == common);
      }
    }
  }
}

}  // namespace seamturn::tests
