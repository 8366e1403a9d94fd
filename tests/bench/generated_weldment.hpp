// SPDX-License-Identifier: MIT
// A plate with rows of ribs, as many as asked for: to see how time and memory grow with the seams.
#pragma once

#include <filesystem>
#include <string>

namespace seamturn::tests {

/// The text of a weldment of so many seams (even): ribs of 15 mm on both sides of a plate of 20 mm,
/// every second one across, twin fillets of 8 mm in three passes, turned by the demo headstock.
/// Same number, same bytes. All invented; about 2.2 t with 1,000 seams.
[[nodiscard]] std::string generated_weldment(int seams);

/// Writes it into a folder with the demo libraries and cells beside it, and returns its path.
[[nodiscard]] std::filesystem::path write_generated_weldment(int seams,
                                                             const std::filesystem::path& joints,
                                                             const std::filesystem::path& folder);

}  // namespace seamturn::tests
