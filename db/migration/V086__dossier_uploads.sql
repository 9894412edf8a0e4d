-- Files on their way: parts of an upload that a phone sends piece by piece. They become evidence when they are complete, and are
-- deleted then or when they expire. Nothing of them is evidence before that.

create table partial_upload (
    id           uuid primary key,
    case_id      uuid not null references case_file (id),
    account      actor_name not null,
    file_name    text not null check (length(file_name) between 1 and 200),
    note         note_text,
    bytes        bigint not null check (bytes > 0),
    received     bigint not null default 0 check (received between 0 and bytes),
    -- the digest that the sender expects; null where it named none
    sha256       sha256_hex,
    -- the evidence that the file became
    evidence_id  uuid references evidence (id),
    expires_at   timestamptz not null
);

create index partial_upload_of_account on partial_upload (account) where evidence_id is null;
create index partial_upload_expiry on partial_upload (expires_at);

create table partial_upload_block (
    upload_id  uuid not null references partial_upload (id) on delete cascade,
    start      bigint not null check (start >= 0),
    data       bytea not null check (octet_length(data) > 0),
    primary key (upload_id, start)
);

alter table partial_upload_block alter column data set storage external;

grant delete on partial_upload, partial_upload_block to voltdocket_staff, voltdocket_workshop;

call restrict_rows('partial_upload', 'sees_case(case_id)');
