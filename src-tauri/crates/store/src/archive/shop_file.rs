//! `shop.json`: what a shop has beside its jobs, and which jobs and photos the archive holds.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt;
use std::io::Write;
use std::marker::PhantomData;

use serde::de::{DeserializeOwned, DeserializeSeed, Error as _, IgnoredAny, MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize};
use wearbook_core::job::{DeviceId, EditId, PhotoId};

use super::extent::Extent;
use super::limits::{MAX_SHELF_LINE_BYTES, MAX_SHELF_LINE_VALUES, MAX_SHOP_ENTRIES};
use super::shop_held::JobAsOf;
use super::source::{Source, read_json};
use crate::ledger::ShelfLine;
use crate::{JobId, StoreError};

/// What `format` says.
const FORMAT: &str = "wearbook-shop";
/// The form that this program reads and writes.
const VERSION: u32 = 1;
/// The most settings, and the most characters of one.
const MOST_SETTINGS: usize = 200;
const MOST_OF_SETTING: usize = 10_000;

/// The content of `shop.json`, but for the shelf.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct ShopFile {
    /// On which device it was written, and when.
    pub(super) device: Device,
    pub(super) written_at: u64,
    /// What the shop has set.
    pub(super) settings: BTreeMap<String, String>,
    /// Jobs that were put away.
    pub(super) put_away: Vec<Stub>,
    /// Every job of the shop.
    pub(super) jobs: Vec<ListedJob>,
}

/// A device, written as it stands in the ids of its edits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub(super) struct Device(pub(super) u64);

impl TryFrom<String> for Device {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        let digits = Some(&text).filter(|text| text.len() == 16);
        let id = digits.and_then(|text| u64::from_str_radix(text, 16).ok());
        id.map(Self).ok_or_else(|| "A device is named by 16 hexadecimal digits.".into())
    }
}

impl From<Device> for String {
    fn from(device: Device) -> Self {
        format!("{:016x}", device.0)
    }
}

impl From<DeviceId> for Device {
    fn from(device: DeviceId) -> Self {
        Self(device.0)
    }
}

/// What is left of a job that was put away.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Stub {
    pub(super) job: JobId,
    pub(super) at: u64,
    pub(super) device: Device,
}

/// A job of the shop.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct ListedJob {
    pub(super) job: JobId,
    /// How many edits it has, and the latest of them.
    pub(super) edits: usize,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) latest: Option<EditId>,
    /// Whether they stand in this archive; otherwise the job has not changed since an earlier one.
    pub(super) is_here: bool,
    /// Photos in this archive that belong to it.
    #[serde(default, skip_serializing_if = "BTreeSet::is_empty")]
    pub(super) photos: BTreeSet<PhotoId>,
}

impl ListedJob {
    pub(super) fn as_of(&self) -> JobAsOf {
        JobAsOf { edits: self.edits, latest: self.latest }
    }
}

impl ShopFile {
    /// Writes it, each line of a list in a line of its own.
    pub(super) fn write(&self, shelf: &[ShelfLine], to: &mut dyn Write) -> Result<(), StoreError> {
        let Self { device, written_at, settings, put_away, jobs } = self;
        let (device, settings) = (json(device)?, json(settings)?);
        write!(to, "{{\n\"format\": \"{FORMAT}\",\n\"version\": {VERSION},\n")?;
        write!(to, "\"device\": {device},\n\"written_at\": {written_at},\n\"settings\": {settings},\n")?;
        lines("put_away", put_away, to)?;
        lines("shelf", shelf, to)?;
        lines("jobs", jobs, to)?;
        // The last list is followed by nothing.
        Ok(write!(to, "\"end\": true\n}}\n")?)
    }

    /// Reads it. What stands on the shelf is given as it comes by.
    pub(super) fn read(
        source: &mut dyn Source,
        take: &mut dyn FnMut(ShelfLine) -> Result<(), StoreError>,
    ) -> Result<Self, StoreError> {
        refuse_other_forms(source)?;
        let mut shelf = ShelfSeed { take, failed: None };
        let read = read_json(source, WholeFile(&mut shelf));
        match shelf.failed {
            Some(failed) => Err(failed),
            None => read?.map_err(|error| unreadable(&error)),
        }
    }
}

fn json(value: &impl Serialize) -> Result<String, StoreError> {
    serde_json::to_string(value).map_err(|_| StoreError::Damaged)
}

fn lines<T: Serialize>(name: &str, all: &[T], to: &mut dyn Write) -> Result<(), StoreError> {
    write!(to, "\"{name}\": [")?;
    let mut before = "\n";
    for line in all {
        write!(to, "{before}{}", json(line)?)?;
        before = ",\n";
    }
    Ok(write!(to, "\n],\n")?)
}

fn unreadable(error: &serde_json::Error) -> StoreError {
    StoreError::archive(format!("The shop in this file can’t be read: {error}."))
}

/// A later form is named as such, and not as a mistake.
fn refuse_other_forms(source: &mut dyn Source) -> Result<(), StoreError> {
    #[derive(Deserialize)]
    struct Form {
        format: String,
        version: u32,
    }
    let form: Form = read_json(source, PhantomData)?.map_err(|error| unreadable(&error))?;
    if form.format != FORMAT || form.version == 0 {
        return Err(StoreError::archive(format!("This file holds no shop: its “format” should be “{FORMAT}”.")));
    }
    if form.version > VERSION {
        return Err(StoreError::newer_form(form.version, VERSION));
    }
    Ok(())
}

/// The form of the file, strictly.
struct WholeFile<'a, 'b>(&'a mut ShelfSeed<'b>);

impl<'de> DeserializeSeed<'de> for WholeFile<'_, '_> {
    type Value = ShopFile;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<ShopFile, D::Error> {
        deserializer.deserialize_map(self)
    }
}

impl<'de> Visitor<'de> for WholeFile<'_, '_> {
    type Value = ShopFile;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("a shop")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<ShopFile, A::Error> {
        const FIELDS: &[&str] = &["device", "written_at", "settings", "put_away", "shelf", "jobs"];
        let mut read = ShopFile::default();
        let mut seen = BTreeSet::new();
        while let Some(field) = map.next_key::<String>()? {
            match &*field {
                "format" | "version" | "end" => drop(map.next_value::<IgnoredAny>()?),
                "device" => read.device = map.next_value()?,
                "written_at" => read.written_at = map.next_value()?,
                "settings" => read.settings = map.next_value::<Settings>()?.0,
                "put_away" => read.put_away = map.next_value::<Few<Stub>>()?.0,
                "shelf" => map.next_value_seed(&mut *self.0)?,
                "jobs" => read.jobs = map.next_value::<Few<ListedJob>>()?.0,
                other => {
                    let shown: String = other.chars().take(60).collect();
                    return Err(A::Error::unknown_field(&shown, FIELDS));
                }
            }
            if !seen.insert(field) {
                return Err(A::Error::custom("a field stands there twice"));
            }
        }
        match FIELDS.iter().find(|field| !seen.contains(**field)) {
            Some(missing) => Err(A::Error::missing_field(missing)),
            None => Ok(read),
        }
    }
}

/// A list of no more lines than an archive can hold jobs.
struct Few<T>(Vec<T>);

impl<'de, T: DeserializeOwned> Deserialize<'de> for Few<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_seq(FewVisitor(PhantomData)).map(Self)
    }
}

struct FewVisitor<T>(PhantomData<T>);

impl<'de, T: DeserializeOwned> Visitor<'de> for FewVisitor<T> {
    type Value = Vec<T>;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("a list")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Vec<T>, A::Error> {
        let mut all = Vec::new();
        while let Some(line) = list.next_element()? {
            all.push(line);
            if all.len() > MAX_SHOP_ENTRIES {
                return Err(A::Error::custom(format!("a list of more than {MAX_SHOP_ENTRIES}")));
            }
        }
        Ok(all)
    }
}

/// No more settings than a shop has.
struct Settings(BTreeMap<String, String>);

impl<'de> Deserialize<'de> for Settings {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(SettingsVisitor).map(Self)
    }
}

struct SettingsVisitor;

impl<'de> Visitor<'de> for SettingsVisitor {
    type Value = BTreeMap<String, String>;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("settings")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
        let mut all = BTreeMap::new();
        while let Some((key, value)) = map.next_entry::<String, String>()? {
            if all.len() == MOST_SETTINGS || key.len() > 60 || value.chars().count() > MOST_OF_SETTING {
                return Err(A::Error::custom("more settings, or a longer one, than any shop has"));
            }
            all.insert(key, value);
        }
        Ok(all)
    }
}

/// What stands on the shelf, as it comes by.
struct ShelfSeed<'a> {
    take: &'a mut dyn FnMut(ShelfLine) -> Result<(), StoreError>,
    failed: Option<StoreError>,
}

impl<'de> DeserializeSeed<'de> for &mut ShelfSeed<'_> {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<(), D::Error> {
        deserializer.deserialize_seq(self)
    }
}

impl<'de> Visitor<'de> for &mut ShelfSeed<'_> {
    type Value = ();

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("what stands on the shelf")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<(), A::Error> {
        while let Some(line) = list.next_element::<ShelfLine>()? {
            let (content, most) = (line.content.get(), MAX_SHELF_LINE_BYTES / (1024 * 1024));
            if content.len() > MAX_SHELF_LINE_BYTES || Extent::of(content).values > MAX_SHELF_LINE_VALUES {
                return Err(A::Error::custom(format!(
                    "a thing on the shelf of more than {most} MB, or of more than {MAX_SHELF_LINE_VALUES} values"
                )));
            }
            if let Err(failed) = (self.take)(line) {
                self.failed = Some(failed);
                return Err(A::Error::custom("given up"));
            }
        }
        Ok(())
    }
}
