-- Photos that the camera was asked for. What each column means: schema.sql.
CREATE TABLE shot (
    id        TEXT    NOT NULL PRIMARY KEY DEFAULT (lower(hex(randomblob(16)))),
    job       TEXT    NOT NULL REFERENCES job (id),
    part      TEXT,
    ancillary TEXT,
    asked_at  INTEGER NOT NULL DEFAULT 0,
    state     TEXT    NOT NULL DEFAULT 'waiting' CHECK (state IN ('waiting', 'taken')),
    CHECK ((part IS NULL) <> (ancillary IS NULL))
) STRICT, WITHOUT ROWID;
CREATE UNIQUE INDEX shot_one_waiting ON shot (state) WHERE state = 'waiting';
