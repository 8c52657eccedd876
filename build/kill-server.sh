#!/bin/bash
# Kills the web server under writing many times, on SQLite and on PostgreSQL: build/kill-server.sh [TIMES]
# The results of long runs stand in docs/checked-against.md.
set -u -o pipefail
cd "$(dirname "$(readlink -f "$0")")/.." || exit 2
. build/ready.sh
need_sdk
dotnet build tests/Clutchwright.Cli.Tests -c Release -v q --nologo || exit 2
CLUTCHWRIGHT_KILLS=${1:-500} artifacts/bin/Clutchwright.Cli.Tests/release/Clutchwright.Cli.Tests \
  -class Clutchwright.Cli.Tests.Serving.KilledServerTests -showLiveOutput
