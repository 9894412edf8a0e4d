-- What suppliers produce and the distributor sells: who made a battery, of which type and batch, is read off its serial.
-- Codes are kept for good, so that terms, batches and lots may refer to them. What is said of a code has rows of its own:
-- a correction ends the row that stood and adds another, so that it can be told later what was known at a time.

create extension if not exists btree_gist;

create table supplier (
    code  text primary key check (code ~ '^[A-Z0-9][A-Z0-9._-]{0,29}$')
);

create table battery_type (
    code  text primary key check (code ~ '^[A-Z0-9][A-Z0-9._-]{0,29}$')
);

create table supplier_entry (
    id           bigint generated always as identity primary key,
    supplier     text not null references supplier (code),
    name         text not null check (length(name) between 1 and 120),
    recorded_at  timestamptz not null,
    recorded_by  text not null check (recorded_by <> ''),
    ended_at     timestamptz check (ended_at >= recorded_at),
    ended_by     text,
    check (num_nulls(ended_at, ended_by) in (0, 2))
);

create table battery_type_entry (
    id                 bigint generated always as identity primary key,
    type               text not null references battery_type (code),
    name               text not null check (length(name) between 1 and 120),
    supplier           text not null references supplier (code),
    chemistry          text not null check (chemistry in ('flooded', 'efb', 'agm', 'gel')),
    capacity_ah        double precision not null check (capacity_ah between 1 and 400),
    rated_cranking_a   double precision check (rated_cranking_a between 20 and 3000),
    cranking_standard  text check (cranking_standard in ('EN', 'SAE', 'IEC', 'DIN', 'JIS')),
    -- what every serial of the type begins with; empty where the maker keeps to no form
    serial_prefix      text check (serial_prefix ~ '^[A-Z0-9./-]{1,40}$'),
    recorded_at        timestamptz not null,
    recorded_by        text not null check (recorded_by <> ''),
    ended_at           timestamptz check (ended_at >= recorded_at),
    ended_by           text,
    check (num_nulls(rated_cranking_a, cranking_standard) in (0, 2)),
    check (num_nulls(ended_at, ended_by) in (0, 2))
);

create table produced_range (
    id            bigint generated always as identity primary key,
    type          text not null references battery_type (code),
    batch         text not null check (length(batch) between 1 and 40),
    first_serial  text not null check (first_serial ~ '^[A-Z0-9./-]{4,40}$'),
    last_serial   text not null check (last_serial ~ '^[A-Z0-9./-]{4,40}$'),
    produced_on   date not null,
    -- batteries made of it; at most what the range can number
    count         integer not null check (count > 0),
    -- the serials taken apart: what they begin with, and the running number at their end with its digits
    stem          text not null,
    digits        integer not null check (digits >= 0),
    from_number   numeric not null,
    to_number     numeric not null check (to_number >= from_number),
    recorded_at   timestamptz not null,
    recorded_by   text not null check (recorded_by <> ''),
    ended_at      timestamptz check (ended_at >= recorded_at),
    ended_by      text,
    check (count <= to_number - from_number + 1),
    check (num_nulls(ended_at, ended_by) in (0, 2)),
    -- a serial is of one batch
    constraint produced_range_apart exclude using gist (
        stem with =, digits with =, numrange(from_number, to_number, '[]') with &&) where (ended_at is null)
);

create table sold_month (
    id           bigint generated always as identity primary key,
    type         text not null references battery_type (code),
    batch        text not null check (length(batch) between 1 and 40),
    month        date not null check (extract(day from month) = 1),
    sold         integer not null check (sold >= 0),
    recorded_at  timestamptz not null,
    recorded_by  text not null check (recorded_by <> ''),
    ended_at     timestamptz check (ended_at >= recorded_at),
    ended_by     text,
    check (num_nulls(ended_at, ended_by) in (0, 2))
);

create unique index supplier_entry_stands on supplier_entry (supplier) where ended_at is null;
create unique index battery_type_entry_stands on battery_type_entry (type) where ended_at is null;
create unique index produced_range_stands on produced_range (type, batch, first_serial) where ended_at is null;
create unique index sold_month_stands on sold_month (type, batch, month) where ended_at is null;

-- A row may end, once; nothing else of it ever changes.
create function catalogue_rows_end_once() returns trigger language plpgsql as $$
begin
    if tg_op <> 'UPDATE' then
        raise exception '% is kept: % is refused', tg_table_name, tg_op using errcode = 'restrict_violation';
    end if;
    if old.ended_at is not null or new.ended_at is null
            or to_jsonb(new) - 'ended_at' - 'ended_by' is distinct from to_jsonb(old) - 'ended_at' - 'ended_by' then
        raise exception '%: a row can end, and nothing else', tg_table_name using errcode = 'restrict_violation';
    end if;
    return new;
end
$$;

create trigger supplier_append_only before update or delete on supplier
    for each row execute function refuse_change();
create trigger battery_type_append_only before update or delete on battery_type
    for each row execute function refuse_change();
create trigger supplier_entry_ends before update or delete on supplier_entry
    for each row execute function catalogue_rows_end_once();
create trigger battery_type_entry_ends before update or delete on battery_type_entry
    for each row execute function catalogue_rows_end_once();
create trigger produced_range_ends before update or delete on produced_range
    for each row execute function catalogue_rows_end_once();
create trigger sold_month_ends before update or delete on sold_month
    for each row execute function catalogue_rows_end_once();
create trigger supplier_no_truncate before truncate on supplier
    for each statement execute function refuse_change();
create trigger battery_type_no_truncate before truncate on battery_type
    for each statement execute function refuse_change();
create trigger supplier_entry_no_truncate before truncate on supplier_entry
    for each statement execute function refuse_change();
create trigger battery_type_entry_no_truncate before truncate on battery_type_entry
    for each statement execute function refuse_change();
create trigger produced_range_no_truncate before truncate on produced_range
    for each statement execute function refuse_change();
create trigger sold_month_no_truncate before truncate on sold_month
    for each statement execute function refuse_change();
