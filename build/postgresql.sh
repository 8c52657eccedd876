# Read by ./test: a PostgreSQL server of its own, which goes with everything on it when the tests end. It has no port, only a
# socket in a temporary folder, and no password; PostgreSQL does not run as root, so under root it runs as the user of Debian's package.

postgresql_bin() {
  for found in /usr/lib/postgresql/*/bin; do
    [ -x "$found/initdb" ] && bin=$found
  done
  [ -n "${bin:-}" ] || { command -v initdb > /dev/null 2>&1 && bin=$(dirname "$(readlink -f "$(command -v initdb)")"); }
}

need_postgresql() { postgresql_bin || needed="$needed postgresql"; }

as_postgres() {
  if [ "$(id -u)" = 0 ]; then runuser -u postgres -- "$@"; else "$@"; fi
}

start_postgresql() {
  postgresql_bin || { say "There is no PostgreSQL; the tests on it will fail."; return 1; }

  # In memory where there is a place for that: every deed waits for the disk, thousands of times.
  server=$(mktemp -d "$([ -w /dev/shm ] && echo /dev/shm || echo /tmp)/clutchwright-pg.XXXXXX") || return 1
  [ "$(id -u)" = 0 ] && chown postgres "$server"
  chmod 755 "$server"
  trap stop_postgresql EXIT
  (cd "$server" \
    && as_postgres "$bin/initdb" -D "$server/data" -U postgres -A trust -E UTF8 --locale=C > "$server/initdb.log" 2>&1 \
    && as_postgres "$bin/pg_ctl" -D "$server/data" -l "$server/data/server.log" -w -t 60 \
      -o "-k $server -c listen_addresses='' -c max_connections=300" start > /dev/null 2>&1) \
    || { say "PostgreSQL could not be started; the tests on it will fail."; cat "$server/initdb.log" "$server/data/server.log" >&2; return 1; }
  export CLUTCHWRIGHT_TEST_POSTGRESQL="Host=$server;Username=postgres"
}

stop_postgresql() {
  (cd "$server" && as_postgres "$bin/pg_ctl" -D "$server/data" -m immediate -w stop > /dev/null 2>&1)
  rm -rf "$server"
}
