// SPDX-License-Identifier: MIT
// Writing without losing anything: one file by rename, a folder by swapping it in at the end.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace seamturn::io {

/// A document to write: name relative to the output folder, with '/' between folders.
struct Document {
  std::string name;
  std::string bytes;
};

/// True for a relative name without "..", empty parts, leading '/', control characters.
[[nodiscard]] bool is_safe_name(std::string_view name);

/// Writes a temporary file beside the target, syncs, renames. Throws base::UnavailableError.
void write_file(const std::filesystem::path& file, std::string_view bytes);

/// Writes all documents into a folder of their own beside the target and swaps it in. Files in the
/// target that an earlier call did not write stay; those it wrote and this one does not are
/// removed. Throws base::UnavailableError and leaves the target as it was.
void write_folder(const std::filesystem::path& folder, const std::vector<Document>& documents);

}  // namespace seamturn::io
