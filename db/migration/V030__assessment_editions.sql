-- Editions of the rule book, byte for byte, and since when and why an edition is in force. Assessments and decisions refer to
-- an edition by its digest, so its text never changes. A released name has one text.

create table edition (
    ordinal   bigint generated always as identity unique,
    sha256    sha256_hex primary key,
    name      text not null check (name ~ '^[0-9]{4}\.[0-9]+$'),
    -- false for a draft: it can be tried out, and another text of the same name may follow
    released  boolean not null,
    origin    text not null check (origin in ('shipped', 'uploaded')),
    content   bytea not null check (octet_length(content) between 1 and 1048576),
    kept_at   timestamptz not null,
    kept_by   actor_name not null
);

create unique index edition_released_once on edition (name) where released;
create index edition_by_name on edition (name, ordinal desc);

create table edition_in_force (
    ordinal  bigint generated always as identity primary key,
    sha256   text not null references edition (sha256),
    since    timestamptz not null,
    put_by   actor_name not null,
    reason   text not null check (length(reason) between 10 and 2000)
);

create function edition_in_force_require_released() returns trigger language plpgsql as $$
begin
    if not (select released from edition where sha256 = new.sha256) then
        raise exception 'a draft edition is never in force' using errcode = 'restrict_violation';
    end if;
    return new;
end
$$;

create trigger edition_in_force_released before insert on edition_in_force
    for each row execute function edition_in_force_require_released();

call make_append_only('edition');
call make_append_only('edition_in_force');
