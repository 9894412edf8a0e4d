-- Use of the server by each workshop and day (UTC), for its quotas.
create table workshop_usage (
    workshop_id  uuid not null references workshop (id),
    day          date not null,
    uploads      bigint not null check (uploads >= 0),
    bytes        bigint not null check (bytes >= 0),
    assessments  bigint not null check (assessments >= 0),
    primary key (workshop_id, day)
);

call restrict_rows('workshop_usage', 'workshop_id = (select current_workshop())');
