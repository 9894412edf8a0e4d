-- The original bytes of evidence, stored once per digest, so that everybody can check what an assessment is based on.
-- They are stored in chunks of 1 MiB, so that neither server nor database holds a whole file in memory.

create table raw_file (
    sha256  sha256_hex primary key,
    bytes   bigint not null check (bytes > 0),
    -- in raw_chunk, or in an object store (voltdocket.raw.bucket); files are never moved between them, and may be erased
    place   text not null default 'database' check (place in ('database', 'store', 'erased'))
);

-- at start the server checks whether it needs the object store
create index raw_file_in_store on raw_file (sha256) where place = 'store';

create table raw_chunk (
    sha256    text not null references raw_file (sha256),
    seq       integer not null check (seq >= 0),
    data      bytea not null check (octet_length(data) between 1 and 1048592),
    -- whether data is deflated (RFC 1951); sha256 and bytes are those of the original
    deflated  boolean not null default false,
    -- whether data, deflated or not, is encrypted with the key in original_key
    encrypted boolean not null default false,
    primary key (sha256, seq)
);

-- data is compressed already
alter table raw_chunk alter column data set storage external;

-- One row per file of a case. The same bytes in two cases are two rows with one raw file.
create table evidence (
    ordinal      bigint generated always as identity unique,
    id           uuid primary key,
    case_id      uuid not null references case_file (id),
    sha256       text not null references raw_file (sha256),
    kind         text not null check (kind in ('battery-test', 'cranking-test', 'charging-test', 'drive-recording',
                     'standing-recording', 'cranking-recording', 'discharge-recording', 'document')),
    origin       text not null check (origin in ('workshop', 'typed', 'bench')),
    file_name    text not null check (length(file_name) between 1 and 200),
    media_type   text not null check (media_type in ('text/csv', 'application/gzip', 'application/json',
                     'application/pdf', 'image/jpeg', 'image/png')),
    -- names of the columns or fields that the parser ignored
    ignored      text[] not null default '{}',
    note         note_text,
    received_at  timestamptz not null,
    received_by  actor_name not null,
    -- as written in the file, with its UTC offset
    taken_at     text,
    unique (case_id, sha256)
);

create index evidence_of_case on evidence (case_id, ordinal);
create index evidence_of_bytes on evidence (sha256);

call make_append_only('raw_file');
call make_append_only('raw_chunk');
call make_append_only('evidence');

create function sees_evidence(seen_evidence uuid) returns boolean language sql stable parallel safe security definer
        set search_path = public, pg_temp as $$
    select exists (select from evidence e where e.id = seen_evidence and sees_case(e.case_id))
$$;

-- raw_file and raw_chunk are not restricted: a digest leads to them, and only rows of evidence hold it
call restrict_rows('evidence', 'sees_case(case_id)');
