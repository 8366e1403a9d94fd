// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include "build_folder.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/plugin_host/plugin_host.hpp"

namespace seamturn::plugin_host {

namespace {

PluginHost sound_host() {
  return PluginHost({tests::fixture_folder() / "sound"});
}

/// The text of the UnavailableError that `call` throws; empty when it throws none.
template <class Call>
std::string refusal(const Call& call) {
  try {
    call();
  } catch (const base::UnavailableError& error) {
    return error.what();
  }
  return {};
}

void check_text(const std::string& text, const std::vector<std::string>& parts) {
  INFO(text);
  for (const std::string& part : parts) {
    INFO(part);
    CHECK(text.find(part) != std::string::npos);
  }
}

}  // namespace

TEST_SUITE("plugin_host/calls") {
  TEST_CASE("given a writer by the shim, names and bytes come through as written") {
    const PluginHost host = sound_host();
    const std::string plan("<plan>\0\xc3\xa4</plan>", 16);
    CHECK(host.document_names("good", plan) == std::vector<std::string>{"a.txt", "sub/b.txt"});
    CHECK(host.write_document("good", plan, "sub/b.txt") == "sub/b.txt: " + plan);
    CHECK(host.document_names("good", "<nothing/>").empty());
  }

  TEST_CASE("given a writer in plain C, bytes in pieces and zeros come through") {
    const PluginHost host = sound_host();
    CHECK(host.document_names("plain-c", "") == std::vector<std::string>{"c.bin"});
    CHECK(host.write_document("plain-c", "", "c.bin") == std::string("\0\xff"
                                                                     "end",
                                                                     5));
    check_text(refusal([&] { (void)host.write_document("plain-c", "", "d"); }),
               {"plain-c", "plain_c.so", "only c.bin is written"});
  }

  TEST_CASE(
      "refuses an unknown id because nobody writes it, naming what there is and was searched") {
    const PluginHost host = sound_host();
    check_text(refusal([&] { (void)host.document_names("bad", ""); }),
               {"\"bad\"", "good, plain-c, refuses, throws", "sound"});
    check_text(refusal([] { (void)PluginHost({}).document_names("bad", ""); }),
               {"loaded: none", "folders searched: none"});
  }

  TEST_CASE("refuses with the plugin's own words on one line because it said no") {
    const PluginHost host = sound_host();
    check_text(refusal([&] { (void)host.document_names("refuses", "<plan/>"); }),
               {"plugin refuses (", "refuses.so): this plan has no seams"});
    check_text(refusal([&] { (void)host.write_document("refuses", "<plan/>", "a"); }),
               {"exception of unknown type"});
  }

  TEST_CASE("refuses with a reason when a plugin lets exceptions out or gives no reason") {
    const PluginHost host = sound_host();
    check_text(refusal([&] { (void)host.document_names("throws", "<plan/>"); }),
               {"let an exception out: list is out of order"});
    check_text(refusal([&] { (void)host.write_document("throws", "<plan/>", "a"); }),
               {"let an exception of unknown type out"});
    check_text(refusal([&] { (void)host.document_names("throws", ""); }), {"result -3"});
  }

  TEST_CASE(
      "refuses names that lead out of the folder or stand twice because they would overwrite") {
    const PluginHost host = sound_host();
    check_text(refusal([&] { (void)host.document_names("good", "<unsafe/>"); }),
               {"../outside.txt"});
    check_text(refusal([&] { (void)host.document_names("good", "<twice/>"); }), {"same.txt twice"});
  }

  TEST_CASE("for any host that is gone, law: an error made from a plugin's text stays readable") {
    std::string text;
    try {
      const PluginHost host = sound_host();
      (void)host.document_names("throws", "<plan/>");
    } catch (const std::exception& error) {
      text = error.what();
    }
    check_text(text, {"list is out of order"});
  }
}

}  // namespace seamturn::plugin_host
