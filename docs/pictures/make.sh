#!/usr/bin/env bash
# Publishes the demo and takes the README's pictures of it.
set -euo pipefail
cd "$(dirname "$0")/../.."
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
dotnet run --project src/Waywright.Cli -- publish --out "$out/page" --date 2026-03-01 >/dev/null
dotnet run docs/pictures/make.cs -- "$out/page/index.html" docs/pictures
