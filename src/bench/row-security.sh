#!/usr/bin/env bash
# Measures what row-level security costs: the list of cases of one workshop and of the distributor, each 200 times, as the owner
# (no restriction) and as the role that the server takes. Needs PostgreSQL 16 or newer in the path and an empty folder:
#   PATH=$(.ci/postgresql):$PATH src/bench/row-security.sh /tmp/row-security
set -euo pipefail
cd "$(dirname "$0")/../.."
folder=$1
port=${2:-54391}
as() { if [ "$(id -u)" = 0 ]; then unshare -U "$@"; else "$@"; fi; }

as initdb -D "$folder" -U postgres -A trust -E UTF8 --locale=C.UTF-8 >/dev/null
as postgres -D "$folder" -p "$port" -c listen_addresses=127.0.0.1 -c unix_socket_directories= -c fsync=off -c jit=off >"$folder.log" 2>&1 &
server=$!
trap 'kill $server; wait $server || true' EXIT
sql() { psql -X -q -v ON_ERROR_STOP=1 -h 127.0.0.1 -p "$port" -U postgres -d postgres "$@"; }
until sql -c 'select 1' >/dev/null 2>&1; do sleep 0.2; done

for migration in db/migration/V*.sql; do sql -f "$migration" >/dev/null; done
sql <<'SQL'
set session_replication_role = replica;
insert into workshop (id, name, created_at, version) select gen_random_uuid(), 'Workshop ' || i, now(), 0 from generate_series(1, 100) i;
insert into case_file (id, number, battery_serial, vin, opened_at, opened_by, opened_workshop)
    select gen_random_uuid(), 'V-' || lpad(upper(to_hex(i / 4096)), 3, '0') || '-' || lpad(upper(to_hex(i % 4096)), 3, '0') || '-A',
        'SER-' || i, 'ZZ0' || lpad(i::text, 14, '0'), now() - i * interval '1 minute', 'bench',
        (select id from workshop where name = 'Workshop ' || 1 + i % 100)
    from generate_series(1, 50000) i;
insert into case_workshop (case_id, workshop_id, added_at, added_by, opened_at)
    select id, opened_workshop, opened_at, 'bench', opened_at from case_file;
insert into claim (id, case_id, workshop_id, amount, currency, state, opened_at, opened_by)
    select gen_random_uuid(), id, opened_workshop, 100, 'EUR', 'submitted', opened_at, 'bench' from case_file;
insert into claim_desk (claim_id, ordinal, case_id, number, battery_serial, vin, workshop_id, amount, currency, state, version,
        waiting_since, probability)
    select k.id, k.ordinal, c.id, c.number, c.battery_serial, c.vin, k.workshop_id, k.amount, k.currency, k.state, 0, k.opened_at,
        random() from claim k join case_file c on c.id = k.case_id;
analyze;
SQL

measure() { # role, what, query
  sql -t -A <<SQL
set jit = off;
set role $1;
select set_config('voltdocket.workshop', (select workshop_id from (select '$workshop'::uuid as workshop_id) w)::text, false) \g /dev/null
do \$do\$
declare
    times double precision[] := '{}';
    began timestamptz;
    it record;
begin
    for i in 1..220 loop
        began := clock_timestamp();
        for it in execute \$q\$$3\$q\$ loop null; end loop;
        if i > 20 then times := times || extract(epoch from clock_timestamp() - began) * 1000; end if;
    end loop;
    raise notice '%', format('%-24s %-20s p50 %s ms, p95 %s ms', '$2', '$1',
        round((select percentile_cont(0.5) within group (order by t) from unnest(times) t)::numeric, 3),
        round((select percentile_cont(0.95) within group (order by t) from unnest(times) t)::numeric, 3));
end
\$do\$;
SQL
}

workshop=$(sql -t -A -c "select id from workshop where name = 'Workshop 7'")
own="select c.* from case_workshop w join case_file c on c.id = w.case_id where w.workshop_id = '$workshop' order by w.opened_at desc, w.case_id desc limit 51"
all="select c.* from case_file c order by c.opened_at desc, c.id desc limit 51"
desk="select * from claim_list where workshop_id = '$workshop' order by rank desc, ordinal desc limit 51"
rare="select c.id from case_workshop w join case_file c on c.id = w.case_id where w.workshop_id = '$workshop' and right(c.vin, 6) = '049906'"
part="select c.id from case_file c where c.battery_serial like '%4990%' limit 51"
for role in postgres voltdocket_workshop; do
  measure $role 'list of own cases' "$own"
  measure $role 'own claims' "$desk"
  measure $role 'own, end of a VIN' "$rare"
done
for role in postgres voltdocket_staff; do
  measure $role 'list of all cases' "$all"
  measure $role 'part of a serial' "$part"
done
