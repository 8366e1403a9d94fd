// SPDX-License-Identifier: MIT
#include "io/detail_markup_check.hpp"

#include <doctest/doctest.h>

namespace seamturn::tests {

using namespace std::string_literals;

namespace {

/// "code line:column" of each finding, "readable" last when the file may be parsed.
std::string checked(const std::string& bytes) {
  const io::detail::Source source("f", bytes);
  io::detail::Report report;
  io::detail::MarkupTree tree;
  const bool readable = io::detail::check_markup(source, report, tree);
  std::string text;
  for (const auto& finding : report.sorted()) {
    text += finding.code.substr(finding.code.find('.') + 1) + ' ' +
            std::to_string(finding.place.line) + ':' + std::to_string(finding.place.column) + ' ';
  }
  return text + (readable ? "readable" : "-");
}

}  // namespace

TEST_SUITE("io/markup_check") {
  // Expected: what XML 1.0 (fifth edition) sections 2.1 to 4.4 allow and forbid; limits are ours.
  TEST_CASE("given sound XML in its many spellings, nothing is reported") {
    CHECK(checked("<a/>") == "readable");
    CHECK(checked("<?xml version=\"1.0\" encoding='utf-8' standalone=\"yes\"?>\n<a b='1'\tc = "
                  "\"2\" ><d/></a >\n") == "readable");
    CHECK(checked("\xEF\xBB\xBF<?xml version='1.0'?><!-- c --><?note x?><a "
                  "t='&lt;&amp;&#176;&#xB0;'/><!-- e -->") == "readable");
  }

  TEST_CASE(
      "refuses what XML 1.0 section 2.1 to 2.8 forbids because a lenient parser would guess") {
    CHECK(checked("<a></b>") == "xml.malformed 1:4 -");
    CHECK(checked("<a>\n<b></a>") == "xml.malformed 2:4 -");
    CHECK(checked("<a>") == "xml.malformed 1:4 -");
    CHECK(checked("</a>") == "xml.malformed 1:1 -");
    CHECK(checked("<a") == "xml.malformed 1:1 -");
    CHECK(checked("<a b></a>") == "xml.malformed 1:4 -");
    CHECK(checked("<a b=1/>") == "xml.malformed 1:6 -");
    CHECK(checked("<a b=\"1/>") == "xml.malformed 1:7 -");
    CHECK(checked("<a b=\"<\"/>") == "xml.malformed 1:7 -");
    CHECK(checked("<a b='1'c='2'/>") == "xml.malformed 1:9 -");
    CHECK(checked("<1/>") == "xml.malformed 1:1 -");
    CHECK(checked("<a><!-- x</a>") == "xml.malformed 1:4 -");
    CHECK(checked("<a><!-- x -- y --></a>") == "xml.malformed 1:11 readable");
    CHECK(checked("<a/><!ELEMENT b>") == "xml.malformed 1:5 -");
    CHECK(checked("hello") == "xml.stray_text 1:1 xml.malformed 1:1 -");
    CHECK(checked("<!DOCTYPE a><a/>") == "xml.doctype 1:1 -");
    CHECK(checked("\n<?xml version='1.0'?><a/>") == "xml.declaration 2:1 -");
    CHECK(checked("<?xml version='1.1'?><a/>") == "xml.declaration 1:16 -");
    CHECK(checked("<?xml version='1.0' encoding='latin1'?><a/>") == "encoding.not_utf8 1:31 -");
  }

  TEST_CASE("given breaches that do not hinder reading on, all are told and the file is read") {
    CHECK(checked("<a b='1' b='2'>x</a>y<c/>") ==
          "xml.duplicate_attribute 1:13 xml.stray_text 1:16 xml.stray_text 1:21 "
          "xml.second_root 1:23 readable");
    CHECK(checked("<a b='x &foo; & y &amp z'/>") ==
          "xml.entity 1:9 xml.entity 1:15 xml.entity 1:19 readable");
    CHECK(checked("<a><![CDATA[x]]></a>") == "xml.stray_text 1:4 readable");
  }

  TEST_CASE(
      "refuses character numbers that name no character because they would cut or hide text") {
    CHECK(checked("<a b='&#0;'/>") == "xml.entity 1:7 -");
    CHECK(checked("<a b='&#27;'/>") == "xml.entity 1:7 -");
    CHECK(checked("<a b='&#x110000;'/>") == "xml.entity 1:7 -");
    CHECK(checked("<a b='&#xD800;'/>") == "xml.entity 1:7 -");
    CHECK(checked("<a b='&#;'/>") == "xml.entity 1:7 -");
  }

  TEST_CASE("refuses bytes that are no text because nothing sound can be read from them") {
    CHECK(checked("") == "file.empty 1:1 -");
    CHECK(checked("\xEF\xBB\xBF \n") == "file.empty 1:1 -");
    CHECK(checked("\xFF\xFE<\0a\0"s) == "encoding.not_utf8 1:1 -");
    CHECK(checked("<\0a\0"s) == "encoding.not_utf8 1:1 -");
    CHECK(checked("<a b='\xE4'/>") == "encoding.not_utf8 1:7 -");
    CHECK(checked("<a b='\x01'/><\x1B/>") ==
          "xml.control_character 1:7 xml.malformed 1:11 xml.control_character 1:12 -");
    CHECK(checked("<a>\0</a>"s) == "xml.control_character 1:4 xml.stray_text 1:4 -");
  }

  TEST_CASE("given nesting of 16, it is read, and 17 is refused") {
    const auto nested = [](int depth) {
      std::string text;
      for (int i = 0; i < depth; ++i) text += "<a>";
      for (int i = 0; i < depth; ++i) text += "</a>";
      return text;
    };
    CHECK(checked(nested(16)) == "readable");
    CHECK(checked(nested(17)) == "xml.too_deep 1:50 -");
    CHECK(checked(nested(1'000'000)) == "xml.too_deep 1:50 -");
  }

  TEST_CASE("given limits of size, one more than the limit is refused") {
    CHECK(checked("<a b='" + std::string(4096, 'x') + "'/>") == "readable");
    CHECK(checked("<a b='" + std::string(4097, 'x') + "'/>") == "attribute.too_long 1:7 -");
    CHECK(checked("<a b=\"" + std::string(4096, 'x') + "\"/>") == "readable");
    CHECK(checked("<a b=\"" + std::string(4097, 'x') + "\"/>") == "attribute.too_long 1:7 -");
    std::string many = "<a ";
    for (int i = 0; i < 101; ++i) many += "b" + std::to_string(i) + "='' ";
    CHECK(checked(many + "/>") == "element.too_many_attributes 1:2 -");
    std::string elements = "<a>";
    for (int i = 0; i < 199'999; ++i) elements += "<b/>";
    CHECK(checked(elements + "</a>") == "readable");
    CHECK(checked(elements + "<b/></a>").starts_with("file.too_many_elements 1:"));
  }
}

}  // namespace seamturn::tests
