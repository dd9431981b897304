# Shared by tools/start and tools/check: what to install, which preset suits this processor, how to configure.
# shellcheck shell=bash

# Debian 12 names.
packages=(cmake g++ ninja-build libeigen3-dev libboost1.81-dev libcli11-dev nlohmann-json3-dev libfmt-dev
  doctest-dev libvalijson-dev libtbb-dev libutf8proc-dev libnetcdf-dev libxlsxwriter-dev librsvg2-dev pkgconf
  fonts-dejavu-core)
# Bring what draws the charts. Whoever has node and npm from elsewhere keeps those: Debian's would clash.
command -v node >/dev/null || packages+=(nodejs)
command -v npm >/dev/null || packages+=(npm)
# For studies over MPI.
mpi_packages=(libopenmpi-dev openmpi-bin)
# For the test of an array of jobs on a real scheduler.
scheduler_packages=(slurmctld slurmd slurm-client munge)
# For a bare Debian 12, to install the packages in (tools/package --try).
bare_packages=(mmdebstrap)
# For the Python module, and for the tests of it: tables, courses, plots and types.
python_packages=(python3-dev pybind11-dev python3-numpy python3-pandas python3-xarray python3-matplotlib mypy)
# For the tests that look at pages in a browser, and count its sheets of paper.
browser_packages=(chromium firefox-esr poppler-utils)
# For the engine in a page (tools/page).
page_packages=(emscripten)
# For what compares with another integrator (large, because it brings MPI) and with another solver, for opening a
# study in xarray and making files of weather with it, files of climate models to read, and the data sets that the
# climate is packed from; for the reference of the model; and what judges Debian packages.
peer_packages=(doxygen lintian libsundials-dev libglpk-dev python3-netcdf4 python3-xarray libncarg-data ferret-datasets)

say() { printf '%s\n' "bide: $*"; }

stop() {
  printf '%s\n' "bide: $*" >&2
  exit 1
}

installed() {
  [ "$(dpkg-query -W -f '${db:Status-Status}' "$1" 2>/dev/null || true)" = installed ]
}

# install_missing NAME...: installs through apt what this machine lacks; says nothing to apt when nothing is missing.
install_missing() {
  if ! command -v dpkg-query >/dev/null || ! command -v apt-get >/dev/null; then
    say "no apt here: assuming that a C++20 compiler, cmake and the libraries in tools/common.sh are installed"
    return 0
  fi
  local name
  local missing=()
  for name in "$@"; do
    installed "$name" || missing+=("$name")
  done
  if [ "${#missing[@]}" -eq 0 ]; then
    say "all packages are installed"
    return 0
  fi
  local root=()
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null || stop "missing packages, and neither root nor sudo: apt-get install ${missing[*]}"
    root=(sudo)
  fi
  say "installing ${missing[*]}"
  local quiet=(env DEBIAN_FRONTEND=noninteractive apt-get -qq -o Dpkg::Use-Pty=0)
  "${root[@]}" "${quiet[@]}" update
  "${root[@]}" "${quiet[@]}" install -y --no-install-recommends "${missing[@]}" >/dev/null
}

# The fastest preset this processor can run, or the one named by BIDE_PRESET. The C library's loader asks the
# processor itself: some virtual machines list fewer features than they have in /proc/cpuinfo.
preset_for_this_processor() {
  local loader=/lib64/ld-linux-x86-64.so.2 levels=
  if [ -n "${BIDE_PRESET:-}" ]; then
    echo "$BIDE_PRESET"
    return 0
  fi
  if [ -x "$loader" ]; then levels=$("$loader" --help 2>/dev/null || true); fi
  case $levels in
    *'x86-64-v4 (supported'*) echo avx512 ;;
    *'x86-64-v3 (supported'*) echo release ;;
    *) echo portable ;;
  esac
}

# configure PRESET FOLDER [CMAKE ARGUMENTS]: Ninja when it is there and the folder was not made with another.
configure() {
  local preset=$1 folder=$2
  shift 2
  local generator=()
  if [ ! -e "$folder/CMakeCache.txt" ] && command -v ninja >/dev/null; then
    generator=(-G Ninja)
  fi
  cmake --preset "$preset" -B "$folder" "${generator[@]}" "$@" -Wno-dev >"$folder.log" 2>&1 || {
    cat "$folder.log" >&2
    stop "cmake could not configure $folder"
  }
  rm -f "$folder.log"
}

# The page that the engine works in, in build-browser/, and a copy where the program is.
build_page() {
  configure browser build-browser || return 1
  cmake --build build-browser -j "$(cores)" || return 1
  mkdir -p build
  cp build-browser/bide.html build/bide.html
}

cores() { nproc 2>/dev/null || echo 2; }
