// SPDX-License-Identifier: MIT
// The attributes of one element, each read at most once: present, fully consumed, in the right
// unit, in range. What nobody asked for is reported.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <pugixml.hpp>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "detail_parsed_file.hpp"
#include "detail_range.hpp"
#include "seamturn/base/angle.hpp"
#include "seamturn/base/citation.hpp"
#include "seamturn/geom/vector.hpp"

namespace seamturn::io::detail {

/// Where each described thing stands: "joint/J1", "joint/J1@throat".
using Spots = std::map<std::string, Spot>;

/// Every reader reports what is wrong and returns a value that lets reading go on: NaN for numbers,
/// "" for texts. Comparisons with NaN are false, so one mistake makes one finding. `find_...`: the
/// attribute may be absent.
class AttributeReader {
 public:
  AttributeReader(FileContext& context, const pugi::xml_node& element);

  [[nodiscard]] bool has(const char* name) const;
  [[nodiscard]] std::string text(const char* name);
  [[nodiscard]] std::string find_text(const char* name, const char* otherwise = "");
  /// An id: ASCII letters, digits and _ . + -, at most 64, a letter, digit or _ first.
  [[nodiscard]] std::string id(const char* name);
  [[nodiscard]] std::string find_id(const char* name);
  /// Ids separated by blanks.
  [[nodiscard]] std::vector<std::string> ids(const char* name);
  /// Same; none when absent.
  [[nodiscard]] std::vector<std::string> find_ids(const char* name);

  [[nodiscard]] double quantity(const char* name, const Range& range);
  [[nodiscard]] std::optional<double> find_quantity(const char* name, const Range& range);
  [[nodiscard]] base::Angle angle(const char* name, const Range& range);
  [[nodiscard]] base::Angle find_angle(const char* name, const Range& range);
  [[nodiscard]] int count(const char* name, int least, int most);
  /// Several numbers with one unit, each in range. Not as many as asked for: NaN.
  [[nodiscard]] std::vector<double> quantities(const char* name,
                                               const Range& range,
                                               std::size_t count);
  /// Three lengths with one unit.
  [[nodiscard]] geom::Vec3 point(const char* name);
  /// Three bare numbers, not all zero; unit length.
  [[nodiscard]] geom::Vec3 direction(const char* name);
  [[nodiscard]] std::optional<geom::Vec3> find_direction(const char* name);

  /// Index of the word in the list.
  [[nodiscard]] std::size_t word(const char* name, std::span<const std::string_view> words);
  [[nodiscard]] std::optional<std::size_t> find_word(const char* name,
                                                     std::span<const std::string_view> words);
  /// Several of the words, separated by blanks, each once; none when absent.
  [[nodiscard]] std::vector<std::size_t> find_words(const char* name,
                                                    std::span<const std::string_view> words);
  /// "yes" or "no"; absent: no.
  [[nodiscard]] bool find_yes(const char* name);
  [[nodiscard]] base::Status status(const char* name);

  /// The value when the attribute is there, else the element's name.
  [[nodiscard]] Spot spot(const char* name) const;
  [[nodiscard]] Spot spot() const;
  void error(const char* name, std::string code, std::string text);
  void error(std::string code, std::string text);
  /// An attribute that must not stand here, with the reason.
  void refuse(const char* name, const char* code, const std::string& why);

  /// Reports attributes nobody asked for, with the nearest name of those asked for. Last call.
  void finish();
  /// finish(), and remembers where the element and its attributes stand.
  void finish(const std::string& key, Spots& spots);

 private:
  [[nodiscard]] pugi::xml_attribute required(const char* name, const std::string& expected);
  [[nodiscard]] pugi::xml_attribute optional(const char* name);
  [[nodiscard]] std::optional<std::string> nonempty(const pugi::xml_attribute& attribute);
  [[nodiscard]] std::string checked_id(const pugi::xml_attribute& attribute);
  [[nodiscard]] double in_range(const pugi::xml_attribute& attribute,
                                double internal,
                                const Range& range);
  [[nodiscard]] double read_quantity(const pugi::xml_attribute& attribute, const Range& range);
  [[nodiscard]] std::vector<double> read_quantities(const pugi::xml_attribute& attribute,
                                                    const Range& range,
                                                    std::size_t count);
  [[nodiscard]] geom::Vec3 read_direction(const pugi::xml_attribute& attribute);
  [[nodiscard]] std::optional<std::size_t> read_word(const pugi::xml_attribute& attribute,
                                                     std::string_view found,
                                                     std::span<const std::string_view> words);

  FileContext& context_;
  pugi::xml_node element_;
  std::vector<std::string_view> asked_;
};

/// Reports children that are none of the known, with the nearest known name.
void check_children(FileContext& context,
                    const pugi::xml_node& element,
                    std::span<const std::string_view> known);
/// The only child of a name. More: reports the second. None: reports when required.
enum class Need { required, may_be_absent };
[[nodiscard]] pugi::xml_node only_child(FileContext& context,
                                        const pugi::xml_node& element,
                                        const char* name,
                                        Need need);

/// "; did you mean "web"?" or nothing.
[[nodiscard]] std::string did_you_mean(std::string_view found,
                                       std::span<const std::string_view> known);
/// "a, b or c".
[[nodiscard]] std::string one_of(std::span<const std::string_view> words);
/// The pieces between blanks.
[[nodiscard]] std::vector<std::string_view> split_blanks(std::string_view text);

}  // namespace seamturn::io::detail
