//! A stand-in for a phone: does to the page what a phone does, as the file `behaves.json` in its folder says at that
//! moment.
//!
//! ```json
//! { "camera": { "takes_millis": 800, "writes": "shell.jpg", "part": 1.0, "hangs": false, "says": null },
//!   "sheet": { "takes_millis": 300, "chosen": true, "says": null } }
//! ```
//!
//! What was shared lies in its folder `shared`, by the names that a receiver sees; `lit` says whether the screen stays
//! lit, and `ticks` how often it ticked.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

use axum::Json;
use axum::extract::{Path as Named, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use serde_json::Value;
use wearbook_app::phone::{Can, NoPhone, Parcel, Phone, Refused, answer};
use wearbook_app::{Error, Wearbook};

/// The book and the device under the page.
#[derive(Debug, Clone)]
pub(crate) struct Device {
    pub(crate) book: Arc<Wearbook>,
    phone: Arc<dyn Phone>,
    outbox: PathBuf,
}

impl Device {
    /// Without a folder it is a desktop.
    pub(crate) fn new(book: Arc<Wearbook>, folder: Option<PathBuf>) -> Self {
        let outbox = folder.clone().unwrap_or_default().join("outbox");
        let phone: Arc<dyn Phone> = match folder {
            Some(folder) => Arc::new(StandIn(folder)),
            None => Arc::new(NoPhone),
        };
        Self { book, phone, outbox }
    }
}

/// `POST /phone/<command>`, as the page asks outside the shell.
pub(crate) async fn act(State(device): State<Device>, Named(command): Named<String>, body: Json<Value>) -> Response {
    let ask = move || answer(&device.book, &*device.phone, &device.outbox, &command, body.0);
    match tokio::task::spawn_blocking(ask).await {
        Ok(Ok(answer)) => Json(answer).into_response(),
        Ok(Err(error)) => (StatusCode::BAD_REQUEST, Json(error)).into_response(),
        Err(stopped) => (StatusCode::BAD_REQUEST, Json(Error::new("broken", stopped.to_string()))).into_response(),
    }
}

#[derive(Debug)]
struct StandIn(PathBuf);

#[derive(Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
struct Behaves {
    camera: Camera,
    sheet: Sheet,
}

#[derive(Debug, Deserialize)]
#[serde(default, deny_unknown_fields)]
struct Camera {
    /// How long the person looks through it.
    takes_millis: u64,
    /// The photo it takes, a file beside; none if the person goes back.
    writes: Option<PathBuf>,
    /// How much of it reaches the disk.
    part: f64,
    /// Whether it never reports back: our program is killed behind it.
    hangs: bool,
    says: Option<String>,
}

impl Default for Camera {
    fn default() -> Self {
        Self { takes_millis: 0, writes: None, part: 1.0, hangs: false, says: None }
    }
}

#[derive(Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
struct Sheet {
    takes_millis: u64,
    chosen: bool,
    says: Option<String>,
}

impl StandIn {
    fn behaves(&self) -> Result<Behaves, Refused> {
        let text = std::fs::read_to_string(self.0.join("behaves.json")).unwrap_or_else(|_| "{}".into());
        serde_json::from_str(&text).map_err(|error| failed(&error))
    }
}

fn failed(error: &dyn std::fmt::Display) -> Refused {
    eprintln!("The stand-in for a phone: {error}");
    Refused::Failed
}

fn said(code: Option<&str>) -> Result<(), Refused> {
    code.map_or(Ok(()), |code| Err(Refused::from_code(code)))
}

fn look_for(millis: u64) {
    std::thread::sleep(Duration::from_millis(millis));
}

impl Phone for StandIn {
    fn can(&self) -> Can {
        Can { take_photo: true, share: true, keep_awake: true, tick: true }
    }

    fn take_photo(&self, file: &Path, _: u64) -> Result<(), Refused> {
        let Camera { takes_millis, writes, part, hangs, says } = self.behaves()?.camera;
        look_for(takes_millis);
        if let Some(photo) = writes {
            let bytes = std::fs::read(self.0.join(photo)).map_err(|error| failed(&error))?;
            let most = (bytes.len() as f64 * part.clamp(0.0, 1.0)) as usize;
            std::fs::write(file, bytes.get(..most).unwrap_or(&bytes)).map_err(|error| failed(&error))?;
        }
        if hangs {
            // Longer than any journey.
            look_for(600_000);
        }
        said(says.as_deref())
    }

    fn share(&self, parcel: &Parcel) -> Result<bool, Refused> {
        let Sheet { takes_millis, chosen, says } = self.behaves()?.sheet;
        look_for(takes_millis);
        said(says.as_deref())?;
        if chosen {
            let shared = self.0.join("shared");
            std::fs::create_dir_all(&shared).map_err(|error| failed(&error))?;
            for file in &parcel.files {
                let name = file.file_name().unwrap_or_default();
                std::fs::copy(file, shared.join(name)).map_err(|error| failed(&error))?;
            }
            std::fs::write(shared.join("text"), &parcel.text).map_err(|error| failed(&error))?;
        }
        Ok(chosen)
    }

    fn keep_awake(&self, on: bool) -> Result<(), Refused> {
        std::fs::write(self.0.join("lit"), on.to_string()).map_err(|error| failed(&error))
    }

    fn tick(&self) -> Result<(), Refused> {
        let file = self.0.join("ticks");
        let so_far: u32 = std::fs::read_to_string(&file).ok().and_then(|text| text.parse().ok()).unwrap_or(0);
        std::fs::write(file, (so_far + 1).to_string()).map_err(|error| failed(&error))
    }
}
