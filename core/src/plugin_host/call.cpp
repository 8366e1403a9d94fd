// SPDX-License-Identifier: MIT
#include <algorithm>
#include <exception>

#include "detail_call.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::plugin_host {

namespace {

/// What a sink has taken. A sink must not throw into a plugin, so running out of memory is noted
/// here and reported after the call.
struct Taken {
  std::string bytes;
  bool overflow = false;
};

extern "C" void seamturn_host_take(void* context, const char* bytes, size_t count) {
  auto& taken = *static_cast<Taken*>(context);
  try {
    if (count != 0) taken.bytes.append(bytes, count);
  } catch (...) {
    taken.overflow = true;
  }
}

[[noreturn]] void fail(const LoadedPlugin& plugin, const std::string& reason) {
  throw base::UnavailableError("plugin " + plugin.id + " (" + plugin.file.string() +
                               "): " + printable(reason));
}

seamturn_text text(std::string_view view) {
  return {view.data(), view.size()};
}

/// Runs a call with an output and an error sink and returns the output.
/// A plugin may not let exceptions out; should one do it all the same, it is caught here. This
/// works as long as both sides share one C++ runtime, and is no promise to authors.
template <class Call>
std::string run(const LoadedPlugin& plugin, const Call& call) {
  Taken out;
  Taken error;
  seamturn_result result = 0;
  std::string escaped;
  try {
    result = call(out, error);
  } catch (const std::exception& problem) {
    escaped = "let an exception out: " + std::string(problem.what());
  } catch (...) {
    escaped = "let an exception of unknown type out";
  }
  if (!escaped.empty()) fail(plugin, escaped);
  if (result != 0) {
    fail(plugin,
         error.bytes.empty() ? "failed with result " + std::to_string(result) + " and no text"
                             : error.bytes);
  }
  if (out.overflow) fail(plugin, "wrote more than memory holds");
  return std::move(out.bytes);
}

bool is_good_name(std::string_view name) {
  if (name.empty() || name.front() == '/' || name.back() == '/') return false;
  if (std::any_of(name.begin(), name.end(), [](char c) {
        return static_cast<unsigned char>(c) < 0x20 || c == '\\' || c == 0x7f;
      })) {
    return false;
  }
  const std::string framed = "/" + std::string(name) + "/";
  return framed.find("//") == std::string::npos && framed.find("/../") == std::string::npos &&
         framed.find("/./") == std::string::npos;
}

}  // namespace

std::vector<std::string> call_list(const LoadedPlugin& plugin, std::string_view plan_xml) {
  const std::string lines = run(plugin, [&](Taken& out, Taken& error) {
    return plugin.writer->list(
        text(plan_xml), seamturn_host_take, &out, seamturn_host_take, &error);
  });
  std::vector<std::string> names;
  std::size_t start = 0;
  while (start < lines.size()) {
    const std::size_t end = std::min(lines.find('\n', start), lines.size());
    std::string name = lines.substr(start, end - start);
    start = end + 1;
    if (!is_good_name(name)) fail(plugin, "lists the unusable document name \"" + name + "\"");
    if (std::find(names.begin(), names.end(), name) != names.end()) {
      fail(plugin, "lists the document " + name + " twice");
    }
    names.push_back(std::move(name));
  }
  return names;
}

std::string call_write(const LoadedPlugin& plugin,
                       std::string_view plan_xml,
                       std::string_view name) {
  return run(plugin, [&](Taken& out, Taken& error) {
    return plugin.writer->write(
        text(plan_xml), text(name), seamturn_host_take, &out, seamturn_host_take, &error);
  });
}

}  // namespace seamturn::plugin_host
