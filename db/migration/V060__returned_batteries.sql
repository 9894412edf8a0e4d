-- Batteries that came back. What is recorded later (case, condition, place, bench steps, outcome) is appended to tables of
-- its own; the latest row is current.

-- A pallet as listed by its sender, before anything is scanned.
create table pallet (
    id          uuid primary key,
    number      text not null unique check (number ~ '^[A-Z0-9./-]{1,40}$'),
    sender      text not null check (length(sender) between 1 and 200),
    arrived_on  date not null,
    noted_at    timestamptz not null,
    noted_by    actor_name not null
);

create table pallet_line (
    pallet_id       uuid not null references pallet (id),
    line            integer not null check (line > 0),
    battery_serial  battery_serial not null,
    primary key (pallet_id, line),
    unique (pallet_id, battery_serial)
);

create sequence returned_number as bigint minvalue 1;

create table returned_battery (
    ordinal         bigint generated always as identity unique,
    id              uuid primary key,
    number          text not null unique check (number ~ '^R-[0-9]{6,}$'),
    battery_serial  battery_serial not null,
    pallet_id       uuid references pallet (id),
    arrived_at      timestamptz not null,
    booked_by       actor_name not null,
    -- the product of the serial, by the catalogue on arrival
    supplier        text,
    type            text,
    batch           text,
    -- identifiers of the messages shown on arrival
    warnings            text[] not null default '{}'
);

create index returned_battery_serial on returned_battery (battery_serial, ordinal desc);
create index returned_battery_pallet on returned_battery (pallet_id) where pallet_id is not null;

-- The case that the bench evidence is added to.
create table returned_case (
    ordinal        bigint generated always as identity primary key,
    return_id      uuid not null references returned_battery (id),
    case_id        uuid not null references case_file (id),
    -- latest assessment before the bench added evidence
    assessment_id  uuid references assessment (id),
    chosen_at      timestamptz not null,
    chosen_by      actor_name not null
);

create index returned_case_of_return on returned_case (return_id, ordinal desc);
create index returned_case_of_case on returned_case (case_id);

create table returned_condition (
    ordinal    bigint generated always as identity primary key,
    return_id  uuid not null references returned_battery (id),
    cracked    boolean not null,
    leaking    boolean not null,
    swollen    boolean not null,
    frozen     boolean not null,
    terminals  text not null check (terminals in ('sound', 'corroded', 'damaged')),
    note       reason_text,
    seen_at    timestamptz not null,
    seen_by    actor_name not null
);

create index returned_condition_of_return on returned_condition (return_id, ordinal desc);

create table returned_place (
    ordinal    bigint generated always as identity primary key,
    return_id  uuid not null references returned_battery (id),
    place      text not null check (length(place) between 1 and 60),
    put_at     timestamptz not null,
    put_by     actor_name not null
);

create index returned_place_of_return on returned_place (return_id, ordinal desc);

-- Steps on the bench. A step that takes time is started and finished; the others are only finished.
create table returned_step (
    ordinal      bigint generated always as identity primary key,
    return_id    uuid not null references returned_battery (id),
    step         text not null check (step ~ '^[a-z-]{3,30}$'),
    act          text not null check (act in ('start', 'finish', 'break-off')),
    -- as stated by the person
    happened_at  timestamptz not null,
    done_by      actor_name not null,
    -- when it was entered
    noted_at     timestamptz not null check (noted_at >= happened_at),
    note         reason_text
);

create index returned_step_of_return on returned_step (return_id, ordinal);

-- Evidence of the bench. It belongs to the case; this table says which return it is of.
create table returned_evidence (
    return_id    uuid not null references returned_battery (id),
    evidence_id  uuid not null references evidence (id),
    primary key (return_id, evidence_id)
);

create index returned_evidence_of_evidence on returned_evidence (evidence_id);

create table returned_outcome (
    ordinal        bigint generated always as identity primary key,
    return_id      uuid not null references returned_battery (id),
    outcome        text not null check (outcome in ('defect-confirmed', 'wear-confirmed', 'no-fault-found',
                       'damaged-by-use', 'not-tested')),
    reason         reason_text not null,
    -- latest assessment when the outcome was recorded; null if the battery has no case
    assessment_id  uuid references assessment (id),
    given_at       timestamptz not null,
    given_by       actor_name not null
);

create index returned_outcome_of_return on returned_outcome (return_id, ordinal desc);

call make_append_only('pallet');
call make_append_only('pallet_line');
call make_append_only('returned_battery');
call make_append_only('returned_case');
call make_append_only('returned_condition');
call make_append_only('returned_place');
call make_append_only('returned_step');
call make_append_only('returned_evidence');
call make_append_only('returned_outcome');

-- returned batteries are the distributor's; a workshop sees what was found out about its own case
call restrict_rows('returned_case', 'sees_case(case_id)');
