-- Outgoing mail. A row is written in the transaction that causes the mail and sent after its commit, so that an unavailable
-- mail server neither loses mail nor blocks anybody. The recipient is removed once the mail is sent.

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
    -- set after the last attempt failed; the row stays for the administrator
    failed_at   timestamptz,
    check (sent_at is null or recipient is null),
    check (sent_at is not null or recipient is not null),
    check (sent_at is null or failed_at is null)
);

create index mail_outbox_due on mail_outbox (next_at) where sent_at is null and failed_at is null;
