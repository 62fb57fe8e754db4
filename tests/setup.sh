#!/bin/sh
# Installs what coldgap needs on Debian, then builds into build/.
#   sh tests/setup.sh          what the program needs (and gnuplot)
#   sh tests/setup.sh tests    what the tests need besides
#   sh tests/setup.sh ci       and what a few of them skip without: lint, CVODE,
#                              lintian, clang with its OpenMP
# As root it installs by itself; with sudo it asks sudo; otherwise it says what
# to install and stops with status 2.
set -eu
cd "$(dirname "$0")/.."

program="gcc libc6-dev cmake make pkg-config libgsl-dev libconfig-dev gnuplot-nox fonts-dejavu-core"
tests="check ngspice calculix-ccx valgrind dpkg-dev file groff-base zsh
  python3-numpy octave"
wanted=$program
extras="cppcheck clang-tidy libsundials-dev clang libclang-rt-dev libomp-dev lintian"
case ${1:-} in tests | ci) wanted="$program $tests" ;; esac

# Those of the packages named that are not installed, a space before each.
missing_of() {
    for package in "$@"; do
        dpkg-query -W -f='${Status}' "$package" 2>/dev/null |
            grep -q 'ok installed' || printf ' %s' "$package"
    done
}
# shellcheck disable=SC2086 # lists of words are meant to split
missing=$(missing_of $wanted)

if [ -n "$missing" ]; then
    echo "Missing packages:$missing"
    if [ "$(id -u)" = 0 ]; then
        as_root=
    elif command -v sudo >/dev/null 2>&1; then
        as_root=sudo
    else
        echo "Neither root nor sudo here.  Please have this run, then try again:"
        echo "  apt-get update && apt-get install -y$missing"
        exit 2
    fi
    # shellcheck disable=SC2086
    $as_root env DEBIAN_FRONTEND=noninteractive apt-get update -qq
    # shellcheck disable=SC2086
    $as_root env DEBIAN_FRONTEND=noninteractive \
        apt-get install -y -qq --no-install-recommends $missing >/dev/null
fi

# Without these the tests that want them are skipped, so a failure is none.
if [ "${1:-}" = ci ] && [ "$(id -u)" = 0 ]; then
    # shellcheck disable=SC2086
    lacking=$(missing_of $extras)
    [ -z "$lacking" ] || [ -n "$missing" ] || timeout 120 apt-get update -qq ||
        echo "no lists of packages"
    for package in $lacking; do
        DEBIAN_FRONTEND=noninteractive timeout 300 apt-get install -y -qq \
            --no-install-recommends "$package" >/dev/null ||
            echo "not installed, its tests are skipped: $package"
    done
fi

testing=OFF
case ${1:-} in tests | ci) testing=ON ;; esac
# CI runs the suites under sanitizers too; a user is spared these minutes.
sanitized=OFF
[ "${1:-}" != ci ] || sanitized=ON
# A build folder of another machine or kept from elsewhere is of no use here.
if [ -f build/CMakeCache.txt ] &&
   ! grep -F -x -q "CMAKE_HOME_DIRECTORY:INTERNAL=$(pwd)" build/CMakeCache.txt
then
    rm -rf build
fi
log=build/build.log
mkdir -p build
if ! { cmake -S . -B build -DBUILD_TESTING="$testing" \
        -DCG_SANITIZED="$sanitized" &&
       cmake --build build --parallel "$(nproc)"; } >"$log" 2>&1; then
    cat "$log"
    echo "The build failed; its output is above and in $log"
    exit 1
fi
