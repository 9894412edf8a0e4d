-- Views for other packages.

-- cases with a notice that nobody has looked at
create view open_case_notice with (security_invoker = true) as
select case_id, found_at from claim_notice where case_id is not null and looked_at is null and gone_at is null;
