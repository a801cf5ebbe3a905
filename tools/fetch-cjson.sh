#!/bin/sh
# Fetches the C sources of cJSON from the distribution's own source package into
# a folder that is never committed: the page compiles them for WebAssembly.
#
#     tools/fetch-cjson.sh FOLDER        leaves FOLDER/cjson/cJSON.c and cJSON.h
#
# A source list is put together for this one download from what apt already
# reads packages from; the system's own lists stay as they are.
set -eu

folder=$1
[ -r "$folder/cjson/cJSON.c" ] && [ -r "$folder/cjson/cJSON.h" ] && exit 0

mkdir -p "$folder/cjson"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir -p "$work/lists/partial" "$work/cache/archives/partial" "$work/source"

apt-get indextargets --format '$(REPO_URI) $(RELEASE) $(COMPONENT)|$(ORIGIN)' \
    'Created-By: Packages' | sort -u | sed -n 's/^\(.*\) main|Debian$/deb-src \1 main/p' |
    sed 's/^deb-src/deb-src [signed-by=\/usr\/share\/keyrings\/debian-archive-keyring.gpg]/' \
        > "$work/sources.list"
if ! [ -s "$work/sources.list" ]; then
    echo "fetch-cjson: apt reads packages from nowhere that also has their sources" >&2
    exit 1
fi

apt() {
    apt-get -qq -o Dir::Etc::SourceList="$work/sources.list" -o Dir::Etc::SourceParts=- \
        -o Dir::State::Lists="$work/lists" -o Dir::Cache="$work/cache" \
        -o APT::Sandbox::User=root "$@"
}
apt update
cd "$work/source"
apt source --download-only cjson
dpkg-source --no-check -x ./*.dsc tree > /dev/null
cd - > /dev/null
cp "$work/source/tree/cJSON.c" "$work/source/tree/cJSON.h" "$work/source/tree/LICENSE" \
    "$folder/cjson/"
