#!/usr/bin/env bash
# Publishes the demo and takes pictures of it as it is read: desk and phone, light and dark, print. All go to artifacts/pictures, to be looked at;
# the README's, the page in every way, and the charts on a phone in the dark (where room and contrast are least) are kept here.
set -euo pipefail
cd "$(dirname "$0")/../.."
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
dotnet run --project src/Waywright.Cli -- publish --out "$out/page" --date 2026-03-01 >/dev/null
rm -rf artifacts/pictures && mkdir -p artifacts/pictures
dotnet run docs/pictures/make.cs -- "$out/page/index.html" artifacts/pictures
rm -f docs/pictures/*.png
cp artifacts/pictures/{page,page-dark,page-phone,batch,rail,belt,print-01,print-02,*-phone-dark}.png docs/pictures/
