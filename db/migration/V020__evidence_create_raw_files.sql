-- The bytes as they came, once for each digest, so that anybody can check later what a judgement rests on.
-- Chunks of 1 MiB, so that neither server nor database ever holds a whole file in memory.

create table raw_file (
    sha256  text primary key check (sha256 ~ '^[0-9a-f]{64}$'),
    bytes   bigint not null check (bytes between 1 and 67108864)
);

create table raw_chunk (
    sha256  text not null references raw_file (sha256),
    seq     integer not null check (seq between 0 and 63),
    data    bytea not null check (octet_length(data) between 1 and 1048576),
    primary key (sha256, seq)
);

create function evidence_is_kept() returns trigger language plpgsql as $$
begin
    raise exception 'evidence is kept as it came: % on % is refused', tg_op, tg_table_name;
end
$$;

create trigger raw_file_keeps_rows before update or delete on raw_file
    for each row execute function evidence_is_kept();
create trigger raw_file_keeps_table before truncate on raw_file
    for each statement execute function evidence_is_kept();
create trigger raw_chunk_keeps_rows before update or delete on raw_chunk
    for each row execute function evidence_is_kept();
create trigger raw_chunk_keeps_table before truncate on raw_chunk
    for each statement execute function evidence_is_kept();
