// SPDX-License-Identifier: MIT
#include "detail_markup_check.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "detail_byte_class.hpp"
#include "detail_encoding_check.hpp"
#include "detail_reference_check.hpp"
#include "detail_utf8.hpp"

namespace seamturn::io::detail {

namespace {

bool same_word(std::string_view a, std::string_view b) {
  const auto lower = [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  };
  return std::equal(
      a.begin(), a.end(), b.begin(), b.end(), [&](char x, char y) { return lower(x) == lower(y); });
}

/// Of values that read as written, up to their closing quote.
constexpr ByteClass plain_value_bytes([](char c) {
  return c != '"' && c != '<' && c != '&' && c != '\t' && c != '\n' && c != '\r';
});

struct Attribute {
  std::string_view name;
  std::string_view value;
  std::size_t value_at = 0;
  bool is_ended = true;   ///< by its quote
  bool is_plain = false;  ///< of plain_value_bytes
};

struct OpenElement {
  std::string_view name;
  std::size_t offset;
};

/// One walk over the bytes. A breach that leaves no way on ends it (`lost_`).
class MarkupCheck {
 public:
  MarkupCheck(const Source& source, Report& report, MarkupTree& tree)
      : source_(source), report_(report), tree_(tree), bytes_(source.bytes()), text_(bytes_) {}

  bool run() {
    tree_.start(text_.size());
    if (text_.starts_with(byte_order_mark)) at_ = byte_order_mark.size();
    start_ = at_;
    while (!lost_ && at_ < text_.size()) {
      if (text_[at_] == '<') {
        markup();
      } else {
        between_tags();
      }
    }
    if (!lost_) at_the_end();
    return readable_;
  }

 private:
  void error(std::size_t offset, std::string code, std::string text) {
    report_.error(Spot{&source_, offset}, std::move(code), std::move(text));
  }
  /// Reading on would only produce nonsense.
  void lose(std::size_t offset, std::string code, std::string text) {
    error(offset, std::move(code), std::move(text));
    lost_ = true;
    readable_ = false;
  }
  void malformed(std::size_t offset, std::string text) {
    lose(offset, "read.xml.malformed", std::move(text));
  }
  [[nodiscard]] bool follows(std::string_view word) const {
    return text_.substr(at_).starts_with(word);
  }
  [[nodiscard]] std::string line_of(std::size_t offset) const {
    return "line " + std::to_string(source_.place(offset).line);
  }
  [[nodiscard]] bool follows(char c) const { return at_ < text_.size() && text_[at_] == c; }
  void skip_blanks() { at_ = blank_bytes.run_end(bytes_, at_); }
  std::string_view take_name() {
    const std::size_t from = at_;
    if (at_ < text_.size() && is_name_start(text_[at_])) at_ = name_bytes.run_end(bytes_, at_);
    return text_.substr(from, at_ - from);
  }

  void markup() {
    const char next = at_ + 1 < text_.size() ? text_[at_ + 1] : ' ';
    if (next == '?') return instruction();
    if (next == '/') return end_tag();
    if (next != '!') return start_tag();
    if (follows("<!--")) return comment();
    if (follows("<![CDATA[")) return character_data();
    if (follows("<!DOCTYPE")) {
      return lose(at_,
                  "read.xml.doctype",
                  "a DOCTYPE was found; expected none: entities of a DTD are not read here; delete "
                  "it and what depends on it");
    }
    malformed(at_, "\"<!\" begins neither a comment nor CDATA; delete it");
  }

  /// Moves behind `end`; false (and lost) when it never comes.
  bool skip_to(std::size_t from, std::size_t search_from, std::string_view end, const char* what) {
    const std::size_t found = text_.find(end, search_from);
    if (found == std::string_view::npos) {
      malformed(from,
                std::string(what) + " begins here and never ends; expected \"" + std::string(end) +
                    "\"; close it");
      return false;
    }
    at_ = found + end.size();
    return true;
  }

  void instruction() {
    const std::size_t from = at_;
    at_ += 2;
    const std::string_view name = take_name();
    const std::size_t inside = at_;
    if (name.empty()) return malformed(from, "\"<?\" without a name; expected <?xml ...?> or none");
    if (!skip_to(from, inside, "?>", "a processing instruction")) return;
    if (!same_word(name, "xml")) return;
    if (from != start_ || name != "xml") {
      return lose(from,
                  "read.xml.declaration",
                  "an XML declaration stands here; expected it, in small letters, as the very "
                  "first thing of the file; move or delete it");
    }
    declaration(inside, at_ - 2);
  }

  void declaration(std::size_t inside, std::size_t end) {
    const std::size_t behind = end + 2;
    at_ = inside;
    while (!lost_) {
      skip_blanks();
      if (at_ >= end) break;
      const Attribute item = take_attribute();
      if (lost_) return;
      if (item.name == "version" && item.value != "1.0") {
        lose(item.value_at,
             "read.xml.declaration",
             "XML version " + in_quotes(item.value) + " found; expected \"1.0\"");
      }
      if (item.name == "encoding" && !same_word(item.value, "utf-8") &&
          !same_word(item.value, "us-ascii")) {
        lose(item.value_at,
             "read.encoding.not_utf8",
             "the file declares the encoding " + in_quotes(item.value) +
                 "; expected \"UTF-8\"; save it as UTF-8 and say so here");
      }
    }
    at_ = behind;
  }

  void comment() {
    const std::size_t from = at_;
    if (!skip_to(from, at_ + 4, "-->", "a comment")) return;
    const std::size_t dashes = text_.find("--", from + 4);
    if (dashes < at_ - 3) {
      error(dashes,
            "read.xml.malformed",
            "\"--\" inside a comment; XML allows it only at its end; write one dash or \"- -\"");
    }
  }

  void stray(std::size_t offset, std::string_view found) {
    const std::string where = open_.empty() ? "outside the root element"
                                            : "inside <" + std::string(open_.back().name) + ">";
    error(
        offset,
        "read.xml.stray_text",
        "text " + in_quotes(found) + " " + where +
            "; expected only elements: values stand in attributes; delete it or make it a comment");
  }

  void character_data() {
    const std::size_t from = at_;
    if (!skip_to(from, from, "]]>", "a CDATA section")) return;
    stray(from, text_.substr(from, at_ - from));
  }

  void between_tags() {
    skip_blanks();
    if (follows('<')) return;
    const std::size_t end = std::min(text_.find('<', at_), text_.size());
    if (at_ < end) {
      const std::string_view run = text_.substr(at_, end - at_);
      stray(at_, run.substr(0, run.find_last_not_of(blanks) + 1));
    }
    at_ = end;
  }

  void end_tag() {
    const std::size_t from = at_;
    at_ += 2;
    const std::string_view name = take_name();
    skip_blanks();
    if (!follows('>')) return malformed(from, "this end tag is not closed; expected \">\"");
    ++at_;
    if (open_.empty()) {
      return malformed(from, "end tag " + in_quotes(name) + " closes nothing; delete it");
    }
    if (open_.back().name != name) {
      return malformed(from,
                       "end tag " + in_quotes(name) + " found; expected the end of <" +
                           std::string(open_.back().name.substr(0, 40)) + "> from " +
                           line_of(open_.back().offset) + "; close that first");
    }
    open_.pop_back();
    tree_.close();
  }

  void start_tag() {
    const std::size_t from = at_;
    ++at_;
    const std::string_view name = take_name();
    if (name.empty()) {
      return malformed(
          from,
          "\"<\" is followed by no name; expected an element; write &lt; for the sign itself");
    }
    if (open_.empty() && ++roots_ > 1) {
      error(from + 1,
            "read.xml.second_root",
            "a second root element <" + std::string(name.substr(0, 40)) +
                ">; expected one root in a file; delete it or make it a file of its own");
    }
    if (++elements_ > most_elements) {
      return lose(from + 1,
                  "read.file.too_many_elements",
                  "more than " + std::to_string(most_elements) +
                      " elements; expected a weldment, library or cell; divide the file");
    }
    attributes(from, name);
    if (lost_) return;
    if (text_[at_] == '/') {
      at_ += 2;
      tree_.close();
      return;
    }
    ++at_;
    open_.push_back(OpenElement{name, from});
    if (open_.size() > deepest_nesting) {
      lose(from + 1,
           "read.xml.too_deep",
           "elements are nested more than " + std::to_string(deepest_nesting) +
               " deep; expected four levels at most; look for a missing end tag above");
    }
  }

  /// Up to the ">" or "/>" of the tag.
  void attributes(std::size_t from, std::string_view element) {
    tree_.open(element);
    while (true) {
      const std::size_t before = at_;
      skip_blanks();
      if (at_ >= text_.size()) {
        return malformed(from,
                         "the file ends inside the tag <" + std::string(element.substr(0, 40)) +
                             ">; expected \">\"; the rest of the file is missing");
      }
      if (follows('>') || follows("/>")) return;
      if (at_ == before) {
        return malformed(
            at_, "expected a blank, \">\" or \"/>\" here; put a blank before each attribute");
      }
      Attribute attribute;
      if (!take_plain_attribute(attribute)) attribute = take_attribute();
      if (lost_) return;
      keep(attribute, element);
      if (tree_.of_last_element().size() > most_attributes) {
        return lose(from + 1,
                    "read.element.too_many_attributes",
                    "more than " + std::to_string(most_attributes) +
                        " attributes in one element; expected no more than docs/files.md lists");
      }
    }
  }

  void keep(const Attribute& attribute, std::string_view element) {
    const std::string_view value =
        attribute.is_plain ? attribute.value : tree_.keep(value_read(attribute.value));
    if (tree_.add({attribute.name, value, attribute.value_at})) return;
    error(attribute.value_at,
          "read.xml.duplicate_attribute",
          "attribute " + in_quotes(attribute.name) + " stands twice in <" +
              std::string(element.substr(0, 40)) + ">; expected once; delete one");
  }

  /// One as people write nearly all of them: name="value" with nothing in it to look closer at.
  bool take_plain_attribute(Attribute& attribute) {
    const char* const name = bytes_.c_str() + at_;  // at the end of the bytes stands a NUL
    if (!first_name_bytes.holds(*name)) return false;
    const char* const name_end = name_bytes.run_end(name + 1);
    if (name_end[0] != '=' || name_end[1] != '"') return false;
    const char* const value = name_end + 2;
    const char* const value_end = plain_value_bytes.run_end(value);
    const auto value_size = static_cast<std::size_t>(value_end - value);
    if (*value_end != '"' || value_size > longest_attribute) return false;
    attribute.name = {name, static_cast<std::size_t>(name_end - name)};
    attribute.value = {value, value_size};
    attribute.value_at = static_cast<std::size_t>(value - bytes_.c_str());
    attribute.is_plain = true;
    at_ = attribute.value_at + value_size + 1;
    return true;
  }

  /// Any, with all that may be wrong with it.
  Attribute take_attribute() {
    Attribute attribute;
    const std::size_t from = at_;
    attribute.name = take_name();
    if (attribute.name.empty()) {
      malformed(from, "expected an attribute name here (a letter first), \">\" or \"/>\"");
      return attribute;
    }
    skip_blanks();
    if (!follows('=')) {
      malformed(from,
                "attribute " + in_quotes(attribute.name) + " has no value; expected " +
                    std::string(attribute.name.substr(0, 40)) + "=\"...\"");
      return attribute;
    }
    ++at_;
    skip_blanks();
    if (!follows('"') && !follows('\'')) {
      malformed(at_,
                "the value of " + in_quotes(attribute.name) + " has no quotes; expected \"...\"");
      return attribute;
    }
    const char quote = text_[at_];
    attribute.value_at = ++at_;
    const std::size_t end = std::min(text_.find(quote, at_), text_.size());
    attribute.value = text_.substr(at_, end - at_);
    attribute.is_ended = end < text_.size();
    attribute.is_plain = plain_value_bytes.run_end(attribute.value, 0) == attribute.value.size();
    at_ = std::min(end + 1, text_.size());
    check_value(attribute);
    return attribute;
  }

  void check_value(const Attribute& attribute) {
    const bool holds_tag =
        !attribute.is_plain && attribute.value.find('<') != std::string_view::npos;
    if (!attribute.is_ended || holds_tag) {
      return malformed(
          attribute.value_at,
          "the value of " + in_quotes(attribute.name) +
              (attribute.is_ended ? " holds a \"<\"" : " never ends") +
              "; expected a closing quote; add it (or write &lt; for the sign itself)");
    }
    if (attribute.value.size() > longest_attribute) {
      error(attribute.value_at,
            "read.attribute.too_long",
            "the value of " + in_quotes(attribute.name) + " is " +
                std::to_string(attribute.value.size()) + " bytes long; expected at most " +
                std::to_string(longest_attribute) + "; shorten it");
      readable_ = false;
      return;
    }
    if (attribute.is_plain) return;
    if (!check_references(source_, attribute.value_at, attribute.value, report_)) readable_ = false;
  }

  void at_the_end() {
    if (!open_.empty()) {
      malformed(text_.size(),
                "the file ends inside <" + std::string(open_.back().name.substr(0, 40)) +
                    ">, opened in " + line_of(open_.back().offset) +
                    "; expected its end tag; the rest of the file is missing");
    } else if (roots_ == 0) {
      malformed(start_,
                "no element found; expected an XML document; check that this is the right file");
    }
  }

  const Source& source_;
  Report& report_;
  MarkupTree& tree_;
  const std::string& bytes_;
  std::string_view text_;  // the same
  std::size_t at_ = 0;
  std::size_t start_ = 0;
  std::vector<OpenElement> open_;
  std::size_t roots_ = 0;
  std::size_t elements_ = 0;
  bool lost_ = false;
  bool readable_ = true;
};

}  // namespace

bool check_markup(const Source& source, Report& report, MarkupTree& tree) {
  const Encoding encoding = check_encoding(source, report);
  if (encoding == Encoding::unreadable) return false;
  const bool readable = MarkupCheck(source, report, tree).run();
  return readable && encoding == Encoding::sound;
}

}  // namespace seamturn::io::detail
