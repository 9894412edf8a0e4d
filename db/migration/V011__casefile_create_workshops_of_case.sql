-- Which workshops see and feed a case: the one that opened it, and those that the distributor adds.

create table case_workshop (
    case_id      uuid not null references case_file (id),
    workshop_id  uuid not null references workshop (id),
    added_at     timestamptz not null,
    added_by     text not null check (added_by <> ''),
    primary key (case_id, workshop_id)
);

create index case_workshop_by_workshop on case_workshop (workshop_id, case_id);
