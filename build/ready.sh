# Read by ./run, ./clutchwright and ./test: makes sure that the SDK is there and the program is built.
# Everything said here goes to standard error, which leaves standard output to the answer.

say() { printf '%s\n' "$*" >&2; }

need_sdk() {
  if ! command -v dotnet > /dev/null 2>&1; then
    say "The .NET 10 SDK is missing: there is no 'dotnet' on the path. On Debian: apt-get install dotnet-sdk-10.0"
    exit 2
  fi
  if ! dotnet --version > /dev/null 2>&1; then
    say "The .NET SDK found here does not fit global.json, which asks for .NET 10:"
    dotnet --version >&2
    exit 2
  fi
}

# Programs that only the tests need, by command and Debian package; missing ones are installed together.
needed=""
need_command() { command -v "$1" > /dev/null 2>&1 || needed="$needed $2"; }

install_needed() {
  [ -n "$needed" ] || return 0
  if [ "$(id -u)" = 0 ] && command -v apt-get > /dev/null 2>&1; then
    say "For the tests, installing with apt-get:$needed"
    # shellcheck disable=SC2086 # one word a package
    { apt-get update -q && DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends $needed; } >&2 \
      || say "Not installed; the tests that need them will fail:$needed"
  else
    say "The tests need programs that are missing, and will fail without them. On Debian: apt-get install$needed"
  fi
}

export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_SKIP_FIRST_TIME_EXPERIENCE=1

program=artifacts/ready/clutchwright.dll
built=artifacts/clutchwright.built

is_fresh() {
  [ -f "$program" ] && [ -f "$built" ] \
    && [ -z "$(find src build catalogue/schema Directory.Build.props Directory.Packages.props global.json -type f -newer "$built" -print -quit 2> /dev/null)" ]
}

compile() { dotnet build src/Clutchwright.Cli -c Release -v q --nologo -p:RestoreLockedMode=true "$@" >&2; }

# Two that start at the same time do not build over each other.
build_program() {
  mkdir -p artifacts
  exec 9> artifacts/clutchwright.lock
  command -v flock > /dev/null 2>&1 && flock 9
  if ! is_fresh; then
    if [ -f "$program" ]; then
      say "The sources are newer than the program: building it again."
    else
      say "Building Clutchwright; this happens on first use and takes a minute or two."
    fi
    started=$(mktemp artifacts/started.XXXXXX)
    if ! compile -p:Precompile=true; then
      say "Trying again without compiling it for this machine; it will start more slowly."
      if ! compile || ! { rm -rf artifacts/ready && cp -R artifacts/bin/Clutchwright.Cli/release artifacts/ready; }; then
        rm -f "$started"
        say "Clutchwright could not be built; the lines above say why."
        exit 2
      fi
    fi
    mv "$started" "$built"
  fi
  exec 9>&-
}
