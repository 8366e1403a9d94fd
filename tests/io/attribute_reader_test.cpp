// SPDX-License-Identifier: MIT
#include "io/detail_attribute_reader.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <memory>
#include <string>

#include "seamturn/base/error.hpp"

namespace seamturn::tests {

namespace {

using io::detail::AttributeReader;
using io::detail::MarkedName;
namespace ranges = io::detail::ranges;

/// A text of one element, and what is reported of it.
struct One {
  explicit One(std::string bytes)
      : text(std::make_shared<const io::detail::Source>("f", std::move(bytes))) {
    REQUIRE(readable);
  }
  [[nodiscard]] std::string codes() const {
    std::string all;
    for (const base::Finding& finding : report.sorted()) {
      all += finding.code + " " + std::to_string(finding.place.column) + ";";
    }
    return all;
  }
  std::shared_ptr<const io::detail::Source> text;
  io::detail::Report report;
  io::detail::MarkupTree tree;
  bool readable = io::detail::check_markup(*text, report, tree);
  io::detail::FileContext context{text, tree, report};
  AttributeReader reader{context, tree.root()};
};

}  // namespace

TEST_SUITE("io/attribute_reader") {
  // Expected: by construction, columns counted by hand; limits are ours (docs/files.md).
  TEST_CASE("given attributes in any order, each is read, and what nobody asks for is told") {
    One one("<a b='1' c='2' d='3' e='4'/>");
    CHECK(one.reader.text("d") == "3");
    CHECK(one.reader.text("b") == "1");
    CHECK(one.reader.text("c") == "2");
    CHECK(one.reader.find_text("x") == "");
    one.reader.finish();
    CHECK(one.codes() == "read.attribute.unknown 25;");
  }

  TEST_CASE("given an attribute asked for twice, another that nobody asks for is still told") {
    One one("<a b='1' c='2'/>");
    CHECK(one.reader.text("b") == "1");
    CHECK(one.reader.text("b") == "1");
    CHECK(one.reader.has("b"));
    CHECK(one.reader.has("c"));  // a look is no reading
    one.reader.finish();
    CHECK(one.codes() == "read.attribute.unknown 13;");
  }

  TEST_CASE("given names of one mark, they are told apart by their letters") {
    // The mark is made of the length and three letters: these differ in the others only.
    REQUIRE(MarkedName("axcxe").mark() == MarkedName("aycye").mark());
    One one("<a axcxe='1'/>");
    CHECK_FALSE(one.reader.has("aycye"));
    CHECK(one.reader.find_text("aycye", "none") == "none");
    CHECK(one.reader.text("axcxe") == "1");
    one.reader.finish();
    CHECK(one.codes().empty());
  }

  TEST_CASE("given names of every length, equal ones are found and others not") {
    for (std::size_t size = 1; size < 40; ++size) {
      const std::string name(size, 'a');
      CAPTURE(name);
      One one("<e " + name + "='1'/>");
      CHECK(one.reader.has(MarkedName(name)));
      CHECK_FALSE(one.reader.has(MarkedName(name + "a")));
      for (std::size_t i = 0; i < size; ++i) {
        std::string other = name;
        other[i] = 'b';
        CHECK_FALSE(one.reader.has(MarkedName(other)));
      }
    }
  }

  TEST_CASE("given values at the ends of their range, the excluded ends are refused") {
    One one("<a b='0 mm' c='0.1 mm' d='100 m' e='100.1 m' f='100000 mm'/>");
    CHECK(std::isnan(one.reader.quantity("b", ranges::size)));
    CHECK(one.reader.quantity("c", ranges::size) == doctest::Approx(0.1));
    CHECK(one.reader.quantity("d", ranges::size) == doctest::Approx(1e5));
    CHECK(std::isnan(one.reader.quantity("e", ranges::size)));
    CHECK(one.reader.quantity("f", ranges::size) == doctest::Approx(1e5));
    CHECK(one.codes() == "read.value.out_of_range 7;read.value.out_of_range 37;");
  }

  TEST_CASE("refuses more questions than a reader has room for because none may be lost") {
    One one("<a/>");
    for (int i = 0; i < 100; ++i) CHECK(one.reader.find_text("b") == "");
    CHECK_THROWS_AS((void)one.reader.find_text("b"), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
