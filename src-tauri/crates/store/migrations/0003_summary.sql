-- What is shown of a job in a list, so that a list needs no job unfolded. What each column means: schema.sql.
CREATE TABLE summary (
    job        TEXT    NOT NULL PRIMARY KEY REFERENCES job (id),
    version    INTEGER NOT NULL DEFAULT 0,
    changed_at INTEGER NOT NULL DEFAULT 0,
    is_open    INTEGER NOT NULL DEFAULT 1 CHECK (is_open IN (0, 1)),
    engine     TEXT    NOT NULL DEFAULT '',
    found_by   TEXT    NOT NULL DEFAULT '',
    content    TEXT    NOT NULL DEFAULT '{}'
) STRICT, WITHOUT ROWID;
CREATE INDEX summary_in_order ON summary (is_open, changed_at DESC, job);
CREATE INDEX summary_by_version ON summary (version);
CREATE INDEX summary_by_engine ON summary (engine) WHERE engine <> '';
