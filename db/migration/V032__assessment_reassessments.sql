-- Runs of an edition over the archive, as a trial or for good. A run takes the cases that exist when it starts, in chunks. A
-- worker claims a chunk by its row lock and marks it done in the same transaction, so that the chunk of a node that crashes
-- is free at once. Cases opened later are assessed by the edition in force.

create table reassessment (
    ordinal      bigint generated always as identity unique,
    id           uuid primary key,
    mode         text not null check (mode in ('trial', 'final')),
    sha256       text not null references edition (sha256),
    state        text not null default 'queued'
                     check (state in ('queued', 'running', 'paused', 'done', 'stopped', 'failed')),
    requested_at     timestamptz not null,
    requested_by     actor_name not null,
    started_at   timestamptz,
    ended_at     timestamptz,
    cases_total  integer not null default 0 check (cases_total >= 0),
    -- why the run failed
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

-- Cases whose leaning or first cause changes. In a final run a row is written together with the new assessment.
create table reassessment_change (
    reassessment_id  uuid not null references reassessment (id),
    case_id          uuid not null references case_file (id),
    leaning_before   text,
    leaning_after    text not null,
    cause_before     text,
    cause_after      text not null,
    -- ids of the findings that differ, and of their rows in the rule book
    findings         text[] not null,
    rules            text[] not null,
    primary key (reassessment_id, case_id)
);

-- Cases that could not be assessed; the run continues with the others.
create table reassessment_failure (
    reassessment_id  uuid not null references reassessment (id),
    case_id          uuid not null references case_file (id),
    reason           text not null check (reason <> ''),
    primary key (reassessment_id, case_id)
);

call make_append_only('reassessment_change');
call make_append_only('reassessment_failure');

-- A run that has ended does not change any more.
create function reassessment_refuse_change_after_end() returns trigger language plpgsql as $$
begin
    if tg_op = 'DELETE' or old.state in ('done', 'stopped', 'failed')
            or (new.id, new.mode, new.sha256, new.requested_at, new.requested_by)
                is distinct from (old.id, old.mode, old.sha256, old.requested_at, old.requested_by) then
        raise exception 'a run over the archive is kept: % is refused', tg_op using errcode = 'restrict_violation';
    end if;
    return new;
end
$$;

create trigger reassessment_kept before update or delete on reassessment
    for each row execute function reassessment_refuse_change_after_end();
create trigger reassessment_no_truncate before truncate on reassessment
    for each statement execute function refuse_change();
