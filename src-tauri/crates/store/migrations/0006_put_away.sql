-- Jobs that are put away, and of which an archive was made. What each column means: schema.sql.
CREATE TABLE archived (
    job   TEXT    NOT NULL PRIMARY KEY REFERENCES job (id),
    edits INTEGER NOT NULL DEFAULT 0,
    at    INTEGER NOT NULL DEFAULT 0
) STRICT, WITHOUT ROWID;

CREATE TABLE put_away (
    job    TEXT    NOT NULL PRIMARY KEY,
    at     INTEGER NOT NULL DEFAULT 0,
    device INTEGER NOT NULL DEFAULT 0,
    gone   INTEGER NOT NULL DEFAULT 0 CHECK (gone IN (0, 1))
) STRICT, WITHOUT ROWID;
