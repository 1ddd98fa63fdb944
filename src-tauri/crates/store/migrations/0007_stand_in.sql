-- Pictures that stand in for photos that are not here, and when a thing was put on the shelf. What each column means: schema.sql.
CREATE TABLE stand_in (
    original TEXT NOT NULL PRIMARY KEY,
    photo    TEXT NOT NULL REFERENCES photo (id)
) STRICT, WITHOUT ROWID;

ALTER TABLE shelf ADD COLUMN changed_at INTEGER NOT NULL DEFAULT 0;
