-- One row per file of a case. The same bytes in two cases are two items over one raw file.

create table evidence (
    ordinal      bigint generated always as identity unique,
    id           uuid primary key,
    case_id      uuid not null references case_file (id),
    sha256       text not null references raw_file (sha256),
    kind         text not null check (kind in ('battery-test', 'cranking-test', 'charging-test', 'drive-recording',
                     'standing-recording', 'cranking-recording', 'discharge-recording', 'document')),
    origin       text not null check (origin in ('workshop', 'bench')),
    file_name    text not null check (length(file_name) between 1 and 200),
    media_type   text not null check (media_type in ('text/csv', 'application/gzip', 'application/json',
                     'application/pdf', 'image/jpeg', 'image/png')),
    ignored      text[] not null default '{}',
    note         text check (length(note) between 1 and 4000),
    received_at  timestamptz not null,
    received_by  text not null check (received_by <> ''),
    -- with its offset, as the file tells it
    taken_at     text,
    unique (case_id, sha256)
);

create index evidence_of_case on evidence (case_id, ordinal);

create trigger evidence_keeps_rows before update or delete on evidence
    for each row execute function evidence_is_kept();
create trigger evidence_keeps_table before truncate on evidence
    for each statement execute function evidence_is_kept();
