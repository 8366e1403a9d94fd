// SPDX-License-Identifier: MIT
// Strict reading against the bare parse of the same files, side by side in one run.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <pugixml.hpp>
#include <string>
#include <vector>

#include "seamturn/io/read.hpp"

namespace {

namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

/// A weldment and all it uses.
std::vector<std::string> files_of(const fs::path& weldment) {
  const seamturn::planner::Inputs inputs = seamturn::io::read_inputs(weldment);
  std::vector<std::string> files = {weldment.string()};
  for (const std::string& library : inputs.weldment.libraries) {
    files.push_back((weldment.parent_path() / library).string());
  }
  if (!inputs.weldment.cell.empty()) {
    files.push_back((weldment.parent_path() / inputs.weldment.cell).string());
  }
  return files;
}

void parse(const std::vector<std::string>& files) {
  for (const std::string& file : files) {
    pugi::xml_document document;
    const pugi::xml_parse_result result = document.load_file(file.c_str());
    benchmark::DoNotOptimize(result.status);
  }
}

void read(const std::string& weldment) {
  const seamturn::planner::Inputs inputs = seamturn::io::read_inputs(weldment);
  benchmark::DoNotOptimize(inputs.weldment.joints.size());
}

double median(std::vector<double>& times) {
  const auto middle = times.begin() + static_cast<std::ptrdiff_t>(times.size() / 2);
  std::nth_element(times.begin(), middle, times.end());
  return *middle;
}

/// The time of an iteration is that of one reading; what a bare parse beside it takes is a counter.
/// One after the other, as neither comes alone: a parse repeated alone finds all caches its own.
void reading(benchmark::State& state, const char* name) {
  const fs::path weldment = fs::path(SEAMTURN_SOURCE_DIR) / "joints" / name;
  const std::vector<std::string> files = files_of(weldment);
  std::vector<double> parses;
  std::vector<double> readings;
  for (auto _ : state) {
    const auto start = Clock::now();
    parse(files);
    const auto parsed = Clock::now();
    read(files.front());
    const auto done = Clock::now();
    parses.push_back(std::chrono::duration<double, std::micro>(parsed - start).count());
    readings.push_back(std::chrono::duration<double, std::micro>(done - parsed).count());
    state.SetIterationTime(readings.back() * 1e-6);
  }
  state.counters["parse_us"] = median(parses);
  state.counters["times_a_parse"] = median(readings) / median(parses);
}
BENCHMARK_CAPTURE(reading, bracket, "bracket.xml")->UseManualTime()->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(reading, hub, "grab_hub.xml")->UseManualTime()->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(reading, frame, "turnover_frame.xml")
    ->UseManualTime()
    ->Unit(benchmark::kMicrosecond);

}  // namespace
