-- The database as the newest version leaves it: for reading only. A test compares it with a real database, so it
-- can't fall behind. To change the database, add a numbered file to migrations/ and then this page.
--
-- Keys have no default: a row without its key must fail. Everything else has one, so that a column added later needs
-- no decision about the rows that are there already. Times are milliseconds since 1970-01-01 UTC.

-- This shop's store. One row.
CREATE TABLE device (
    one INTEGER NOT NULL PRIMARY KEY DEFAULT 1 CHECK (one = 1),
    id  INTEGER NOT NULL DEFAULT (random()) -- 64 random bits, drawn when the store is made, or copied; part of every edit's id
, latest_at INTEGER NOT NULL DEFAULT 0, -- the latest time, by its own clock, at which something was entered here
    place TEXT NOT NULL DEFAULT '') STRICT; -- where the database lies; elsewhere it is a copy, and draws an id of its own

-- An engine on the bench. All that is known of it stands in its edits.
CREATE TABLE job (
    id       TEXT    NOT NULL PRIMARY KEY DEFAULT (lower(hex(randomblob(16)))), -- 32 hexadecimal digits
    added_at INTEGER NOT NULL DEFAULT 0 -- when it was begun or imported here
) STRICT;

-- One thing that a person did. Rows are added, never changed (but for two that come with one id: both stay), and removed only with their whole job.
CREATE TABLE edit (
    job    TEXT NOT NULL REFERENCES job (id),
    id     TEXT NOT NULL, -- sorts by time: milliseconds, counter, device, in hexadecimal
    change TEXT NOT NULL DEFAULT '{}', -- JSON, in the published form of job.json
    PRIMARY KEY (job, id)
) STRICT, WITHOUT ROWID;

-- A picture. Its bytes are the file photos/<first two digits>/<id>.
CREATE TABLE photo (
    id       TEXT    NOT NULL PRIMARY KEY, -- SHA-256 of the file, 64 hexadecimal digits
    format   TEXT    NOT NULL DEFAULT 'jpeg' CHECK (format IN ('jpeg', 'png', 'webp')),
    width    INTEGER NOT NULL DEFAULT 0, -- pixels, upright
    height   INTEGER NOT NULL DEFAULT 0, -- pixels, upright
    bytes    INTEGER NOT NULL DEFAULT 0, -- size of the file
    taken_in INTEGER NOT NULL DEFAULT 0 -- when it was first added here
) STRICT;

-- Which pictures leave with a job: those its edits name, and those that edits of a newer version may name.
CREATE TABLE job_photo (
    job   TEXT NOT NULL REFERENCES job (id),
    photo TEXT NOT NULL REFERENCES photo (id),
    PRIMARY KEY (job, photo)
) STRICT, WITHOUT ROWID;

-- What the shop has set.
CREATE TABLE setting (
    key   TEXT NOT NULL PRIMARY KEY,
    value TEXT NOT NULL DEFAULT ''
) STRICT, WITHOUT ROWID;

-- What the shop keeps from job to job: its instruments, spec sheets and prices. Jobs hold their own copies.
CREATE TABLE shelf (
    kind    TEXT NOT NULL CHECK (kind IN ('instrument', 'sheet', 'prices')),
    name    TEXT NOT NULL, -- an instrument's id, a sheet's name, nothing for the one list of prices
    content TEXT NOT NULL DEFAULT '{}', -- JSON, in the published form of job.json
    changed_at INTEGER NOT NULL DEFAULT 0, -- when it was put there; 0 if that is not known
    PRIMARY KEY (kind, name)
) STRICT, WITHOUT ROWID;

-- What is shown of a job in a list. It follows from the edits: a row is taken away when an edit comes, and made anew when the
-- list is next asked for.
CREATE TABLE summary (
    job        TEXT    NOT NULL PRIMARY KEY REFERENCES job (id),
    version    INTEGER NOT NULL DEFAULT 0, -- of the form of what follows: another program version makes it anew
    changed_at INTEGER NOT NULL DEFAULT 0, -- when the job was last edited, or added here
    is_open    INTEGER NOT NULL DEFAULT 1 CHECK (is_open IN (0, 1)), -- 0 once the job is closed
    engine     TEXT    NOT NULL DEFAULT '', -- the engine's number as it is compared; empty if it is not known
    found_by   TEXT    NOT NULL DEFAULT '', -- what a search looks through, in small letters without accents
    content    TEXT    NOT NULL DEFAULT '{}' -- JSON, as the page gets it
) STRICT, WITHOUT ROWID;
CREATE INDEX summary_in_order ON summary (is_open, changed_at DESC, job);
CREATE INDEX summary_by_version ON summary (version);
CREATE INDEX summary_by_engine ON summary (engine) WHERE engine <> '';

-- A photo that the camera was asked for and that is not in its job yet. The camera writes it into the file
-- files/shots/<id>.jpg. A row is written before the camera opens and goes with the entry that takes the photo into the job.
CREATE TABLE shot (
    id        TEXT    NOT NULL PRIMARY KEY DEFAULT (lower(hex(randomblob(16)))), -- 32 hexadecimal digits
    job       TEXT    NOT NULL REFERENCES job (id),
    part      TEXT, -- the part that it is to show,
    ancillary TEXT, -- or the edit that noted what came with the engine
    asked_at  INTEGER NOT NULL DEFAULT 0, -- when the camera was asked
    state     TEXT    NOT NULL DEFAULT 'waiting' CHECK (state IN ('waiting', 'taken')), -- taken: a whole picture is there
    CHECK ((part IS NULL) <> (ancillary IS NULL))
) STRICT, WITHOUT ROWID;
-- One camera is open at a time.
CREATE UNIQUE INDEX shot_one_waiting ON shot (state) WHERE state = 'waiting';

-- Of which jobs an archive was made, and how many edits it held: an older one is not enough to put the job away.
CREATE TABLE archived (
    job   TEXT    NOT NULL PRIMARY KEY REFERENCES job (id),
    edits INTEGER NOT NULL DEFAULT 0,
    at    INTEGER NOT NULL DEFAULT 0 -- when it was made
) STRICT, WITHOUT ROWID;

-- Jobs that are put away. For 30 days they can be brought back; then all of them goes but this row, so that an archive of
-- another device brings one back only when it is asked to.
CREATE TABLE put_away (
    job    TEXT    NOT NULL PRIMARY KEY,
    at     INTEGER NOT NULL DEFAULT 0, -- when
    device INTEGER NOT NULL DEFAULT 0, -- on which device
    gone   INTEGER NOT NULL DEFAULT 0 CHECK (gone IN (0, 1)) -- 1 once nothing else is left
) STRICT, WITHOUT ROWID;

-- Pictures that stand in for photos whose originals are not here: cleaned by whoever gave the job away. A row goes when the
-- original comes.
CREATE TABLE stand_in (
    original TEXT NOT NULL PRIMARY KEY, -- of the photo that an edit names, as in photo
    photo    TEXT NOT NULL REFERENCES photo (id) -- the picture
) STRICT, WITHOUT ROWID;
