#!/usr/bin/env bash
# Runs the benchmarks under src/bench/java whose names match. usage: src/bench/run.sh [REGEX] [JMH options]
set -eu
cd "$(dirname "$0")/../.."
mvn -B -q -Pbench test-compile dependency:build-classpath -Dmdep.outputFile=target/bench.cp -Dmdep.includeScope=test
exec java -cp "target/test-classes:target/classes:$(cat target/bench.cp)" org.openjdk.jmh.Main "$@"
