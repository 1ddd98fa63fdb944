//! What the page asks of the device: its camera, its share sheet, its screen.
//!
//! Whatever can be decided is decided here, where it is tested: what may be asked, which file is meant, what it is
//! called elsewhere, what an answer of the device means. A device ([`Phone`]) only passes on: the plugin on phones,
//! nothing on desktops ([`NoPhone`]), a stand-in in the tests. `crates/phone/cases.json` holds it.

mod commands;
mod name;
mod refused;
mod share;
mod take_photo;

pub use commands::COMMANDS;
pub use refused::Refused;
pub use share::{Asked as Share, Made, Makes, Parcel, Shared};
pub use take_photo::{Asked as TakePhoto, Photographed};

use std::fmt::Debug;
use std::path::Path;

use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use serde_json::Value;

use crate::action::Nothing;
use crate::{Error, Wearbook};

/// A device. Each of these blocks until the person has answered.
pub trait Phone: Debug + Send + Sync {
    /// What it can do, so that the page offers nothing that fails.
    fn can(&self) -> Can;

    /// Opens the camera, which shall write one photo into this file, and returns when it has closed. What the camera
    /// says of how it went is not asked: the file tells.
    ///
    /// # Errors
    /// Why the camera did not open.
    fn take_photo(&self, file: &Path, room: u64) -> Result<(), Refused>;

    /// Opens the share sheet; answers whether the person chose whom to give it to.
    ///
    /// # Errors
    /// Why the sheet did not open.
    fn share(&self, parcel: &Parcel) -> Result<bool, Refused>;

    /// Keeps the screen lit, or no longer.
    ///
    /// # Errors
    /// That it can't.
    fn keep_awake(&self, on: bool) -> Result<(), Refused>;

    /// A short tick that the hand feels.
    ///
    /// # Errors
    /// That it can't.
    fn tick(&self) -> Result<(), Refused>;
}

/// What a device can do.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Can {
    /// Take a photo into a file of ours.
    pub take_photo: bool,
    /// Hand files to other programs.
    pub share: bool,
    /// Keep the screen lit.
    pub keep_awake: bool,
    /// Tick.
    pub tick: bool,
}

/// A device that can do none of it, and says so: then the page does it in its own way.
#[derive(Debug, Clone, Copy)]
pub struct NoPhone;

impl Phone for NoPhone {
    fn can(&self) -> Can {
        Can::default()
    }
    fn take_photo(&self, _: &Path, _: u64) -> Result<(), Refused> {
        Err(Refused::NoCamera)
    }
    fn share(&self, _: &Parcel) -> Result<bool, Refused> {
        Err(Refused::NoShare)
    }
    fn keep_awake(&self, _: bool) -> Result<(), Refused> {
        Err(Refused::NotHere)
    }
    fn tick(&self) -> Result<(), Refused> {
        Err(Refused::NotHere)
    }
}

/// What is asked of the screen.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct KeepAwake {
    /// Whether it shall stay lit.
    pub on: bool,
}

/// Answers what the page asks. `outbox` is a folder of this program from which other programs may be lent files.
///
/// # Errors
/// `arguments-refused` for what can't be read; the codes of [`Refused`]; those of the actions it takes.
pub fn answer(
    book: &Wearbook,
    phone: &dyn Phone,
    outbox: &Path,
    command: &str,
    arguments: Value,
) -> Result<Value, Error> {
    match command {
        "can" => read::<Nothing>(arguments).and_then(|_| written(phone.can())),
        "take_photo" => read(arguments).and_then(|asked| written(take_photo::act(book, phone, &asked)?)),
        "share" => read(arguments).and_then(|asked| written(share::act(book, phone, outbox, asked)?)),
        "keep_awake" => read(arguments).and_then(|KeepAwake { on }| written(phone.keep_awake(on)?)),
        "tick" => read::<Nothing>(arguments).and_then(|_| written(phone.tick()?)),
        _ => Err(Error::new("no-such-command", "This device is asked for something that it does not know.")),
    }
}

/// Empties the folder of what other programs were lent. At the start: who was given a file may read it late.
pub fn empty_outbox(outbox: &Path) {
    if let Err(error) = std::fs::remove_dir_all(outbox)
        && error.kind() != std::io::ErrorKind::NotFound
    {
        eprintln!("{} could not be emptied: {error}", outbox.display());
    }
}

fn read<A: DeserializeOwned>(arguments: Value) -> Result<A, Error> {
    crate::dispatch::read(arguments)
}

fn written(answer: impl Serialize) -> Result<Value, Error> {
    serde_json::to_value(answer).map_err(|error| Error::new("answer", error.to_string()))
}

/// Those cases that concern one subject.
#[cfg(test)]
fn cases(subject: &str) -> Vec<Value> {
    let all: Value = serde_json::from_str(include_str!("../../../phone/cases.json")).unwrap();
    all[subject].as_array().unwrap().clone()
}
