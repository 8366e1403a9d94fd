// SPDX-License-Identifier: MIT
// The only file that includes Boost.DLL (built with BOOST_DLL_USE_STD_FS).
#include <vector>  // boost/dll of Boost 1.74 uses it without including it

#include <dlfcn.h>
#include <boost/dll/shared_library.hpp>

#include <string_view>

#include "detail_elf_check.hpp"
#include "detail_load.hpp"

namespace seamturn::plugin_host {

namespace {

/// What the system's loader said. Boost wraps it in a text of its own and adds an error number that
/// is always the same and always wrong.
std::string loader_reason(std::string_view what) {
  constexpr std::string_view before = "dlerror system message: ";
  constexpr std::string_view after = "): ";
  const std::size_t start = what.find(before);
  if (start == std::string_view::npos) return std::string(what);
  what.remove_prefix(start + before.size());
  return std::string(what.substr(0, what.rfind(after)));
}

/// rtld_now: a missing symbol is an error here and not the end of the process at the first call.
/// rtld_local: equal names in two plugins stay apart. RTLD_NODELETE: descriptors, texts and
/// exceptions of a plugin stay readable for as long as the process lives.
std::shared_ptr<boost::dll::shared_library> open_library(const std::filesystem::path& file) {
  const auto mode = static_cast<boost::dll::load_mode::type>(
      boost::dll::load_mode::rtld_now | boost::dll::load_mode::rtld_local | RTLD_NODELETE);
  return std::make_shared<boost::dll::shared_library>(file, mode);
}

LoadResult refused(std::string reason) {
  LoadResult result;
  result.reason = printable(std::move(reason));
  return result;
}

LoadResult accepted(std::shared_ptr<void> keeper,
                    const seamturn_plugin& plugin,
                    const std::filesystem::path& file) {
  LoadResult result;
  result.plugin.keeper = std::move(keeper);
  result.plugin.writer = plugin.writer;
  result.plugin.id = plugin.id;
  result.plugin.title = printable(plugin.title);
  result.plugin.version = printable(plugin.version);
  result.plugin.file = file;
  return result;
}

}  // namespace

LoadResult load_plugin(const std::filesystem::path& file) {
  if (const auto problem = find_elf_problem(file)) return refused(*problem);
  std::shared_ptr<boost::dll::shared_library> library;
  try {
    library = open_library(file);
    if (!library->has(SEAMTURN_PLUGIN_ENTRY)) {
      return refused("is no seamturn plugin: it does not export " SEAMTURN_PLUGIN_ENTRY);
    }
    const auto entry = library->get<const seamturn_plugin*(std::uint32_t)>(SEAMTURN_PLUGIN_ENTRY);
    const seamturn_plugin* const plugin = entry(SEAMTURN_ABI_VERSION);
    std::string problem = descriptor_problem(plugin);
    if (!problem.empty()) return refused(std::move(problem));
    return accepted(library, *plugin, file);
  } catch (const boost::dll::fs::system_error& problem) {
    return refused("cannot be loaded: " + loader_reason(problem.what()));
  } catch (const std::exception& problem) {
    return refused("its entry failed: " + std::string(problem.what()));
  } catch (...) {
    return refused("its entry failed with an exception of unknown type");
  }
}

}  // namespace seamturn::plugin_host
