-- A pallet of returned batteries as its sender lists it, before anybody scans. Rows are appended, never changed.

create table pallet (
    id          uuid primary key,
    number      text not null unique check (number ~ '^[A-Z0-9./-]{1,40}$'),
    sender      text not null check (length(sender) between 1 and 200),
    arrived_on  date not null,
    noted_at    timestamptz not null,
    noted_by    text not null check (noted_by <> '')
);

create table pallet_line (
    pallet_id       uuid not null references pallet (id),
    line            integer not null check (line > 0),
    battery_serial  text not null check (battery_serial ~ '^[A-Z0-9./-]{4,40}$'),
    primary key (pallet_id, line),
    unique (pallet_id, battery_serial)
);

create trigger pallet_append_only before update or delete on pallet
    for each row execute function refuse_change();
create trigger pallet_no_truncate before truncate on pallet
    for each statement execute function refuse_change();
create trigger pallet_line_append_only before update or delete on pallet_line
    for each row execute function refuse_change();
create trigger pallet_line_no_truncate before truncate on pallet_line
    for each statement execute function refuse_change();
