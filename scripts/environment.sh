# Sourced by ./test and ./gallery: quiet tools, and a Chromium found or installed.
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_SKIP_FIRST_TIME_EXPERIENCE=1
# What runs here runs for a minute: compiling it once, without watching how it is used, takes a third less of the machine.
export DOTNET_TieredPGO=0
# One compiler for all projects; nothing of it is left behind when the script ends: see end_build_servers.
export UseSharedCompilation=true DOTNET_CLI_USE_MSBUILD_SERVER=0 MSBUILDDISABLENODEREUSE=1

end_build_servers() {
    dotnet build-server shutdown --vbcscompiler >/dev/null 2>&1 || true
}

# Sets CHROMIUM to a browser that starts, or leaves it empty. The same browser without a window comes first: it does less beside the pages.
find_chromium() {
    local candidate
    for candidate in "${CHROMIUM:-}" chromium-headless-shell chromium chromium-browser google-chrome; do
        [ -n "$candidate" ] || continue
        candidate=$(command -v "$candidate") || continue
        if "$candidate" --version >/dev/null 2>&1; then
            CHROMIUM=$candidate
            export CHROMIUM
            return 0
        fi
    done
    CHROMIUM=
    return 1
}

# Makes sure that CHROMIUM is set; installs the distribution's package when there is none.
need_chromium() {
    find_chromium && return 0
    if ! command -v apt-get >/dev/null; then
        echo "The browser tests need Chromium, and this machine has no apt-get to install it with." >&2
        echo "Install Chromium by hand, or set CHROMIUM to the path of its program, and run this again." >&2
        return 1
    fi
    local as_root=()
    if [ "$(id -u)" -ne 0 ]; then
        if ! command -v sudo >/dev/null || ! { sudo -n true 2>/dev/null || [ -t 0 ]; }; then
            echo "The browser tests need Chromium. Install it once as root: apt-get install chromium" >&2
            return 1
        fi
        as_root=(sudo)
    fi
    echo "Chromium is missing: installing the package of the distribution."
    "${as_root[@]}" apt-get update -qq </dev/null || true
    local package installed=
    for package in chromium-headless-shell chromium; do
        # Not every distribution has the first.
        [ -n "$(apt-cache madison "$package" 2>/dev/null)" ] || continue
        "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$package" </dev/null >/dev/null && installed=$package && break
    done
    [ -n "$installed" ] || {
        echo "apt-get could not install chromium; its message stands above." >&2
        return 1
    }
    find_chromium || {
        echo "Chromium was installed and does not start." >&2
        return 1
    }
}
