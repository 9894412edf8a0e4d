-- A battery that came back. What is noted of it later (its case, condition, place, bench steps, outcome) is appended in tables
-- of their own; the latest row counts, and every row stays.

create table returned_battery (
    ordinal         bigint generated always as identity unique,
    id              uuid primary key,
    number          text not null unique check (number ~ '^R-[0-9]{6,}$'),
    battery_serial  text not null check (battery_serial ~ '^[A-Z0-9./-]{4,40}$'),
    pallet_id       uuid references pallet (id),
    arrived_at      timestamptz not null,
    booked_by       text not null check (booked_by <> ''),
    -- what the catalogue said of the serial on arrival
    supplier        text,
    type            text,
    batch           text,
    -- what was to be told on arrival, as identifiers
    told            text[] not null default '{}'
);

create sequence returned_number as bigint minvalue 1;
create index returned_battery_serial on returned_battery (battery_serial, ordinal desc);
create index returned_battery_pallet on returned_battery (pallet_id) where pallet_id is not null;

-- Which case the bench evidence joins. assessment_id is what the evidence said before the bench added any.
create table returned_case (
    ordinal        bigint generated always as identity primary key,
    return_id      uuid not null references returned_battery (id),
    case_id        uuid not null references case_file (id),
    assessment_id  uuid references assessment (id),
    chosen_at      timestamptz not null,
    chosen_by      text not null check (chosen_by <> '')
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
    note       text check (length(note) between 1 and 2000),
    seen_at    timestamptz not null,
    seen_by    text not null check (seen_by <> '')
);
create index returned_condition_of_return on returned_condition (return_id, ordinal desc);

create table returned_place (
    ordinal    bigint generated always as identity primary key,
    return_id  uuid not null references returned_battery (id),
    place      text not null check (length(place) between 1 and 60),
    put_at     timestamptz not null,
    put_by     text not null check (put_by <> '')
);
create index returned_place_of_return on returned_place (return_id, ordinal desc);

-- Files that the bench brought. They lie in the case like all evidence; this says which return they are of.
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
    reason         text not null check (length(reason) between 1 and 2000),
    -- the assessment that whoever gave the outcome could read; none where the battery has no case
    assessment_id  uuid references assessment (id),
    given_at       timestamptz not null,
    given_by       text not null check (given_by <> '')
);
create index returned_outcome_of_return on returned_outcome (return_id, ordinal desc);

create trigger returned_battery_append_only before update or delete on returned_battery
    for each row execute function refuse_change();
create trigger returned_battery_no_truncate before truncate on returned_battery
    for each statement execute function refuse_change();
create trigger returned_case_append_only before update or delete on returned_case
    for each row execute function refuse_change();
create trigger returned_case_no_truncate before truncate on returned_case
    for each statement execute function refuse_change();
create trigger returned_condition_append_only before update or delete on returned_condition
    for each row execute function refuse_change();
create trigger returned_condition_no_truncate before truncate on returned_condition
    for each statement execute function refuse_change();
create trigger returned_place_append_only before update or delete on returned_place
    for each row execute function refuse_change();
create trigger returned_place_no_truncate before truncate on returned_place
    for each statement execute function refuse_change();
create trigger returned_evidence_append_only before update or delete on returned_evidence
    for each row execute function refuse_change();
create trigger returned_evidence_no_truncate before truncate on returned_evidence
    for each statement execute function refuse_change();
create trigger returned_outcome_append_only before update or delete on returned_outcome
    for each row execute function refuse_change();
create trigger returned_outcome_no_truncate before truncate on returned_outcome
    for each statement execute function refuse_change();
