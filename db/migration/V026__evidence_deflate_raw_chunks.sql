-- Recordings are text, of which a seventh to a quarter is left when it is deflated (RFC 1951). Chunks that came before stay as
-- they are; the digest of a file is always that of the bytes as they were sent.

alter table raw_chunk add column deflated boolean not null default false;

-- deflated already, or of a kind that is
alter table raw_chunk alter column data set storage external;
