// SPDX-License-Identifier: MIT
// One mistake at a time in a good weldment, library or cell: one finding, in the file and at the
// place of the mistake.
#include <doctest/doctest.h>

#include <algorithm>

#include "io/temporary_folder.hpp"
#include "process.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/io/read.hpp"

namespace seamturn::tests {

namespace {

const char* const weldment = "tee.xml";
const char* const library = "library/standards.xml";
const char* const cell = "cells/table.xml";

struct Mistake {
  const char* from;  ///< text of the good file, its first occurrence
  const char* to;
  const char* code;
  const char* at;  ///< the finding stands at the first occurrence of this; null: not looked at
};

const Mistake weldment_mistakes[] = {
    {"1.0", "1", "read.schema.malformed", "1\" title"},
    {"1.0", "2.0", "read.schema.newer_major", "2.0"},
    {" xmlns=\"urn:seamturn:weldment:1\"", "", "read.namespace.wrong", "weldment schema"},
    {"2026-11-02", "2026-02-29", "read.date.malformed", "2026-02-29"},
    {"2026-11-02", "2 Nov 2026", "read.date.malformed", "2 Nov"},
    {"20 degC", "20 mm", "read.unit.wrong_dimension", "20 mm"},
    {"20 degC", "200 degC", "read.value.out_of_range", "200 degC"},
    {"invented=\"yes\"", "invented=\"maybe\"", "read.word.unknown", "maybe"},
    {"<use cell",
     "<use cell=\"./cells/table.xml\"/><use cell",
     "read.use.two_cells",
     "cells/table.xml\"/>\n"},
    {"<use cell", "<use library=\"./library/standards.xml\"/><use cell", "read.use.twice", "./lib"},
    {"<use cell", "<use/><use cell", "read.use.unclear", "use/>"},
    {"<use cell", "<use library=\"a\" cell", "read.use.unclear", "use library=\"a\""},
    {"\"library/", "\"/library/", "read.use.absolute", "/library/"},
    {"\"library/", "\"libary/", "read.file.unavailable", "libary/"},
    {"\"cells/table.xml", "\"cells", "read.file.unavailable", "cells"},
    {"<use library=\"library/standards.xml\"/>", "", "read.use.no_library", "weldment xmlns"},
    {"400 x 300 mm", "400 mm", "read.number.count", "400 mm"},
    {"400 x 300 mm", "400 x 300 x 5 mm", "read.unit.unknown", "400 x 300"},
    {"400 x 300 mm", "400 x 300.5.5 mm", "read.number.malformed", "400 x 300"},
    {"400 x 300 mm", "400 x 200000 mm", "read.value.out_of_range", "400 x 200000"},
    {"stand=\"y\"", "stand=\"up\"", "read.word.unknown", "up\""},
    {"stand=\"y\"", "stand=\"y\" swing=\"361 deg\"", "read.value.out_of_range", "361"},
    {"id=\"web\"", "id=\"we b\"", "read.id.malformed", "we b"},
    {"<setup",
     "<ring id=\"web\" steel=\"S355J2\" outer=\"50 mm\" inner=\"0 mm\" thickness=\"9 mm\" at=\"0 0 "
     "9 "
     "m\"/><setup",
     "read.id.duplicate",
     "web\" steel=\"S355J2\" outer"},
    {"<setup",
     "<tube id=\"t\" steel=\"S355J2\" outer=\"50 mm\" wall=\"26 mm\" length=\"1 m\" at=\"0 0 9 "
     "m\"/><setup",
     "read.tube.wall",
     "26 mm"},
    {"<setup",
     "<ring id=\"r\" steel=\"S355J2\" outer=\"50 mm\" inner=\"50 mm\" thickness=\"9 mm\" at=\"0 0 "
     "9 m\"/><setup",
     "read.ring.inner",
     "50 mm\" thickness"},
    {"<setup",
     "<ring id=\"r\" steel=\"S355J2\" outer=\"50 mm\" inner=\"0 mm\" thickness=\"9 mm\" at=\"0 0 9 "
     "m\" "
     "along=\"0 0 0\"/><setup",
     "read.direction.zero",
     "0 0 0\"/>"},
    {"<fixture mass=\"85 kg\"", "<fixture mass=\"-1 kg\"", "read.value.out_of_range", "-1 kg"},
    {"<fixture mass=\"85 kg\"", "<fixture", "read.attribute.missing", "fixture centre"},
    {"<batch",
     "<setup id=\"b\" part-at=\"0 0 0 mm\"/><batch",
     "read.element.repeated",
     "setup id=\"b\""},
    {"<batch", "<batch parts=\"1\"/><batch", "read.element.repeated", "batch parts=\"10\""},
    {"parts=\"10\"", "parts=\"2.5\"", "read.number.not_whole", "2.5\"/>"},
    {"parts=\"10\"", "parts=\"10 kg\"", "read.number.malformed", "10 kg"},
    {"type=\"tee\"", "type=\"seat\"", "read.word.unknown", "seat"},
    {"\"base web\"", "\"base base\"", "read.joint.members", "base base"},
    {"\"base web\"", "\"base web web\"", "read.joint.members", "base web web"},
    {"\"base web\"", "\"base wed\"", "read.member.unknown", "base wed"},
    {"\"J2\"", "\"J.2\"", "read.id.malformed", "J.2"},
    {"\"J2\"",
     "\"J1\"",
     "read.id.duplicate",
     "J1\" type=\"tee\" members=\"base web\" quality=\"C\" after"},
    {"after=\"J1\"", "after=\"J2\"", "read.after.cycle", "J2\">"},
    {"after=\"J1\"", "after=\"J1 J3\"", "read.joint.unknown", "J1 J3"},
    {"after=\"J1\"", "wire=\"W1\"", "read.wire.unknown", "W1\">"},
    {"after=\"J1\"", "root=\"open\"", "read.joint.root_of_fillet", "open"},
    {"after=\"J1\"", "preheat-reason=\"x\"", "read.joint.preheat_reason", "x\">"},
    {"after=\"J1\"", "preheat=\"600 degC\" preheat-reason=\"x\"", "read.value.out_of_range", "600"},
    {"after=\"J1\"",
     "preheat=\"150 degC\" preheat-reason=\"x\" interpass-max=\"150 degC\"",
     "read.joint.interpass",
     "150 degC\">"},
    {"type=\"tee\"", "type=\"butt\"", "read.joint.preparation", "butt"},
    {"<fillet throat=\"6 mm\"/>",
     "<single-v gap=\"1 mm\" root-face=\"1 mm\" angle=\"60 deg\"/>",
     "read.joint.preparation",
     "tee\" members"},
    {"<fillet throat=\"6 mm\"/>",
     "<single-bevel gap=\"0 mm\" root-face=\"1 mm\" angle=\"90 deg\"/>",
     "read.value.out_of_range",
     "90 deg"},
    {"<fillet throat=\"6 mm\"/>",
     "<single-bevel gap=\"0 mm\" root-face=\"1 mm\" angle=\"45 deg\" penetration=\"15.1 mm\"/>",
     "read.joint.penetration",
     "15.1 mm"},
    {"<fillet throat=\"6 mm\"/>",
     "<single-bevel gap=\"0 mm\" root-face=\"1 mm\" angle=\"45 deg\" penetration=\"half\"/>",
     "read.number.malformed",
     "half"},
    {"<fillet throat=\"6 mm\"/>", "<fillet/>", "read.fillet.size", "fillet/>"},
    {"throat=\"6 mm\"", "leg-1=\"6 mm\"", "read.fillet.size", "6 mm"},
    {"throat=\"6 mm\"", "leg-1=\"6 mm\" leg=\"7 mm\"", "read.fillet.size", "6 mm"},
    {"throat=\"6 mm\"", "throat=\"6 mm\" angle=\"59 deg\"", "read.value.out_of_range", "59 deg"},
    {"throat=\"6 mm\"", "throat=\"6 mm\" angle=\"100 deg\"", "read.fillet.angle", "100 deg"},
    {"<fillet throat=\"6 mm\"/>",
     "<fillet throat=\"6 mm\"/><fillet leg=\"6 mm\"/>",
     "read.element.repeated",
     "fillet leg"},
    {"390 157.5 25 mm\"/>", "390 157.5 25 mm\" face=\"1 0 0\"/>", "read.seam.face_along", "1 0 0"},
    {"390 157.5 25 mm\"/>", "390 157.5 25 mm\"><x/></line>", "read.element.unknown", "x/>"},
    {"<line from=\"10 157.5 25 mm\" to=\"390 157.5 25 mm\"/>",
     "<circle centre=\"0 0 0 mm\" axis=\"0 0 1\" radius=\"5 mm\" start=\"0 0 -2\"/>",
     "read.seam.start_along",
     "0 0 -2"},
    {"<line from=\"10 157.5 25 mm\" to=\"390 157.5 25 mm\"/>",
     "<run length=\"0 mm\"/>",
     "read.value.out_of_range",
     "0 mm\"/>\n  </joint>"},
    {"<line from=\"10 157.5 25 mm\" to=\"390 157.5 25 mm\"/>",
     "",
     "read.element.missing",
     "joint id=\"J1\""},
    {"at=\"0 0 0 mm\"/>",
     "at=\"0 0 0 mm\"><analysis c=\"0.15\"/></plate>",
     "read.attribute.missing",
     "analysis c"},
    {"at=\"0 0 0 mm\"/>",
     "at=\"0 0 0 mm\"><analysis c=\"2.2\" mn=\"1\"/></plate>",
     "read.value.out_of_range",
     "2.2"},
};

const Mistake library_mistakes[] = {
    {"<library xmlns=\"urn:seamturn:library:1\"",
     "<libary xmlns=\"urn:seamturn:library:1\"",
     "read.xml.malformed",
     "</library>"},
    {"urn:seamturn:library:1",
     "urn:seamturn:library:2",
     "read.namespace.wrong",
     "urn:seamturn:library:2"},
    {"title=\"Test facts\"", "title=\" \"", "read.attribute.empty", " \" invented"},
    {"efficiency=\"0.95\"", "efficiency=\"1.05\"", "read.value.out_of_range", "1.05"},
    {"efficiency=\"0.95\"", "efficiency=\"0 %\"", "read.value.out_of_range", "0 %"},
    {"efficiency=\"0.95\"", "efficiency=\"95 mm\"", "read.unit.wrong_dimension", "95 mm"},
    {"hydrogen=\"5\"", "hydrogen=\"5 ml\"", "read.number.malformed", "5 ml"},
    {"price=\"1.9 /kg\"", "price=\"1.9\"", "read.unit.missing", "1.9\" source"},
    {"price=\"1.9 /kg\"", "price=\"1.9 /m3\"", "read.unit.wrong_dimension", "1.9 /m3"},
    {"price=\"1.9 /kg\"",
     "prise=\"1.9 /kg\" price=\"1.9 /kg\"",
     "read.attribute.unknown",
     "1.9 /kg"},
    {"process=\"135\"", "process=\"MAG\"", "read.process.malformed", "MAG"},
    {"role=\"single\"", "role=\"singel\"", "read.word.unknown", "singel"},
    {"\"PA PB\"", "\"PA PX\"", "read.word.unknown", "PA PX"},
    {"\"PA PB\"", "\"PA PA\"", "read.word.repeated", "PA PA"},
    {" positions=\"PA PB\"", "", "read.attribute.missing", "settings id"},
    {"\"20 cm/min\"", "\"91 cm/min\"", "read.settings.travel", "91 cm/min"},
    {"\"40 cm/min\"", "\"10 cm/min\"", "read.settings.travel", "10 cm/min"},
    {"push=", "weave-width=\"3 mm\" push=", "read.settings.weave", "3 mm\" push"},
    {"push=\"10 deg\"", "push=\"61 deg\"", "read.value.out_of_range", "61 deg"},
    {"wire=\"W12\"", "wire=\"W21\"", "read.wire.unknown", "W21"},
    {"gas=\"M21\"", "gas=\"M20\"", "read.gas.unknown", "M20"},
    {"transfer=\"spray\"", "transfer=\"spry\"", "read.word.unknown", "spry"},
    {"up-to=\"40 mm\"", "up-to=\"16 mm\"", "read.steel.bands", "16 mm\" yield=\"345"},
    {"yield=\"355 MPa\"", "yield=\"355\"", "read.unit.missing", "355\" c"},
    {" interpass-source=\"test\"", "", "read.attribute.missing", "steel id"},
    {"status=\"verified\"", "status=\"certain\"", "read.word.unknown", "certain"},
    {" c=\"0.20\"", "", "read.attribute.missing", "band up-to"},
    {" leg-max=\"10 mm\"", "", "read.bead_limit.empty", "bead-limit id"},
    {"gas-loss=\"1.1\"", "gas-loss=\"0.9\"", "read.value.out_of_range", "0.9\"\n"},
    {"time-band=\"10 %\"", "time-band=\"100 %\"", "read.value.out_of_range", "100 %"},
    {"<gas ", "<flux/><gas ", "read.element.unknown", "flux"},
    {"<gas ",
     "<gas id=\"M21\" designation=\"a\" price=\"1 /m3\" source=\"a\" status=\"proposed\"/><gas ",
     "read.id.duplicate",
     "M21\" designation=\"ISO"},
    {"</library>",
     "<rates currency=\"EUR\" labour=\"42 /h\" cell=\"65 /h\" energy=\"0.22 /kWh\" "
     "power-source-efficiency=\"0.85\" gas-loss=\"1.1\" gas-pre-post-flow=\"1.5 s\" "
     "setup-per-batch=\"3 h\" time-band=\"10 %\" consumption-band=\"8 %\" "
     "source=\"test\"/></library>",
     "read.rates.repeated",
     "rates currency=\"EUR\" labour=\"42 /h\" cell=\"65 /h\" energy=\"0.22 /kWh\" "
     "power-source-efficiency=\"0.85\" gas-loss=\"1.1\" gas-pre-post-flow=\"1.5 s\" "
     "setup-per-batch=\"3 h\""},
    {"</library>",
     "<fit-up id=\"F1\" gap-minus=\"1 mm\" gap-plus=\"1 mm\" root-face-minus=\"0 mm\" "
     "root-face-plus=\"1 mm\" angle-minus=\"3 deg\" angle-plus=\"5 deg\" size-minus=\"0 "
     "mm\" size-plus=\"1 mm\" source=\"test\" status=\"proposed\"/>"
     "<fit-up id=\"F1\" gap-minus=\"2 mm\" gap-plus=\"1 mm\" root-face-minus=\"0 mm\" "
     "root-face-plus=\"1 mm\" angle-minus=\"3 deg\" angle-plus=\"5 deg\" size-minus=\"0 "
     "mm\" size-plus=\"1 mm\" source=\"test\" status=\"proposed\"/>"
     "</library>",
     "read.fit_up.repeated",
     "F1\" gap-minus=\"2 mm"},
    {"</library>",
     "<fit-up id=\"F1\" gap-minus=\"1 mm\" gap-plus=\"-1 mm\" root-face-minus=\"0 mm\" "
     "root-face-plus=\"1 mm\" angle-minus=\"3 deg\" angle-plus=\"5 deg\" size-minus=\"0 "
     "mm\" size-plus=\"1 mm\" source=\"test\" status=\"proposed\"/>"
     "</library>",
     "read.value.out_of_range",
     "-1 mm\" root-face-minus"},
    {"</library>",
     "<preparation-range id=\"P1\" preparation=\"single-v\" sides=\"one\" gap-min=\"4 mm\" "
     "gap-max=\"3 mm\" source=\"test\" status=\"proposed\"/></library>",
     "read.range.limits",
     "preparation-range id=\"P1\""},
};

const Mistake cell_mistakes[] = {
    {"</cell>", "", "read.xml.malformed", nullptr},
    {"<cell ", "<!DOCTYPE cell><cell ", "read.xml.doctype", "<!DOCTYPE"},
    {"schema=\"1.0\"", "schema=\"3.0\"", "read.schema.newer_major", "3.0"},
    {"min=\"-15 deg\"", "min=\"135 deg\"", "read.axis.limits", "135 deg\" max"},
    {"min=\"-15 deg\"", "endless=\"no\"", "read.attribute.missing", "axis name"},
    {"max=\"135 deg\"", "max=\"135\"", "read.unit.missing", "135\" speed"},
    {"name=\"rotate\" min=\"-370 deg\"",
     "name=\"rotate\" endless=\"yes\"",
     "read.axis.limits",
     "370 deg"},
    {"<axis name=\"tilt\"",
     "<axis name=\"turn\"",
     "read.positioner.axes read.word.unknown",
     nullptr},
    {"rolling-speed-max=\"20 deg/s\"",
     "rolling-speed-max=\"26 deg/s\"",
     "read.positioner.rolling_speed",
     "26 deg/s"},
    {"load-max=\"2000 kg\"", "load-max=\"0 kg\"", "read.value.out_of_range", "0 kg"},
    {" load-max=\"2000 kg\"", "", "read.attribute.missing", "positioner id"},
    {"touches-per-seam=\"3\"", "touches-per-seam=\"-1\"", "read.value.out_of_range", "-1\""},
    {"home=\"-1600 0 1900 mm\"", "home=\"-1600 1900 mm\"", "read.number.count", "-1600 1900"},
    {"kind=\"tilt-rotate\"", "kind=\"tilt-rotat\"", "read.word.unknown", "tilt-rotat"},
    {"<torch id=\"B1\" nozzle-diameter=\"16 mm\"/>", "", "read.element.missing", "cell xmlns"},
    {"<torch ",
     "<torch id=\"B0\" nozzle-diameter=\"16 mm\"/><torch ",
     "read.element.repeated",
     "torch id=\"B1\""},
};

/// "line:column" of an offset, counted here and not by the code under test; the files are ASCII.
std::string place_of(const std::string& text, std::size_t offset) {
  const auto from = text.begin();
  const auto at = from + static_cast<std::ptrdiff_t>(offset);
  const auto line = std::count(from, at, '\n') + 1;
  const std::size_t start = offset == 0 ? std::string::npos : text.rfind('\n', offset - 1);
  const std::size_t column = start == std::string::npos ? offset + 1 : offset - start;
  return std::to_string(line) + ":" + std::to_string(column);
}

void copy_good_files(const std::filesystem::path& folder) {
  for (const char* file : {weldment, library, cell}) {
    put(folder / file, text_of(repository() / "tests/good" / file));
  }
}

std::vector<base::Finding> findings_in(const std::filesystem::path& folder) {
  try {
    return io::read_inputs(folder / weldment).findings;
  } catch (const base::InputError& error) {
    return error.findings();
  }
}

void check_mistake(const Mistake& mistake, const char* file) {
  CAPTURE(std::string(mistake.to));
  const TemporaryFolder folder;
  copy_good_files(folder.path());
  std::string text = got(folder.path() / file);
  const std::size_t where = text.find(mistake.from);
  REQUIRE(where != std::string::npos);
  text.replace(where, std::string(mistake.from).size(), mistake.to);
  put(folder.path() / file, text);

  std::string codes;
  const std::vector<base::Finding> findings = findings_in(folder.path());
  for (const base::Finding& finding : findings) {
    CAPTURE(base::finding_text(finding));
    CHECK(finding.text.find("expected") != std::string::npos);
    CHECK(finding.place.file == (folder.path() / file).string());
  }
  for (const base::Finding& finding : findings) {
    codes += (codes.empty() ? "" : " ") + finding.code;
  }
  CHECK(base::has_errors(findings));
  CHECK(codes == mistake.code);
  if (mistake.at == nullptr) return;
  REQUIRE(text.find(mistake.at) != std::string::npos);
  REQUIRE(!findings.empty());
  const base::Place& place = findings.front().place;
  CHECK(std::to_string(place.line) + ":" + std::to_string(place.column) ==
        place_of(text, text.find(mistake.at)));
}

}  // namespace

TEST_SUITE("io/mistakes") {
  TEST_CASE("for any single mistake in a weldment, law: one finding at its place") {
    for (const Mistake& mistake : weldment_mistakes) check_mistake(mistake, weldment);
  }

  TEST_CASE("for any single mistake in a library, law: one finding at its place in the library") {
    for (const Mistake& mistake : library_mistakes) check_mistake(mistake, library);
  }

  TEST_CASE("for any single mistake in a cell, law: one finding at its place in the cell") {
    for (const Mistake& mistake : cell_mistakes) check_mistake(mistake, cell);
  }

  TEST_CASE("given mistakes in all three files, all are told at once, file by file") {
    const TemporaryFolder folder;
    copy_good_files(folder.path());
    const auto replace = [&](const char* file, const std::string& from, const std::string& to) {
      std::string text = got(folder.path() / file);
      text.replace(text.find(from), from.size(), to);
      put(folder.path() / file, text);
    };
    replace(weldment, "throat=\"6 mm\"", "throat=\"6\"");
    replace(library, "efficiency=\"0.95\"", "efficiency=\"1.05\"");
    replace(cell, "load-max=\"2000 kg\"", "load-max=\"2000\"");
    std::string text;
    for (const base::Finding& finding : findings_in(folder.path())) {
      text +=
          std::filesystem::path(finding.place.file).filename().string() + " " + finding.code + ", ";
    }
    CHECK(text ==
          "tee.xml read.unit.missing, standards.xml read.value.out_of_range, "
          "table.xml read.unit.missing, ");
  }

  TEST_CASE("given a mistyped name, the finding suggests the nearest that is known") {
    const TemporaryFolder folder;
    copy_good_files(folder.path());
    std::string text = got(folder.path() / weldment);
    text.replace(text.find("members=\"base web\""), 18, "members=\"base wep\"");
    text.replace(text.find("throat"), 6, "throta");
    put(folder.path() / weldment, text);
    std::string told;
    for (const base::Finding& finding : findings_in(folder.path())) told += finding.text + "\n";
    CHECK(told.find("did you mean \"web\"?") != std::string::npos);
    CHECK(told.find("did you mean \"throat\"?") != std::string::npos);
  }

  TEST_CASE("refuses a value of 1 MB quickly because no value of ours is so long") {
    const TemporaryFolder folder;
    copy_good_files(folder.path());
    std::string text = got(folder.path() / weldment);
    text.replace(text.find("Test tee"), 8, std::string(std::size_t{1} << 20U, '7'));
    put(folder.path() / weldment, text);
    const auto findings = findings_in(folder.path());
    REQUIRE(findings.size() == 1);
    CHECK(findings.front().code == "read.attribute.too_long");
    CHECK(findings.front().excerpt.size() < 400);
  }

  TEST_CASE("for any damage to the three files, law: findings or a reading, never anything else") {
    base::Random random(base::named_seed(20261125, "io/mistakes damage"));
    const TemporaryFolder folder;
    const std::string pieces = "<>&\"'/!-?=; a0x.\n\xC3";
    int refused = 0;
    for (int round = 0; round < 600; ++round) {
      copy_good_files(folder.path());
      const char* files[] = {weldment, weldment, library, cell};
      const char* file = files[random.below(4)];
      std::string text = got(folder.path() / file);
      const std::size_t changes = 1 + random.below(3);
      for (std::size_t i = 0; i < changes; ++i) {
        const std::size_t place = random.below(text.size());
        switch (random.below(4)) {
          case 0:
            text[place] = pieces[random.below(pieces.size())];
            break;
          case 1:
            text.erase(place, 1 + random.below(30));
            break;
          case 2:
            text.insert(place, text.substr(random.below(text.size()), random.below(60)));
            break;
          default:
            text[place] = static_cast<char>('0' + random.below(10));
        }
      }
      put(folder.path() / file, text);
      CAPTURE(text);
      const auto findings = findings_in(folder.path());  // anything else thrown fails the test
      if (base::has_errors(findings)) ++refused;
    }
    CHECK(refused > 300);
    CHECK(refused < 600);
  }
}

}  // namespace seamturn::tests
