# Shared by run and run_page: the browser ($browser), and its driver, which npm fetches.
# shellcheck shell=bash

skip() {
  echo "skipped: $1"
  [ "${CI:-}" != true ] || exit 1
  exit 77
}

# fetch_driver WORK_FOLDER: makes the folder, goes there, and brings the driver.
fetch_driver() {
  local tool
  for tool in node npm; do
    command -v "$tool" >/dev/null || skip "no $tool"
  done
  browser="$(command -v chromium || command -v chromium-browser || command -v google-chrome || true)"
  [ -n "$browser" ] || skip "no browser: apt-get install chromium"
  command -v pdfinfo >/dev/null || skip "no pdfinfo: apt-get install poppler-utils"
  mkdir -p "$1"
  cp "$here/package.json" "$here/package-lock.json" "$here/paper.mjs" "$1"
  cd "$1"
  if ! npm ci --ignore-scripts --no-audit --no-fund --prefer-offline --fetch-retries=1 --fetch-retry-mintimeout=1000 \
    >npm.log 2>&1; then
    cat npm.log
    # A lock file that does not fit is a fault; a registry out of reach is not.
    grep -qE 'ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH|ERR_SOCKET_TIMEOUT' npm.log &&
      skip "the package registry cannot be reached"
    exit 1
  fi
}
