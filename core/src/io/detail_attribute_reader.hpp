// SPDX-License-Identifier: MIT
// The attributes of one element, each read at most once: present, fully consumed, in the right
// unit, in range. What nobody asked for is reported.
#pragma once

#include <algorithm>
#include <array>
#include <bitset>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "detail_file_context.hpp"
#include "detail_markup_check.hpp"
#include "detail_range.hpp"
#include "seamturn/base/angle.hpp"
#include "seamturn/base/citation.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/geom/vector.hpp"
#include "seamturn/joint/places.hpp"

namespace seamturn::io::detail {

/// Takes the first piece between blanks off a text; empty when none is left.
[[nodiscard]] std::string_view take_piece(std::string_view& text);

/// Every reader reports what is wrong and returns a value that lets reading go on: NaN for numbers,
/// "" for texts. Comparisons with NaN are false, so one mistake makes one finding. `find_...`: the
/// attribute may be absent.
class AttributeReader {
 public:
  AttributeReader(FileContext& context, const Element& element);

  [[nodiscard]] FileContext& context() const { return context_; }
  [[nodiscard]] const Element& element() const { return element_; }

  [[nodiscard]] bool has(MarkedName name) const;
  [[nodiscard]] std::string text(MarkedName name);
  [[nodiscard]] std::string find_text(MarkedName name, std::string_view otherwise = "");
  /// An id: ASCII letters, digits and _ . + -, at most 64, a letter, digit or _ first.
  [[nodiscard]] std::string id(MarkedName name);
  [[nodiscard]] std::string find_id(MarkedName name);
  /// Ids separated by blanks.
  [[nodiscard]] std::vector<std::string> ids(MarkedName name);
  /// Pieces of text separated by blanks.
  [[nodiscard]] std::vector<std::string> pieces(MarkedName name);
  /// Ids separated by blanks; none when absent.
  [[nodiscard]] std::vector<std::string> find_ids(MarkedName name);

  [[nodiscard]] double quantity(MarkedName name, const Range& range);
  [[nodiscard]] std::optional<double> find_quantity(MarkedName name, const Range& range);
  [[nodiscard]] base::Angle angle(MarkedName name, const Range& range);
  [[nodiscard]] base::Angle find_angle(MarkedName name, const Range& range);
  [[nodiscard]] int count(MarkedName name, int least, int most);
  /// Two numbers with one unit, each in range; otherwise both NaN.
  [[nodiscard]] std::array<double, 2> two_quantities(MarkedName name, const Range& range);
  /// Three numbers with one unit, each in range; otherwise all NaN.
  [[nodiscard]] std::array<double, 3> three_quantities(MarkedName name, const Range& range);
  /// Three lengths with one unit.
  [[nodiscard]] geom::Vec3 point(MarkedName name);
  /// Three bare numbers, not all zero; unit length.
  [[nodiscard]] geom::Vec3 direction(MarkedName name);
  [[nodiscard]] std::optional<geom::Vec3> find_direction(MarkedName name);

  /// Index of the word in the list.
  [[nodiscard]] std::size_t word(MarkedName name, std::span<const std::string_view> words);
  [[nodiscard]] std::optional<std::size_t> find_word(MarkedName name,
                                                     std::span<const std::string_view> words);
  /// Several of the words, separated by blanks, each once, as the enumeration that numbers them;
  /// none when absent.
  template <class Word>
  [[nodiscard]] std::vector<Word> find_words(MarkedName name,
                                             std::span<const std::string_view> words);
  /// "yes" or "no"; absent: no.
  [[nodiscard]] bool find_yes(MarkedName name);
  [[nodiscard]] base::Status status(MarkedName name);

  /// The value when the attribute is there, else the element's name.
  [[nodiscard]] Spot spot(std::string_view name) const;
  [[nodiscard]] Spot spot() const;
  void error(std::string_view name, std::string code, std::string text);
  void error(std::string code, std::string text);
  /// An attribute that must not stand here, with the reason.
  void refuse(MarkedName name, const char* code, std::string_view why);

  /// Reports attributes nobody asked for, with the nearest name of those asked for. Last call.
  void finish();
  /// finish() and keep_places().
  void finish(std::string_view key, joint::Places& places);
  /// Where the element and its attributes stand; the attributes of `part` count as its own. False:
  /// something of that key stood before and counts.
  [[nodiscard]] bool keep_places(std::string_view key,
                                 joint::Places& places,
                                 const Element& part = {}) const;

 private:
  static constexpr std::size_t most_asked = 100;  // of one element, by all who read it
  using Attribute = MarkupTree::Attribute;
  /// The first of a name; null when absent.
  [[nodiscard]] const Attribute* find(MarkedName name) const {
    if (!names_.may_hold(name)) return nullptr;
    // People write attributes in the order of the documents, and readers ask for them in that
    // order.
    return next_ != end_ && name.is(next_->name()) ? next_ : seek(name);
  }
  [[nodiscard]] const Attribute* seek(MarkedName name) const;
  /// Same, and from now on attributes of that name may stand here.
  [[nodiscard]] const Attribute* ask(MarkedName name);
  /// Apart, for asking is what readers do most.
  void too_many_asked(MarkedName name) const;
  /// Every name asked for so far, each once.
  [[nodiscard]] std::vector<std::string_view> asked_names() const;
  void missing(MarkedName name, const std::string& expected);
  /// The value when it is more than blanks.
  [[nodiscard]] std::optional<std::string_view> nonempty(const Attribute& attribute);
  [[nodiscard]] std::string checked_id(const Attribute& attribute);
  [[nodiscard]] std::vector<std::string> pieces_of(const Attribute& attribute);
  [[nodiscard]] std::vector<std::string> checked_ids(const Attribute& attribute);
  /// Whether a value in the unit of the range that is not within it is at one of its ends, where
  /// rounding counts; outside: reports.
  [[nodiscard]] bool is_at_limit(const Attribute& attribute, double value, const Range& range);
  [[nodiscard]] double read_quantity(const Attribute& attribute, const Range& range);
  void unknown(const Attribute& attribute);
  void repeated(const Attribute& attribute, std::string_view word);
  [[nodiscard]] Spot spot_of(const Attribute& attribute) const;
  template <std::size_t count>
  [[nodiscard]] std::array<double, count> read_quantities(const Attribute& attribute,
                                                          const Range& range);
  void not_a_quantity(const Attribute& attribute, const base::Refusal& why, const Range& range);
  [[nodiscard]] geom::Vec3 read_direction(const Attribute& attribute);
  [[nodiscard]] std::optional<std::size_t> read_word(const Attribute& attribute,
                                                     std::string_view found,
                                                     std::span<const std::string_view> words);

  FileContext& context_;
  Element element_;
  std::span<const Attribute> attributes_;   // of the element
  NameMarks names_;                         // of these
  std::bitset<most_attributes> was_asked_;  // of these
  const Attribute* next_;                   // most likely the next one asked for
  const Attribute* end_;                    // behind the last
  std::array<MarkedName, most_asked> asked_;
  std::size_t asked_count_ = 0;
};

template <class Word>
std::vector<Word> AttributeReader::find_words(MarkedName name,
                                              std::span<const std::string_view> words) {
  std::vector<Word> found;
  const Attribute* const attribute = ask(name);
  if (attribute == nullptr) return found;
  found.reserve(words.size());
  std::string_view rest = nonempty(*attribute).value_or("");
  for (auto piece = take_piece(rest); !piece.empty(); piece = take_piece(rest)) {
    const std::optional<std::size_t> index = read_word(*attribute, piece, words);
    if (!index) continue;
    const auto word = static_cast<Word>(*index);
    if (std::find(found.begin(), found.end(), word) == found.end()) {
      found.push_back(word);
    } else {
      repeated(*attribute, piece);
    }
  }
  return found;
}

/// Status and source close every row.
template <class Row>
void read_origin(AttributeReader& reader, Row& row) {
  row.source = reader.text("source");
  row.status = reader.status("status");
}

/// Reports children that are none of the known, with the nearest known name.
void check_children(FileContext& context,
                    const Element& element,
                    std::span<const std::string_view> known);
/// The only child of a name. More: reports the second. None: reports when required.
enum class Need { required, may_be_absent };
[[nodiscard]] Element only_child(FileContext& context,
                                 const Element& element,
                                 std::string_view name,
                                 Need need);

/// "; did you mean "web"?" or nothing.
[[nodiscard]] std::string did_you_mean(std::string_view found,
                                       std::span<const std::string_view> known);
/// "a, b or c".
[[nodiscard]] std::string one_of(std::span<const std::string_view> words);

}  // namespace seamturn::io::detail
