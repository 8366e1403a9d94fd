// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include <cstdlib>
#include <map>

#include "build_folder.hpp"
#include "scratch.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/plugin_host/plugin_host.hpp"

namespace seamturn::plugin_host {

namespace {

namespace fs = std::filesystem;
const fs::path fixtures = tests::fixture_folder();

std::map<std::string, Verdict> verdicts_by_name(const PluginHost& host) {
  std::map<std::string, Verdict> by_name;
  for (const Verdict& verdict : host.verdicts()) {
    by_name[verdict.file.filename().string()] = verdict;
  }
  return by_name;
}

void check_reason(const Verdict& verdict, const std::string& part) {
  INFO(verdict.file.string(), ": ", verdict.reason);
  CHECK_FALSE(verdict.loaded);
  CHECK(verdict.reason.find(part) != std::string::npos);
}

}  // namespace

TEST_SUITE("plugin_host/verdicts") {
  TEST_CASE("given a folder of sound plugins, all are loaded in the order of their file names") {
    const PluginHost host({fixtures / "sound"});
    std::vector<std::string> files;
    for (const Verdict& verdict : host.verdicts()) {
      INFO(verdict.file.string(), ": ", verdict.reason);
      CHECK(verdict.loaded);
      CHECK(verdict.kind == "document-writer");
      files.push_back(verdict.file.filename().string());
    }
    CHECK(files == std::vector<std::string>{"good.so", "plain_c.so", "refuses.so", "throws.so"});
    CHECK(host.writer_ids() == std::vector<std::string>{"good", "plain-c", "refuses", "throws"});
    CHECK(host.verdicts()[0].title == "Echo \xc3\xa4");
    CHECK(host.verdicts()[0].version == "1.2");
  }

  TEST_CASE("given a stripped plugin, it is loaded") {
    const PluginHost host({fixtures / "stripped"});
    REQUIRE(host.verdicts().size() == 1);
    INFO(host.verdicts()[0].reason);
    CHECK(host.verdicts()[0].loaded);
  }

  TEST_CASE("refuses every broken plugin with its own reason because the others must go on") {
    const PluginHost host({fixtures / "broken", fixtures / "sound"});
    auto verdicts = verdicts_by_name(host);
    CHECK(verdicts.size() == 18);
    check_reason(verdicts["future_abi.so"], "version 2 of the plugin border");
    check_reason(verdicts["old_abi.so"], "rebuild the plugin");
    check_reason(verdicts["short.so"], "16 bytes");
    check_reason(verdicts["short_writer.so"], "shorter than version 1");
    check_reason(verdicts["gap.so"], "gap");
    check_reason(verdicts["kind.so"], "kind 2");
    check_reason(verdicts["id.so"], "its id");
    check_reason(verdicts["schema.so"], "no version of plan.xml");
    check_reason(verdicts["no_writer.so"], "without its table");
    check_reason(verdicts["null.so"], "no description");
    check_reason(verdicts["entry_throws.so"], "entry out of order");
    check_reason(verdicts["entry_throws_int.so"], "unknown type");
    check_reason(verdicts["unresolved.so"], "seamturn_test_function_nobody_has");
    check_reason(verdicts["no_entry.so"], "does not export");
    CHECK(host.writer_ids().size() == 4);
  }

  TEST_CASE("refuses a library without entry because it is no plugin, and runs nothing of it") {
    unsetenv("SEAMTURN_TEST_NO_ENTRY_RAN");
    const PluginHost host({fixtures / "broken"});
    CHECK(std::getenv("SEAMTURN_TEST_NO_ENTRY_RAN") == nullptr);
  }

  TEST_CASE("refuses the second of two plugins with one id because the first one wins") {
    const PluginHost host({fixtures / "sound", fixtures / "second"});
    const Verdict& last = host.verdicts().back();
    check_reason(last, "id good was taken before by");
    check_reason(last, (fixtures / "sound" / "good.so").string());
    const PluginHost other({fixtures / "second", fixtures / "sound"});
    CHECK(other.verdicts()[0].loaded);
    CHECK(other.verdicts()[0].file.filename() == "again.so");
    CHECK_FALSE(other.verdicts()[1].loaded);
  }

  TEST_CASE("refuses files that are no libraries, whatever their name says") {
    const fs::path folder = tests::scratch_folder("no_libraries");
    tests::write_bytes(folder / "empty.so", "");
    tests::write_bytes(folder / "magic.so",
                       "\x7f"
                       "ELF");
    tests::write_bytes(folder / "text.so", std::string(500, 'x'));
    tests::write_bytes(folder / "ignored.txt", "not looked at");
    fs::create_directory(folder / "folder.so");
    fs::copy_file("/proc/self/exe", folder / "program.so");
    fs::create_symlink(folder / "nowhere", folder / "dangling.so");
    auto verdicts = verdicts_by_name(PluginHost({folder}));
    CHECK(verdicts.size() == 6);
    check_reason(verdicts["empty.so"], "is empty");
    check_reason(verdicts["magic.so"], "shorter than an ELF header");
    check_reason(verdicts["text.so"], "no ELF file");
    check_reason(verdicts["folder.so"], "not a regular file");
    check_reason(verdicts["dangling.so"], "not a regular file");
    check_reason(verdicts["program.so"], "");
  }

  TEST_CASE("for any place at which a plugin is cut short, law: a reason and no crash") {
    const fs::path folder = tests::scratch_folder("truncated");
    const std::string whole = tests::file_bytes(fixtures / "sound" / "good.so");
    REQUIRE(whole.size() > 4000);
    const std::size_t pieces = 40;
    for (std::size_t i = 0; i < pieces; ++i) {
      const std::string name = "cut" + std::to_string(100 + i) + ".so";
      tests::write_bytes(folder / name,
                         std::string_view(whole).substr(0, whole.size() * i / pieces));
    }
    const PluginHost host({folder});
    CHECK(host.verdicts().size() == pieces);
    for (const Verdict& verdict : host.verdicts()) {
      INFO(verdict.file.string());
      CHECK_FALSE(verdict.loaded);
      CHECK_FALSE(verdict.reason.empty());
    }
  }

  TEST_CASE("for any byte of the header set to 255, law: a verdict and no crash in the check") {
    const fs::path folder = tests::scratch_folder("damaged_header");
    const std::string whole = tests::file_bytes(fixtures / "sound" / "good.so");
    // The ELF header only, without the entry address and flags, which the loader does not use.
    for (const std::size_t at : {0U, 4U, 16U, 18U, 32U, 33U, 54U, 56U}) {
      std::string damaged = whole;
      damaged[at] = '\xff';
      tests::write_bytes(folder / ("byte" + std::to_string(at) + ".so"), damaged);
    }
    const PluginHost host({folder});
    CHECK(host.verdicts().size() == 8);
    for (const Verdict& verdict : host.verdicts()) {
      INFO(verdict.file.string());
      CHECK_FALSE(verdict.loaded);
    }
  }

  TEST_CASE("given a folder that does not exist, it is passed over unless required") {
    const fs::path missing = fixtures / "missing";
    CHECK(PluginHost({missing, fixtures / "stripped"}).writer_ids().size() == 1);
    CHECK_THROWS_AS(PluginHost({}, {missing}), base::UnavailableError);
    CHECK_THROWS_AS(PluginHost({}, {fixtures / "sound" / "good.so"}), base::UnavailableError);
    CHECK(PluginHost({}, {fixtures / "stripped"}).writer_ids().size() == 1);
  }

  TEST_CASE("given one folder by two names, its plugins are loaded once") {
    const PluginHost host({fixtures / "stripped", fixtures / "sound" / ".." / "stripped"});
    CHECK(host.verdicts().size() == 1);
  }

  TEST_CASE("given the test program in bin, the install folder is lib/seamturn/plugins beside it") {
    CHECK(installed_plugin_folder() ==
          fs::canonical(tests::build_folder()) / "lib" / "seamturn" / "plugins");
  }
}

}  // namespace seamturn::plugin_host
