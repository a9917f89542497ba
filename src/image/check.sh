#!/usr/bin/env bash
# Starts the image, moved elsewhere, as its users would: commands, and the window if there is a
# display. Prints its size and how long a start takes.
# usage: src/image/check.sh     after: mvn -B -q -Pimage package -DskipTests
set -euo pipefail
cd "$(dirname "$0")/../.."
if [ ! -e target/image/seamwright/bin/seamwright ]; then
  echo "check.sh: there is no image for Linux under target/image" >&2
  [ "${CI-}" = true ] && exit 1 || exit 0
fi
work=$(mktemp -d)
window=""
trap '[ -z "$window" ] || kill "$window" 2>/dev/null || true; rm -rf "$work"' EXIT

# A path with a blank, reached over a link, from another folder.
mkdir -p "$work/some place" "$work/bin"
cp -r target/image/seamwright "$work/some place/"
ln -s "$work/some place/seamwright/bin/seamwright" "$work/bin/seamwright"
run=$work/bin/seamwright
cup=$PWD/models/cup.stl
expected=$(java -jar target/seamwright.jar measure "$cup" --unit mm --json)
version=$(java -jar target/seamwright.jar --version)

cd /
[ "$("$run" --version)" = "$version" ] || { echo "check.sh: another version than $version" >&2; exit 1; }
[ "$("$run" measure "$cup" --unit mm --json)" = "$expected" ] || { echo "check.sh: other figures than the jar's" >&2; exit 1; }
code=0; "$run" plan "$work/none.json" --out "$work/plan" 2>/dev/null || code=$?
[ $code = 3 ] || { echo "check.sh: exit code $code where 3 is due" >&2; exit 1; }
"$run" plan "$OLDPWD/models/plaque.json" --out "$work/plan" >/dev/null 2>"$work/plan.err" || [ $? = 4 ]
if grep -v '^seamwright: ' "$work/plan.err"; then echo "check.sh: plan complains" >&2; exit 1; fi
[ -s "$work/plan/bench-sheet.pdf" ] && [ -s "$work/plan/sections.png" ]

# The archive of classes must serve wherever the image lies, and a start must not load what it
# does not need.
java="$work/some place/seamwright/lib/runtime/bin/java"
loaded=$("$java" -Xshare:on -XX:+UseParallelGC -Xlog:class+load org.seamwright.cli.Main measure "$cup" --unit mm)
for library in com.fasterxml org.apache.pdfbox javafx org.sqlite tech.units; do
  if grep -F " $library." <<<"$loaded"; then
    echo "check.sh: measure loads $library" >&2; exit 1
  fi
done
echo "measure loads $(grep -c 'source: shared objects' <<<"$loaded") classes from the archive, $(grep -F '[class,load]' <<<"$loaded" | grep -vc 'source: shared objects' || true) made or loaded otherwise"

if [ -n "${DISPLAY-}" ]; then
  (cd "$OLDPWD" && exec "$run" window models/plaque.json) >"$work/window.log" 2>&1 &
  window=$!
  javac -d "$work" "$OLDPWD/src/image/WatchScreen.java"
  "$java" -cp "$work" WatchScreen "$OLDPWD/target/image/window.png" 90 || { cat "$work/window.log"; exit 1; }
  kill "$window"
  wait "$window" || true
  window=""
else
  echo "no display: the image's window was not opened"
  [ "${CI-}" != true ]
fi

seconds() {
  local best=999999 t
  for _ in 1 2 3 4 5; do
    t=$(date +%s%N); "$@" >/dev/null; t=$((($(date +%s%N) - t) / 1000000))
    [ $t -lt $best ] && best=$t
  done
  echo "$best ms"
}
echo "size: $(du -sm "$work/some place/seamwright" | cut -f1) MB"
echo "measure of the cup, whole process, best of 5: image $(seconds "$run" measure "$cup" --unit mm), java -jar $(seconds java -jar "$OLDPWD/target/seamwright.jar" measure "$cup" --unit mm)"
