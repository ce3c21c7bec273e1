#!/bin/sh
# fetch-imgui.sh DEST: leaves the Dear ImGui 1.90.1 sources at DEST; does nothing if they are there.
#
# Debian 12's own package is 1.86, which loses fast clicks at low frame rates (it has no input queue). The next release's source
# package is what we build from. It comes from wherever this machine's own packages come from: apt itself is asked for that place,
# and a private apt configuration points there, so that the system's sources and lists stay as they are and apt checks the
# signatures. CMake fetches the same version from upstream where this is not possible.
set -eu

dest=${1:?usage: fetch-imgui.sh DEST}
suite=trixie
version=1.90.1+ds-1
sha256=ecce377df0f90b292f15dcbd83d438bddc162b2388c881132bde18c787572a1c  # of the .orig tarball
keyring=/usr/share/keyrings/debian-archive-keyring.gpg

if [ -f "$dest/.version" ] && [ "$(cat "$dest/.version")" = "$version" ]; then exit 0; fi
fail() { echo "fetch-imgui: $*" >&2; exit 1; }
for tool in apt-get dpkg-source sha256sum; do
    command -v "$tool" >/dev/null || fail "$tool is missing"
done

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
chmod 755 "$work"  # apt downloads as a user of its own
mkdir -p "$work/sources" "$work/lists/partial" "$work/cache/archives/partial" "$work/source"
if [ "$(id -u)" = 0 ] && id _apt >/dev/null 2>&1; then chown _apt "$work/lists/partial" "$work/source"; fi

cat > "$work/apt.conf" <<EOF
Dir::Etc::SourceList "/dev/null";
Dir::Etc::SourceParts "$work/sources";
Dir::State::Lists "$work/lists";
Dir::Cache "$work/cache";
Acquire::Languages "none";
Acquire::Retries "5";
#clear APT::Update::Post-Invoke;
#clear APT::Update::Post-Invoke-Success;
EOF
apt() { apt-get -qq -c "$work/apt.conf" "$@"; }

codename=$(. /etc/os-release && echo "${VERSION_CODENAME:-}")
sites=$(apt-get indextargets --format '$(RELEASE) $(COMPONENT) $(SITE)' 'Created-By: Packages' |
    awk -v release="$codename" '$1 == release && $2 == "main" && !seen[$3]++ { print $3 }')
[ -n "$sites" ] || fail "this machine's package sources do not serve '$codename main'"

for site in $sites; do
    {
        printf 'Types: deb-src\nURIs: %s\nSuites: %s\nComponents: main\n' "$site" "$suite"
        [ ! -f "$keyring" ] || echo "Signed-By: $keyring"
    } > "$work/sources/imgui.sources"
    if apt --error-on=any update && (cd "$work/source" && apt --download-only source "imgui=$version"); then break; fi
done
tarball=$(ls "$work"/source/imgui_*.orig.tar.* 2>/dev/null) || fail "no imgui $version where this machine's packages come from"
echo "$sha256  $tarball" | sha256sum --check --quiet || fail "the tarball is not the pinned one"

# --no-check: apt has just checked the package against the signed index; the packager's own key is not needed.
dpkg-source --no-check -q -x "$work/source/imgui_$version.dsc" "$work/tree"
echo "$version" > "$work/tree/.version"
mkdir -p "$(dirname "$dest")"
rm -rf "$dest"
mv "$work/tree" "$dest"
