#!/usr/bin/env bash
# Times this project's mesh engine beside general-purpose peers, whole processes, and prints a table
# for docs/performance.md. Needs cc, c++, GNU time; takes what else is there of CGAL, assimp and VTK.
# usage: src/bench/peers.sh [RUNS]      after: mvn -B -q -Pimage package -DskipTests
set -eu
cd "$(dirname "$0")/../.."
runs=${1:-5}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
peers=src/bench/peers
for source in ripple_torus hash_weld sort_weld; do
  cc -O3 -march=native $peers/$source.c -o "$work/$source" -lm -pthread
done
c++ -O3 -DNDEBUG $peers/cgal_mesh.cpp -o "$work/cgal_mesh" -lgmp -lmpfr 2>/dev/null || echo "no CGAL" >&2
c++ -O3 -DNDEBUG $peers/assimp_mesh.cpp -o "$work/assimp_mesh" -lassimp 2>/dev/null || echo "no assimp" >&2
python=""
for p in python3 /usr/bin/python3; do
  if "$p" -c 'import vtkmodules' 2>/dev/null; then python=$p; break; fi
done
[ -n "$python" ] || echo "no VTK" >&2
"$work/ripple_torus" 1000 500 "$work/1m.stl" >&2
"$work/ripple_torus" 1000 500 "$work/1m.obj" >&2
"$work/ripple_torus" 3163 1581 "$work/10m.stl" >&2
classpath=target/classes:target/test-classes:$(printf '%s:' target/lib/*.jar)
"$work/ripple_torus" 100 50 "$work/10k.stl" >&2
java -cp "$classpath" org.seamwright.benchmark.TextStl "$work/1m.stl" "$work/1m-text.stl" >&2

# The installed program: the runtime of the image with the options of its launcher.
image=target/image/seamwright
if [ -x $image/bin/seamwright ]; then
  installed=("$image/lib/runtime/bin/java")
  read -ra options < <(sed -n 's|.*/bin/java" \(.*\) -cp .*|\1|p' $image/bin/seamwright)
  installed+=("${options[@]}" -cp target/test-classes)
else
  echo "no image" >&2
  installed=()
fi

# Best of some runs: seconds, and the largest resident size in MB.
best() {
  local t="" m=0 out
  "$@" >/dev/null 2>&1 || { echo "- | -"; return; }
  for _ in $(seq "$runs"); do
    out=$( { /usr/bin/time -f '%e %M' "$@" >/dev/null; } 2>&1 | tail -1)
    set_t=${out% *}; set_m=${out#* }
    if [ -z "$t" ] || [ "$(echo "$set_t < $t" | bc)" = 1 ]; then t=$set_t; fi
    if [ "$set_m" -gt "$m" ]; then m=$set_m; fi
  done
  echo "$t s | $((m / 1024)) MB"
}
row() { echo "| $1 | $(best "${@:2}") |"; }

grep -m1 'model name' /proc/cpuinfo | sed 's/.*: /machine: /'
echo "cores: $(nproc), $(java -version 2>&1 | head -1), best of $runs runs, $(date +%F)"
echo; echo "| 10k triangles, binary STL | time | resident |"; echo "|---|---|---|"
[ ${#installed[@]} -gt 0 ] && row "the command measure, image" $image/bin/seamwright measure "$work/10k.stl" --unit mm
row "the command measure, java -jar" java -jar target/seamwright.jar measure "$work/10k.stl" --unit mm
for size in 1m 10m; do
  n=$runs; [ $size = 10m ] && runs=$(( (runs + 1) / 2 ))
  echo; echo "| $size triangles, binary STL | time | resident |"; echo "|---|---|---|"
  [ ${#installed[@]} -gt 0 ] && row "this project, image: read, weld, half-edges, faults, parts, area" "${installed[@]}" org.seamwright.benchmark.ReadCheck "$work/$size.stl"
  row "this project, any Java 17: the same" java -cp "$classpath" org.seamwright.benchmark.ReadCheck "$work/$size.stl"
  [ ${#installed[@]} -gt 0 ] && row "image: the command measure, smooth area included" $image/bin/seamwright measure "$work/$size.stl" --unit mm --json
  row "java -jar: the same" java -jar target/seamwright.jar measure "$work/$size.stl" --unit mm --json
  row "C, counting sort" "$work/sort_weld" "$work/$size.stl"
  row "C, plain hash" "$work/hash_weld" "$work/$size.stl" weld
  [ -x "$work/cgal_mesh" ] && row "CGAL" "$work/cgal_mesh" "$work/$size.stl"
  [ -n "$python" ] && row "VTK (weld only)" "$python" $peers/vtk_area.py "$work/$size.stl"
  [ -x "$work/assimp_mesh" ] && [ $size = 1m ] && row "assimp" "$work/assimp_mesh" "$work/$size.stl"
  runs=$n
done
echo; echo "| 1m triangles, other formats | time | resident |"; echo "|---|---|---|"
for file in 1m.stl 1m.obj 1m-text.stl; do
  row "$file, $(( $(stat -c %s "$work/$file") / 1000000 )) MB" java -cp "$classpath" org.seamwright.benchmark.ReadCheck "$work/$file"
done
