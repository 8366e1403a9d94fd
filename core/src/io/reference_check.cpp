// SPDX-License-Identifier: MIT
#include "detail_reference_check.hpp"

#include <algorithm>
#include <charconv>
#include <string>

#include "detail_encoding_check.hpp"
#include "detail_utf8.hpp"

namespace seamturn::io::detail {

namespace {

bool is_named(std::string_view name) {
  for (const std::string_view known : {"amp", "lt", "gt", "quot", "apos"}) {
    if (name == known) return true;
  }
  return false;
}

bool is_word(std::string_view name) {
  return !name.empty() && std::all_of(name.begin(), name.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
  });
}

/// "176" or "xB0".
bool numbers_a_character(std::string_view digits) {
  const bool hexadecimal = digits.starts_with('x');
  if (hexadecimal) digits.remove_prefix(1);
  std::uint32_t code = 0;
  const char* end = digits.data() + digits.size();
  const auto parsed = std::from_chars(digits.data(), end, code, hexadecimal ? 16 : 10);
  return parsed.ec == std::errc() && parsed.ptr == end && !is_control(code);
}

}  // namespace

bool check_references(const Source& source,
                      std::size_t offset,
                      std::string_view value,
                      Report& report) {
  bool readable = true;
  for (std::size_t i = value.find('&'); i != std::string_view::npos; i = value.find('&', i + 1)) {
    const std::size_t end = value.find(';', i);
    const std::string_view name =
        end == std::string_view::npos ? std::string_view() : value.substr(i + 1, end - i - 1);
    if (is_named(name)) continue;
    const Spot spot{&source, offset + i};
    if (name.starts_with('#')) {
      if (numbers_a_character(name.substr(1))) continue;
      report.error(spot,
                   "read.xml.entity",
                   in_quotes(value.substr(i, end - i + 1)) +
                       " numbers no character that text may hold; expected e.g. &#176; or &#xB0;");
      readable = false;
      continue;
    }
    const std::string found =
        is_word(name) ? "entity " + in_quotes(value.substr(i, end - i + 1)) + " is not known"
                      : "a bare \"&\" found";
    report.error(spot,
                 "read.xml.entity",
                 found +
                     "; expected one of &amp; &lt; &gt; &quot; &apos; or a character number; "
                     "write &amp; for the sign itself");
  }
  return readable;
}

}  // namespace seamturn::io::detail
