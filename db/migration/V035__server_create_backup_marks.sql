-- The backup command leaves a row here, so that the administrator's page can say how old the last backup is; and the
-- trail is found by day without reading all of it.

create table backup_taken (
    ordinal   bigint generated always as identity primary key,
    taken_at  timestamptz not null default clock_timestamp(),
    file      text not null check (length(file) between 1 and 1000),
    bytes     bigint not null check (bytes > 0)
);

create trigger backup_taken_append_only before update or delete on backup_taken
    for each row execute function refuse_change();

create index trail_entry_by_day on trail_entry using brin (happened_at);
