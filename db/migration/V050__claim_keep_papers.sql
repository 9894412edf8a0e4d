-- The letter and the report of a decision, printed when it was made and kept byte for byte: what the workshop got must be
-- what is shown a year later, whatever the program prints by then.

create table claim_paper (
    claim_id    uuid not null references claim_decision (claim_id),
    kind        text not null check (kind in ('letter', 'report')),
    sha256      text not null check (sha256 ~ '^[0-9a-f]{64}$'),
    bytes       bytea not null check (encode(sha256(bytes), 'hex') = sha256),
    printed_at  timestamptz not null,
    primary key (claim_id, kind)
);

-- a PDF is compressed already
alter table claim_paper alter column bytes set storage external;

create trigger claim_paper_append_only before update or delete on claim_paper
    for each row execute function refuse_change();
create trigger claim_paper_no_truncate before truncate on claim_paper
    for each statement execute function refuse_change();
