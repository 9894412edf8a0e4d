-- Views for other packages.

create view current_produced_range as
select type, batch, produced_on, count, stem, digits, from_number, to_number from produced_range where ended_at is null;

create view current_sold_month as
select type, batch, month, sold from sold_month where ended_at is null;
