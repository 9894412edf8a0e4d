-- Views for other packages.

create view workshop_summary as
select id, name from workshop;
