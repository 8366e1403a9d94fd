// SPDX-License-Identifier: MIT
// A qualification record as far as plans ask it.
#pragma once

#include <string>

#include "seamturn/base/citation.hpp"

namespace seamturn::procedure {

/// One row of a library. Its interpass maximum limits the joints that name it; what it covers is
/// not judged, and procedures stay preliminary.
struct Record {
  std::string id;
  double interpass_max_c = 0.0;  ///< highest that was measured in the test
  std::string source;            ///< number and date of the record
  base::Status status = base::Status::proposed;
};

}  // namespace seamturn::procedure
