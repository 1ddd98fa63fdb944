//! `job.json`: a job's edits in their published form, written and read one after another.

use std::collections::BTreeMap;
use std::fmt;
use std::io::{Cursor, Write};
use std::marker::PhantomData;

use serde::de::{DeserializeSeed, Error as _, IgnoredAny, MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize};
use serde_json::Value;
use serde_json::value::RawValue;
use wearbook_core::assess;
use wearbook_core::job::{Change, DeviceId, Edit, EditId, Job, PhotoId, RecordedChange, Refused};
use wearbook_core::under_way::UnderWay;

use super::extent::Extent;
use super::limits::{MAX_EDITS, MAX_ENTRY_BYTES, MAX_JOB_BYTES, MAX_PHOTOS, MAX_READ_VALUES, MAX_UNKNOWN_VALUES};
use super::read::read_one_job;
use super::source::{Source, read_json};
use crate::ledger::{Written, canonical, too_long};
use crate::{JobId, StoreError};

/// What `format` says.
const FORMAT: &str = "wearbook-job";
/// The newest form that this program reads. It writes it where pictures stand in for others, and else the first.
const VERSION: u32 = 2;

/// The content of `job.json`.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(deny_unknown_fields))]
pub struct JobFile {
    /// Always `wearbook-job`.
    #[cfg_attr(feature = "schema", schemars(regex(pattern = "^wearbook-job$")))]
    pub format: String,
    /// The version of this form: 1, or 2 with `stand_ins`.
    #[cfg_attr(feature = "schema", schemars(range(min = 1, max = 2)))]
    pub version: u32,
    /// The job.
    pub job: JobId,
    /// Photos that are not given away, each with the cleaned picture that stands in for it.
    #[serde(skip_serializing_if = "StandIns::is_empty")]
    #[cfg_attr(feature = "schema", schemars(default))]
    pub stand_ins: StandIns,
    /// What was done, sorted by id.
    pub edits: Vec<Edit>,
}

/// Photos with the pictures that stand in for them.
pub type StandIns = BTreeMap<PhotoId, PhotoId>;

/// Entries that were refused: each reason in a sentence, and of how many.
pub(super) type Refusals = BTreeMap<String, usize>;

/// Reads a job from an archive or from a bare `job.json`. In one written by hand the ids of edits may be left out: the
/// edits are then taken in the order in which they stand.
///
/// # Errors
/// [`StoreError::Archive`] with a sentence.
pub fn read_job_file(bytes: &[u8]) -> Result<JobFile, StoreError> {
    let mut edits: BTreeMap<EditId, String> = BTreeMap::new();
    let read = read_one_job(Cursor::new(bytes), &UnderWay::default(), &mut |edit| {
        if edits.get(&edit.id).is_some_and(|there| *there != edit.change) {
            return Err(StoreError::EditConflict(edit.id.to_string()));
        }
        edits.insert(edit.id, edit.change);
        Ok(())
    })?;
    let ReadJob { job, stand_ins, refused } = read;
    if let Some((reason, _)) = refused.into_iter().next() {
        return Err(StoreError::archive(format!("An entry in this file is refused. {reason}")));
    }
    let edits = edits.into_iter().map(|(id, change)| {
        let change = serde_json::from_str(&change).map_err(|_| StoreError::Damaged)?;
        Ok(Edit { id, change })
    });
    let edits = edits.collect::<Result<_, StoreError>>()?;
    Ok(JobFile { format: FORMAT.into(), version: version(&stand_ins), job, stand_ins, edits })
}

fn version(stand_ins: &StandIns) -> u32 {
    if stand_ins.is_empty() { 1 } else { VERSION }
}

/// What gives edits one after another.
pub(super) type EachEdit<'a> =
    &'a mut dyn FnMut(&mut dyn FnMut(Edit) -> Result<(), StoreError>) -> Result<(), StoreError>;

/// Writes a job, each edit in a line of its own: the same content gives the same bytes.
pub(super) fn write_job(
    to: &mut dyn Write,
    job: JobId,
    stand_ins: &StandIns,
    each_edit: EachEdit<'_>,
) -> Result<(), StoreError> {
    write!(to, "{{\n\"format\": \"{FORMAT}\",\n\"version\": {},\n\"job\": \"{job}\",\n", version(stand_ins))?;
    if !stand_ins.is_empty() {
        let written = serde_json::to_string(stand_ins).map_err(|_| StoreError::Damaged)?;
        writeln!(to, "\"stand_ins\": {written},")?;
    }
    write!(to, "\"edits\": [")?;
    let mut before = "\n";
    each_edit(&mut |edit| {
        // What was kept before there was a border goes along as it is: whoever takes it in counts what is refused.
        let change = serde_json::to_string(&canonical(&edit.change)).map_err(|_| StoreError::Damaged)?;
        write!(to, "{before}{{\"id\": \"{}\", \"change\": {change}}}", edit.id)?;
        before = ",\n";
        Ok(())
    })?;
    Ok(write!(to, "\n]\n}}\n")?)
}

/// What was read of a job beside its edits.
#[derive(Debug)]
pub(super) struct ReadJob {
    pub(super) job: JobId,
    pub(super) stand_ins: StandIns,
    pub(super) refused: Refusals,
}

impl ReadJob {
    /// Reads a job and gives each edit as it comes by: none is held longer, so that no file takes more memory than its
    /// longest entry. What no entry may be is left out, and counted by its reason.
    pub(super) fn read(
        source: &mut dyn Source,
        way: &UnderWay,
        take: &mut dyn FnMut(Written) -> Result<(), StoreError>,
    ) -> Result<Self, StoreError> {
        let by_hand = refuse_other_forms(source)?.then(Job::default);
        let mut entries = Entries {
            take,
            way,
            by_hand,
            number: 0,
            bytes: 0,
            unknown_values: 0,
            latest: None,
            refused: Refusals::new(),
            failed: None,
        };
        let read = read_json(source, WholeFile(&mut entries));
        let Entries { refused, failed, .. } = entries;
        if let Some(failed) = failed {
            return Err(failed);
        }
        let (job, stand_ins) = read?.map_err(|error| unreadable(&error))?;
        Ok(Self { job, stand_ins, refused })
    }
}

/// Format and version are looked at first, so that a later form is named as such and not as a mistake. Says whether an entry
/// was written by hand.
fn refuse_other_forms(source: &mut dyn Source) -> Result<bool, StoreError> {
    #[derive(Deserialize)]
    struct Form {
        format: String,
        version: u32,
        #[serde(default)]
        edits: FirstLook,
    }
    let form: Form = read_json(source, PhantomData)?.map_err(|error| {
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
        return Err(StoreError::newer_form(form.version, VERSION));
    }
    if form.version == 0 {
        return Err(StoreError::archive("This file says that its “version” is 0: it should be 1."));
    }
    if form.edits.count > MAX_EDITS {
        return Err(StoreError::archive(format!(
            "The job in this file has more than {MAX_EDITS} entries, which no job has."
        )));
    }
    Ok(form.edits.lacks_ids)
}

/// The place in the file helps whoever wrote it by hand.
fn unreadable(error: &serde_json::Error) -> StoreError {
    StoreError::archive(format!("The job in this file can’t be read: {error}."))
}

/// What must be known of the entries before the first is read.
#[derive(Default)]
struct FirstLook {
    count: usize,
    lacks_ids: bool,
}

impl<'de> Deserialize<'de> for FirstLook {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_seq(FirstLookVisitor)
    }
}

struct FirstLookVisitor;

impl<'de> Visitor<'de> for FirstLookVisitor {
    type Value = FirstLook;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("a list of entries")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<FirstLook, A::Error> {
        #[derive(Deserialize)]
        struct Id {
            id: Option<IgnoredAny>,
        }
        let mut look = FirstLook::default();
        while let Some(entry) = list.next_element::<Box<RawValue>>()? {
            look.count += 1;
            // What can't be read is told when its turn comes.
            look.lacks_ids |= serde_json::from_str::<Id>(entry.get()).is_ok_and(|entry| entry.id.is_none());
            if look.count > MAX_EDITS {
                while list.next_element::<IgnoredAny>()?.is_some() {}
            }
        }
        Ok(look)
    }
}

/// The form of the file, strictly.
struct WholeFile<'a, 'b>(&'a mut Entries<'b>);

impl<'de> DeserializeSeed<'de> for WholeFile<'_, '_> {
    type Value = (JobId, StandIns);

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Self::Value, D::Error> {
        deserializer.deserialize_map(self)
    }
}

impl<'de> Visitor<'de> for WholeFile<'_, '_> {
    type Value = (JobId, StandIns);

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("a job")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
        const FIELDS: &[&str] = &["format", "version", "job", "stand_ins", "edits"];
        let (mut job, mut stand_ins, mut has_edits) = (None, None, false);
        while let Some(field) = map.next_key::<String>()? {
            match &*field {
                "format" | "version" => drop(map.next_value::<IgnoredAny>()?),
                "job" if job.is_none() => job = Some(map.next_value()?),
                "stand_ins" if stand_ins.is_none() => stand_ins = Some(map.next_value::<FewStandIns>()?.0),
                "edits" if !has_edits => {
                    map.next_value_seed(&mut *self.0)?;
                    has_edits = true;
                }
                "job" => return Err(A::Error::duplicate_field("job")),
                "stand_ins" => return Err(A::Error::duplicate_field("stand_ins")),
                "edits" => return Err(A::Error::duplicate_field("edits")),
                other => {
                    let shown: String = other.chars().take(60).collect();
                    return Err(A::Error::unknown_field(&shown, FIELDS));
                }
            }
        }
        let job = job.ok_or_else(|| A::Error::missing_field("job"))?;
        if !has_edits {
            return Err(A::Error::missing_field("edits"));
        }
        Ok((job, stand_ins.unwrap_or_default()))
    }
}

/// No more of them than an archive has photos.
struct FewStandIns(StandIns);

impl<'de> Deserialize<'de> for FewStandIns {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(FewStandInsVisitor).map(Self)
    }
}

struct FewStandInsVisitor;

impl<'de> Visitor<'de> for FewStandInsVisitor {
    type Value = StandIns;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("photos with what stands in for them")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<StandIns, A::Error> {
        let mut all = StandIns::new();
        while let Some((original, stand_in)) = map.next_entry()? {
            all.insert(original, stand_in);
            if all.len() > MAX_PHOTOS {
                return Err(A::Error::custom(format!("more than {MAX_PHOTOS} pictures that stand in for others")));
            }
        }
        Ok(all)
    }
}

/// The entries of a file, as they come by.
struct Entries<'a> {
    take: &'a mut dyn FnMut(Written) -> Result<(), StoreError>,
    way: &'a UnderWay,
    /// What is known so far of a job that was written by hand, and of no other: a slip in it is told.
    by_hand: Option<Job>,
    number: usize,
    bytes: u64,
    unknown_values: usize,
    latest: Option<EditId>,
    refused: Refusals,
    /// Why reading was given up, where the JSON is not to blame.
    failed: Option<StoreError>,
}

impl<'de> DeserializeSeed<'de> for &mut Entries<'_> {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<(), D::Error> {
        deserializer.deserialize_seq(self)
    }
}

impl<'de> Visitor<'de> for &mut Entries<'_> {
    type Value = ();

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("a list of entries")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<(), A::Error> {
        while let Some(entry) = list.next_element::<Box<RawValue>>()? {
            if let Err(failed) = self.entry(entry.get()) {
                self.failed = Some(failed);
                return Err(A::Error::custom("given up"));
            }
        }
        Ok(())
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct EditAsRead {
    id: Option<EditId>,
    change: Value,
}

/// The id of an entry and what stands around it, in bytes.
const AROUND: usize = 256;

impl Entries<'_> {
    /// An edit without an id gets one after the edit before it. What no entry may be is left out and counted; in what was
    /// written by hand it is a slip, which is told.
    fn entry(&mut self, raw: &str) -> Result<(), StoreError> {
        self.way.go_on()?;
        self.number += 1;
        let number = self.number;
        let extent = Extent::of(raw);
        if extent.bytes > MAX_ENTRY_BYTES + AROUND {
            return self.refuse(too_long(MAX_ENTRY_BYTES));
        }
        if extent.values > MAX_READ_VALUES {
            return self.refuse(Refused(format!("An entry of more than {MAX_READ_VALUES} values.")));
        }
        let EditAsRead { id, change: value } = serde_json::from_str(raw)
            .map_err(|error| StoreError::archive(format!("Entry {number} in this file can’t be read: {error}.")))?;
        let written_by_hand = id.is_none();
        let id = id.unwrap_or_else(|| EditId::next(self.latest, 0, DeviceId(0)));
        if !value.get("do").is_some_and(Value::is_string) {
            return Err(StoreError::archive(format!("Entry {id} does not say in “do” what was done.")));
        }
        let is_slip = |why: Refused| StoreError::archive(format!("Entry {number}: {}", why.0));
        let change = Change::read(&value).map_or_else(|_| RecordedChange::Unknown(value), RecordedChange::Known);
        let written = match self.written(id, &change) {
            Ok(written) => written,
            Err(why) if written_by_hand => return Err(is_slip(why)),
            Err(why) => return self.refuse(why),
        };
        if let Some(job) = &mut self.by_hand {
            if written_by_hand {
                check_by_hand(job, &change).map_err(|why| is_slip(Refused(why)))?;
            }
            if let RecordedChange::Known(change) = &change {
                job.apply_if_it_fits(id, change);
            }
        }
        self.latest = Some(id);
        self.bytes += written.change.len() as u64;
        if self.bytes > MAX_JOB_BYTES {
            let most = MAX_JOB_BYTES / (1024 * 1024);
            return Err(StoreError::archive(format!(
                "The job in this file has more than {most} MB, which no job has."
            )));
        }
        (self.take)(written)
    }

    fn refuse(&mut self, why: Refused) -> Result<(), StoreError> {
        *self.refused.entry(why.0).or_default() += 1;
        Ok(())
    }

    /// What a newer version entered is not known, and may not grow without end.
    fn written(&mut self, id: EditId, change: &RecordedChange) -> Result<Written, Refused> {
        let written = Written::new(id, change)?;
        if self.unknown_values + written.unknown_values > MAX_UNKNOWN_VALUES {
            return Err(Refused(format!(
                "What a newer version entered in this file has more than {MAX_UNKNOWN_VALUES} values, which no job has."
            )));
        }
        self.unknown_values += written.unknown_values;
        Ok(written)
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
        let mut again = Vec::new();
        write_job(&mut again, read.job, &read.stand_ins, &mut |take| read.edits.iter().cloned().try_for_each(take))
            .unwrap();
        assert_eq!(read_job_file(&again).unwrap(), read);
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
        let json = file(&[entries.join(","), far.to_owned()].join(","));
        let mut taken = 0;
        let read = read_one_job(Cursor::new(&json), &UnderWay::default(), &mut |_| {
            taken += 1;
            Ok(())
        });
        let read = read.unwrap();
        assert_eq!(taken, 2);
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
        refused(r#"{"format": "wearbook-job", "version": 3, "later": true}"#, "newer version");
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
