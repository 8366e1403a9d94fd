// SPDX-License-Identifier: MIT
// Strict reading against the bare parse of the same files, side by side in one run.
#include <benchmark/benchmark.h>

#include <pugixml.hpp>

#include "seamturn/io/read.hpp"

namespace {

const std::string hub = SEAMTURN_SOURCE_DIR "/joints/grab_hub.xml";
const char* const files[] = {SEAMTURN_SOURCE_DIR "/joints/grab_hub.xml",
                             SEAMTURN_SOURCE_DIR "/joints/library/standards.xml",
                             SEAMTURN_SOURCE_DIR "/joints/library/shop.xml",
                             SEAMTURN_SOURCE_DIR "/joints/cells/tilt_table.xml"};

void bare_parse(benchmark::State& state) {
  for (auto _ : state) {
    for (const char* file : files) {
      pugi::xml_document document;
      const pugi::xml_parse_result result = document.load_file(file);
      benchmark::DoNotOptimize(result.status);
    }
  }
}
BENCHMARK(bare_parse)->Unit(benchmark::kMicrosecond);

void strict_read(benchmark::State& state) {
  for (auto _ : state) {
    const seamturn::planner::Inputs inputs = seamturn::io::read_inputs(hub);
    benchmark::DoNotOptimize(inputs.weldment.joints.size());
  }
}
BENCHMARK(strict_read)->Unit(benchmark::kMicrosecond);

}  // namespace
