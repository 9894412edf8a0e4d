-- Search for the same recording in other cases. Outlines hold the voltage in coarse steps; landmarks are found by an index,
-- so that an upload need not be compared with the whole archive.

create table recording_outline (
    evidence_id  uuid not null references recording (evidence_id),
    scale        text not null check (scale in ('start', 'drive', 'night')),
    data         bytea not null,
    primary key (evidence_id, scale)
);

create table recording_landmark (
    code         integer not null check (code >= 0),
    evidence_id  uuid not null references recording (evidence_id),
    step         integer not null check (step >= 0)
);

create index recording_landmark_by_code on recording_landmark (code) include (evidence_id, step);
create index recording_landmark_of_recording on recording_landmark (evidence_id);

-- Recordings of two cases with the same course of voltage. Both directions are stored, so that one query answers for either.
create table duplicate_recording (
    evidence_id  uuid not null references recording (evidence_id),
    other_id      uuid not null references recording (evidence_id),
    correlation  double precision not null check (correlation between 0 and 1),
    -- start of the twin relative to the start of the recording
    later_s      double precision not null,
    overlap_s    double precision not null check (overlap_s > 0),
    primary key (evidence_id, other_id),
    check (evidence_id <> other_id)
);

-- Recordings that are not compared yet; the comparison removes the row, so that a crash loses none.
create table recording_to_compare (
    evidence_id  uuid primary key references recording (evidence_id),
    case_id      uuid not null,
    outlined     boolean not null
);

create index recording_to_compare_of_case on recording_to_compare (case_id);

call make_append_only('recording_outline');
call make_append_only('recording_landmark');
call make_append_only('duplicate_recording');

grant delete on recording_to_compare to voltdocket_staff, voltdocket_workshop;

call restrict_rows('recording_outline', 'sees_evidence(evidence_id)');
call restrict_rows('recording_landmark', 'sees_evidence(evidence_id)');
call restrict_rows('duplicate_recording', 'sees_evidence(evidence_id)');
