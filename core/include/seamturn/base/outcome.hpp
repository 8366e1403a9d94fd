// SPDX-License-Identifier: MIT
// A value, or an honest "no" with its reason. Member names follow std::expected of C++23.
#pragma once

#include <string>
#include <utility>
#include <variant>

#include "seamturn/base/error.hpp"

namespace seamturn::base {

/// Why there is no value. The code is stable (docs/findings.md).
struct Refusal {
  std::string code;
  std::string text;
  bool operator==(const Refusal&) const = default;
};

/// Either a T or a Refusal.
template <class T>
class [[nodiscard]] Outcome {
 public:
  Outcome(T value) : content_(std::in_place_index<0>, std::move(value)) {}    // NOLINT: implicit
  Outcome(Refusal why) : content_(std::in_place_index<1>, std::move(why)) {}  // NOLINT: implicit

  [[nodiscard]] bool has_value() const { return content_.index() == 0; }
  explicit operator bool() const { return has_value(); }
  /// Pre: has_value().
  [[nodiscard]] const T& value() const& {
    SEAMTURN_REQUIRE(has_value(), why_not());
    return std::get<0>(content_);
  }
  /// By value, so that a loop over the value of a temporary does not outlive it.
  [[nodiscard]] T value() && {
    SEAMTURN_REQUIRE(has_value(), why_not());
    return std::get<0>(std::move(content_));
  }
  [[nodiscard]] const T& operator*() const& { return value(); }
  [[nodiscard]] const T* operator->() const { return &value(); }
  /// Pre: !has_value().
  [[nodiscard]] const Refusal& error() const {
    SEAMTURN_REQUIRE(!has_value(), "Outcome holds a value");
    return std::get<1>(content_);
  }

 private:
  [[nodiscard]] std::string why_not() const {
    return has_value() ? std::string() : std::get<1>(content_).text;
  }
  std::variant<T, Refusal> content_;
};

}  // namespace seamturn::base
