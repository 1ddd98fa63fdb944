//! The database file: how it is opened, and the ladder of migrations that every database climbs, new or old.

use std::path::{Path, PathBuf};
use std::time::Duration;

use rusqlite::{Connection, ErrorCode, OpenFlags};
use rusqlite_migration::{M, Migrations};

use crate::StoreError;

/// The name of its file.
pub(crate) const DATABASE: &str = "wearbook.db";

/// Forward only. A file that has been released is never changed; the next change is the next file.
const MIGRATIONS: &[M<'_>] = &[
    M::up(include_str!("../migrations/0001_first.sql")),
    M::up(include_str!("../migrations/0002_shelf.sql")),
    M::up(include_str!("../migrations/0003_summary.sql")),
    M::up(include_str!("../migrations/0004_shot.sql")),
    M::up(include_str!("../migrations/0005_clock.sql")),
    M::up(include_str!("../migrations/0006_put_away.sql")),
    M::up(include_str!("../migrations/0007_stand_in.sql")),
    M::up(include_str!("../migrations/0008_place.sql")),
];

/// How long to wait for another program that is writing.
const PATIENCE: Duration = Duration::from_secs(5);

/// Opens a database and brings it up to date, or refuses one of a newer version before anything is written.
pub(crate) fn open(path: &Path) -> Result<Connection, StoreError> {
    refuse_newer(path)?;
    let mut connection = Connection::open(path)?;
    configure(&connection)?;
    climb(&mut connection, MIGRATIONS)?;
    Ok(connection)
}

/// Opens a database only to read it, on a disk without room for what SQLite lays beside it as soon as it reads. Nobody
/// else may be using it.
pub(crate) fn open_without_room(path: &Path) -> Result<Connection, StoreError> {
    let connection = if std::fs::metadata(with_end(path, "-wal")).is_ok_and(|log| log.len() > 0) {
        // With the database for itself alone SQLite keeps the index of the log in memory.
        let connection = Connection::open_with_flags(path, OpenFlags::SQLITE_OPEN_READ_WRITE)?;
        connection.pragma_update_and_check(None, "locking_mode", "EXCLUSIVE", |_| Ok(()))?;
        connection
    } else {
        // What nobody can change needs nothing beside it.
        let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_URI;
        Connection::open_with_flags(format!("{}?immutable=1", address(path)), flags)?
    };
    connection.pragma_update(None, "trusted_schema", false)?;
    let found: i64 = connection.pragma_query_value(None, "user_version", |row| row.get(0))?;
    // One of an earlier version can't be brought up to date here, and not be read as it is.
    if usize::try_from(found) == Ok(MIGRATIONS.len()) { Ok(connection) } else { Err(StoreError::Full) }
}

/// A path as SQLite takes it with options.
fn address(path: &Path) -> String {
    let path = path.to_string_lossy().replace('%', "%25").replace('?', "%3f").replace('#', "%23");
    if cfg!(windows) { format!("file:///{}", path.replace('\\', "/")) } else { format!("file:{path}") }
}

/// The name of a file that belongs to a database.
pub(crate) fn with_end(path: &Path, end: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(end);
    name.into()
}

fn refuse_newer(path: &Path) -> Result<(), StoreError> {
    if !path.exists() {
        return Ok(());
    }
    let found = match version(path, OpenFlags::SQLITE_OPEN_READ_ONLY) {
        // A program that was ended while it began the database has left its undo journal, which only a writer may use.
        Err(error) if error.sqlite_error_code() == Some(ErrorCode::ReadOnly) => {
            version(path, OpenFlags::SQLITE_OPEN_READ_WRITE)?
        }
        found => found?,
    };
    let known = i64::try_from(MIGRATIONS.len()).unwrap_or(i64::MAX);
    if found > known {
        return Err(StoreError::Newer { found, known });
    }
    Ok(())
}

fn version(path: &Path, flags: OpenFlags) -> rusqlite::Result<i64> {
    let connection = Connection::open_with_flags(path, flags)?;
    connection.busy_timeout(PATIENCE)?;
    connection.pragma_query_value(None, "user_version", |row| row.get(0))
}

fn configure(connection: &Connection) -> Result<(), StoreError> {
    connection.busy_timeout(PATIENCE)?;
    connection.pragma_update_and_check(None, "journal_mode", "WAL", |_| Ok(()))?;
    connection.pragma_update(None, "synchronous", "FULL")?;
    // On Apple's systems an ordinary sync stops at the drive's own cache; elsewhere this changes nothing.
    connection.pragma_update(None, "fullfsync", true)?;
    connection.pragma_update(None, "checkpoint_fullfsync", true)?;
    connection.pragma_update(None, "foreign_keys", true)?;
    // A database that somebody has tampered with must not run functions from its schema.
    connection.pragma_update(None, "trusted_schema", false)?;
    Ok(())
}

/// Each step and the version number are one transaction: a step that fails leaves the database as it was.
fn climb(connection: &mut Connection, steps: &[M<'_>]) -> Result<(), StoreError> {
    Migrations::from_slice(steps).to_latest(connection).map_err(|error| match error {
        rusqlite_migration::Error::RusqliteError { err, .. } => StoreError::from(err),
        // The version was checked before; what is left are mistakes in the steps themselves, which tests find.
        _ => StoreError::Damaged,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every table and index as SQL without comments and with single spaces.
    fn shape(connection: &Connection) -> Vec<String> {
        let sql = "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name";
        let mut statement = connection.prepare(sql).unwrap();
        let rows = statement.query_map([], |row| row.get::<_, String>(0)).unwrap();
        rows.map(|sql| plain(&sql.unwrap())).collect()
    }

    fn plain(sql: &str) -> String {
        let lines = sql.lines().map(|line| line.split("--").next().unwrap_or_default());
        let words: Vec<&str> = lines.flat_map(str::split_whitespace).collect();
        words.join(" ")
    }

    fn version_of(connection: &Connection) -> i64 {
        connection.pragma_query_value(None, "user_version", |row| row.get(0)).unwrap()
    }

    #[test]
    fn the_ladder_is_sound() {
        Migrations::from_slice(MIGRATIONS).validate().unwrap();
    }

    #[test]
    fn schema_sql_tells_the_truth() {
        let dir = tempfile::tempdir().unwrap();
        let real = open(&dir.path().join("wearbook.db")).unwrap();
        let told = Connection::open_in_memory().unwrap();
        told.execute_batch(include_str!("../schema.sql")).unwrap();
        assert_eq!(shape(&real), shape(&told));
    }

    #[test]
    fn what_is_promised_is_set() {
        let dir = tempfile::tempdir().unwrap();
        let connection = open(&dir.path().join("wearbook.db")).unwrap();
        let ask = |pragma: &str| connection.pragma_query_value(None, pragma, |row| row.get::<_, i64>(0)).unwrap();
        let mode: String = connection.pragma_query_value(None, "journal_mode", |row| row.get(0)).unwrap();
        assert_eq!((mode.as_str(), ask("synchronous"), ask("foreign_keys"), ask("trusted_schema")), ("wal", 2, 1, 0));
        let loose =
            "SELECT count(*) FROM pragma_table_list WHERE schema = 'main' AND NOT strict AND name NOT LIKE 'sqlite_%'";
        assert_eq!(connection.query_row(loose, [], |row| row.get::<_, i64>(0)).unwrap(), 0, "a table is not STRICT");
    }

    #[test]
    fn a_bad_step_leaves_nothing_behind() {
        let dir = tempfile::tempdir().unwrap();
        let mut connection = open(&dir.path().join("wearbook.db")).unwrap();
        connection.execute("INSERT INTO setting VALUES ('shop', 'kept')", []).unwrap();
        let (before, version_before) = (shape(&connection), version_of(&connection));
        let bad = M::up("CREATE TABLE half (a TEXT) STRICT; DELETE FROM setting; INSERT INTO nowhere VALUES (1);");
        let steps: Vec<M<'_>> = MIGRATIONS.iter().cloned().chain([bad]).collect();
        climb(&mut connection, &steps).unwrap_err();
        assert_eq!((shape(&connection), version_of(&connection)), (before, version_before));
        let kept: String = connection.query_row("SELECT value FROM setting", [], |row| row.get(0)).unwrap();
        assert_eq!(kept, "kept");
    }

    #[test]
    fn a_database_whose_beginning_was_cut_off_opens() {
        let (dir, cut_off) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
        let path = dir.path().join("wearbook.db");
        let connection = Connection::open(&path).unwrap();
        // So few pages in memory that the file is written to before the end.
        connection.execute_batch("PRAGMA cache_size = 1; BEGIN; CREATE TABLE a (b); CREATE TABLE c (d);").unwrap();
        connection.execute("INSERT INTO a VALUES (zeroblob(100000))", []).unwrap();
        for name in ["wearbook.db", "wearbook.db-journal"] {
            std::fs::copy(dir.path().join(name), cut_off.path().join(name)).unwrap();
        }
        drop(connection);
        open(&cut_off.path().join("wearbook.db")).unwrap();
    }

    #[test]
    fn a_newer_database_is_refused_untouched() {
        let dir = tempfile::tempdir().unwrap();
        let path = dir.path().join("wearbook.db");
        open(&path).unwrap().pragma_update(None, "user_version", 99).unwrap();
        let before = std::fs::read(&path).unwrap();
        let refused = open(&path).unwrap_err();
        assert!(matches!(refused, StoreError::Newer { found: 99, .. }), "{refused}");
        assert!(refused.to_string().contains("newer version"), "{refused}");
        assert!(std::fs::read(&path).unwrap() == before, "the newer database was changed");
    }

    #[test]
    fn what_is_no_database_is_said() {
        let dir = tempfile::tempdir().unwrap();
        let path = dir.path().join("wearbook.db");
        std::fs::write(&path, vec![b'x'; 5000]).unwrap();
        assert_eq!(open(&path).unwrap_err().code(), "store-damaged");
        assert_eq!(std::fs::read(&path).unwrap(), vec![b'x'; 5000]);
    }
}
