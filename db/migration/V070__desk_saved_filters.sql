-- Filters that an account saved under a name. They may be replaced and deleted.
create table claim_saved_filter (
    id        uuid primary key,
    account   text not null,
    name      text not null check (length(name) between 1 and 60),
    query     text not null check (length(query) <= 2000),
    saved_at  timestamptz not null,
    version   bigint not null,
    unique (account, name)
);

grant delete on claim_saved_filter to voltdocket_staff, voltdocket_workshop;
