-- The latest time at which something was entered here, so that a clock set back is noticed. What it means: schema.sql.
ALTER TABLE device ADD COLUMN latest_at INTEGER NOT NULL DEFAULT 0;
