// SPDX-License-Identifier: MIT
#include <algorithm>
#include <array>
#include <filesystem>
#include <iterator>
#include <memory_resource>

#include "detail_drafts.hpp"
#include "detail_utf8.hpp"
#include "seamturn/base/same_text.hpp"

namespace seamturn::io::detail {

namespace {

/// "2026-11-25", a day that exists.
bool is_date(const std::string& text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  for (const std::size_t i : {0U, 1U, 2U, 3U, 5U, 6U, 8U, 9U}) {
    if (text[i] < '0' || text[i] > '9') return false;
  }
  const int year = std::stoi(text.substr(0, 4));
  const int month = std::stoi(text.substr(5, 2));
  const int day = std::stoi(text.substr(8, 2));
  constexpr std::array<int, 12> days = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  if (year < 1 || month < 1 || month > 12 || day < 1) return false;
  const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
  return day <= days[static_cast<std::size_t>(month - 1)] + (leap && month == 2 ? 1 : 0);
}

void read_head(FileContext& context, const Element& root, WeldmentDraft& draft) {
  AttributeReader reader(context, root);
  joint::Weldment& weldment = draft.weldment;
  weldment.title = reader.text("title");
  weldment.revision = reader.text("revision");
  weldment.author = reader.text("author");
  weldment.date = reader.text("date");
  if (!weldment.date.empty() && !is_date(weldment.date)) {
    reader.error(
        "date",
        "read.date.malformed",
        in_quotes(weldment.date) +
            " is no date; expected year-month-day of a day that exists, e.g. \"2026-11-25\"");
  }
  weldment.wire = reader.id("wire");
  weldment.ambient_c = reader.find_quantity("ambient", ranges::ambient).value_or(20.0);
  weldment.invented = reader.find_yes("invented");
  weldment.magnet_handled = reader.find_yes("magnet-handled");
  reader.finish("weldment", draft.weldment.places);
}

void read_use(FileContext& context, const Element& element, WeldmentDraft& draft) {
  AttributeReader reader(context, element);
  const bool library = reader.has("library");
  const bool cell = reader.has("cell");
  const MarkedName name = cell && !library ? MarkedName("cell") : MarkedName("library");
  const std::string file = library || cell ? reader.find_text(name) : "";
  if (library == cell) {
    reader.error(
        "read.use.unclear",
        std::string("<use> names ") + (cell ? "a library and a cell" : "nothing") +
            "; expected one of library=\"...\" and cell=\"...\"; write one <use> for each");
    static_cast<void>(reader.find_text("cell"));
  } else if (std::filesystem::path(file).is_absolute()) {
    reader.error(name.text(),
                 "read.use.absolute",
                 "path " + in_quotes(file) +
                     " found; expected one relative to this file, so that the folder can be moved");
  } else if (library && !file.empty()) {
    draft.libraries.push_back(Use{file, reader.spot("library")});
  } else if (cell && draft.cell) {
    reader.error("cell",
                 "read.use.two_cells",
                 "a second cell " + in_quotes(file) + "; expected at most one; delete one of them");
  } else if (cell && !file.empty()) {
    draft.cell = Use{file, reader.spot("cell")};
  }
  reader.finish();
  check_children(context, element, {});
}

void read_batch(FileContext& context, const Element& element, WeldmentDraft& draft) {
  AttributeReader reader(context, element);
  constexpr int most_parts = 1'000'000;
  draft.weldment.batch.parts = reader.count("parts", 1, most_parts);
  reader.finish("batch", draft.weldment.places);
  check_children(context, element, {});
}

void need_some(
    FileContext& context, const Element& root, bool there, const char* what, const char* example) {
  if (there) return;
  context.report.error(context.spot(root),
                       "read.element.missing",
                       std::string("the weldment has no ") + what +
                           "; expected at least one, e.g. " + example + "; add it");
}

bool is_member(std::string_view name) {
  constexpr std::array<std::string_view, 5> members = {"plate", "tube", "ring", "bar", "forging"};
  return base::is_among(name, members);
}

}  // namespace

namespace {

void taken_already(AttributeReader& reader, std::string_view key, const Spot& first) {
  const std::size_t slash = key.find('/');
  if (slash + 1 == key.size()) return;  // without an id it could not be read
  const base::Place place = first.place();
  reader.error("id",
               "read.id.duplicate",
               std::string(key.substr(0, slash)) + " id " + in_quotes(key.substr(slash + 1)) +
                   " is taken already by " + place.file + " line " + std::to_string(place.line) +
                   "; expected every id once; rename one of them");
}

}  // namespace

bool keep_unique(AttributeReader& reader,
                 std::string_view key,
                 joint::Places& places,
                 const Element& part) {
  if (reader.keep_places(key, places, part)) return true;
  taken_already(reader, key, places.nearest_spot(key, "id"));
  return false;
}

bool finish_unique(AttributeReader& reader,
                   std::string_view kind,
                   std::string_view id,
                   joint::Places& places) {
  reader.finish();
  // One for every row of a library: put together without asking for memory.
  constexpr std::size_t most_are_shorter = 128;
  std::array<std::byte, most_are_shorter> room;
  std::pmr::monotonic_buffer_resource memory(room.data(), room.size());
  std::pmr::string key(&memory);
  key.reserve(kind.size() + 1 + id.size());
  key.append(kind).append(1, '/').append(id);
  return keep_unique(reader, key, places);
}

void read_weldment(FileContext& context, WeldmentDraft& draft) {
  const Element root = context.tree.root();
  read_head(context, root, draft);
  constexpr std::array<std::string_view, 15> known = {"use",
                                                      "plate",
                                                      "tube",
                                                      "ring",
                                                      "bar",
                                                      "forging",
                                                      "setup",
                                                      "stage",
                                                      "lifting",
                                                      "datum",
                                                      "tacking",
                                                      "hand-order",
                                                      "balance",
                                                      "joint",
                                                      "batch"};
  check_children(context, root, known);
  for (const Element& element : root.children()) {
    const std::string_view name = element.name();
    if (name == "use") read_use(context, element, draft);
    if (is_member(name)) read_member(context, element, draft);
    if (name == "setup") read_setup(context, element, draft);
    if (name == "stage") read_stage(context, element, draft);
    if (name == "lifting") read_lifting(context, element, draft);
    if (name == "datum") read_datum(context, element, draft);
    if (name == "hand-order") read_hand_order(context, element, draft);
  }
  const auto joints = root.children("joint");
  draft.joints.reserve(static_cast<std::size_t>(std::distance(joints.begin(), joints.end())));
  for (const Element& element : joints) {
    read_joint(context, element, draft.joints.emplace_back(), draft.weldment.places);
  }
  if (const auto tacking = only_child(context, root, "tacking", Need::may_be_absent)) {
    read_tacking(context, tacking, draft);
  }
  if (const auto balance = only_child(context, root, "balance", Need::may_be_absent)) {
    read_balance(context, balance, draft);
  }
  if (const auto batch = only_child(context, root, "batch", Need::may_be_absent)) {
    read_batch(context, batch, draft);
  }
  const auto children = root.children();
  const bool members = std::any_of(
      children.begin(), children.end(), [](const auto& child) { return is_member(child.name()); });
  need_some(
      context, root, bool(root.child("use")), "library", "<use library=\"library/shop.xml\"/>");
  need_some(context, root, members, "member", "<plate .../>");
  need_some(context, root, bool(root.child("joint")), "joint", "<joint .../>");
  if (draft.cell && !root.child("setup")) {
    context.report.error(draft.cell->spot,
                         "read.setup.missing",
                         "a cell is used, but nothing says how the part sits on its faceplate; "
                         "expected <setup id=\"...\" part-at=\"x y z mm\"/>; add it");
  }
}

}  // namespace seamturn::io::detail
