-- Views for other packages.

create view current_produced_range with (security_invoker = true) as
select type, batch, produced_on, count, stem, digits, from_number, to_number from produced_range where ended_at is null;

create view current_sold_month with (security_invoker = true) as
select type, batch, month, sold from sold_month where ended_at is null;
