// SPDX-License-Identifier: MIT
#include "io/detail_find_value.hpp"

#include <doctest/doctest.h>

#include <pugixml.hpp>
#include <string>

namespace seamturn::tests {

namespace {

/// The text from the value found up to the next bar, which every value below ends with.
std::string found(std::string_view tag, std::string_view attribute) {
  const auto at = io::detail::find_value(tag, 1, attribute);
  if (!at) return "none";
  return std::string(tag.substr(*at, tag.find('|', *at) - *at));
}

}  // namespace

TEST_SUITE("io/find_value") {
  // law: names are whole words, a value may hold the other quote, ">" and what looks like a name
  TEST_CASE("a value is found behind its own name and no other") {
    const std::string tag =
        "<seam to='x=\"1|\" from=2|' from = \"a>b|\"\n\tfrom-end='3|'/> <seam id='4|'>";
    CHECK(found(tag, "to") == "x=\"1");
    CHECK(found(tag, "from") == "a>b");
    CHECK(found(tag, "from-end") == "3");
    CHECK(found(tag, "end") == "none");
    CHECK(found(tag, "id") == "none");
    CHECK(found("<a>", "b") == "none");
    CHECK(found("<a", "b") == "none");
  }

  // cross: pugixml on the demo weldment; every attribute of every element, by its bytes
  TEST_CASE("every attribute of the demo stands where the parser sees it") {
    pugi::xml_document document;
    REQUIRE(document.load_file(SEAMTURN_SOURCE_DIR "/joints/grab_hub.xml"));
    std::size_t checked = 0;
    const auto check = [&](const pugi::xml_node& element) {
      std::string tag = std::string("<") + element.name();
      for (const auto& at : element.attributes()) {
        tag += std::string(" ") + at.name() + "=\"" + at.value() + "|\"";
      }
      tag += "/>";
      for (const auto& at : element.attributes()) {
        CHECK(found(tag, at.name()) == at.value());
        ++checked;
      }
    };
    for (const auto& element : document.document_element().children()) {
      if (element.type() == pugi::node_element) check(element);
    }
    CHECK(checked > 100);
  }
}

}  // namespace seamturn::tests
