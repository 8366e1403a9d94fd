// SPDX-License-Identifier: MIT
// The two exceptions of the library: our own mistake, and a caller's input that must be mended.
#pragma once

#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "seamturn/base/finding.hpp"

namespace seamturn::base {

/// Root of everything the library throws.
class Error : public std::runtime_error {
 public:
  explicit Error(const std::string& text) : std::runtime_error(text) {}
};

/// A "Pre" of the documentation was broken: a bug of the caller, never of the user.
class ContractViolation : public Error {
 public:
  explicit ContractViolation(const std::string& text) : Error(text) {}
};

/// Input that cannot be used; carries every finding, not only the first.
class InputError : public Error {
 public:
  explicit InputError(std::vector<Finding> findings);
  [[nodiscard]] const std::vector<Finding>& findings() const { return findings_; }

 private:
  std::vector<Finding> findings_;
};

/// A file, folder or plugin that cannot be had (missing, unreadable, not loadable).
class UnavailableError : public Error {
 public:
  explicit UnavailableError(const std::string& text) : Error(text) {}
};

/// Throws ContractViolation naming the broken condition, its place and the values that broke it.
[[noreturn]] void fail_contract(const char* condition,
                                const char* file,
                                int line,
                                const std::string& values);

/// The values of a broken contract as text, separated by commas.
template <class... Values>
[[nodiscard]] std::string contract_values(const Values&... values) {
  std::ostringstream text;
  text.precision(17);
  ((text << values << ", "), ...);
  return text.str();
}

}  // namespace seamturn::base

/// The same in every build type. Values are printed with 17 digits.
#define SEAMTURN_REQUIRE(condition, ...)                                                   \
  do {                                                                                     \
    if (!(condition)) {                                                                    \
      ::seamturn::base::fail_contract(                                                     \
          #condition, __FILE__, __LINE__, ::seamturn::base::contract_values(__VA_ARGS__)); \
    }                                                                                      \
  } while (false)
