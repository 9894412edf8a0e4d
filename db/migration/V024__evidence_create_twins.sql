-- Recordings of different cases that show one and the same course of voltage. Both directions are kept, so that either
-- case is asked in one look. What is still to be compared stands in a table of its own, that a crash loses nothing; all
-- recordings of before are among it.

create table recording_twin (
    evidence_id  uuid not null references recording (evidence_id),
    twin_id      uuid not null references recording (evidence_id),
    correlation  double precision not null check (correlation between 0 and 1),
    -- how much later the twin starts within the course
    later_s      double precision not null,
    overlap_s    double precision not null check (overlap_s > 0),
    primary key (evidence_id, twin_id),
    check (evidence_id <> twin_id)
);

create trigger recording_twin_keeps_rows before update or delete on recording_twin
    for each row execute function evidence_is_kept();
create trigger recording_twin_keeps_table before truncate on recording_twin
    for each statement execute function evidence_is_kept();

create table recording_to_compare (
    evidence_id  uuid primary key references recording (evidence_id),
    case_id      uuid not null,
    outlined     boolean not null
);

create index recording_to_compare_of_case on recording_to_compare (case_id);

insert into recording_to_compare
select r.evidence_id, e.case_id, false from recording r join evidence e on e.id = r.evidence_id;

-- the same bytes in another case are a twin without any comparing
create index evidence_of_bytes on evidence (sha256);
