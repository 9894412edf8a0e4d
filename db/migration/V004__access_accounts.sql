-- Workshops, accounts and the tokens of scripts. Accounts are disabled, never deleted, because the trail names them.

create table workshop (
    id          uuid primary key,
    name        text not null check (name = btrim(name) and length(name) between 1 and 120),
    created_at  timestamptz not null
);

create unique index workshop_name on workshop (lower(name));

create table account (
    id             uuid primary key,
    name           text not null unique check (name ~ '^[a-z0-9][a-z0-9._-]{1,39}$'),
    password_hash  text not null,
    role           user_role not null,
    workshop_id    uuid references workshop (id),
    enabled        boolean not null,
    -- increases when the password or the state of the account changes; sessions with a lower value end
    stamp          integer not null check (stamp >= 0),
    created_at     timestamptz not null,
    -- where mail for the account goes; optional, set by its owner
    email          text check (length(email) between 3 and 254 and email ~ '^[^@[:space:]]+@[^@[:space:]]+$'),
    check ((role = 'WORKSHOP') = (workshop_id is not null))
);

-- Only the digest of a token is stored, so that nobody who reads the database can use it.
create table api_token (
    id          uuid primary key,
    account_id  uuid not null references account (id),
    name        text not null check (length(name) between 1 and 80),
    digest      sha256_hex not null unique,
    created_at  timestamptz not null,
    expires_at  timestamptz not null check (expires_at > created_at),
    revoked_at  timestamptz
);

create index api_token_account on api_token (account_id, created_at);
