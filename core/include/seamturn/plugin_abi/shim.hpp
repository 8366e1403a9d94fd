// SPDX-License-Identifier: MIT
// The comfortable side of the plugin border, for authors of document writers in C++17 or newer.
// Header only; needs neither the seamturn library nor any other. Write two functions:
//
//   std::vector<std::string> document_names(std::string_view plan_xml);
//   void write_document(std::string_view plan_xml, std::string_view name, Sink& out);
//
// and export them, once in the plugin, at file scope:
//
//   SEAMTURN_DOCUMENT_WRITER("my-sheet", "My sheet", "1.0", document_names, write_document)
//
// To refuse a plan throw any std::exception: its text reaches the user, and whatever was already
// written to the sink is thrown away. docs/plugins.md has the whole of a small plugin.
#pragma once

#include <cstring>
#include <exception>
#include <string>
#include <string_view>
#include <vector>

#include "seamturn/plugin_abi/plugin.h"

namespace seamturn::plugin_abi {

/// Newest major version of plan.xml that this header was made for.
inline constexpr unsigned plan_schema_major = 1;

/// Takes the bytes of one document, in as many pieces as you like.
class Sink {
 public:
  Sink(seamturn_sink sink, void* context) : sink_(sink), context_(context) {}
  void write(std::string_view bytes) {
    if (!bytes.empty()) sink_(context_, bytes.data(), bytes.size());
  }
  Sink& operator<<(std::string_view bytes) {
    write(bytes);
    return *this;
  }

 private:
  seamturn_sink sink_;
  void* context_;
};

/// One text across the border. An empty text may come with a null pointer.
[[nodiscard]] inline std::string_view view(seamturn_text text) {
  return text.count == 0 ? std::string_view() : std::string_view(text.bytes, text.count);
}

/// Runs `work` and lets nothing out: an exception becomes result 1 and a text in the error sink.
/// Nothing is allocated on the way, so that it also holds when memory has run out.
template <class Work>
[[nodiscard]] seamturn_result guarded(const Work& work, seamturn_sink error, void* error_context) {
  const char* text = "the plugin failed with an exception of unknown type";
  try {
    work();
    return 0;
  } catch (const std::exception& problem) {
    error(error_context, problem.what(), std::strlen(problem.what()));
    return 1;
  } catch (...) {
    error(error_context, text, std::strlen(text));
    return 1;
  }
}

/// `list` of the border from a function that returns names.
template <class Names>
[[nodiscard]] seamturn_result list_documents(const Names& document_names,
                                             seamturn_text plan_xml,
                                             seamturn_sink names,
                                             void* names_context,
                                             seamturn_sink error,
                                             void* error_context) {
  return guarded(
      [&] {
        const std::vector<std::string> all = document_names(view(plan_xml));
        Sink out(names, names_context);
        for (const std::string& name : all) out << name << "\n";
      },
      error,
      error_context);
}

/// `write` of the border from a function that writes to a Sink.
template <class Write>
[[nodiscard]] seamturn_result write_one(const Write& write_document,
                                        seamturn_text plan_xml,
                                        seamturn_text name,
                                        seamturn_sink out,
                                        void* out_context,
                                        seamturn_sink error,
                                        void* error_context) {
  return guarded(
      [&] {
        Sink sink(out, out_context);
        write_document(view(plan_xml), view(name), sink);
      },
      error,
      error_context);
}

}  // namespace seamturn::plugin_abi

/// Exports a document writer. id: lower-case letters, digits and '-'; the other two are free text.
/// Every name in it begins with seamturn_, so that the functions may be called as their author
/// likes: names, write, out.
#define SEAMTURN_DOCUMENT_WRITER(id, title, version, names_function, write_function)           \
  namespace {                                                                                  \
  seamturn_result seamturn_list_documents(seamturn_text seamturn_plan,                         \
                                          seamturn_sink seamturn_names,                        \
                                          void* seamturn_names_context,                        \
                                          seamturn_sink seamturn_error,                        \
                                          void* seamturn_error_context) {                      \
    return ::seamturn::plugin_abi::list_documents(names_function,                              \
                                                  seamturn_plan,                               \
                                                  seamturn_names,                              \
                                                  seamturn_names_context,                      \
                                                  seamturn_error,                              \
                                                  seamturn_error_context);                     \
  }                                                                                            \
  seamturn_result seamturn_write_document(seamturn_text seamturn_plan,                         \
                                          seamturn_text seamturn_name,                         \
                                          seamturn_sink seamturn_out,                          \
                                          void* seamturn_out_context,                          \
                                          seamturn_sink seamturn_error,                        \
                                          void* seamturn_error_context) {                      \
    return ::seamturn::plugin_abi::write_one(write_function,                                   \
                                             seamturn_plan,                                    \
                                             seamturn_name,                                    \
                                             seamturn_out,                                     \
                                             seamturn_out_context,                             \
                                             seamturn_error,                                   \
                                             seamturn_error_context);                          \
  }                                                                                            \
  constexpr seamturn_document_writer seamturn_writer_table = {                                 \
      sizeof(seamturn_document_writer), seamturn_list_documents, seamturn_write_document};     \
  constexpr seamturn_plugin seamturn_plugin_card = {sizeof(seamturn_plugin),                   \
                                                    SEAMTURN_ABI_VERSION,                      \
                                                    SEAMTURN_KIND_DOCUMENT_WRITER,             \
                                                    ::seamturn::plugin_abi::plan_schema_major, \
                                                    id,                                        \
                                                    title,                                     \
                                                    version,                                   \
                                                    &seamturn_writer_table};                   \
  }                                                                                            \
  extern "C" SEAMTURN_EXPORT const seamturn_plugin* seamturn_plugin_entry(uint32_t) {          \
    return &seamturn_plugin_card;                                                              \
  }                                                                                            \
  static_assert(true, "")
