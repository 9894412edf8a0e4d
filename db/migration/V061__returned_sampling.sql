-- Sampling of returned batteries by ISO 2859-1: a lot, its plan, and the draw with its seed. The rank of a battery depends
-- only on seed and serial, so that everybody can repeat the draw.

create sequence sampling_lot_number as bigint minvalue 1;

create table sampling_lot (
    ordinal      bigint generated always as identity unique,
    id           uuid primary key,
    number       text not null unique check (number ~ '^L-[0-9]{4,}$'),
    scope        text not null check (scope in ('workshop', 'batch')),
    scope_key    text not null check (scope_key <> ''),
    scope_name   text not null check (scope_name <> ''),
    size         integer not null check (size >= 2),
    level        text not null check (level in ('I', 'II', 'III')),
    aql          numeric(6, 3) not null check (aql > 0),
    severity     text not null check (severity in ('normal', 'tightened', 'reduced')),
    code_letter  text not null check (code_letter ~ '^[A-R]$'),
    sample_size  integer not null check (sample_size between 1 and size),
    acceptance   integer not null check (acceptance >= 0),
    seed         bigint not null,
    drawn_at     timestamptz not null,
    drawn_by     actor_name not null
);

create index sampling_lot_scope on sampling_lot (scope, scope_key, ordinal);

create table sampling_rank (
    lot_id     uuid not null references sampling_lot (id),
    rank       integer not null check (rank > 0),
    return_id  uuid not null references returned_battery (id),
    primary key (lot_id, rank),
    -- a battery is part of one lot
    unique (return_id)
);

call make_append_only('sampling_lot');
call make_append_only('sampling_rank');
