// SPDX-License-Identifier: MIT
#include <fcntl.h>
#include <stdio.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <set>
#include <string>

#include "detail_file.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/io/output.hpp"
#include "seamturn/io/read.hpp"

namespace seamturn::io {

namespace fs = std::filesystem;

namespace {

using detail::Descriptor;
using detail::fail_with;
using detail::fail_with_errno;

constexpr std::string_view list_name = "written.txt";
constexpr std::string_view list_head =
    "# Files written by seamturn. The next call replaces or removes these and touches no others.\n";

/// A folder of its own beside the target, gone when the call ends.
class Stage {
 public:
  explicit Stage(const fs::path& target) {
    std::string pattern =
        (target.parent_path() / ("." + target.filename().string() + ".XXXXXX")).string();
    if (::mkdtemp(pattern.data()) == nullptr) fail_with_errno("cannot write beside", target);
    path_ = pattern;
    struct stat info {};
    const mode_t mode = ::stat(target.c_str(), &info) == 0 ? info.st_mode & 07777U : mode_t{0755};
    static_cast<void>(::chmod(path_.c_str(), mode));  // mkdtemp makes 0700
  }
  Stage(const Stage&) = delete;
  Stage& operator=(const Stage&) = delete;
  ~Stage() {
    std::error_code none;
    fs::remove_all(path_, none);
  }
  [[nodiscard]] const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

void make_folders(const fs::path& folder) {
  std::error_code why;
  fs::create_directories(folder, why);
  if (why) fail_with("cannot make folder", folder, why.message());
}

void write_new(const fs::path& file, std::string_view bytes) {
  make_folders(file.parent_path());
  Descriptor descriptor(::open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0644));
  if (!descriptor.is_open() || !detail::write_all(descriptor, bytes)) {
    fail_with_errno("cannot write", file);
  }
}

/// Names an earlier call wrote; what is no safe name was put there by someone else and is ignored.
std::set<std::string> names_written_before(const fs::path& target) {
  std::set<std::string> names;
  const fs::path list = target / list_name;
  std::error_code none;
  if (!fs::is_regular_file(list, none)) return names;
  const std::string text = read_bytes(list);
  std::size_t from = 0;
  while (from < text.size()) {
    const std::size_t end = std::min(text.find('\n', from), text.size());
    const std::string name = text.substr(from, end - from);
    if (!name.starts_with('#') && is_safe_name(name)) names.insert(name);
    from = end + 1;
  }
  names.insert(std::string(list_name));
  return names;
}

/// Does the target hold anything that no earlier call wrote?
bool holds_other_files(const fs::path& target, const std::set<std::string>& ours) {
  std::error_code why;
  fs::recursive_directory_iterator at(target, why);
  const fs::recursive_directory_iterator end;
  for (; !why && at != end; at.increment(why)) {
    const bool folder = at->is_directory() && !at->is_symlink();
    const std::string name = at->path().lexically_relative(target).generic_string();
    std::error_code none;
    if (folder ? fs::is_empty(at->path(), none) : !ours.contains(name)) return true;
  }
  if (why) fail_with("cannot read folder", target, why.message());
  return false;
}

/// The whole folder at once: nobody ever sees half of it.
void swap_in(const fs::path& stage, const fs::path& target) {
  if (::renameat2(AT_FDCWD, stage.c_str(), AT_FDCWD, target.c_str(), RENAME_EXCHANGE) == 0) return;
  const fs::path aside = stage.string() + ".old";
  if (::rename(target.c_str(), aside.c_str()) != 0) fail_with_errno("cannot replace", target);
  if (::rename(stage.c_str(), target.c_str()) != 0) {
    const int reason = errno;
    static_cast<void>(::rename(aside.c_str(), target.c_str()));
    errno = reason;
    fail_with_errno("cannot replace", target);
  }
  static_cast<void>(::rename(aside.c_str(), stage.c_str()));
}

/// Moves file by file; undoes every move when one fails. For a folder people keep other things in,
/// or stand in: it stays the same folder.
class Moves {
 public:
  Moves() = default;
  Moves(const Moves&) = delete;
  Moves& operator=(const Moves&) = delete;
  ~Moves() {
    if (kept_) return;
    for (auto move = done_.rbegin(); move != done_.rend(); ++move) {
      static_cast<void>(::rename(move->to.c_str(), move->from.c_str()));
    }
    std::error_code none;
    for (auto folder = made_.rbegin(); folder != made_.rend(); ++folder) fs::remove(*folder, none);
  }
  void move(const fs::path& from, const fs::path& to) {
    folders_for(to);
    if (::rename(from.c_str(), to.c_str()) != 0) fail_with_errno("cannot replace", to);
    done_.push_back(Move{from, to});
  }
  void keep() { kept_ = true; }

 private:
  struct Move {
    fs::path from;
    fs::path to;
  };
  void folders_for(const fs::path& file) {
    std::vector<fs::path> missing;
    std::error_code none;
    for (fs::path at = file.parent_path(); !fs::exists(fs::symlink_status(at, none));
         at = at.parent_path()) {
      missing.push_back(at);
    }
    for (auto folder = missing.rbegin(); folder != missing.rend(); ++folder) {
      make_folders(*folder);
      made_.push_back(*folder);
    }
  }
  std::vector<Move> done_;
  std::vector<fs::path> made_;
  bool kept_ = false;
};

/// A link inside the target would lead writing out of it.
void refuse_links(const fs::path& target, const std::string& name) {
  fs::path at = target;
  std::error_code none;
  for (const fs::path& part : fs::path(name).parent_path()) {
    at /= part;
    if (fs::is_symlink(fs::symlink_status(at, none)))
      fail_with("cannot write through", at, "it is a link");
  }
}

void move_in(const fs::path& stage,
             const fs::path& target,
             const std::set<std::string>& before,
             const std::set<std::string>& now) {
  const fs::path aside = stage / ".replaced";  // on the same disk, gone with the stage
  std::error_code none;
  Moves moves;
  std::set<std::string> leaving = before;
  leaving.insert(now.begin(), now.end());
  for (const std::string& name : leaving) {
    refuse_links(target, name);
    const fs::file_status status = fs::symlink_status(target / name, none);
    if (!fs::exists(status)) continue;
    if (fs::is_directory(status)) {
      if (!now.contains(name)) continue;
      fail_with("cannot write", target / name, "it is a folder");
    }
    moves.move(target / name, aside / name);
  }
  for (const std::string& name : now) moves.move(stage / name, target / name);
  moves.keep();
  for (const std::string& name : before) {
    // Folders that held only what has gone.
    for (fs::path at = fs::path(name).parent_path(); !at.empty(); at = at.parent_path()) {
      fs::remove(target / at, none);  // refuses a folder that is not empty
    }
  }
}

}  // namespace

void write_folder(const fs::path& folder, const std::vector<Document>& documents) {
  std::set<std::string> names;
  for (const Document& document : documents) {
    SEAMTURN_REQUIRE(is_safe_name(document.name) && document.name != list_name, document.name);
    SEAMTURN_REQUIRE(names.insert(document.name).second, document.name);
  }
  std::error_code why;
  fs::path target = fs::weakly_canonical(fs::absolute(folder), why);
  if (why) fail_with("cannot write", folder, why.message());
  if (!target.has_filename()) target = target.parent_path();
  const fs::file_status status = fs::status(target, why);
  if (fs::exists(status) && !fs::is_directory(status))
    fail_with("cannot write", target, "it is no folder");
  make_folders(target.parent_path());

  const Stage stage(target);
  std::string list(list_head);
  for (const std::string& name : names) list += name + '\n';
  for (const Document& document : documents)
    write_new(stage.path() / document.name, document.bytes);
  write_new(stage.path() / list_name, list);
  names.insert(std::string(list_name));

  const std::set<std::string> before = names_written_before(target);
  if (!fs::exists(status)) {
    if (::rename(stage.path().c_str(), target.c_str()) != 0)
      fail_with_errno("cannot write", target);
  } else if (holds_other_files(target, before) || fs::equivalent(target, fs::path("."), why)) {
    move_in(stage.path(), target, before, names);
  } else {
    swap_in(stage.path(), target);
  }
  detail::sync_folder(target.parent_path());
}

}  // namespace seamturn::io
