// SPDX-License-Identifier: MIT
#include "io/detail_source.hpp"

#include <doctest/doctest.h>

#include "io/detail_report.hpp"
#include "io/detail_utf8.hpp"

namespace seamturn::tests {

using io::detail::Source;
using io::detail::Spot;

namespace {

struct At {
  int line;
  int column;
  bool operator==(const At&) const = default;
};

At at(const Source& source, const char* what) {
  const base::Place place = source.place(source.bytes().find(what));
  return At{place.line, place.column};
}

std::string caret_line(const Source& source, std::size_t offset) {
  io::detail::Report report;
  report.error(Spot{&source, offset}, "code", "text");
  const std::string text = base::finding_text(report.sorted().front());
  return text.substr(text.rfind('\n') + 1);
}

std::string excerpt_line(const Source& source, std::size_t offset) {
  return io::detail::excerpt_at(source, offset).text;
}

}  // namespace

TEST_SUITE("io/source") {
  TEST_CASE("given LF and CR LF line ends, lines and columns are the same") {
    const Source unix_file("a", "one\ntwo x\n");
    const Source windows_file("a", "one\r\ntwo x\r\n");
    CHECK(at(unix_file, "x") == At{2, 5});
    CHECK(at(windows_file, "x") == At{2, 5});
    CHECK(excerpt_line(windows_file, windows_file.bytes().find('x')) == "two x");
  }

  TEST_CASE(
      "given a byte order mark, tabs and letters of several bytes, columns count characters") {
    const Source source("a", "\xEF\xBB\xBF<a>\n\t\xC3\xA4\xE2\x82\xAC x");
    CHECK(at(source, "<a>") == At{1, 1});
    CHECK(at(source, "x") == At{2, 5});
    // The tab stays a tab before the caret, so both lines shift alike.
    CHECK(caret_line(source, source.bytes().find('x')) == "    \t   ^");
  }

  TEST_CASE("given offsets at the start, at the end and beyond, the place stays inside the file") {
    const Source source("a", "ab\n");
    CHECK(source.place(0) == base::Place{"a", 1, 1});
    CHECK(source.place(3) == base::Place{"a", 2, 1});
    CHECK(source.place(99) == base::Place{"a", 2, 1});
    const Source empty("a", "");
    CHECK(empty.place(0) == base::Place{"a", 1, 1});
    CHECK(io::detail::excerpt_at(empty, 5).text.empty());
  }

  TEST_CASE("for any column of a very long line, law: the caret stands under its character") {
    std::string line;
    for (int i = 0; i < 2000; ++i) line += i % 7 == 0 ? "\xC3\xB6" : "-";
    for (const std::size_t place :
         {std::size_t{10}, std::size_t{159}, std::size_t{1000}, line.size() - 5}) {
      std::string text = line;
      while ((static_cast<unsigned char>(text[place]) & 0xC0U) == 0x80U) text.erase(place, 1);
      text.insert(place, "X");
      const Source source("a", text);
      const std::string excerpt = excerpt_line(source, place);
      CAPTURE(place);
      std::size_t characters = 0;
      for (const char c : excerpt.substr(0, excerpt.find('X'))) {
        if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) ++characters;
      }
      REQUIRE(excerpt.find('X') != std::string::npos);
      CHECK(caret_line(source, place) == std::string(4 + characters, ' ') + "^");
      CHECK(excerpt.size() < 340);  // 160 characters of two bytes, dots
    }
  }

  TEST_CASE("given bytes no terminal should get, the excerpt shows a question mark for each") {
    const Source source("a",
                        "a\x1B[31m\xFF"
                        "b");
    CHECK(excerpt_line(source, 0) == "a?[31m?b");
  }

  TEST_CASE(
      "given RFC 3629 section 4, overlong forms, surrogates and more than 10FFFF are no UTF-8") {
    const auto length = [](std::string_view text) {
      return io::detail::character_at_start(text).length;
    };
    CHECK(length("A") == 1);
    CHECK(length("\xC2\x80") == 2);
    CHECK(length("\xEF\xBF\xBF") == 3);
    CHECK(length("\xF4\x8F\xBF\xBF") == 4);
    CHECK(length("\xC0\x80") == 0);
    CHECK(length("\xC1\xBF") == 0);
    CHECK(length("\xE0\x9F\xBF") == 0);
    CHECK(length("\xED\xA0\x80") == 0);
    CHECK(length("\xF4\x90\x80\x80") == 0);
    CHECK(length("\x80") == 0);
    CHECK(length("\xE2\x82") == 0);
  }
}

TEST_SUITE("io/report") {
  TEST_CASE("given more findings than a person reads, 200 are kept and a note counts the rest") {
    const Source source("a", "x");
    io::detail::Report report;
    for (int i = 0; i < 250; ++i) report.error(Spot{&source, 0}, "code", std::to_string(i));
    const auto findings = report.sorted();
    REQUIRE(findings.size() == 201);
    CHECK(findings.back().severity == base::Severity::note);
    CHECK(findings.back().code == "read.findings.more");
    CHECK(findings.back().text.starts_with("50 more"));
    CHECK(report.error_count() == 250);
  }

  TEST_CASE("given findings out of order, they come sorted by file as met, line and column") {
    const Source first("z", "a\nbc");
    const Source second("b", "a");
    io::detail::Report report;
    report.error(Spot{&first, 3}, "3", "");
    report.error(Spot{&second, 0}, "4", "");
    report.error(Spot{&first, 2}, "2", "");
    report.error(Spot{&first, 0}, "1", "");
    std::string order;
    for (const auto& finding : report.sorted()) order += finding.code;
    CHECK(order == "1234");
  }
}

}  // namespace seamturn::tests
