-- What a recording is recognised by under another serial: its voltage in coarse steps, and landmarks that an index finds,
-- so that no upload has to be compared with the whole archive.

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

create trigger recording_outline_keeps_rows before update or delete on recording_outline
    for each row execute function evidence_is_kept();
create trigger recording_outline_keeps_table before truncate on recording_outline
    for each statement execute function evidence_is_kept();
create trigger recording_landmark_keeps_rows before update or delete on recording_landmark
    for each row execute function evidence_is_kept();
create trigger recording_landmark_keeps_table before truncate on recording_landmark
    for each statement execute function evidence_is_kept();
