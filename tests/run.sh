#!/usr/bin/env bash
# Installs what is missing, builds, runs the tests. Usage: tests/run.sh [MODE]
#   (none)   everything, warnings are errors       asan    again under address+undefined sanitizers
#   clang    does clang 14 parse every source      bench   benchmarks, side by side
#   format   formats all sources                   tidy    clang-tidy over the core
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
mode="${1:-all}"
.ci/install.sh
jobs="$(nproc)"
export CCACHE_BASEDIR="$PWD" CCACHE_NOHASHDIR=1 CCACHE_SLOPPINESS=pch_defines,time_macros

build() { # folder, further options of cmake
  local folder="$1"
  shift
  # Many files at a time build in a third of the time.
  cmake -S . -B "$folder" -G Ninja -DCMAKE_CXX_COMPILER_LAUNCHER=ccache -DCMAKE_UNITY_BUILD=ON \
    -DCMAKE_UNITY_BUILD_BATCH_SIZE=12 -DSEAMTURN_TESTS=ON "$@" >"$folder.log" 2>&1 ||
    { cat "$folder.log" >&2; exit 1; }
  rm -f "$folder.log"
  ninja -C "$folder" -j "$jobs" --quiet
}
run_tests() { # folder
  ctest --test-dir "$1" --no-tests=error --output-on-failure -j "$jobs"
  "$1/bin/seamturn_tests" --count | sed -n 's/.*filters: *\(.*\)/\1 test cases, all passed/p'
}
sources() { git ls-files 'core/*.cpp' 'core/*.hpp' 'plugins/*.cpp' 'plugins/*.hpp' 'tests/*.cpp' 'tests/*.hpp'; }

case "$mode" in
all)
  build build
  run_tests build
  ;;
asan)
  build build-asan -DSEAMTURN_SANITIZE=ON
  run_tests build-asan
  ;;
clang)
  # Analysis tools are built on clang 14, which knows less of C++20 than the compiler.
  build build
  # What most files include is parsed once and kept; each file stands by itself.
  options=(-std=c++20 -Icore/include -Icore/src -Icore/cli -Iplugins -Ibuild/core/cli
    -isystem /usr/include/eigen3 -DBOOST_DLL_USE_STD_FS)
  clang++-14 "${options[@]}" -fpch-instantiate-templates -x c++-header core/include/seamturn/plan/plan.hpp -o build/plan.pch
  git ls-files 'core/*.cpp' 'plugins/*.cpp' | xargs -P "$jobs" -n 8 clang++-14 \
    "${options[@]}" -fsyntax-only -include-pch build/plan.pch
  echo "clang 14 parses every source"
  ;;
bench)
  build build-bench -DSEAMTURN_BENCH=ON
  build-bench/bin/seamturn_bench
  ;;
format)
  sources | xargs clang-format-14 -i
  ;;
tidy)
  build build -DCMAKE_EXPORT_COMPILE_COMMANDS=ON
  git ls-files 'core/src/*.cpp' | xargs -P "$jobs" -n 4 clang-tidy-14 -p build --quiet
  ;;
*)
  sed -n '2,6s/^# \{0,1\}//p' "$0" >&2
  exit 2
  ;;
esac
