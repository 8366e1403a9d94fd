// SPDX-License-Identifier: MIT
#include "sources_shown.hpp"

#include <algorithm>

namespace seamturn::cli {

namespace {

/// Higher is weaker.
int weakness(base::Status status) {
  switch (status) {
    case base::Status::verified:
      return 0;
    case base::Status::computed:
      return 1;
    case base::Status::common_practice:
      return 2;
    case base::Status::proposed:
      return 3;
    case base::Status::from_memory:
      return 4;
  }
  return 4;
}

}  // namespace

std::string source_text(const base::FigureCard& card) {
  std::string text;
  for (const base::Citation& source : card.sources) {
    text += (text.empty() ? "" : "; ") + std::string(source.key) +
            (source.locator.empty() ? "" : " " + std::string(source.locator));
  }
  return text;
}

std::string status_text(const base::FigureCard& card) {
  base::Status weakest = base::Status::verified;
  for (const base::Citation& source : card.sources) {
    if (weakness(source.status) > weakness(weakest)) weakest = source.status;
  }
  return std::string(base::status_name(weakest));
}

}  // namespace seamturn::cli
