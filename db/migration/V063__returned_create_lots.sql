-- Which of many returned batteries are tested (ISO 2859-1): a lot, its plan, and the draw with its seed. The rank of every
-- battery follows from seed and serial alone, so that anybody can repeat the draw. Rows are appended, never changed.

create table sampling_lot (
    ordinal        bigint generated always as identity unique,
    id             uuid primary key,
    number         text not null unique check (number ~ '^L-[0-9]{4,}$'),
    scope          text not null check (scope in ('workshop', 'batch')),
    scope_key      text not null check (scope_key <> ''),
    scope_name     text not null check (scope_name <> ''),
    size           integer not null check (size >= 2),
    level          text not null check (level in ('I', 'II', 'III')),
    aql            numeric(6, 3) not null check (aql > 0),
    severity       text not null check (severity in ('normal', 'tightened', 'reduced')),
    code_letter    text not null check (code_letter ~ '^[A-R]$'),
    sample_size    integer not null check (sample_size between 1 and size),
    acceptance     integer not null check (acceptance >= 0),
    seed           bigint not null,
    drawn_at       timestamptz not null,
    drawn_by       text not null check (drawn_by <> '')
);
create sequence sampling_lot_number as bigint minvalue 1;
create index sampling_lot_scope on sampling_lot (scope, scope_key, ordinal);

create table sampling_rank (
    lot_id     uuid not null references sampling_lot (id),
    rank       integer not null check (rank > 0),
    return_id  uuid not null references returned_battery (id),
    primary key (lot_id, rank),
    -- a battery is drawn for once
    unique (return_id)
);

create trigger sampling_lot_append_only before update or delete on sampling_lot
    for each row execute function refuse_change();
create trigger sampling_lot_no_truncate before truncate on sampling_lot
    for each statement execute function refuse_change();
create trigger sampling_rank_append_only before update or delete on sampling_rank
    for each row execute function refuse_change();
create trigger sampling_rank_no_truncate before truncate on sampling_rank
    for each statement execute function refuse_change();
