-- A database of schema 7. Kept as it was: nothing here is ever written again.

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

CREATE TABLE shelf (
    kind    TEXT NOT NULL CHECK (kind IN ('instrument', 'sheet', 'prices')),
    name    TEXT NOT NULL,
    content TEXT NOT NULL DEFAULT '{}',
    PRIMARY KEY (kind, name)
) STRICT, WITHOUT ROWID;

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

ALTER TABLE device ADD COLUMN latest_at INTEGER NOT NULL DEFAULT 0;

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

CREATE TABLE stand_in (
    original TEXT NOT NULL PRIMARY KEY,
    photo    TEXT NOT NULL REFERENCES photo (id)
) STRICT, WITHOUT ROWID;

ALTER TABLE shelf ADD COLUMN changed_at INTEGER NOT NULL DEFAULT 0;

PRAGMA user_version = 7;

UPDATE device SET id = -6148914691236517206;
INSERT INTO job (id, added_at) VALUES ('aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa', 1764000000000);
INSERT INTO job (id, added_at) VALUES ('bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb', 1764000000001);
INSERT INTO job (id, added_at) VALUES ('cccccccccccccccccccccccccccccccc', 1764000000002);
INSERT INTO job (id, added_at) VALUES ('dddddddddddddddddddddddddddddddd', 1764000000003);
INSERT INTO edit (job, id, change) VALUES ('aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa', '019aac000001-0001-aaaaaaaaaaaaaaaa', '{"do":"fill","field":"customer","text":"Customer of the first job"}');
INSERT INTO edit (job, id, change) VALUES ('aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa', '019aac000002-0002-aaaaaaaaaaaaaaaa', '{"do":"tag","part":"main-shell.3.lower","tag":"scoring","grade":3,"zones":["front-crown"]}');
INSERT INTO edit (job, id, change) VALUES ('aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa', '019aac000003-0000-aaaaaaaaaaaaaaaa', '{"do":"add-photo","part":"main-shell.3.lower","photo":"2cea274d0bedc39ec4ab6ba9e59ec889e3ed6fb56a1cf088a64d9b383378dc97"}');
INSERT INTO edit (job, id, change) VALUES ('aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa', '019aac000004-0001-aaaaaaaaaaaaaaaa', '{"do":"clean","part":"piston.1"}');
INSERT INTO edit (job, id, change) VALUES ('aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa', '019aac000005-0002-aaaaaaaaaaaaaaaa', '{"do":"undo","edit":"019aac000004-0001-aaaaaaaaaaaaaaaa"}');
INSERT INTO edit (job, id, change) VALUES ('aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa', '019aac000006-0000-aaaaaaaaaaaaaaaa', '{"do":"weigh","grams":512,"part":"piston.1"}');
INSERT INTO edit (job, id, change) VALUES ('bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb', '019aac000007-0001-aaaaaaaaaaaaaaaa', '{"do":"fill","field":"remarks","text":"' || replace(hex(zeroblob(1800)), '00', 'long ') || '"}');
INSERT INTO edit (job, id, change) VALUES ('bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb', '019aac000008-0002-aaaaaaaaaaaaaaaa', '{"do":"add-photo","part":"piston.2","photo":"2cfbec8b10ab0827d94125f61249e015fa9df18eab2cfe204df3fcf55c7b88b8"}');
INSERT INTO edit (job, id, change) VALUES ('dddddddddddddddddddddddddddddddd', '019aac000009-0000-aaaaaaaaaaaaaaaa', '{"do":"fill","field":"customer","text":"Put away"}');
INSERT INTO photo (id, format, width, height, bytes, taken_in) VALUES ('2cea274d0bedc39ec4ab6ba9e59ec889e3ed6fb56a1cf088a64d9b383378dc97', 'jpeg', 4, 3, 7, 1764000000005);
INSERT INTO photo (id, format, width, height, bytes, taken_in) VALUES ('2cfbec8b10ab0827d94125f61249e015fa9df18eab2cfe204df3fcf55c7b88b8', 'jpeg', 4, 3, 22, 1764000000005);
INSERT INTO job_photo (job, photo) VALUES ('aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa', '2cea274d0bedc39ec4ab6ba9e59ec889e3ed6fb56a1cf088a64d9b383378dc97'), ('bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb', '2cfbec8b10ab0827d94125f61249e015fa9df18eab2cfe204df3fcf55c7b88b8');
INSERT INTO setting (key, value) VALUES ('shop', '{"name":"Shop"}'), ('terms', '{}');
INSERT INTO shelf (kind, name, content) VALUES ('instrument', 'mic-1', '{"id":"mic-1","name":"Micrometer"}'), ('sheet', 'Engine A', '{"head":{"name":"Engine A"}}');
INSERT INTO shelf (kind, name, content) VALUES ('prices', '', '{"currency":"EUR","hour":6800}');
INSERT INTO summary (job, version, changed_at, is_open, engine, found_by, content) VALUES ('aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa', 1, 1764000000006, 1, 'N 1', 'customer of the first job', '{}'), ('bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb', 1, 1764000000008, 0, '', 'long', '{}');
INSERT INTO shot (id, job, part, ancillary, asked_at, state) VALUES ('11111111111111111111111111111111', 'aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa', 'piston.3', NULL, 1764000000009, 'taken'), ('22222222222222222222222222222222', 'bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb', NULL, '019aac000007-0001-aaaaaaaaaaaaaaaa', 1764000000010, 'waiting');
UPDATE device SET latest_at = 1764000000011;
INSERT INTO archived (job, edits, at) VALUES ('bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb', 2, 1764000000012), ('dddddddddddddddddddddddddddddddd', 1, 1764000000013);
INSERT INTO put_away (job, at, device, gone) VALUES ('dddddddddddddddddddddddddddddddd', 1764000000014, 5, 0), ('eeeeeeeeeeeeeeeeeeeeeeeeeeeeeeee', 1764000000015, -6148914691236517206, 1);
UPDATE shelf SET changed_at = 1764000000016;
INSERT INTO stand_in (original, photo) VALUES ('9999999999999999999999999999999999999999999999999999999999999999', '2cfbec8b10ab0827d94125f61249e015fa9df18eab2cfe204df3fcf55c7b88b8');
