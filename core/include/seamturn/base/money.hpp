// SPDX-License-Identifier: MIT
// An amount of money with its currency. Amounts of two currencies are never added.
#pragma once

#include <string>

namespace seamturn::base {

/// An amount in one currency; the currency is the text of the rates file (ISO 4217 code by habit).
struct Money {
  double amount = 0.0;
  std::string currency;
  bool operator==(const Money&) const = default;
};

/// Sum of two amounts.
/// Units: both in one currency -> the same currency.
/// Pre: equal currencies; otherwise ContractViolation.
/// Outside: n/a.
/// Source: none - arithmetic.
/// Accuracy: exact up to rounding.
/// Tests: base/money - law.
[[nodiscard]] Money operator+(const Money& a, const Money& b);

}  // namespace seamturn::base
