-- Links that show one case without an account. Only the digest of a link's secret is stored, so that the database opens no case.

create table case_link (
    id           uuid primary key,
    case_id      uuid not null references case_file (id),
    secret       sha256_hex not null unique,
    created_at   timestamptz not null,
    created_by   actor_name not null,
    expires_at   timestamptz not null check (expires_at > created_at)
);

create index case_link_of_case on case_link (case_id, created_at);

create table case_link_revocation (
    link_id     uuid primary key references case_link (id),
    revoked_at  timestamptz not null,
    revoked_by  actor_name not null
);

create table case_link_access (
    ordinal  bigint generated always as identity primary key,
    link_id  uuid not null references case_link (id),
    at       timestamptz not null
);

create index case_link_access_of_link on case_link_access (link_id, at);

call make_append_only('case_link');
call make_append_only('case_link_revocation');
call make_append_only('case_link_access');
