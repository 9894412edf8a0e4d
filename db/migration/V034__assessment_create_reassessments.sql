-- An edition of the rule book run over the archive: as a trial, or for good. The cases of a run are those that are there
-- when it starts, cut into chunks; a chunk is claimed by its row lock, so that a node that dies gives it back at once, and
-- is marked done in the transaction that held it. A case opened later is no part: it is judged by the edition in force.

create table reassessment (
    ordinal      bigint generated always as identity unique,
    id           uuid primary key,
    mode         text not null check (mode in ('trial', 'final')),
    sha256       text not null references edition (sha256),
    state        text not null default 'queued'
                     check (state in ('queued', 'running', 'paused', 'done', 'stopped', 'failed')),
    asked_at     timestamptz not null,
    asked_by     text not null check (asked_by <> ''),
    started_at   timestamptz,
    ended_at     timestamptz,
    cases_total  integer not null default 0 check (cases_total >= 0),
    -- why it failed
    reason       text,
    check ((state in ('done', 'stopped', 'failed')) = (ended_at is not null)),
    check ((state = 'failed') = (reason is not null))
);

create index reassessment_open on reassessment (ordinal) where state in ('queued', 'running', 'paused');

create table reassessment_chunk (
    reassessment_id  uuid not null references reassessment (id),
    seq              integer not null check (seq >= 0),
    case_ids         uuid[] not null check (cardinality(case_ids) > 0),
    started_at       timestamptz,
    done_at          timestamptz,
    primary key (reassessment_id, seq)
);

create index reassessment_chunk_open on reassessment_chunk (reassessment_id, seq) where done_at is null;

-- Cases whose leaning or first cause changes, once each. Of a final run it is written with the new assessment.
create table reassessment_change (
    reassessment_id  uuid not null references reassessment (id),
    case_id          uuid not null references case_file (id),
    leaning_before   text,
    leaning_after    text not null,
    cause_before     text,
    cause_after      text not null,
    -- ids of the findings that differ, and the rows of the rule book they stand for
    findings         text[] not null,
    rules            text[] not null,
    primary key (reassessment_id, case_id)
);

-- Cases that could not be judged; the others went on.
create table reassessment_failure (
    reassessment_id  uuid not null references reassessment (id),
    case_id          uuid not null references case_file (id),
    reason           text not null check (reason <> ''),
    primary key (reassessment_id, case_id)
);

create trigger reassessment_change_append_only before update or delete on reassessment_change
    for each row execute function refuse_change();
create trigger reassessment_failure_append_only before update or delete on reassessment_failure
    for each row execute function refuse_change();

-- What a run says of its end stays.
create function reassessment_ends_once() returns trigger language plpgsql as $$
begin
    if tg_op = 'DELETE' or old.state in ('done', 'stopped', 'failed')
            or (new.id, new.mode, new.sha256, new.asked_at, new.asked_by)
                is distinct from (old.id, old.mode, old.sha256, old.asked_at, old.asked_by) then
        raise exception 'a run over the archive is kept: % is refused', tg_op using errcode = 'restrict_violation';
    end if;
    return new;
end
$$;

create trigger reassessment_kept before update or delete on reassessment
    for each row execute function reassessment_ends_once();
