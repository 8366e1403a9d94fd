// SPDX-License-Identifier: MIT
#include "io/detail_markup_index.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <pugixml.hpp>

#include "io/detail_parsed_file.hpp"
#include "repository.hpp"
#include "seamturn/io/read.hpp"

namespace seamturn::tests {

namespace {

using io::detail::MarkupIndex;
using io::detail::ParsedFile;

std::string_view name_in(const ParsedFile& file, const MarkupIndex::Attribute& attribute) {
  return std::string_view(file.buffer).substr(attribute.name_at, attribute.name_size);
}

/// Attributes of which the tree and the index say the same; what differs fails.
std::size_t agreed(const std::string& bytes) {
  const auto file = io::detail::make_parsed_file("f", bytes);
  io::detail::Report report;
  REQUIRE(io::detail::parse(*file, report));
  std::size_t attributes = 0;
  for (pugi::xml_node at = file->document.document_element(); at;) {
    const MarkupIndex::Attributes found = file->index.attributes_of(file->offset(at.name()));
    std::size_t i = 0;
    for (const pugi::xml_attribute& in_tree : at.attributes()) {
      REQUIRE(i < found.written.size());
      const MarkupIndex::Attribute& one = found.written[i++];
      CHECK(name_in(*file, one) == in_tree.name());
      CHECK(one.value_at == file->offset(in_tree.value()));
      CHECK(found.names.may_hold(in_tree.name()));
      if (one.is_verbatim) CHECK(one.value_size == std::string_view(in_tree.value()).size());
      ++attributes;
    }
    CHECK(i == found.written.size());
    pugi::xml_node next = at.first_child();
    for (; !next && at.parent(); at = at.parent()) next = at.next_sibling();
    at = next;
  }
  return attributes;
}

}  // namespace

TEST_SUITE("io/markup_index") {
  TEST_CASE("for every weldment, library and cell of the demo, the index is the tree's") {
    std::size_t attributes = 0;
    std::size_t files = 0;
    for (const std::filesystem::path& path : files_below("joints", {".xml"})) {
      INFO(path.filename());
      attributes += agreed(io::read_bytes(repository() / path));
      ++files;
    }
    CHECK(files >= 8);
    CHECK(attributes > 5000);
  }

  TEST_CASE("given every spelling of an attribute, the index is the tree's") {
    CHECK(agreed("<a/>") == 0);
    CHECK(agreed("\xEF\xBB\xBF<a  b = '1'\r\n\tc=\"\" d='\"'><e f=\"g\"/><e/>\n<h i='j'/></a>") ==
          5);
    CHECK(
        agreed(
            "<a b='&lt;' c='d&#10;' e=\"f\r\ng\" h='\r' i='\n'><!-- x='1' --><j k='&amp;'/></a>") ==
        6);
  }

  TEST_CASE("given references or carriage returns, a value does not read as written") {
    const auto file = io::detail::make_parsed_file("f", "<a b='&lt;' c='d\r\ne' f='g h\n'/>\r\n");
    io::detail::Report report;
    REQUIRE(io::detail::parse(*file, report));
    const auto written = file->index.attributes_of(1).written;
    REQUIRE(written.size() == 3);
    CHECK_FALSE(written[0].is_verbatim);
    CHECK_FALSE(written[1].is_verbatim);
    CHECK(written[2].is_verbatim);
    CHECK(file->index.attributes_of(0).written.empty());
    CHECK(file->index.attributes_of(7).written.empty());
  }
}

}  // namespace seamturn::tests
