-- Views for other packages.

create view workshop_summary with (security_invoker = true) as
select id, name from workshop;

-- Tokens of workshops that have not been revoked; each works until expires_at.
create view workshop_token with (security_invoker = true) as
select a.workshop_id, t.expires_at from api_token t join account a on a.id = t.account_id
where t.revoked_at is null and a.workshop_id is not null;
