-- The parsed content of evidence: tests as canonical JSON, recordings as columns in blocks of 65 536 rows, so that a section
-- can be drawn without reading the rest. Values keep their exact bits.

create table test_reading (
    evidence_id  uuid primary key references evidence (id),
    reading      text not null check (reading like '{"kind":%')
);

create table recording (
    evidence_id  uuid primary key references evidence (id),
    rows         integer not null check (rows > 0),
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
    -- 'time' or the name of a channel
    channel      text not null,
    block_no     integer not null check (block_no >= 0),
    rows         integer not null check (rows between 1 and 65536),
    from_s       double precision not null,
    to_s         double precision not null check (to_s >= from_s),
    -- minimum and maximum of the values; null if the block has none
    low          double precision,
    high         double precision check (high >= low),
    crc32        bigint not null,
    data         bytea not null,
    primary key (evidence_id, channel, block_no)
);

-- data is deflated already
alter table recording_block alter column data set storage external;

create table recording_mark (
    evidence_id  uuid not null references recording (evidence_id),
    seq          integer not null check (seq >= 0),
    at_s         double precision not null,
    text         text not null check (length(text) between 1 and 1000),
    primary key (evidence_id, seq)
);

call make_append_only('test_reading');
call make_append_only('recording');
call make_append_only('recording_channel');
call make_append_only('recording_block');
call make_append_only('recording_mark');

call restrict_rows('test_reading', 'sees_evidence(evidence_id)');
call restrict_rows('recording', 'sees_evidence(evidence_id)');
call restrict_rows('recording_channel', 'sees_evidence(evidence_id)');
call restrict_rows('recording_block', 'sees_evidence(evidence_id)');
call restrict_rows('recording_mark', 'sees_evidence(evidence_id)');
