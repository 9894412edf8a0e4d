-- Keys for scripts. Only the digest is kept: whoever reads the database cannot use a token.
create table api_token (
    id uuid primary key,
    account_id uuid not null references account (id),
    name text not null check (length(name) between 1 and 80),
    digest char(64) not null unique check (digest ~ '^[0-9a-f]{64}$'),
    created_at timestamptz not null,
    expires_at timestamptz not null check (expires_at > created_at),
    revoked_at timestamptz
);

create index api_token_account on api_token (account_id, created_at);
