// SPDX-License-Identifier: MIT
#include "seamturn/base/number_text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "seamturn/base/error.hpp"

namespace seamturn::base {

std::string shortest_text(double value) {
  SEAMTURN_REQUIRE(std::isfinite(value), value);
  if (value == 0.0) return "0";
  std::array<char, 64> buffer{};
  const double size = std::abs(value);
  const bool plain = size >= 1e-5 && size < 1e15;
  const std::to_chars_result end =
      plain ? std::to_chars(
                  buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed)
            : std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
  return std::string(buffer.data(), end.ptr);
}

std::string fixed_text(double value, int decimals) {
  SEAMTURN_REQUIRE(std::isfinite(value) && decimals >= 0 && decimals <= 12, value, decimals);
  std::array<char, 400> buffer{};
  const std::to_chars_result end = std::to_chars(
      buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, decimals);
  std::string text(buffer.data(), end.ptr);
  if (text.front() == '-' && text.find_first_not_of("-0.") == std::string::npos) {
    text.erase(text.begin());
  }
  return text;
}

std::string digits_text(double value, int significant) {
  SEAMTURN_REQUIRE(std::isfinite(value) && significant >= 1 && significant <= 12, value);
  if (value == 0.0) return "0";
  const int before_point = static_cast<int>(std::floor(std::log10(std::abs(value)))) + 1;
  const int decimals = std::clamp(significant - before_point, 0, 12);
  std::string text = fixed_text(value, decimals);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

TwoTexts told_apart(double first, double second, int decimals) {
  constexpr int most_more = 6;
  SEAMTURN_REQUIRE(decimals >= 0 && decimals <= most_more, decimals);
  TwoTexts texts{fixed_text(first, decimals), fixed_text(second, decimals)};
  for (int more = 1; more <= most_more && texts.first == texts.second; ++more) {
    texts = {fixed_text(first, decimals + more), fixed_text(second, decimals + more)};
  }
  return texts;
}

}  // namespace seamturn::base
