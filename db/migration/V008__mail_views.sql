-- Views for other packages.

create view unsent_mail with (security_invoker = true) as
select id, written_at, attempts, failed_at from mail_outbox where sent_at is null;
