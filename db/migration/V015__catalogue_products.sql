-- What suppliers produce and the distributor sells. The serial of a battery determines its supplier, type and batch.
-- Codes are permanent, because terms, batches and lots refer to them. Everything else is in entries: a correction ends the
-- current entry and adds another one, so that the state at any time can be reconstructed.

create extension if not exists btree_gist;

create table supplier (
    code  product_code primary key
);

create table battery_type (
    code  product_code primary key
);

create table supplier_entry (
    id           bigint generated always as identity primary key,
    supplier     text not null references supplier (code),
    name         text not null check (length(name) between 1 and 120),
    recorded_at  timestamptz not null,
    recorded_by  actor_name not null,
    ended_at     timestamptz check (ended_at >= recorded_at),
    ended_by     text,
    check (num_nulls(ended_at, ended_by) in (0, 2))
);

create table battery_type_entry (
    id                 bigint generated always as identity primary key,
    type               text not null references battery_type (code),
    name               text not null check (length(name) between 1 and 120),
    supplier           text not null references supplier (code),
    chemistry          battery_chemistry not null,
    capacity_ah        capacity_ah not null,
    rated_cranking_a   cranking_current_a,
    cranking_standard  cranking_standard,
    -- prefix of all serials of the type; null if the manufacturer uses none
    serial_prefix      text check (serial_prefix ~ '^[A-Z0-9./-]{1,40}$'),
    recorded_at        timestamptz not null,
    recorded_by        actor_name not null,
    ended_at           timestamptz check (ended_at >= recorded_at),
    ended_by           text,
    check (num_nulls(rated_cranking_a, cranking_standard) in (0, 2)),
    check (num_nulls(ended_at, ended_by) in (0, 2))
);

create table produced_range (
    id            bigint generated always as identity primary key,
    type          text not null references battery_type (code),
    batch         text not null check (length(batch) between 1 and 40),
    first_serial  battery_serial not null,
    last_serial   battery_serial not null,
    produced_on   date not null,
    -- number of batteries produced; at most the size of the range
    count         integer not null check (count > 0),
    -- the parts of the serials: common prefix, and number of digits and value of the serial number at the end
    stem          text not null,
    digits        integer not null check (digits >= 0),
    from_number   numeric not null,
    to_number     numeric not null check (to_number >= from_number),
    recorded_at   timestamptz not null,
    recorded_by   actor_name not null,
    ended_at      timestamptz check (ended_at >= recorded_at),
    ended_by      text,
    check (count <= to_number - from_number + 1),
    check (num_nulls(ended_at, ended_by) in (0, 2)),
    -- a serial belongs to one batch
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
    recorded_by  actor_name not null,
    ended_at     timestamptz check (ended_at >= recorded_at),
    ended_by     text,
    check (num_nulls(ended_at, ended_by) in (0, 2))
);

-- one current entry each
create unique index supplier_entry_current on supplier_entry (supplier) where ended_at is null;
create unique index battery_type_entry_current on battery_type_entry (type) where ended_at is null;
create unique index produced_range_current on produced_range (type, batch, first_serial) where ended_at is null;
create unique index sold_month_current on sold_month (type, batch, month) where ended_at is null;

call make_append_only('supplier');
call make_append_only('battery_type');

-- The only permitted change of an entry is to end it, once.
create function catalogue_allow_end_only() returns trigger language plpgsql as $$
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

create trigger supplier_entry_end_only before update or delete on supplier_entry
    for each row execute function catalogue_allow_end_only();
create trigger battery_type_entry_end_only before update or delete on battery_type_entry
    for each row execute function catalogue_allow_end_only();
create trigger produced_range_end_only before update or delete on produced_range
    for each row execute function catalogue_allow_end_only();
create trigger sold_month_end_only before update or delete on sold_month
    for each row execute function catalogue_allow_end_only();
create trigger supplier_entry_no_truncate before truncate on supplier_entry
    for each statement execute function refuse_change();
create trigger battery_type_entry_no_truncate before truncate on battery_type_entry
    for each statement execute function refuse_change();
create trigger produced_range_no_truncate before truncate on produced_range
    for each statement execute function refuse_change();
create trigger sold_month_no_truncate before truncate on sold_month
    for each statement execute function refuse_change();
