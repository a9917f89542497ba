#!/usr/bin/env bash
# Sets seams beside the cuts of METIS and prints the table for docs/sections.md.
# Needs gpmetis (Debian: metis) and target/test-classes.
# usage: src/bench/partition-peers.sh [JOB.json | MESH:PARTS]...
# after: mvn -B -q package; src/test/open-meshes/fetch.sh
set -eu
cd "$(dirname "$0")/../.."
command -v gpmetis >/dev/null || { echo "gpmetis is missing: apt-get install metis" >&2; exit 1; }
open=target/open-meshes # by src/test/open-meshes/fetch.sh
if [ $# -eq 0 ]; then
  set -- models/cup.json models/rim.json models/plaque.json models/cup-scan.json
  for mesh in node-stl/test/test_data/Pterosaur_FDM.stl:24 glmark2-data/usr/share/glmark2/models/bunny.obj:12 \
      libmujoco-samples/usr/share/mujoco/model/mug/mug.obj:8 netgen-doc/usr/share/doc/netgen/examples/hinge.stl:10 \
      brutalchess/usr/share/games/brutalchess/models/knight.obj:8 \
      netgen-doc/usr/share/doc/netgen/examples/part1.stl:8 \
      node-stl/test/test_data/RasPiCaseLight.stl:8 stl/test/ascii/effector_base.stl:8; do
    [ -f "$open/${mesh%:*}" ] && set -- "$@" "$open/$mesh"
  done
fi
exec java -cp "target/classes:target/test-classes:$(printf '%s:' target/lib/*.jar)" \
  org.seamwright.section.PartitionPeers "$@"
