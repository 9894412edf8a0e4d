-- Mail is written here in the transaction that is its reason, and sent after it: a mail server that is away loses nothing
-- and blocks nobody. Sent rows keep no address.

create table mail_outbox (
    ordinal     bigint generated always as identity primary key,
    id          uuid not null unique,
    recipient   text check (length(recipient) between 3 and 254),
    subject     text not null check (subject <> ''),
    body        text not null check (body <> ''),
    written_at  timestamptz not null,
    attempts    integer not null default 0 check (attempts >= 0),
    next_at     timestamptz not null,
    last_error  text,
    sent_at     timestamptz,
    -- given up after too many attempts; kept so that somebody can see it
    failed_at   timestamptz,
    check (sent_at is null or recipient is null),
    check (sent_at is not null or recipient is not null),
    check (sent_at is null or failed_at is null)
);

create index mail_outbox_due on mail_outbox (next_at) where sent_at is null and failed_at is null;
