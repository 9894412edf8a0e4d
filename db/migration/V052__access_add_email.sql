-- Where notices for an account go. Its owner sets it, and need not.

alter table account add column email text check (length(email) between 3 and 254 and email ~ '^[^@[:space:]]+@[^@[:space:]]+$');
