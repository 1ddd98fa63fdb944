-- What a shop keeps from job to job. What each column means: schema.sql.
CREATE TABLE shelf (
    kind    TEXT NOT NULL CHECK (kind IN ('instrument', 'sheet', 'prices')),
    name    TEXT NOT NULL,
    content TEXT NOT NULL DEFAULT '{}',
    PRIMARY KEY (kind, name)
) STRICT, WITHOUT ROWID;
