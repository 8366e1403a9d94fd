// SPDX-License-Identifier: MIT
#include "seamturn/plugin_host/plugin_host.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "detail_call.hpp"
#include "detail_load.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/listed.hpp"

namespace seamturn::plugin_host {

namespace {

namespace fs = std::filesystem;

/// The *.so files of a folder by name; nothing when the folder is not there.
/// A folder that is there but cannot be listed leaves its reason in `problem`.
std::vector<fs::path> library_files(const fs::path& folder, std::string& problem) {
  std::error_code error;
  std::vector<fs::path> files;
  fs::directory_iterator entry(folder, error);
  if (error) {
    problem = error.message();
    return files;
  }
  for (const fs::directory_iterator end; entry != end; entry.increment(error)) {
    if (error) break;
    if (entry->path().extension() == ".so") files.push_back(entry->path());
  }
  if (error) problem = error.message();
  std::sort(files.begin(), files.end());
  return files;
}

Verdict skipped(const fs::path& file, std::string reason) {
  Verdict verdict;
  verdict.file = file;
  verdict.reason = std::move(reason);
  return verdict;
}

Verdict loaded(const LoadedPlugin& plugin) {
  Verdict verdict;
  verdict.file = plugin.file;
  verdict.loaded = true;
  verdict.id = plugin.id;
  verdict.title = plugin.title;
  verdict.version = plugin.version;
  verdict.kind = "document-writer";
  return verdict;
}

std::string joined(const std::vector<std::string>& words) {
  return words.empty() ? "none" : base::listed(words);
}

}  // namespace

struct PluginHost::Content {
  std::vector<Verdict> verdicts;
  std::map<std::string, LoadedPlugin, std::less<>> writers;
  std::vector<std::string> folders;
  std::set<fs::path> seen;

  void search(const fs::path& given, bool required);
  void add(const fs::path& file);
  [[nodiscard]] const LoadedPlugin& writer(std::string_view id) const;
};

void PluginHost::Content::search(const fs::path& given, bool required) {
  std::error_code error;
  const fs::path folder = fs::weakly_canonical(fs::absolute(given, error), error);
  if (!error && !seen.insert(folder).second) return;
  folders.push_back(folder.empty() ? given.string() : folder.string());
  const bool exists = !folder.empty() && fs::exists(folder, error);
  if (!exists && !required) return;
  std::string problem;
  const std::vector<fs::path> files = library_files(folder, problem);
  if (!problem.empty() && required) {
    throw base::UnavailableError("plugin folder " + given.string() + ": " + problem);
  }
  if (!problem.empty()) verdicts.push_back(skipped(folder, "folder cannot be listed: " + problem));
  for (const fs::path& file : files) add(file);
}

void PluginHost::Content::add(const fs::path& file) {
  LoadResult result = load_plugin(file);
  if (!result.reason.empty()) {
    verdicts.push_back(skipped(file, std::move(result.reason)));
    return;
  }
  const auto first = writers.find(result.plugin.id);
  if (first != writers.end()) {
    verdicts.push_back(skipped(
        file,
        "its id " + result.plugin.id + " was taken before by " + first->second.file.string()));
    return;
  }
  verdicts.push_back(loaded(result.plugin));
  writers.emplace(result.plugin.id, std::move(result.plugin));
}

const LoadedPlugin& PluginHost::Content::writer(std::string_view id) const {
  const auto found = writers.find(id);
  if (found != writers.end()) return found->second;
  std::vector<std::string> known;
  for (const auto& entry : writers) known.push_back(entry.first);
  throw base::UnavailableError("no document writer is called \"" + std::string(id) +
                               "\"; loaded: " + joined(known) +
                               "; folders searched: " + joined(folders));
}

PluginHost::PluginHost(const std::vector<fs::path>& folders, const std::vector<fs::path>& required)
    : content_(std::make_unique<Content>()) {
  for (const fs::path& folder : required) content_->search(folder, true);
  for (const fs::path& folder : folders) content_->search(folder, false);
}
PluginHost::~PluginHost() = default;
PluginHost::PluginHost(PluginHost&&) noexcept = default;
PluginHost& PluginHost::operator=(PluginHost&&) noexcept = default;

const std::vector<Verdict>& PluginHost::verdicts() const {
  return content_->verdicts;
}

std::vector<std::string> PluginHost::writer_ids() const {
  std::vector<std::string> ids;
  for (const auto& entry : content_->writers) ids.push_back(entry.first);
  return ids;
}

std::vector<std::string> PluginHost::document_names(std::string_view id,
                                                    std::string_view plan_xml) const {
  return call_list(content_->writer(id), plan_xml);
}

std::string PluginHost::write_document(std::string_view id,
                                       std::string_view plan_xml,
                                       std::string_view name) const {
  return call_write(content_->writer(id), plan_xml, name);
}

}  // namespace seamturn::plugin_host
