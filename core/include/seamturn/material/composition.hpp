// SPDX-License-Identifier: MIT
// Chemical composition of a steel.
#pragma once

namespace seamturn::material {

/// Mass fractions in mass-%. An element not given is zero.
struct Composition {
  double c = 0.0, si = 0.0, mn = 0.0, p = 0.0, s = 0.0, cr = 0.0, mo = 0.0, v = 0.0, ni = 0.0,
         cu = 0.0, nb = 0.0, ti = 0.0, al = 0.0, b = 0.0, n = 0.0;
  bool operator==(const Composition&) const = default;
};

}  // namespace seamturn::material
