#!/bin/bash
# Spoilt files of every kind that is imported, from counted seeds: build/fuzz-imports.sh [TIMES] [FIRST SEED]
# The results of long runs stand in docs/checked-against.md.
set -u -o pipefail
cd "$(dirname "$(readlink -f "$0")")/.." || exit 2
. build/ready.sh
need_sdk
dotnet build tests/Clutchwright.Desk.Tests -c Release -v q --nologo || exit 2
CLUTCHWRIGHT_FUZZ=${1:-100000} CLUTCHWRIGHT_FUZZ_FROM=${2:-1} artifacts/bin/Clutchwright.Desk.Tests/release/Clutchwright.Desk.Tests \
  -class Clutchwright.Desk.Tests.Importing.ImportFuzzTests -showLiveOutput
