-- Who may sign in, and for which workshop. Accounts are disabled, never deleted: the trail names them.
create table workshop (
    id uuid primary key,
    name text not null check (name = btrim(name) and length(name) between 1 and 120),
    created_at timestamptz not null
);

create unique index workshop_name on workshop (lower(name));

create table account (
    id uuid primary key,
    name text not null unique check (name ~ '^[a-z0-9][a-z0-9._-]{1,39}$'),
    password_hash text not null,
    role text not null check (role in ('WORKSHOP', 'CLERK', 'AUDITOR', 'ADMIN')),
    workshop_id uuid references workshop (id),
    enabled boolean not null,
    -- goes up with every change of password or standing; an older session is over
    stamp integer not null check (stamp >= 0),
    created_at timestamptz not null,
    check ((role = 'WORKSHOP') = (workshop_id is not null))
);
