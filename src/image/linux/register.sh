#!/bin/sh
# Tells this user's desktop where the program lies: menu entry, icon, and that it opens job files.
# usage: register.sh          undo: register.sh --remove
set -eu
share=$(cd "$(dirname "$0")" && pwd)
data=${XDG_DATA_HOME:-$HOME/.local/share}
icons=$(cd "$share" && find icons -name seamwright.png)

if [ "${1-}" = --remove ]; then
  rm -f "$data/applications/seamwright.desktop" "$data/mime/packages/seamwright-job.xml"
  for icon in $icons; do rm -f "$data/$icon"; done
else
  mkdir -p "$data/applications" "$data/mime/packages"
  # A path in Exec stands in quotation marks; what they do not take is refused.
  launcher=$(dirname "$share")/bin/seamwright
  case $launcher in
    *[\"\`\$\\%]*) echo "register.sh: the path $launcher has a sign that desktop entries do not take" >&2; exit 1 ;;
  esac
  awk -v launcher="$launcher" \
    '/^Exec=/ { print "Exec=\"" launcher "\" window %f"; next } { print }' \
    "$share/seamwright.desktop" >"$data/applications/seamwright.desktop"
  cp "$share/seamwright-job.xml" "$data/mime/packages/"
  for icon in $icons; do
    mkdir -p "$data/$(dirname "$icon")"
    cp "$share/$icon" "$data/$icon"
  done
fi

if command -v update-mime-database >/dev/null; then update-mime-database "$data/mime"; fi
if command -v update-desktop-database >/dev/null; then update-desktop-database "$data/applications"; fi
