// SPDX-License-Identifier: MIT
// A file descriptor that closes itself, and errors that carry the system's reason.
#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

namespace seamturn::io::detail {

/// Larger files are refused unread. A weldment of a thousand joints has 0.3 MB.
inline constexpr std::size_t largest_file = std::size_t{64} * 1024 * 1024;

/// Throws base::UnavailableError "<what> <path>: <reason of errno>".
[[noreturn]] void fail_with_errno(const std::string& what, const std::filesystem::path& path);
/// Same with a reason given.
[[noreturn]] void fail_with(const std::string& what,
                            const std::filesystem::path& path,
                            const std::string& reason);

class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor();
  [[nodiscard]] int number() const { return number_; }
  [[nodiscard]] bool is_open() const { return number_ >= 0; }
  /// Closes and tells whether that went well: a full disk may show only here.
  [[nodiscard]] bool close();

 private:
  int number_;
};

/// Writes all bytes, syncs and closes; false with errno set when the disk refuses.
[[nodiscard]] bool write_all(Descriptor& file, std::string_view bytes);
/// Makes a rename last: syncs the folder itself. Failure is not an error of the user.
void sync_folder(const std::filesystem::path& folder);

}  // namespace seamturn::io::detail
