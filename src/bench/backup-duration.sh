#!/usr/bin/env bash
# Measures db/archive on an archive of so many megabytes of incompressible originals, without the server's verification, and
# extrapolates to 10 GB. Needs PostgreSQL 16 or newer in the path and an empty folder on the disk to be measured:
#   PATH=$(.ci/postgresql):$PATH src/bench/backup-duration.sh /tmp/backup-duration 500
set -euo pipefail
cd "$(dirname "$0")/../.."
folder=$1
megabytes=$2
export PGHOST=127.0.0.1 PGPORT=${3:-54392} PGUSER=postgres PGDATABASE=postgres VOLTDOCKET_COMMAND=true
as() { if [ "$(id -u)" = 0 ]; then unshare -U "$@"; else "$@"; fi; }
mkdir -p "$folder/backups"
as initdb -D "$folder/data" -U postgres -A trust -E UTF8 --locale=C.UTF-8 >/dev/null
as postgres -D "$folder/data" -c port="$PGPORT" -c listen_addresses=127.0.0.1 -c unix_socket_directories= -c jit=off >"$folder/log" 2>&1 &
server=$!
trap 'kill $server; wait $server || true' EXIT
until psql -X -q -c 'select 1' >/dev/null 2>&1; do sleep 0.2; done
for migration in db/migration/V*.sql; do psql -X -q -v ON_ERROR_STOP=1 -f "$migration" >/dev/null; done
# one block of random bytes, made different for each row by its number, which no compression finds
psql -X -q -v ON_ERROR_STOP=1 >/dev/null <<SQL
create temp table block as select string_agg(sha256((random()::text || i)::bytea), '') as bytes from generate_series(1, 32760) i;
insert into raw_file (sha256, bytes) select encode(sha256(i::text::bytea), 'hex'), 1048320 from generate_series(1, $megabytes) i;
insert into raw_chunk (sha256, seq, data)
    select encode(sha256(i::text::bytea), 'hex'), 0, substr(bytes, 1 + i) || substr(bytes, 1, i) from block, generate_series(1, $megabytes) i;
checkpoint;
SQL
seconds() { date +%s.%N; }
began=$(seconds)
db/archive backup "$folder/backups"
middle=$(seconds)
db/archive restore "$folder"/backups/*.dump restored
ended=$(seconds)
awk -v mb="$megabytes" -v a="$began" -v b="$middle" -v c="$ended" 'BEGIN {
  printf "%d MB: backup %.1f s, restore %.1f s; per 10 GB, extrapolated: backup %.0f s, restore %.0f s\n",
    mb, b - a, c - b, (b - a) * 10000 / mb, (c - b) * 10000 / mb }'
