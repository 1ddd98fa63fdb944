-- The first version. What each column means: schema.sql.
CREATE TABLE device (
    one INTEGER NOT NULL PRIMARY KEY DEFAULT 1 CHECK (one = 1),
    id  INTEGER NOT NULL DEFAULT (random())
) STRICT;

INSERT INTO device DEFAULT VALUES;

CREATE TABLE job (
    id       TEXT    NOT NULL PRIMARY KEY DEFAULT (lower(hex(randomblob(16)))),
    added_at INTEGER NOT NULL DEFAULT 0
) STRICT;

CREATE TABLE edit (
    job    TEXT NOT NULL REFERENCES job (id),
    id     TEXT NOT NULL,
    change TEXT NOT NULL DEFAULT '{}',
    PRIMARY KEY (job, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE photo (
    id       TEXT    NOT NULL PRIMARY KEY,
    format   TEXT    NOT NULL DEFAULT 'jpeg' CHECK (format IN ('jpeg', 'png', 'webp')),
    width    INTEGER NOT NULL DEFAULT 0,
    height   INTEGER NOT NULL DEFAULT 0,
    bytes    INTEGER NOT NULL DEFAULT 0,
    taken_in INTEGER NOT NULL DEFAULT 0
) STRICT;

CREATE TABLE job_photo (
    job   TEXT NOT NULL REFERENCES job (id),
    photo TEXT NOT NULL REFERENCES photo (id),
    PRIMARY KEY (job, photo)
) STRICT, WITHOUT ROWID;

CREATE TABLE setting (
    key   TEXT NOT NULL PRIMARY KEY,
    value TEXT NOT NULL DEFAULT ''
) STRICT, WITHOUT ROWID;
