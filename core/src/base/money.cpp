// SPDX-License-Identifier: MIT
#include "seamturn/base/money.hpp"

#include "seamturn/base/error.hpp"

namespace seamturn::base {

Money operator+(const Money& a, const Money& b) {
  SEAMTURN_REQUIRE(a.currency == b.currency, a.currency, b.currency);
  return Money{a.amount + b.amount, a.currency};
}

}  // namespace seamturn::base
