// SPDX-License-Identifier: MIT
// Writing of files and folders. Origin of what is expected, beside each case: law, what was written
// is read back by other means and what was not is as it was; published, rules and words of POSIX
// (IEEE Std 1003.1-2017, clauses from memory). Contents and names are the test's own.
#include "seamturn/io/output.hpp"

#include <doctest/doctest.h>
#include <unistd.h>

#include <algorithm>

#include "io/temporary_folder.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/io/read.hpp"

namespace seamturn::tests {

namespace fs = std::filesystem;

namespace {

/// All files below a folder with their contents, sorted; the list of written names left out.
std::string contents(const fs::path& folder) {
  std::vector<std::string> lines;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    const std::string name = entry.path().lexically_relative(folder).generic_string();
    if (name == "written.txt") continue;
    lines.push_back(entry.is_directory() ? name + "/" : name + "=" + got(entry.path()));
  }
  std::sort(lines.begin(), lines.end());
  std::string text;
  for (const std::string& line : lines) text += line + ' ';
  return text;
}

/// What stands beside the target: a stage left behind would show here.
std::string names_in(const fs::path& folder) {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(folder)) names.push_back(entry.path().filename());
  std::sort(names.begin(), names.end());
  std::string text;
  for (const std::string& name : names) text += name + ' ';
  return text;
}

}  // namespace

TEST_SUITE("io/output") {
  TEST_CASE("refuses names that lead out of the folder because a plugin chooses them") {
    // published: POSIX 3.170 filename and 4.13 pathname resolution: an empty component, "." and
    // ".." name no file of their own, a leading slash starts at the root. law: the rest stays
    // below.
    for (const char* name : {"a", "a.xml", "sheets/J1.xml", "a b", "..a", "a..", "\xC3\xA4"}) {
      CAPTURE(name);
      CHECK(io::is_safe_name(name));
    }
    for (const char* name :
         {"", "/a", "a/", "a//b", ".", "..", "../a", "a/../b", "a/.", "a\nb", "a\\b", "\x7F"}) {
      CAPTURE(name);
      CHECK_FALSE(io::is_safe_name(name));
    }
    CHECK_FALSE(io::is_safe_name(std::string_view("a\0b", 3)));
  }

  TEST_CASE("given a file to write, the bytes are there and nothing else is left beside it") {
    // law: bytes read back are those written. published: POSIX open() gives 0666 less the umask
    // 022, and a rename must not change the modes the user chose.
    const TemporaryFolder folder;
    const fs::path file = folder.path() / "a.xml";
    io::write_file(file, "one");
    CHECK(got(file) == "one");
    CHECK((fs::status(file).permissions() & fs::perms::mask) == fs::perms(0644));
    fs::permissions(file, fs::perms(0600));
    io::write_file(file, std::string(100'000, 'x'));
    CHECK(got(file) == std::string(100'000, 'x'));
    CHECK((fs::status(file).permissions() & fs::perms::mask) == fs::perms(0600));
    CHECK(names_in(folder.path()) == "a.xml ");
    fs::create_symlink("a.xml", folder.path() / "link.xml");
    io::write_file(folder.path() / "link.xml", "two");
    CHECK(got(file) == "two");
    CHECK(fs::is_symlink(folder.path() / "link.xml"));
    CHECK(io::read_bytes(file) == "two");
  }

  TEST_CASE("refuses to write where it cannot because the reason must reach the user") {
    // published: POSIX ENOENT, EISDIR, ENOSPC (in words "No space left on device"); /dev/full and
    // /dev/null are devices and stay so.
    const TemporaryFolder folder;
    CHECK_THROWS_AS(io::write_file(folder.path() / "no" / "a", "x"), base::UnavailableError);
    CHECK_THROWS_WITH_AS(io::write_file(folder.path(), "x"),
                         doctest::Contains("it is a folder"),
                         base::UnavailableError);
    CHECK_THROWS_WITH_AS(io::write_file("/dev/full", "x"),
                         doctest::Contains("No space left"),
                         base::UnavailableError);
    CHECK(fs::exists("/dev/full"));
    io::write_file("/dev/null", "x");
    CHECK(fs::is_character_file("/dev/null"));
    CHECK_THROWS_AS(static_cast<void>(io::read_bytes(folder.path() / "no")),
                    base::UnavailableError);
    CHECK_THROWS_AS(static_cast<void>(io::read_bytes(folder.path())), base::UnavailableError);
  }

  TEST_CASE("given a second call with other names, the files of the first that are not named go") {
    // law: the folder holds the names of the last call, whatever calls there were.
    const TemporaryFolder folder;
    const fs::path out = folder.path() / "deep" / "out";
    io::write_folder(out, {{"plan.xml", "1"}, {"sheets/J1.xml", "1"}, {"sheets/J2.xml", "1"}});
    CHECK(contents(out) == "plan.xml=1 sheets/ sheets/J1.xml=1 sheets/J2.xml=1 ");
    io::write_folder(out, {{"plan.xml", "2"}, {"sheets/J2.xml", "2"}});
    CHECK(contents(out) == "plan.xml=2 sheets/ sheets/J2.xml=2 ");
    io::write_folder(out, {{"plan.xml", "3"}});
    CHECK(contents(out) == "plan.xml=3 ");
    CHECK(names_in(out.parent_path()) == "out ");
    CHECK(got(out / "written.txt").ends_with("\nplan.xml\n"));
  }

  TEST_CASE("given files of other people in the folder, they stay as they are") {
    // law: what we did not write is not ours to remove.
    const TemporaryFolder folder;
    const fs::path out = folder.path() / "out";
    io::write_folder(out, {{"plan.xml", "1"}, {"sheets/J1.xml", "1"}, {"old/a", "1"}});
    put(out / "notes.txt", "mine");
    put(out / "sheets" / "mine.txt", "mine");
    fs::create_directory(out / "empty");
    fs::create_symlink("notes.txt", out / "link");
    io::write_folder(out, {{"plan.xml", "2"}, {"new/b", "2"}});
    CHECK(contents(out) ==
          "empty/ link=mine new/ new/b=2 notes.txt=mine plan.xml=2 sheets/ sheets/mine.txt=mine ");
    CHECK(fs::is_symlink(out / "link"));
    CHECK(names_in(folder.path()) == "out ");
    io::write_folder(out, {{"plan.xml", "3"}});
    CHECK(contents(out) ==
          "empty/ link=mine notes.txt=mine plan.xml=3 sheets/ sheets/mine.txt=mine ");
  }

  TEST_CASE("given a list of written names that someone forged, nothing outside is touched") {
    // law: nothing outside the folder changes, whatever the list says.
    const TemporaryFolder folder;
    const fs::path out = folder.path() / "out";
    put(folder.path() / "victim", "x");
    put(out / "written.txt", "../victim\n/etc/passwd\nkept/../../victim\nlink/victim\n");
    io::write_folder(out, {{"plan.xml", "1"}});
    CHECK(got(folder.path() / "victim") == "x");
    fs::create_symlink(folder.path(), out / "link");
    put(out / "written.txt", "link/victim\n");
    CHECK_THROWS_AS(io::write_folder(out, {{"plan.xml", "1"}}), base::UnavailableError);
    CHECK(got(folder.path() / "victim") == "x");
  }

  TEST_CASE("given a failure in the middle, the target is as it was and no stage is left") {
    // law: a call that fails changes nothing: contents before equal contents after.
    const TemporaryFolder folder;
    const fs::path out = folder.path() / "out";
    io::write_folder(out, {{"a", "1"}, {"z", "1"}});
    put(out / "m" / "mine.txt", "mine");  // a folder where a document should go
    const std::string before = contents(out);
    CHECK_THROWS_WITH_AS(io::write_folder(out, {{"a", "2"}, {"m", "2"}, {"z", "2"}}),
                         doctest::Contains("it is a folder"),
                         base::UnavailableError);
    CHECK(contents(out) == before);
    // A document that needs a folder where another document is.
    CHECK_THROWS_AS(io::write_folder(out, {{"q", "2"}, {"q/r", "2"}}), base::UnavailableError);
    CHECK(contents(out) == before);
    // A foreign file where a folder should go.
    put(out / "file", "mine");
    const std::string with_file = contents(out);
    CHECK_THROWS_AS(io::write_folder(out, {{"a", "2"}, {"file/x", "2"}}), base::UnavailableError);
    CHECK(contents(out) == with_file);
    CHECK(names_in(folder.path()) == "out ");
    CHECK_THROWS_AS(io::write_folder(out / "file", {{"a", "2"}}), base::UnavailableError);
    CHECK_THROWS_AS(io::write_folder("/proc/no", {{"a", "2"}}), base::UnavailableError);
    CHECK_THROWS_AS(io::write_folder(out, {{"../a", "2"}}), base::ContractViolation);
    CHECK_THROWS_AS(io::write_folder(out, {{"a", "2"}, {"a", "3"}}), base::ContractViolation);
  }

  TEST_CASE("given the folder one stands in, it stays the same folder") {
    // published: POSIX: a working folder is a file, not a name; std::filesystem::equivalent
    // compares device and file number.
    const TemporaryFolder folder;
    const fs::path before = fs::current_path();
    fs::current_path(folder.path());
    io::write_folder(".", {{"a", "1"}});
    io::write_folder(".", {{"a", "2"}});
    const bool stands = fs::equivalent(fs::current_path(), folder.path());
    const std::string found = got("a");
    fs::current_path(before);
    CHECK(stands);
    CHECK(found == "2");
  }
}

}  // namespace seamturn::tests
