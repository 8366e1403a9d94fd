// SPDX-License-Identifier: MIT
#include <elf.h>

#include <cstdint>
#include <cstring>
#include <fstream>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "detail_elf_check.hpp"
#include "seamturn/plugin_abi/plugin.h"

// boost::dll::library_info is not used for this: version 1.74 reads the full symbol table only, so
// a plugin that was stripped, as every packaged library is, would look empty.

namespace seamturn::plugin_host {

namespace {

constexpr bool is_64_bit = sizeof(void*) == 8;
using Header = std::conditional_t<is_64_bit, Elf64_Ehdr, Elf32_Ehdr>;
using Segment = std::conditional_t<is_64_bit, Elf64_Phdr, Elf32_Phdr>;
using Section = std::conditional_t<is_64_bit, Elf64_Shdr, Elf32_Shdr>;
using Symbol = std::conditional_t<is_64_bit, Elf64_Sym, Elf32_Sym>;

#if defined(__x86_64__)
constexpr int own_machine = EM_X86_64;
#elif defined(__aarch64__)
constexpr int own_machine = EM_AARCH64;
#elif defined(__i386__)
constexpr int own_machine = EM_386;
#else
constexpr int own_machine = EM_NONE;  // not compared: left to the loader
#endif

/// The bytes of a file, read only where they exist.
class Bytes {
 public:
  explicit Bytes(std::string content) : content_(std::move(content)) {}

  [[nodiscard]] std::uint64_t size() const { return content_.size(); }
  [[nodiscard]] bool holds(std::uint64_t offset, std::uint64_t count) const {
    return offset <= size() && count <= size() - offset;
  }
  /// Nothing when the file ends before it.
  template <class T>
  [[nodiscard]] std::optional<T> read(std::uint64_t offset) const {
    if (!holds(offset, sizeof(T))) return std::nullopt;
    T value;
    std::memcpy(&value, content_.data() + offset, sizeof(T));
    return value;
  }
  /// Element `index` of a table; nothing when it lies beyond the file.
  template <class T>
  [[nodiscard]] std::optional<T> element(std::uint64_t table, std::uint64_t index) const {
    if (index > std::numeric_limits<std::uint64_t>::max() / sizeof(T)) return std::nullopt;
    const std::uint64_t step = index * sizeof(T);
    if (table > std::numeric_limits<std::uint64_t>::max() - step) return std::nullopt;
    return read<T>(table + step);
  }
  [[nodiscard]] bool text_is(std::uint64_t offset, std::string_view text) const {
    return holds(offset, text.size() + 1) &&
           std::string_view(content_).substr(offset, text.size()) == text &&
           content_[offset + text.size()] == '\0';
  }

 private:
  std::string content_;
};

std::optional<std::string> header_problem(const Bytes& bytes, const Header& header) {
  const unsigned char* ident = header.e_ident;
  if (std::memcmp(ident, ELFMAG, SELFMAG) != 0) return "is not a library (no ELF file)";
  if (ident[EI_CLASS] != (is_64_bit ? ELFCLASS64 : ELFCLASS32)) {
    return "was built for another word size than this program";
  }
  if (own_machine != EM_NONE && header.e_machine != own_machine) {
    return "was built for another kind of processor";
  }
  if (header.e_type != ET_DYN) return "is an ELF file but not a shared library";
  if (header.e_phnum == 0 || header.e_phentsize != sizeof(Segment) ||
      !bytes.holds(header.e_phoff, std::uint64_t{header.e_phnum} * sizeof(Segment))) {
    return "is damaged: its table of segments is not there";
  }
  return std::nullopt;
}

std::optional<std::string> segment_problem(const Bytes& bytes, const Header& header) {
  for (unsigned i = 0; i < header.e_phnum; ++i) {
    const std::optional<Segment> segment = bytes.element<Segment>(header.e_phoff, i);
    if (!segment || !bytes.holds(segment->p_offset, segment->p_filesz)) {
      return "is damaged: cut short at " + std::to_string(bytes.size()) +
             " bytes, parts of it are missing";
    }
  }
  return std::nullopt;
}

/// True when the table of exported symbols holds a defined symbol of that name.
bool exports(const Bytes& bytes,
             const Section& symbols,
             const Section& names,
             std::string_view wanted) {
  for (std::uint64_t i = 0; i < symbols.sh_size / sizeof(Symbol); ++i) {
    const std::optional<Symbol> symbol = bytes.element<Symbol>(symbols.sh_offset, i);
    if (!symbol) return false;
    if (symbol->st_shndx != SHN_UNDEF && symbol->st_name < names.sh_size &&
        bytes.text_is(names.sh_offset + symbol->st_name, wanted)) {
      return true;
    }
  }
  return false;
}

std::optional<std::string> entry_problem(const Bytes& bytes, const Header& header) {
  // Linkers put this table last, so that it also tells of cuts behind the mapped parts.
  if (header.e_shnum != 0 &&
      !bytes.holds(header.e_shoff, std::uint64_t{header.e_shnum} * sizeof(Section))) {
    return "is damaged: its table of sections is cut short";
  }
  for (unsigned i = 0; i < header.e_shnum; ++i) {
    const std::optional<Section> section = bytes.element<Section>(header.e_shoff, i);
    if (!section || section->sh_type != SHT_DYNSYM) continue;
    const std::optional<Section> names = bytes.element<Section>(header.e_shoff, section->sh_link);
    if (!names || !exports(bytes, *section, *names, SEAMTURN_PLUGIN_ENTRY)) {
      return "is no seamturn plugin: it does not export " SEAMTURN_PLUGIN_ENTRY;
    }
    return std::nullopt;
  }
  return std::nullopt;  // no section table: the loader will tell
}

std::optional<std::string> read_file(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  if (!stream) return std::nullopt;
  std::string content((std::istreambuf_iterator<char>(stream)), std::istreambuf_iterator<char>());
  if (stream.bad()) return std::nullopt;
  return content;
}

}  // namespace

std::optional<std::string> find_elf_problem(const std::filesystem::path& file) {
  std::error_code error;
  if (!std::filesystem::is_regular_file(file, error)) return "is not a regular file";
  std::optional<std::string> content = read_file(file);
  if (!content) return "cannot be read";
  if (content->empty()) return "is empty";
  const Bytes bytes(std::move(*content));
  const std::optional<Header> header = bytes.read<Header>(0);
  if (!header) return "is not a library (shorter than an ELF header)";
  if (auto problem = header_problem(bytes, *header)) return problem;
  if (auto problem = segment_problem(bytes, *header)) return problem;
  return entry_problem(bytes, *header);
}

}  // namespace seamturn::plugin_host
