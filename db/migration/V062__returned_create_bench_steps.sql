-- What was done on the bench, when and by whom. A step that takes time is started and finished; others are finished only.
-- happened_at is what the person says, noted_at when it was entered. Rows are appended, never changed.

create table returned_step (
    ordinal      bigint generated always as identity primary key,
    return_id    uuid not null references returned_battery (id),
    step         text not null check (step ~ '^[a-z-]{3,30}$'),
    act          text not null check (act in ('start', 'finish', 'break-off')),
    happened_at  timestamptz not null,
    done_by      text not null check (done_by <> ''),
    noted_at     timestamptz not null check (noted_at >= happened_at),
    note         text check (length(note) between 1 and 2000)
);
create index returned_step_of_return on returned_step (return_id, ordinal);

create trigger returned_step_append_only before update or delete on returned_step
    for each row execute function refuse_change();
create trigger returned_step_no_truncate before truncate on returned_step
    for each statement execute function refuse_change();
