-- Original bytes may be kept in a store of objects outside the database (voltdocket.raw.bucket). Each file says where its own
-- are, so that an archive may hold both; what was kept before is in the database, and nothing is ever moved.

alter table raw_file add column place text not null default 'database' check (place in ('database', 'store'));

-- whether any is, asked at every start
create index raw_file_in_store on raw_file (sha256) where place = 'store';
