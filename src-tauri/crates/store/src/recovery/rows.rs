//! What was read out of a damaged database, each row judged by itself: nothing that merely looks like one gets through.

use std::collections::{BTreeMap, BTreeSet};

use rusqlite::Connection;
use wearbook_core::engine::Part;
use wearbook_core::job::{EditId, PhotoId, RecordedChange};

use super::pages::{Pages, Value, values};
use crate::ledger::canonical;
use crate::{JobId, PhotoFormat, ShotId, StoreError};

/// Rows by their keys: what was read first stands.
#[derive(Debug, Default)]
pub(super) struct Rows {
    device: Option<(i64, i64)>,
    jobs: BTreeMap<String, i64>,
    edits: BTreeMap<(String, String), String>,
    photos: BTreeMap<String, (String, [i64; 4])>,
    of_jobs: BTreeSet<(String, String)>,
    settings: BTreeMap<String, String>,
    shelf: BTreeMap<(String, String), (String, i64)>,
    stand_ins: BTreeMap<String, String>,
    away: BTreeMap<String, [i64; 3]>,
    shots: BTreeMap<String, (String, [Option<String>; 2], i64)>,
    /// Not all rows of jobs or edits were given by the database.
    all_may_be_short: bool,
    /// Of these all were all the same.
    whole: BTreeSet<String>,
}

/// The tables with what is asked of each, in the order of [`Rows::take`]'s columns.
const TABLES: [(&str, &str, &str); 10] = [
    ("device", "one, id, latest_at", "one"),
    ("job", "id, added_at", "id"),
    ("photo", "id, format, width, height, bytes, taken_in", "id"),
    ("job_photo", "job, photo", "job, photo"),
    ("setting", "key, value", "key"),
    ("shelf", "kind, name, content, changed_at", "kind, name"),
    ("stand_in", "original, photo", "original"),
    ("put_away", "job, at, device, gone", "job"),
    ("shot", "id, job, part, ancillary, asked_at, state", "id"),
    ("edit", "job, id, change", "job, id"),
];

impl Rows {
    /// Reads what the database still gives: each table forwards until a row can't be read, then backwards; then the edits
    /// of each job likewise. Names the jobs of which not all was read.
    pub(super) fn ask(&mut self, connection: &Connection) {
        for (table, columns, key) in TABLES {
            let backwards = key.split(", ").map(|key| format!("{key} DESC")).collect::<Vec<_>>().join(", ");
            let sql = format!("SELECT {columns} FROM {table}");
            if !self.read(connection, table, &format!("{sql} ORDER BY {key}"), &[]) {
                self.read(connection, table, &sql, &[]);
                self.read(connection, table, &format!("{sql} ORDER BY {backwards}"), &[]);
                self.all_may_be_short |= matches!(table, "job" | "edit");
            }
        }
        if !self.all_may_be_short {
            return;
        }
        let named = self.edits.keys().map(|(job, _)| job).chain(self.jobs.keys());
        for job in named.cloned().collect::<BTreeSet<_>>() {
            let sql = "SELECT job, id, change FROM edit WHERE job = ?1 ORDER BY id";
            if self.read(connection, "edit", sql, &[&job]) {
                self.whole.insert(job);
            } else {
                self.read(connection, "edit", &format!("{sql} DESC"), &[&job]);
            }
        }
    }

    /// Says whether every row was read, and was good.
    fn read(&mut self, connection: &Connection, table: &str, sql: &str, keys: &[&dyn rusqlite::ToSql]) -> bool {
        let Ok(mut statement) = connection.prepare(sql) else { return false };
        let columns = statement.column_count();
        let Ok(mut rows) = statement.query(keys) else { return false };
        let mut are_good = true;
        loop {
            let row = match rows.next() {
                Ok(Some(row)) => row,
                Ok(None) => return are_good,
                Err(_) => return false,
            };
            let value = |at: usize| match row.get_ref(at) {
                Ok(rusqlite::types::ValueRef::Integer(number)) => Value::Number(number),
                Ok(rusqlite::types::ValueRef::Text(text)) => {
                    std::str::from_utf8(text).map_or(Value::Other, |text| Value::Text(text.to_owned()))
                }
                _ => Value::Other,
            };
            are_good &= self.take(Some(table), &(0..columns).map(value).collect::<Vec<_>>());
        }
    }

    /// Reads every page by itself, with those in the log of writes, and then as it was before them.
    pub(super) fn find(&mut self, main: &[u8], log: &[u8]) {
        let now = Pages::of(main, log);
        for pages in [&now, &now.before()] {
            for row in (1..=pages.count()).flat_map(|at| pages.rows(at)) {
                if let Some(values) = values(&row) {
                    self.take(None, &values);
                }
            }
        }
    }

    /// Takes a row that can be one of ours. Where it is not known of which table, its form tells.
    fn take(&mut self, table: Option<&str>, row: &[Value]) -> bool {
        let may_be = |name: &str| table.is_none_or(|table| table == name);
        match row {
            [Value::Text(job), Value::Text(id), Value::Text(change)] if may_be("edit") && is_edit(job, id, change) => {
                self.edits.entry((job.clone(), id.clone())).or_insert_with(|| change.clone());
            }
            // A row of before it was known when a thing was put there is shorter.
            [Value::Text(kind), Value::Text(name), Value::Text(content), rest @ ..]
                if may_be("shelf") && matches!(&**kind, "instrument" | "sheet" | "prices") && is_json(content) =>
            {
                let at = match rest {
                    [] => 0,
                    [Value::Number(at)] => *at,
                    _ => return false,
                };
                self.shelf.entry((kind.clone(), name.clone())).or_insert_with(|| (content.clone(), at));
            }
            [Value::Text(original), Value::Text(photo)]
                if may_be("stand_in") && is_photo(original) && is_photo(photo) =>
            {
                self.stand_ins.entry(original.clone()).or_insert_with(|| photo.clone());
            }
            [Value::Text(id), Value::Number(at)] if may_be("job") && is_job(id) => {
                // An index names a job beside its row's number, which is small and says nothing of when.
                let known = self.jobs.entry(id.clone()).or_default();
                *known = (*known).max(*at);
            }
            [Value::Text(id), Value::Text(format), rest @ ..]
                if may_be("photo") && is_photo(id) && PhotoFormat::from_name(format).is_some() =>
            {
                let [Value::Number(width), Value::Number(height), Value::Number(bytes), Value::Number(at)] = rest
                else {
                    return false;
                };
                self.photos.entry(id.clone()).or_insert((format.clone(), [*width, *height, *bytes, *at]));
            }
            [Value::Text(job), Value::Text(photo)] if may_be("job_photo") && is_job(job) && is_photo(photo) => {
                self.of_jobs.insert((job.clone(), photo.clone()));
            }
            [Value::Text(key), Value::Text(value)] if may_be("setting") && is_key(key) => {
                self.settings.entry(key.clone()).or_insert_with(|| value.clone());
            }
            [Value::Text(job), Value::Number(at), Value::Number(device), Value::Number(gone @ (0 | 1))]
                if may_be("put_away") && is_job(job) =>
            {
                self.away.entry(job.clone()).or_insert([*at, *device, *gone]);
            }
            [Value::Text(id), Value::Text(job), part, ancillary, Value::Number(at), Value::Text(_)]
                if may_be("shot") && id.parse::<ShotId>().is_ok() && is_job(job) =>
            {
                let part = part.text().filter(|part| part.parse::<Part>().is_ok());
                let ancillary = ancillary.text().filter(|edit| edit.parse::<EditId>().is_ok());
                if part.is_some() == ancillary.is_some() {
                    return false;
                }
                let of = [part, ancillary].map(|of| of.map(str::to_owned));
                self.shots.entry(id.clone()).or_insert((job.clone(), of, *at));
            }
            // The number of the one row stands beside it, so on the page itself is nothing. Where the old file lay does not
            // matter: the new one lies elsewhere, and is no copy.
            [Value::Number(1) | Value::Other, Value::Number(id), Value::Number(at)]
            | [Value::Number(1) | Value::Other, Value::Number(id), Value::Number(at), Value::Text(_)]
                if may_be("device") =>
            {
                self.device.get_or_insert((*id, *at));
            }
            _ => return false,
        }
        true
    }

    /// Writes all of it into a new database. A job that was gone stays gone, whatever old pages still hold of it.
    pub(super) fn write(&self, connection: &mut Connection) -> Result<(), StoreError> {
        let transaction = connection.transaction()?;
        let is_gone = |job: &str| self.away.get(job).is_some_and(|[.., gone]| *gone == 1);
        if let Some((id, at)) = self.device {
            transaction.execute("UPDATE device SET id = ?1, latest_at = ?2", (id, at))?;
        }
        let named = self.edits.keys().map(|(job, _)| job).chain(self.jobs.keys());
        for job in named.filter(|job| !is_gone(job)).collect::<BTreeSet<_>>() {
            let at = self.jobs.get(job).copied().unwrap_or_default();
            transaction.execute("INSERT INTO job (id, added_at) VALUES (?1, ?2)", (job, at))?;
        }
        for ((job, id), change) in self.edits.iter().filter(|((job, _), _)| !is_gone(job)) {
            transaction.execute("INSERT INTO edit (job, id, change) VALUES (?1, ?2, ?3)", (job, id, change))?;
        }
        for (id, (format, [width, height, bytes, at])) in &self.photos {
            let sql = "INSERT INTO photo (id, format, width, height, bytes, taken_in) VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
            transaction.execute(sql, (id, format, width, height, bytes, at))?;
        }
        for (job, photo) in &self.of_jobs {
            let sql = "INSERT INTO job_photo (job, photo) SELECT job.id, photo.id FROM job, photo
                WHERE job.id = ?1 AND photo.id = ?2";
            transaction.execute(sql, (job, photo))?;
        }
        for (key, value) in &self.settings {
            transaction.execute("INSERT INTO setting (key, value) VALUES (?1, ?2)", (key, value))?;
        }
        for (original, photo) in &self.stand_ins {
            let sql = "INSERT INTO stand_in (original, photo) SELECT ?1, id FROM photo WHERE id = ?2";
            transaction.execute(sql, (original, photo))?;
        }
        for ((kind, name), (content, at)) in &self.shelf {
            let sql = "INSERT INTO shelf (kind, name, content, changed_at) VALUES (?1, ?2, ?3, ?4)";
            transaction.execute(sql, (kind, name, content, at))?;
        }
        for (job, [at, device, gone]) in &self.away {
            let sql = "INSERT INTO put_away (job, at, device, gone) VALUES (?1, ?2, ?3, ?4)";
            transaction.execute(sql, (job, at, device, gone))?;
        }
        // No camera is open now. Of which there is no file, that is known by it: see `settle_shots`.
        for (id, (job, [part, ancillary], at)) in &self.shots {
            let sql = "INSERT INTO shot (id, job, part, ancillary, asked_at, state)
                SELECT ?1, id, ?3, ?4, ?5, 'taken' FROM job WHERE id = ?2";
            transaction.execute(sql, (id, job, part, ancillary, at))?;
        }
        Ok(transaction.commit()?)
    }

    /// Every job with how many of its edits were read.
    pub(super) fn jobs(&self) -> BTreeMap<JobId, usize> {
        let mut jobs: BTreeMap<JobId, usize> = BTreeMap::new();
        for id in self.jobs.keys().filter_map(|id| id.parse().ok()) {
            jobs.entry(id).or_default();
        }
        for id in self.edits.keys().filter_map(|(id, _)| id.parse().ok()) {
            *jobs.entry(id).or_default() += 1;
        }
        jobs
    }

    /// A setting, if it was read.
    pub(super) fn setting(&self, key: &str) -> Option<&str> {
        self.settings.get(key).map(String::as_str)
    }

    /// The jobs that may lack edits: those of which the database itself did not give all.
    pub(super) fn short(&self) -> BTreeSet<JobId> {
        let whole: BTreeSet<JobId> = self.whole.iter().filter_map(|id| id.parse().ok()).collect();
        let all = self.jobs().into_keys();
        all.filter(|job| self.all_may_be_short && !whole.contains(job)).collect()
    }
}

fn is_job(text: &str) -> bool {
    text.parse::<JobId>().is_ok()
}

fn is_photo(text: &str) -> bool {
    PhotoId::try_from(text.to_owned()).is_ok()
}

fn is_json(text: &str) -> bool {
    serde_json::from_str::<serde::de::IgnoredAny>(text).is_ok()
}

fn is_key(text: &str) -> bool {
    (1..=60).contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_lowercase() || byte == b'_' || byte == b'-')
}

/// An entry is written in one form only, so that one with a wrong letter in it is known by that.
fn is_edit(job: &str, id: &str, change: &str) -> bool {
    let read = || serde_json::from_str::<RecordedChange>(change).ok();
    is_job(job)
        && id.parse::<EditId>().is_ok()
        && read().is_some_and(|read| match canonical(&read).as_ref() {
            RecordedChange::Known(_) => true,
            RecordedChange::Unknown(value) => value.get("do").is_some_and(serde_json::Value::is_string),
        })
}
