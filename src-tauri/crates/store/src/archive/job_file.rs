//! `job.json`: a job's edits in their published form.

use std::collections::BTreeMap;
use std::fmt;
use std::io::Cursor;

use serde::de::{IgnoredAny, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize};
use serde_json::Value;
use serde_json::value::RawValue;
use wearbook_core::assess;
use wearbook_core::job::{Change, DeviceId, Edit, EditId, Job, RecordedChange, Refused, guard};

use super::limits::{
    MAX_EDIT_MILLIS, MAX_EDITS, MAX_ENTRY_BYTES, MAX_JOB_BYTES, MAX_UNKNOWN_BYTES, MAX_UNKNOWN_VALUES,
};
use super::read::Archive;
use crate::ledger::canonical;
use crate::{JobId, StoreError};

/// What `format` says.
const FORMAT: &str = "wearbook-job";
/// The newest form that this program reads, and the one it writes.
const VERSION: u32 = 1;

/// The content of `job.json`.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(deny_unknown_fields))]
pub struct JobFile {
    /// Always `wearbook-job`.
    #[cfg_attr(feature = "schema", schemars(regex(pattern = "^wearbook-job$")))]
    pub format: String,
    /// The version of this form: 1.
    #[cfg_attr(feature = "schema", schemars(range(min = 1, max = 1)))]
    pub version: u32,
    /// The job.
    pub job: JobId,
    /// What was done, sorted by id.
    pub edits: Vec<Edit>,
}

/// Reads a job from an archive or from a bare `job.json`. In one written by hand the ids of edits may be left out: the
/// edits are then taken in the order in which they stand.
///
/// # Errors
/// [`StoreError::Archive`] with a sentence.
pub fn read_job_file(bytes: &[u8]) -> Result<JobFile, StoreError> {
    let read = if is_zip(bytes) { Archive::open(Cursor::new(bytes))?.into_job() } else { ReadJob::from_json(bytes)? };
    match read.refused.into_iter().next() {
        Some((reason, _)) => Err(StoreError::archive(format!("An entry in this file is refused. {reason}"))),
        None => Ok(read.file),
    }
}

/// A job as it was read: what no entry may be is left out of it, and counted by its reason.
pub(super) struct ReadJob {
    pub(super) file: JobFile,
    pub(super) refused: BTreeMap<String, usize>,
}

/// A zip begins with its own two letters; JSON can't.
pub(super) fn is_zip(bytes: &[u8]) -> bool {
    bytes.starts_with(b"PK")
}

impl JobFile {
    pub(super) fn new(job: JobId, edits: Vec<Edit>) -> Self {
        Self { format: FORMAT.into(), version: VERSION, job, edits }
    }

    /// As it stands in an archive: the same content gives the same bytes.
    ///
    /// # Errors
    /// None that can happen: the maps of a job have text for keys.
    pub(super) fn to_json(&self) -> Result<Vec<u8>, StoreError> {
        let mut json = serde_json::to_vec_pretty(self).map_err(|_| StoreError::Damaged)?;
        json.push(b'\n');
        Ok(json)
    }
}

impl ReadJob {
    pub(super) fn from_json(bytes: &[u8]) -> Result<Self, StoreError> {
        if bytes.len() as u64 > MAX_JOB_BYTES {
            let most = MAX_JOB_BYTES / (1024 * 1024);
            return Err(StoreError::archive(format!(
                "The job in this file has more than {most} MB, which no job has."
            )));
        }
        refuse_other_forms(bytes)?;
        let read: AsRead<'_> = serde_json::from_slice(bytes).map_err(|error| unreadable(&error))?;
        if read.edits.0.len() > MAX_EDITS {
            return Err(StoreError::archive(format!(
                "The job in this file has more than {MAX_EDITS} entries, which no job has."
            )));
        }
        let (edits, refused) = in_order(&read.edits.0)?;
        Ok(Self { file: JobFile::new(read.job, edits), refused })
    }
}

/// Format and version are looked at first, so that a later form is named as such and not as a mistake.
fn refuse_other_forms(bytes: &[u8]) -> Result<(), StoreError> {
    #[derive(Deserialize)]
    struct Form {
        format: String,
        version: u32,
    }
    let form: Form = serde_json::from_slice(bytes).map_err(|error| {
        if !error.is_data() {
            return unreadable(&error);
        }
        StoreError::archive(
            "This file holds no job: choose a .wearbook file, or a job.json with “format” and “version”.",
        )
    })?;
    if form.format != FORMAT {
        return Err(StoreError::archive(format!("This file holds no job: its “format” should be “{FORMAT}”.")));
    }
    if form.version > VERSION {
        return Err(StoreError::archive(format!(
            "This file was written by a newer version of this program (form {}, this one reads {VERSION}): install the newer version.",
            form.version
        )));
    }
    if form.version == 0 {
        return Err(StoreError::archive("This file says that its “version” is 0: it should be 1."));
    }
    Ok(())
}

/// The place in the file helps whoever wrote it by hand.
fn unreadable(error: &serde_json::Error) -> StoreError {
    StoreError::archive(format!("The job in this file can’t be read: {error}."))
}

/// The form of the file, strictly.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct AsRead<'a> {
    #[serde(rename = "format")]
    _format: String,
    #[serde(rename = "version")]
    _version: u32,
    job: JobId,
    #[serde(borrow)]
    edits: Entries<'a>,
}

/// The entries as they stand in the file, each to be read by itself: read as a whole, a file of a few kilobytes takes
/// gigabytes. Of more than may be, one more is kept, and no value of the rest.
struct Entries<'a>(Vec<&'a RawValue>);

impl<'de: 'a, 'a> Deserialize<'de> for Entries<'a> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_seq(EntriesVisitor).map(Self)
    }
}

struct EntriesVisitor;

impl<'de> Visitor<'de> for EntriesVisitor {
    type Value = Vec<&'de RawValue>;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("a list of entries")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Self::Value, A::Error> {
        let mut entries = Vec::new();
        while entries.len() <= MAX_EDITS {
            match list.next_element()? {
                Some(entry) => entries.push(entry),
                None => return Ok(entries),
            }
        }
        while list.next_element::<IgnoredAny>()?.is_some() {}
        Ok(entries)
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct EditAsRead {
    id: Option<EditId>,
    change: Value,
}

type Refusals = BTreeMap<String, usize>;

/// Gives edits without an id one after the edit before them, and sorts. What the guard refuses is left out and counted;
/// in what was written by hand it is a slip, which is told.
fn in_order(read: &[&RawValue]) -> Result<(Vec<Edit>, Refusals), StoreError> {
    let mut edits: BTreeMap<EditId, RecordedChange> = BTreeMap::new();
    let mut refused = Refusals::new();
    let mut latest = None;
    let mut by_hand = Job::default();
    let mut unknown_values = 0;
    for (entry, number) in read.iter().zip(1..) {
        if entry.get().len() > MAX_ENTRY_BYTES {
            let most = MAX_ENTRY_BYTES / 1024;
            *refused.entry(format!("It has more than {most} kB, which no entry has.")).or_default() += 1;
            continue;
        }
        let EditAsRead { id, change: value } = serde_json::from_str(entry.get())
            .map_err(|error| StoreError::archive(format!("Entry {number} in this file can’t be read: {error}.")))?;
        let written_by_hand = id.is_none();
        let id = id.unwrap_or_else(|| EditId::next(latest, 0, DeviceId(0)));
        if !value.get("do").is_some_and(Value::is_string) {
            return Err(StoreError::archive(format!("Entry {id} does not say in “do” what was done.")));
        }
        let change = match taken_in(id, value, &mut unknown_values) {
            Ok(change) => change,
            Err(Refused(why)) if written_by_hand => {
                return Err(StoreError::archive(format!("Entry {number}: {why}")));
            }
            Err(Refused(why)) => {
                *refused.entry(why).or_default() += 1;
                continue;
            }
        };
        if written_by_hand {
            check_by_hand(&by_hand, &change).map_err(|why| StoreError::archive(format!("Entry {number}: {why}")))?;
        }
        if let RecordedChange::Known(change) = &change {
            by_hand.apply_if_it_fits(id, change);
        }
        latest = Some(id);
        let change = canonical(&change).into_owned();
        if edits.get(&id).is_some_and(|there| *there != change) {
            return Err(StoreError::EditConflict(id.to_string()));
        }
        edits.insert(id, change);
    }
    Ok((edits.into_iter().map(|(id, change)| Edit { id, change }).collect(), refused))
}

/// What passes the guard. What a newer version entered is not known, and may not grow without end.
fn taken_in(id: EditId, value: Value, unknown_values: &mut usize) -> Result<RecordedChange, Refused> {
    if id.millis() > MAX_EDIT_MILLIS {
        return Err(Refused(
            "It is dated after the year 4000: the clock of the device that wrote it was wrong, or the file was altered."
                .into(),
        ));
    }
    if let Ok(change) = Change::read(&value) {
        guard(&value)?;
        return Ok(RecordedChange::Known(change));
    }
    if value.to_string().len() > MAX_UNKNOWN_BYTES {
        let most = MAX_UNKNOWN_BYTES / 1024;
        return Err(Refused(format!("It has more than {most} kB, which no entry has.")));
    }
    *unknown_values += values(&value);
    if *unknown_values > MAX_UNKNOWN_VALUES {
        return Err(Refused(format!(
            "What a newer version entered in this file has more than {MAX_UNKNOWN_VALUES} values, which no job has."
        )));
    }
    Ok(RecordedChange::Unknown(value))
}

/// Itself and all values in it.
fn values(value: &Value) -> usize {
    1 + match value {
        Value::Array(list) => list.iter().map(values).sum(),
        Value::Object(map) => map.values().map(values).sum(),
        _ => 0,
    }
}

/// What was written by hand can't come from a newer version, and has not passed the border of the log: a slip in it is
/// told, not kept.
fn check_by_hand(job: &Job, change: &RecordedChange) -> Result<(), String> {
    match change {
        RecordedChange::Known(change) => assess::check(job, change).map_err(|refused| refused.0),
        RecordedChange::Unknown(value) => match serde_json::from_value::<Change>(value.clone()) {
            Ok(_) => Ok(()),
            Err(error) => Err(format!("it can’t be read: {}.", error.to_string().trim_end_matches('.'))),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const JOB: &str = "00000000000000000000000000000007";

    fn file(edits: &str) -> String {
        format!(r#"{{"format": "wearbook-job", "version": 1, "job": "{JOB}", "edits": [{edits}]}}"#)
    }

    #[test]
    fn ids_may_be_left_out_and_are_the_same_every_time() {
        let json = file(
            r#"{"change": {"do": "fill", "field": "customer", "text": "a"}}, {"change": {"do": "fill", "field": "machine", "text": "b"}}"#,
        );
        let read = read_job_file(json.as_bytes()).unwrap();
        let ids: Vec<String> = read.edits.iter().map(|edit| edit.id.to_string()).collect();
        assert_eq!(ids, ["000000000000-0000-0000000000000000", "000000000000-0001-0000000000000000"]);
        assert_eq!(read, read_job_file(json.as_bytes()).unwrap());
        assert_eq!(read_job_file(&read.to_json().unwrap()).unwrap(), read);
    }

    /// One entry too long for any takes none of the others with it.
    #[test]
    fn what_the_guard_refuses_is_counted_by_its_reason() {
        let entry = |n: u8, text: &str| {
            format!(
                r#"{{"id": "00000000000{n}-0000-0000000000000001", "change": {{"do": "fill", "field": "customer", "text": "{text}"}}}}"#
            )
        };
        let long = "x".repeat(10_001);
        let entries =
            [entry(1, "a"), entry(2, &long), entry(3, &long), entry(4, &"x".repeat(1_100_000)), entry(5, "b")];
        let far = r#"{"id": "ffffffffffff-0000-0000000000000001", "change": {"do": "clean", "part": "piston.1"}}"#;
        let read = ReadJob::from_json(file(&[entries.join(","), far.to_owned()].join(",")).as_bytes()).unwrap();
        assert_eq!(read.file.edits.len(), 2);
        let told: Vec<(&str, usize)> = read.refused.iter().map(|(why, count)| (why.as_str(), *count)).collect();
        assert_eq!(told[0], ("A text of more than 10000 characters.", 2));
        assert_eq!(told[1], ("It has more than 1024 kB, which no entry has.", 1));
        assert!(told[2].0.starts_with("It is dated after the year 4000") && told.len() == 3, "{told:?}");
    }

    #[track_caller]
    fn refused(json: &str, because: &str) {
        let sentence = read_job_file(json.as_bytes()).unwrap_err().to_string();
        assert!(sentence.contains(because), "{sentence}");
    }

    #[test]
    fn what_is_not_a_job_is_refused_with_a_sentence() {
        refused("", "can’t be read");
        refused("\u{0}PK", "can’t be read");
        refused("[]", "holds no job");
        refused(r#"{"format": "other", "version": 1}"#, "should be “wearbook-job”");
        refused(r#"{"format": "wearbook-job", "version": 2, "later": true}"#, "newer version");
        refused(r#"{"format": "wearbook-job", "version": 0}"#, "should be 1");
        refused(r#"{"format": "wearbook-job", "version": 1}"#, "missing field `job`");
        refused(&file("").replace(r#""job""#, r#""extra": 1, "job""#), "unknown field `extra`");
        refused(&file(r#"{"change": {"do": "clean", "part": "piston.1"}, "by": "me"}"#), "unknown field `by`");
        refused(&file(r#"{"change": 5}"#), "“do”");
        refused(&file(r#"{"change": {"did": "x"}}"#), "“do”");
        refused(
            &file(r#"{"id": "ffffffffffff-ffff-0000000000000001", "change": {"do": "clean", "part": "piston.1"}}"#),
            "after the year 4000",
        );
        refused(&file(r#"{"id": "5", "change": {"do": "clean", "part": "piston.1"}}"#), "is no edit id");
        let id = "000000000001-0000-0000000000000001";
        refused(
            &file(&format!(r#"{{"id": "{id}", "change": {{"do": "a"}}}}, {{"id": "{id}", "change": {{"do": "b"}}}}"#)),
            "another content",
        );
        refused(&file(&format!(r#"{{"change": {{"do": "x", "v": "{}"}}}}"#, "y".repeat(300_000))), "256 kB");
        refused(
            &file(r#"{"change": {"do": "clean", "part": "piston.1"}}"#),
            "Entry 1: The engine has no arrangement yet",
        );
        refused(&file(r#"{"change": {"do": "weigh"}}"#), "Entry 1: it can’t be read: “weigh” in “do” is nothing that");
        let misprint = r#"{"change": {"do": "state-line", "line": {"of": {"kind": "bore", "quantity": "diameter"},
            "min": "2.8444 in = 72.7558 mm"}}}"#;
        refused(&file(misprint), "disagree");
        refused(&file(&"[".repeat(100_000)), "can’t be read");
        refused(&file(&["5"; 1_000_000].join(",")), "more than 100000 entries");
        refused(&file(&format!(r#"{{"change": "{}"}}"#, "y".repeat(2_000_000))), "has more than 1024 kB");
        let values = r#"{"a":0},"#.repeat(25_000);
        let many = |n: u8| {
            format!(r#"{{"id": "00000000000{n}-0000-0000000000000001", "change": {{"do": "x", "v": [{values}0]}}}}"#)
        };
        refused(&file(&[1, 2, 3, 4, 5].map(many).join(",")), "more than 200000 values");
    }
}
