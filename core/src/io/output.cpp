// SPDX-License-Identifier: MIT
#include "seamturn/io/output.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cstdlib>

#include "detail_file.hpp"

namespace seamturn::io {

namespace fs = std::filesystem;

namespace {

using detail::Descriptor;
using detail::fail_with;
using detail::fail_with_errno;

constexpr mode_t ordinary_mode = 0644;  // mkostemp makes 0600

/// A device or pipe takes the bytes themselves: renaming over /dev/null would remove it.
void write_into(const fs::path& target, std::string_view bytes) {
  Descriptor file(::open(target.c_str(), O_WRONLY | O_CLOEXEC));
  if (!file.is_open() || !detail::write_all(file, bytes)) fail_with_errno("cannot write", target);
}

mode_t mode_for(const fs::path& target) {
  struct stat info {};
  return ::stat(target.c_str(), &info) == 0 ? info.st_mode & 07777U : ordinary_mode;
}

void replace_file(const fs::path& target, std::string_view bytes) {
  std::string pattern =
      (target.parent_path() / ("." + target.filename().string() + ".XXXXXX")).string();
  Descriptor file(::mkostemp(pattern.data(), O_CLOEXEC));
  if (!file.is_open()) fail_with_errno("cannot write", target);
  const bool written = ::fchmod(file.number(), mode_for(target)) == 0 &&
                       detail::write_all(file, bytes) &&
                       ::rename(pattern.c_str(), target.c_str()) == 0;
  if (!written) {
    const int reason = errno;
    static_cast<void>(::unlink(pattern.c_str()));
    errno = reason;
    fail_with_errno("cannot write", target);
  }
  detail::sync_folder(target.parent_path());
}

}  // namespace

bool is_safe_name(std::string_view name) {
  if (name.empty() || name.size() > 1024) return false;
  std::size_t from = 0;
  while (from <= name.size()) {
    const std::size_t end = std::min(name.find('/', from), name.size());
    const std::string_view part = name.substr(from, end - from);
    if (part.empty() || part == "." || part == ".." || part.size() > 200) return false;
    for (const char c : part) {
      const auto byte = static_cast<unsigned char>(c);
      if (byte < 0x20U || byte == 0x7FU || c == '\\') return false;
    }
    from = end + 1;
  }
  return true;
}

void write_file(const fs::path& file, std::string_view bytes) {
  std::error_code none;
  const fs::file_status status = fs::status(file, none);
  if (fs::is_directory(status)) fail_with("cannot write", file, "it is a folder");
  if (fs::exists(status) && !fs::is_regular_file(status)) return write_into(file, bytes);
  // Through a link the file it names is replaced, not the link.
  const fs::path target =
      fs::is_symlink(fs::symlink_status(file, none)) ? fs::weakly_canonical(file, none) : file;
  replace_file(target.empty() ? file : target, bytes);
}

}  // namespace seamturn::io
