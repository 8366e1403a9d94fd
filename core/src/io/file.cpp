// SPDX-License-Identifier: MIT
#include "detail_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <system_error>

#include "seamturn/base/error.hpp"
#include "seamturn/io/read.hpp"

namespace seamturn::io {

namespace detail {

void fail_with(const std::string& what,
               const std::filesystem::path& path,
               const std::string& reason) {
  throw base::UnavailableError(what + " " + path.string() + ": " + reason);
}

void fail_with_errno(const std::string& what, const std::filesystem::path& path) {
  fail_with(what, path, std::generic_category().message(errno));
}

Descriptor::~Descriptor() {
  if (is_open()) static_cast<void>(::close(number_));
}

bool Descriptor::close() {
  const int number = number_;
  number_ = -1;
  return ::close(number) == 0;
}

bool write_all(Descriptor& file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(file.number(), bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  // A pipe or terminal cannot be synced and need not be.
  if (::fsync(file.number()) != 0 && errno != EINVAL && errno != EROFS) return false;
  return file.close();
}

void sync_folder(const std::filesystem::path& folder) {
  const std::filesystem::path place = folder.empty() ? "." : folder;
  const Descriptor descriptor(::open(place.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (descriptor.is_open()) static_cast<void>(::fsync(descriptor.number()));
}

}  // namespace detail

std::string read_bytes(const std::filesystem::path& file) {
  const detail::Descriptor descriptor(::open(file.c_str(), O_RDONLY | O_CLOEXEC));
  if (!descriptor.is_open()) detail::fail_with_errno("cannot read", file);
  struct stat info {};
  if (::fstat(descriptor.number(), &info) != 0) detail::fail_with_errno("cannot read", file);
  if (S_ISDIR(info.st_mode)) detail::fail_with("cannot read", file, "it is a folder");
  // A file tells its size, a pipe says 0.
  constexpr std::size_t block_size = std::size_t{1} << 16U;
  const std::size_t size = info.st_size > 0 ? static_cast<std::size_t>(info.st_size) : block_size;
  std::string bytes(std::min(size, detail::largest_file) + 1, '\0');
  std::size_t read = 0;
  // One byte beyond the limit tells "too large" from "just so large", also for a pipe without end.
  const bool ends_as_told = S_ISREG(info.st_mode) && info.st_size > 0;
  while (read <= detail::largest_file && !(ends_as_told && read == size)) {
    if (read == bytes.size()) bytes.resize(bytes.size() + block_size);
    const ssize_t count = ::read(descriptor.number(), bytes.data() + read, bytes.size() - read);
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) detail::fail_with_errno("cannot read", file);
    if (count == 0) break;
    read += static_cast<std::size_t>(count);
  }
  bytes.resize(read);
  return bytes;
}

}  // namespace seamturn::io
