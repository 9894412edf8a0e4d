-- A decision that the bench speaks against is looked at again by a clerk; what the clerk says of it is kept. Nothing of the
-- decision changes by it. Rows are appended, never changed.

create table second_look (
    ordinal          bigint generated always as identity primary key,
    claim_id         uuid not null references claim (id),
    -- the outcome that was looked at; a later one asks anew
    outcome_ordinal  bigint not null references returned_outcome (ordinal),
    finding          text not null check (finding in ('stands', 'was-wrong')),
    reason           text not null check (length(reason) between 1 and 2000),
    looked_at        timestamptz not null,
    looked_by        text not null check (looked_by <> '')
);
create index second_look_of_claim on second_look (claim_id, ordinal desc);

create trigger second_look_append_only before update or delete on second_look
    for each row execute function refuse_change();
create trigger second_look_no_truncate before truncate on second_look
    for each statement execute function refuse_change();
