-- Views for other packages.

create view trail_event as
select happened_at, act, subject, details from trail_entry;
