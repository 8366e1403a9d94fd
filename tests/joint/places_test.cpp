// SPDX-License-Identifier: MIT
#include "seamturn/joint/places.hpp"

#include <doctest/doctest.h>

#include <memory>
#include <string>

#include "seamturn/base/error.hpp"

namespace seamturn::tests {

namespace {

using base::FileText;
using joint::Places;

/// An attribute is written behind its thing as "name=value".
std::optional<std::size_t> value_at(std::string_view text,
                                    std::size_t element,
                                    std::string_view attribute) {
  const std::size_t at = text.find(std::string(attribute) + "=", element);
  if (at == std::string_view::npos) return std::nullopt;
  return at + attribute.size() + 1;
}

std::shared_ptr<const FileText> file_of(std::string text) {
  return std::make_shared<const FileText>("f", std::move(text));
}

}  // namespace

TEST_SUITE("joint/places") {
  // Expected: by construction, lines and columns counted by hand.
  TEST_CASE("given things of one key, the first counts and the second is told") {
    const auto file = file_of("J1 a=1\nJ1 a=2\n");
    Places places;
    CHECK_FALSE(places.contains("joint/J1"));
    CHECK(places.add("joint/J1", file, {0, std::nullopt}, value_at));
    CHECK_FALSE(places.add("joint/J1", file, {7, std::nullopt}, value_at));
    CHECK(places.at("joint/J1").line == 1);
    CHECK(places.at("joint/J1@a").column == 6);
    CHECK_FALSE(places.contains("joint/J1@b"));
    CHECK(places.nearest_spot("joint/J1", "b").offset == 0);
    CHECK(places.nearest_spot("joint/J2", "b").file == nullptr);
    CHECK_THROWS_AS((void)places.at("joint/J2"), base::ContractViolation);
  }

  TEST_CASE("given a part, its attributes count as those of the whole, after its own") {
    const auto file = file_of("c=3 J1 a=1 fillet b=2");
    Places places;
    CHECK(places.add("joint/J1", file, {4, std::size_t{11}}, value_at));
    CHECK(places.at("joint/J1@a").column == 10);
    CHECK(places.at("joint/J1@b").column == 21);
  }

  TEST_CASE("given a copy, what is added to one does not appear in the other") {
    const auto file = file_of("J1 J2 J3");
    Places places;
    CHECK(places.add("joint/J1", file, {0, std::nullopt}, value_at));
    Places copy = places;
    CHECK(copy.contains("joint/J1"));
    CHECK(copy.add("joint/J2", file, {3, std::nullopt}, value_at));
    CHECK(places.add("joint/J3", file, {6, std::nullopt}, value_at));
    CHECK_FALSE(places.contains("joint/J2"));
    CHECK_FALSE(copy.contains("joint/J3"));
    const Places moved = std::move(copy);
    CHECK(moved.at("joint/J2").column == 4);
    places = moved;
    CHECK(places.contains("joint/J2"));
  }

  TEST_CASE("given places whose file nobody else keeps, the text stays readable") {
    Places places;
    CHECK(places.add("joint/J1", file_of("\nJ1 a=1"), {1, std::nullopt}, value_at));
    Places copy = places;
    CHECK(copy.add("joint/J2", file_of("J2"), {0, std::nullopt}, value_at));
    places = Places();
    CHECK(copy.at("joint/J1@a").line == 2);
  }

  TEST_CASE("given thousands of keys, short and long, each is found") {
    const auto file = file_of("x");
    Places places;
    for (int i = 0; i < 5000; ++i) {
      CHECK(places.add("settings/of-a-long-name-" + std::to_string(i), file, {0, {}}, value_at));
    }
    for (int i = 0; i < 5000; ++i) {
      CHECK(places.contains("settings/of-a-long-name-" + std::to_string(i)));
    }
    CHECK_FALSE(places.contains("settings/of-a-long-name-5000"));
  }
}

}  // namespace seamturn::tests
