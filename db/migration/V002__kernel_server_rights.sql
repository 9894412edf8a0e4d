-- What the server may do. The owner of the tables runs the migrations. The server signs in as another role that has no rights of
-- its own and takes one of two roles: voltdocket_staff for the distributor's people and for background work, which sees every
-- row, and voltdocket_workshop, which sees the rows of one workshop.

do $$
begin
    if not exists (select from pg_roles where rolname = 'voltdocket_staff') then
        create role voltdocket_staff nologin;
    end if;
    if not exists (select from pg_roles where rolname = 'voltdocket_workshop') then
        create role voltdocket_workshop nologin;
    end if;
    -- a server that does not migrate checks which migrations have run
    if to_regclass('flyway_schema_history') is not null then
        grant select on flyway_schema_history to voltdocket_staff;
    end if;
end
$$;

grant usage on schema public to voltdocket_staff, voltdocket_workshop;

-- of all tables that follow; DELETE is granted by the migration of a table that needs it, TRUNCATE never
alter default privileges in schema public grant select, insert, update on tables to voltdocket_staff, voltdocket_workshop;
alter default privileges in schema public grant usage, select on sequences to voltdocket_staff, voltdocket_workshop;

-- The workshop that this connection works for; null for none. The server sets it for each request.
create function current_workshop() returns uuid language sql stable parallel safe as $$
    select nullif(current_setting('voltdocket.workshop', true), '')::uuid
$$;

-- Limits what voltdocket_workshop reads and changes to the rows that satisfy the condition. The owner sees everything. The policy
-- for voltdocket_staff has no condition, so that its queries are planned as without row-level security.
create procedure restrict_rows(restricted_table regclass, condition text) language plpgsql as $$
begin
    execute format('alter table %s enable row level security', restricted_table);
    execute format('create policy staff on %s to voltdocket_staff using (true) with check (true)', restricted_table);
    execute format('create policy workshop on %s to voltdocket_workshop using (%s) with check (%s)',
        restricted_table, condition, condition);
end
$$;

-- Append-only tables. Evidence, assessments, decisions and the trail are never changed; a correction is a new row. The server's
-- roles lack the right to change them, and a trigger refuses the owner too.

-- Only the functions that erase personal data set voltdocket.erasing. Setting it gives the server no right, because it may not
-- change these tables.
create function refuse_change() returns trigger language plpgsql as $$
begin
    if tg_op in ('UPDATE', 'DELETE') and current_setting('voltdocket.erasing', true) = 'yes' then
        return case tg_op when 'UPDATE' then new else old end;
    end if;
    raise exception '% is append-only: % is refused', tg_table_name, tg_op using errcode = 'restrict_violation';
end
$$;

-- What stands in place of an erased text: its digest, by which somebody who has the text can show that it was this one.
create function erased_text(old text) returns text language sql immutable strict parallel safe as $$
    select case when old like 'Erased. SHA-256 of the text: %' then old
        else 'Erased. SHA-256 of the text: ' || encode(sha256(convert_to(old, 'UTF8')), 'hex') end
$$;

-- Refuses UPDATE, DELETE and TRUNCATE on a table. A migration calls it for each append-only table of its package.
create procedure make_append_only(append_only_table regclass) language plpgsql as $$
begin
    execute format('revoke update, delete, truncate on %s from voltdocket_staff, voltdocket_workshop', append_only_table);
    execute format('create trigger %I before update or delete on %s for each row execute function refuse_change()',
        append_only_table || '_append_only', append_only_table);
    execute format('create trigger %I before truncate on %s for each statement execute function refuse_change()',
        append_only_table || '_no_truncate', append_only_table);
end
$$;
