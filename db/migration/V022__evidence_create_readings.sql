-- What was read from the files: tests as canonical JSON, recordings as columns in blocks of 65 536 rows, so that a
-- stretch can be drawn without reading the rest. Values come back with the very bits they went in with.

create table test_reading (
    evidence_id  uuid primary key references evidence (id),
    reading      text not null check (reading like '{"kind":%')
);

create table recording (
    evidence_id  uuid primary key references evidence (id),
    rows         integer not null check (rows between 20 and 5000000),
    from_s       double precision not null,
    to_s         double precision not null check (to_s >= from_s + 10)
);

create table recording_channel (
    evidence_id    uuid not null references recording (evidence_id),
    channel        text not null check (channel in ('measured_v', 'measured_a', 'reported_v', 'reported_a',
                       'reported_soc_pct', 'engine_rpm', 'speed_kmh', 'coolant_c', 'ambient_c')),
    samples        integer not null check (samples > 0),
    median_step_s  double precision not null check (median_step_s >= 0),
    primary key (evidence_id, channel)
);

create table recording_block (
    evidence_id  uuid not null references recording (evidence_id),
    -- 'time' or a channel
    channel      text not null,
    block_no     integer not null check (block_no >= 0),
    rows         integer not null check (rows between 1 and 65536),
    from_s       double precision not null,
    to_s         double precision not null check (to_s >= from_s),
    -- of the values that are there; null where the block has none
    low          double precision,
    high         double precision check (high >= low),
    crc32        bigint not null,
    data         bytea not null,
    primary key (evidence_id, channel, block_no)
);

-- deflated already
alter table recording_block alter column data set storage external;

create table recording_mark (
    evidence_id  uuid not null references recording (evidence_id),
    seq          integer not null check (seq >= 0),
    at_s         double precision not null,
    text         text not null check (length(text) between 1 and 1000),
    primary key (evidence_id, seq)
);

create trigger test_reading_keeps_rows before update or delete on test_reading
    for each row execute function evidence_is_kept();
create trigger test_reading_keeps_table before truncate on test_reading
    for each statement execute function evidence_is_kept();
create trigger recording_keeps_rows before update or delete on recording
    for each row execute function evidence_is_kept();
create trigger recording_keeps_table before truncate on recording
    for each statement execute function evidence_is_kept();
create trigger recording_channel_keeps_rows before update or delete on recording_channel
    for each row execute function evidence_is_kept();
create trigger recording_channel_keeps_table before truncate on recording_channel
    for each statement execute function evidence_is_kept();
create trigger recording_block_keeps_rows before update or delete on recording_block
    for each row execute function evidence_is_kept();
create trigger recording_block_keeps_table before truncate on recording_block
    for each statement execute function evidence_is_kept();
create trigger recording_mark_keeps_rows before update or delete on recording_mark
    for each row execute function evidence_is_kept();
create trigger recording_mark_keeps_table before truncate on recording_mark
    for each statement execute function evidence_is_kept();
