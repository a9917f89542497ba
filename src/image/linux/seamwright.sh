#!/bin/sh
# Starts the program with the runtime of its image, wherever that lies. Without arguments, as from a
# menu, the window opens.
self=$0
while [ -h "$self" ]; do
  link=$(readlink "$self")
  case $link in
    /*) self=$link ;;
    *) self=${self%/*}/$link ;;
  esac
done
case $self in
  */*) image=${self%/*}/.. ;;
  *) image=.. ;;
esac
[ $# -gt 0 ] || set -- window
exec "$image/lib/runtime/bin/java" @OPTIONS@ -cp "$image/lib/app/seamwright.jar" \
  org.seamwright.cli.Main "$@"
