//! A database of every schema that there ever was opens with everything in it, also where the power went off in the
//! middle of bringing it up to date.

use std::path::{Path, PathBuf};

use rusqlite::Connection;
use rusqlite::types::Value;
use wearbook_core::job::RecordedChange;
use wearbook_store::{JobId, ShelfKind, Store, StoreError, photo_id};

/// All schemas, each as SQL.
fn schemas() -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/schemas");
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.sort();
    let name = |file: &Path| file.file_stem().unwrap().to_string_lossy().into_owned();
    files.iter().map(|file| (name(file), std::fs::read_to_string(file).unwrap())).collect()
}

/// Lays out a shop of a schema: closed, or as a program left it that was killed.
fn lay_out(sql: &str, is_closed: bool, folder: &Path) {
    let made = tempfile::tempdir().unwrap();
    let connection = Connection::open(made.path().join("wearbook.db")).unwrap();
    connection.pragma_update_and_check(None, "journal_mode", "WAL", |_| Ok(())).unwrap();
    connection.execute_batch(sql).unwrap();
    let open = (!is_closed).then_some(connection);
    for entry in std::fs::read_dir(made.path()).unwrap().map(|entry| entry.unwrap()) {
        if entry.file_name() != "wearbook.db-shm" {
            std::fs::copy(entry.path(), folder.join(entry.file_name())).unwrap();
        }
    }
    drop(open);
    for picture in [&b"picture"[..], b"picture of another job"] {
        let name = photo_id(picture).as_str().to_owned();
        let folder = folder.join("photos").join(name.chars().take(2).collect::<String>());
        std::fs::create_dir_all(&folder).unwrap();
        std::fs::write(folder.join(name), picture).unwrap();
    }
}

/// Asks for every row of the tables and columns that a database had.
fn asked(sql: &str) -> Vec<String> {
    let connection = Connection::open_in_memory().unwrap();
    connection.execute_batch(sql).unwrap();
    let ask = "SELECT 'SELECT ' || (SELECT group_concat(name) FROM pragma_table_info(t.name)) || ' FROM ' || name
        || ' ORDER BY 1, 2' FROM pragma_table_list AS t
        WHERE schema = 'main' AND name NOT LIKE 'sqlite_%' AND name <> 'device' ORDER BY name";
    let mut statement = connection.prepare(ask).unwrap();
    statement.query_map([], |row| row.get(0)).unwrap().map(Result::unwrap).collect()
}

fn rows(connection: &Connection, asked: &[String]) -> Vec<Vec<Value>> {
    let mut all = Vec::new();
    for sql in asked {
        let mut statement = connection.prepare(sql).unwrap();
        let columns = statement.column_count();
        let mut rows = statement.query([]).unwrap();
        while let Some(row) = rows.next().unwrap() {
            all.push((0..columns).map(|at| row.get(at).unwrap()).collect());
        }
    }
    all
}

/// What a database of this SQL holds.
struct Expected {
    asked: Vec<String>,
    rows: Vec<Vec<Value>>,
}

impl Expected {
    fn of(sql: &str) -> Self {
        let asked = asked(sql);
        let connection = Connection::open_in_memory().unwrap();
        connection.execute_batch(sql).unwrap();
        let rows = rows(&connection, &asked);
        assert!(rows.len() > 13, "hardly anything is in it");
        Self { asked, rows }
    }

    /// The folder opens, and all of it is there.
    #[track_caller]
    fn is_in(&self, folder: &Path, when: &str) {
        let store = Store::open(folder).unwrap_or_else(|error| panic!("{when}: {error}"));
        assert!(store.recovered().unwrap().is_none(), "{when}: it was damaged");
        let all = store.read::<_, StoreError>(|ledger| {
            for (job, edits) in [('a', 6), ('b', 2), ('c', 0)] {
                let job: JobId = job.to_string().repeat(32).parse().unwrap();
                assert_eq!(ledger.edits(job)?.len(), edits, "{when}");
            }
            let unknown = |edit: &wearbook_core::job::Edit| matches!(edit.change, RecordedChange::Unknown(_));
            let first = ledger.edits("a".repeat(32).parse().unwrap())?;
            assert_eq!(first.iter().filter(|edit| unknown(edit)).count(), 1, "{when}");
            ledger.shelf(ShelfKind::Prices)?;
            ledger.summaries_of_engine("N 1")?;
            ledger.shots()?;
            ledger.all_put_away()?;
            let latest = if self.asked.iter().any(|sql| sql.contains("put_away")) { 1_764_000_000_011 } else { 0 };
            assert!(ledger.latest_at()? >= latest, "{when}");
            // Where the program came so far as to note where the folder lies, this is a copy of it.
            assert!(ledger.device()?.0 == 0xaaaa_aaaa_aaaa_aaaa || store.is_copy(), "{when}");
            ledger.jobs()
        });
        assert_eq!(all.unwrap().len(), 3, "{when}");
        for picture in [&b"picture"[..], b"picture of another job"] {
            assert_eq!(store.original(&photo_id(picture)).unwrap(), picture, "{when}");
        }
        drop(store);
        let connection = Connection::open(folder.join("wearbook.db")).unwrap();
        assert!(rows(&connection, &self.asked) == self.rows, "{when}: not all is there");
    }
}

#[test]
fn a_database_of_every_schema_opens_with_everything_in_it() {
    let schemas = schemas();
    assert!(schemas.len() >= 8);
    for (name, sql) in schemas {
        for is_closed in [true, false] {
            let dir = tempfile::tempdir().unwrap();
            lay_out(&sql, is_closed, dir.path());
            assert_eq!(dir.path().join("wearbook.db-wal").exists(), !is_closed);
            Expected::of(&sql).is_in(dir.path(), &format!("schema {name}, closed: {is_closed}"));
        }
    }
}

/// Not a test of its own: brings the shop up to date.
#[test]
#[ignore = "started by the test below"]
#[cfg(target_os = "linux")]
fn child_that_opens() {
    let Some(folder) = crate::tape::Child::folder() else { return };
    drop(Store::open(&folder).unwrap());
}

/// After every step that a program takes to bring a database up to date the power goes off, or it is killed, which is
/// the same with nothing lost.
#[test]
#[cfg(target_os = "linux")]
fn a_migration_may_be_cut_off_at_any_step() {
    use crate::tape::{self, Child, Disk, Lost};
    if !tape::is_there() {
        return;
    }
    let is_long = std::env::var_os("WEARBOOK_LONG").is_some();
    let (mut images, mut steps) = (0, 0);
    for (name, sql) in schemas() {
        let expected = Expected::of(&sql);
        for is_closed in [true, false] {
            // The steps from the middle on are those of the next schema too.
            if !is_long && (name.ends_with("first") || is_closed == (name == "1")) {
                continue;
            }
            let folder = tape::quick_folder();
            lay_out(&sql, is_closed, folder.path());
            let mut disk = Disk::of(folder.path());
            let tape = Child { test: "migrations::child_that_opens", folder: folder.path(), told: &[] }.watch();
            steps += tape.len();
            for (nth, step) in tape.iter().enumerate() {
                disk.step(step);
                let several = [Lost::None, Lost::All, Lost::Half(nth as u64), Lost::Torn];
                for lost in if disk.is_settled() { &several[..1] } else { &several } {
                    let image = tape::quick_folder();
                    disk.lay_out(*lost, image.path());
                    expected.is_in(
                        image.path(),
                        &format!(
                            "schema {name}, closed: {is_closed}, {lost:?} lost after {}",
                            format!("{step:?}").chars().take(100).collect::<String>()
                        ),
                    );
                    images += 1;
                }
            }
        }
    }
    println!("{images} images of {steps} steps");
    assert!(images > 300, "hardly anything was tried: {images}");
}
