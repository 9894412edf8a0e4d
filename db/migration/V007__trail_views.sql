-- Views for other packages.

create view trail_event with (security_invoker = true) as
select happened_at, actor, act, subject, details from trail_entry;
