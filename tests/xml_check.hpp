// SPDX-License-Identifier: MIT
// Judging our XML with somebody else's parser.
#pragma once

#include <doctest/doctest.h>

#include <cstdlib>
#include <string>

#include "scratch.hpp"

namespace seamturn::tests {

/// What xmllint says against docs/schemas/<schema>; empty when the document is valid. A missing
/// xmllint is said too, so that no test passes without it.
inline std::string schema_verdict(const std::string& schema,
                                  const std::string& xml,
                                  const std::string& scratch_name) {
  const std::filesystem::path folder = scratch_folder(scratch_name);
  write_bytes(folder / "document.xml", xml);
  const std::string command = "xmllint --noout --schema '" SEAMTURN_SOURCE_DIR "/docs/schemas/" +
                              schema + "' '" + (folder / "document.xml").string() + "' > '" +
                              (folder / "verdict.txt").string() + "' 2>&1";
  const int result = std::system(command.c_str());
  return result == 0
             ? std::string()
             : "result " + std::to_string(result) + ": " + file_bytes(folder / "verdict.txt");
}

/// What xmllint says against the rules of XML alone; empty when the text is well-formed.
inline std::string form_verdict(const std::string& xml, const std::string& scratch_name) {
  const std::filesystem::path folder = scratch_folder(scratch_name);
  write_bytes(folder / "document.xml", xml);
  const std::string command = "xmllint --noout '" + (folder / "document.xml").string() + "' > '" +
                              (folder / "verdict.txt").string() + "' 2>&1";
  const int result = std::system(command.c_str());
  return result == 0
             ? std::string()
             : "result " + std::to_string(result) + ": " + file_bytes(folder / "verdict.txt");
}

/// How often a piece of text stands in another.
inline std::size_t count_of(const std::string& text, const std::string& piece) {
  std::size_t count = 0;
  for (std::size_t at = text.find(piece); at != std::string::npos;
       at = text.find(piece, at + piece.size())) {
    ++count;
  }
  return count;
}

}  // namespace seamturn::tests
