// SPDX-License-Identifier: MIT
#include "io/detail_markup_tree.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <pugixml.hpp>

#include "io/detail_markup_check.hpp"
#include "repository.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/io/read.hpp"

namespace seamturn::tests {

namespace {

using io::detail::Element;
using io::detail::MarkupTree;

/// A text with its tree.
struct Read {
  explicit Read(std::string bytes) : source("f", std::move(bytes)) {
    io::detail::Report report;
    readable = io::detail::check_markup(source, report, tree);
  }
  io::detail::Source source;
  MarkupTree tree;
  bool readable = false;
};

/// What the two trees have in common below an element, names, values and places; else what differs.
std::string difference(const Element& ours, const pugi::xml_node& theirs, std::size_t& same) {
  if (ours.name() != theirs.name()) return std::string("element ") + theirs.name();
  auto attribute = theirs.attributes_begin();
  for (const MarkupTree::Attribute& one : ours.attributes()) {
    if (attribute == theirs.attributes_end())
      return "one more attribute " + std::string(one.name());
    if (one.name() != attribute->name()) return std::string("attribute ") + attribute->name();
    if (one.value() != attribute->value()) return std::string("value of ") + attribute->name();
    ++attribute;
    ++same;
  }
  if (attribute != theirs.attributes_end()) return std::string("no ") + attribute->name();
  Element child = ours.first_child();
  for (const pugi::xml_node& other : theirs.children()) {
    if (other.type() != pugi::node_element) continue;
    const std::string found = difference(child, other, same);
    if (!found.empty()) return found;
    child = child.next();
  }
  return child ? "one more element " + std::string(child.name()) : "";
}

/// Attributes that pugixml reads as well; a text that only one of the two reads, or reads
/// otherwise, fails.
std::size_t agreed(const std::string& bytes) {
  const Read read(bytes);
  REQUIRE(read.readable);
  pugi::xml_document document;
  const auto parsed =
      document.load_buffer(bytes.data(), bytes.size(), pugi::parse_default, pugi::encoding_utf8);
  CAPTURE(bytes.substr(0, 400));
  CHECK(parsed);
  std::size_t attributes = 0;
  CHECK(difference(read.tree.root(), document.document_element(), attributes) == "");
  return attributes;
}

std::string names_of(const Element::Children& children) {
  std::string names;
  for (const Element& child : children) names += std::string(child.name()) + " ";
  return names;
}

}  // namespace

TEST_SUITE("io/markup_tree") {
  // Reference: pugixml 1.13, the parser most programs would have taken.
  TEST_CASE("for every weldment, library and cell of the demo, the tree is that of pugixml") {
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

  TEST_CASE("given every spelling of an attribute, the tree is that of pugixml") {
    CHECK(agreed("<a/>") == 0);
    CHECK(agreed("\xEF\xBB\xBF<a  b = '1'\r\n\tc=\"\" d='\"'><e f=\"g\"/><e/>\n<h i='j'/></a>") ==
          5);
    CHECK(
        agreed(
            "<a b='&lt;' c='d&#10;' e=\"f\r\ng\" h='\r' i='\n'><!-- x='1' --><j k='&amp;'/></a>") ==
        6);
    CHECK(agreed("<a b='&#xB0;&#176;&#x20AC;&#x1F600;&#x7FF;&#x800;&#xFFFD;&#x10000;'/>") == 1);
    CHECK(agreed("<a b='&amp;lt; &quot;&apos;&gt;' c=\"\t\t\" d='x\r' e='\r\r\n\n'/>") == 4);
    CHECK(agreed("<a b='1' b='2'><c/></a>") == 2);  // told, and the first counts
    CHECK(agreed("<a><b><c/><c d='e'/></b><!-- - --><?x y?><b/></a><f/>") == 1);
  }

  TEST_CASE("for any damage to a sound text, law: both refuse it, or both read the same") {
    const std::string sound =
        "<?xml version=\"1.0\"?>\n<a xmlns=\"u\" b=\"1 mm\">\n <!-- c -->"
        "<d e='&amp;&#176;' g = \"x\r\ny\" \tf='&lt;'/>\n <h i=\"\">\n <j/> </h>\n</a>\n";
    base::Random random(base::named_seed(20261127, "io/markup_tree damage"));
    const std::string pieces = "<>&\"'/!-?=; a\n\r\t#x;";
    int passed = 0;
    std::size_t attributes = 0;
    for (int round = 0; round < 8000; ++round) {
      std::string text = sound;
      const int changes = 1 + static_cast<int>(random.below(3));
      for (int i = 0; i < changes; ++i) {
        const std::size_t place = random.below(text.size());
        const char piece = pieces[random.below(pieces.size())];
        if (random.below(2) == 0) {
          text[place] = piece;
        } else {
          text.erase(place, 1 + random.below(5));
        }
      }
      if (!Read(text).readable) continue;
      ++passed;
      attributes += agreed(text);
    }
    CHECK(passed > 500);  // otherwise the law was hardly tried
    CHECK(attributes > 2000);
  }

  TEST_CASE("given a tree, elements are walked in the order written, all or those of a name") {
    const Read read("<a><b/><c d='1' e='2' d='3'><b f='g'/></c><b/><h/></a><i/>");
    REQUIRE(read.readable);
    const Element root = read.tree.root();
    CHECK(root.is_root());
    CHECK(names_of(root.children()) == "b c b h ");
    CHECK(names_of(root.children("b")) == "b b ");
    CHECK(names_of(root.children("i")) == "");
    const Element c = root.child("c");
    CHECK_FALSE(c.is_root());
    CHECK(names_of(c.children()) == "b ");
    CHECK(c.next("b").next().name() == "h");
    CHECK_FALSE(c.next("c"));
    CHECK_FALSE(root.next());
    REQUIRE(c.find_attribute("d") != nullptr);
    CHECK(c.find_attribute("d")->value() == "1");
    CHECK(c.find_attribute("d")->value_at() == 13);
    CHECK(c.find_attribute("f") == nullptr);
    CHECK(c.attribute_names().may_hold("e"));
    const auto children = root.children();
    CHECK(std::distance(children.begin(), children.end()) == 4);
  }

  TEST_CASE("given no element, it has no name, attribute, child or neighbour") {
    const MarkupTree empty;
    const Element none = empty.root();
    CHECK_FALSE(none);
    CHECK(none.name() == "");
    CHECK(none.attributes().empty());
    CHECK_FALSE(none.attribute_names().may_hold("a"));
    CHECK_FALSE(none.first_child());
    CHECK_FALSE(none.next("a"));
    CHECK(names_of(none.children()) == "");
    CHECK_FALSE(none.is_root());
  }

  TEST_CASE("given one tree for two files, nothing of the first is left") {
    MarkupTree tree;
    io::detail::Report report;
    const io::detail::Source first("f", "<a b='&amp;'><c/><d/></a>");
    const io::detail::Source second("g", "<e/>");
    CHECK(io::detail::check_markup(first, report, tree));
    CHECK(io::detail::check_markup(second, report, tree));
    CHECK(tree.root().name() == "e");
    CHECK(tree.root().attributes().empty());
    CHECK(names_of(tree.root().children()) == "");
  }

  TEST_CASE("given a tree left in the middle of a broken text, the next text is not inside it") {
    MarkupTree tree;
    io::detail::Report report;
    const io::detail::Source broken("f", "<a><b>");
    const io::detail::Source second("g", "<e/><f/>");
    CHECK_FALSE(io::detail::check_markup(broken, report, tree));
    CHECK(io::detail::check_markup(second, report, tree));
    CHECK(tree.root().name() == "e");
    CHECK_FALSE(tree.root().next());
  }
}

}  // namespace seamturn::tests
