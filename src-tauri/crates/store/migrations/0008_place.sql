-- Where the database lies, so that a copy of it is noticed. What it means: schema.sql.
ALTER TABLE device ADD COLUMN place TEXT NOT NULL DEFAULT '';
