#!/usr/bin/env bash
# The main job on the demo weldment: installs what is missing, builds, plans, says where things are.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
.ci/install.sh
export CCACHE_BASEDIR="$PWD" CCACHE_NOHASHDIR=1
cmake -S . -B build -G Ninja -DCMAKE_CXX_COMPILER_LAUNCHER=ccache -DCMAKE_UNITY_BUILD=ON \
  -DCMAKE_UNITY_BUILD_BATCH_SIZE=12 >build.log 2>&1 ||
  { cat build.log >&2; exit 1; }
rm -f build.log
ninja -C build --quiet seamturn_cli seamturn_procedure_sheet seamturn_path_listing \
  seamturn_pass_drawing seamturn_stance_drawing seamturn_turn_chart
out="${1:-out}"
build/bin/seamturn plan joints/grab_hub.xml -o "$out" --quiet
echo
echo "Documents: $out/plan.xml, procedure sheets in $out/sheets/, pass drawings in"
echo "           $out/drawings/, robot paths in $out/paths/, pictures of the stances in"
echo "           $out/stances/, the clock in $out/charts/"
echo "Next:      build/bin/seamturn joints|turns|cost joints/grab_hub.xml"
