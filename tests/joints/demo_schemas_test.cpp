// SPDX-License-Identifier: MIT
// Every file in joints/ is valid by its schema and says whether it is invented.
#include <cstdlib>

#include "joints/demo_files.hpp"
#include "oracle.hpp"

namespace seamturn::tests {

TEST_SUITE("joints/demo_schemas") {
  TEST_CASE("for any file in joints, law: xmllint finds it valid by its schema") {
    const auto files = demo_files();
    REQUIRE(files.size() >= 5);
    for (const fs::path& file : files) {
      const std::string kind = kind_of(io::read_bytes(file));
      INFO(file.string());
      REQUIRE_FALSE(kind.empty());
      const fs::path schema = source_dir / "docs" / "schemas" / (kind + ".xsd");
      const std::string command = "xmllint --noout --nonet --schema '" + schema.string() + "' '" +
                                  file.string() + "' >/dev/null 2>&1";
      CHECK(std::system(command.c_str()) == 0);
    }
  }

  TEST_CASE("for any file in joints, law: it says it is invented, what standards say does not") {
    for (const fs::path& file : demo_files()) {
      INFO(file.string());
      const bool invented = io::read_bytes(file).find("invented=\"yes\"") != std::string::npos;
      const bool is_of_standards =
          file.filename() == "standards.xml" || file.filename() == "steels.xml";
      CHECK(invented != is_of_standards);
    }
  }
}

}  // namespace seamturn::tests
