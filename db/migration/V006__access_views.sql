-- Views for other packages.

create view workshop_summary with (security_invoker = true) as
select id, name from workshop;
