-- Background tasks and backups.

-- The table of db-scheduler 16, shared by all nodes.
create table scheduled_tasks (
    task_name             text not null,
    task_instance         text not null,
    task_data             bytea,
    execution_time        timestamptz,
    picked                boolean not null,
    picked_by             text,
    last_success          timestamptz,
    last_failure          timestamptz,
    consecutive_failures  integer,
    last_heartbeat        timestamptz,
    version               bigint not null,
    priority              smallint,
    state                 text,
    primary key (task_name, task_instance)
);

create index scheduled_tasks_by_time on scheduled_tasks (execution_time);
create index scheduled_tasks_by_heartbeat on scheduled_tasks (last_heartbeat);
create index scheduled_tasks_by_priority on scheduled_tasks (priority desc, execution_time asc);

-- Written by the backup command, so that the administration page can show the age of the latest backup.
create table backup_taken (
    ordinal   bigint generated always as identity primary key,
    taken_at  timestamptz not null default clock_timestamp(),
    file      text not null check (length(file) between 1 and 1000),
    bytes     bigint not null check (bytes > 0)
);

call make_append_only('backup_taken');

-- Written by the command that restores a backup into a scratch database and verifies it there.
create table restore_tested (
    ordinal    bigint generated always as identity primary key,
    tested_at  timestamptz not null default clock_timestamp(),
    file       text not null check (length(file) between 1 and 1000),
    seconds    integer not null check (seconds >= 0)
);

call make_append_only('restore_tested');

grant delete on scheduled_tasks to voltdocket_staff, voltdocket_workshop;
