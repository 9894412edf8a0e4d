-- Workshops, accounts and the tokens of scripts. Accounts are disabled, never deleted, because the trail names them.

create table workshop (
    id          uuid primary key,
    name        text not null check (name = btrim(name) and length(name) between 1 and 120),
    created_at  timestamptz not null,
    version     bigint not null check (version >= 0)
);

create unique index workshop_name on workshop (lower(name));

create table account (
    id             uuid primary key,
    name           text not null unique check (name ~ '^[a-z0-9][a-z0-9._-]{1,39}$'),
    -- null until the invitation is accepted, and for accounts of an OpenID provider
    password_hash  text,
    role           user_role not null,
    workshop_id    uuid references workshop (id),
    enabled        boolean not null,
    -- increases when the password or the state of the account changes; sessions with a lower value end
    stamp          integer not null check (stamp >= 0),
    created_at     timestamptz not null,
    -- where mail for the account goes; optional, set by its owner
    email          text check (length(email) between 3 and 254 and email ~ '^[^@[:space:]]+@[^@[:space:]]+$'),
    -- the person at the OpenID provider, by its identifiers
    issuer         text,
    issued_name    text,
    version        bigint not null check (version >= 0),
    unique (issuer, issued_name),
    check ((issuer is null) = (issued_name is null)),
    check ((role = 'WORKSHOP') = (workshop_id is not null))
);

-- Only the digest of a token is stored, so that nobody who reads the database can use it.
create table api_token (
    id          uuid primary key,
    account_id  uuid not null references account (id),
    name        text not null check (length(name) between 1 and 80),
    digest      sha256_hex not null unique,
    scope       text not null check (scope in ('UPLOAD', 'READ', 'ALL')),
    created_at  timestamptz not null,
    expires_at  timestamptz not null check (expires_at > created_at),
    revoked_at  timestamptz,
    -- to the minute
    used_at     timestamptz,
    version     bigint not null check (version >= 0)
);

create index api_token_account on api_token (account_id, created_at);

-- A link with which the owner of an account sets a password; only its digest is stored.
create table invitation (
    id          uuid primary key,
    account_id  uuid not null references account (id),
    digest      sha256_hex not null unique,
    created_at  timestamptz not null,
    expires_at  timestamptz not null check (expires_at > created_at),
    -- when it was used, or replaced by a newer one
    ended_at    timestamptz,
    version     bigint not null check (version >= 0)
);

create index invitation_account on invitation (account_id);

-- The second factor of an account: a key for time-based codes (RFC 6238), encrypted.
create table second_factor (
    account_id  uuid primary key references account (id),
    secret      text not null,
    created_at  timestamptz not null,
    -- the time step of the last accepted code; a code is accepted once
    last_step   bigint not null,
    version     bigint not null check (version >= 0)
);

create table recovery_code (
    account_id  uuid not null references account (id),
    digest      sha256_hex not null,
    used_at     timestamptz,
    primary key (account_id, digest)
);

grant delete on invitation, second_factor, recovery_code to voltdocket_staff, voltdocket_workshop;
