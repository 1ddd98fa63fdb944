//! Where a journey is played: a phone-sized browser on the harness, or the shell's real window.

mod browser;
mod phone;
mod process;
mod window;

use std::path::{Path, PathBuf};
use std::time::Duration;

use tempfile::TempDir;
use wearbook_app::Wearbook;

use crate::failure::{Failure, Outcome, fail};
use crate::page::Page;
use phone::Phone;
use window::Window;

/// The longest that a journey may take. A driver that never answers must not hold up everything else.
const LONGEST: Duration = Duration::from_secs(240);

/// Which of them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Place {
    /// Chromium with the measures of a small phone; the actions come from the harness.
    Phone,
    /// The same laid on its side.
    PhoneOnItsSide,
    /// As `Phone`, and the harness does what a phone does, as a journey says (`tests/src/harness/phone.rs`).
    PhoneInHand,
    /// The program as people get it, in WebKitGTK under a display of its own.
    Window,
}

/// Which of the page's two looks the system asks for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Look {
    Light,
    Dark,
}

/// Folders that outlive the program when it is killed, and the port on which the harness comes back: what a browser keeps
/// for a page, it keeps by its address.
pub(crate) struct Folders {
    root: TempDir,
    port: u16,
}

impl Folders {
    fn new() -> Outcome<Self> {
        let folders = Self { root: tempfile::tempdir()?, port: process::free_port()? };
        std::fs::create_dir(folders.saved())?;
        std::fs::create_dir(folders.home())?;
        std::fs::create_dir(folders.backups())?;
        std::fs::create_dir(folders.device())?;
        Ok(folders)
    }
    /// Where the harness listens.
    pub(crate) fn port(&self) -> u16 {
        self.port
    }
    /// The shop's data.
    pub(crate) fn data(&self) -> PathBuf {
        self.root.path().join("data")
    }
    /// Where documents are saved.
    pub(crate) fn saved(&self) -> PathBuf {
        self.root.path().join("saved")
    }
    /// The folder that is chosen for backups.
    pub(crate) fn backups(&self) -> PathBuf {
        self.root.path().join("backups")
    }
    /// What the stand-in for a phone is told, and tells.
    pub(crate) fn device(&self) -> PathBuf {
        self.root.path().join("device")
    }
    /// A home for the browser's own files.
    pub(crate) fn home(&self) -> PathBuf {
        self.root.path().join("home")
    }
    /// A file that a journey hands to the page.
    pub(crate) fn file(&self, name: &str, bytes: &[u8]) -> Outcome<PathBuf> {
        let path = self.root.path().join(name);
        std::fs::write(&path, bytes)?;
        Ok(path)
    }
}

/// A running program with its page open.
pub(crate) struct Stage {
    pub(crate) place: Place,
    pub(crate) look: Look,
    pub(crate) folders: Folders,
    pub(crate) page: Page,
    running: Running,
}

enum Running {
    Phone(Phone),
    Window(Window),
}

impl Running {
    fn kill(&mut self) -> Outcome {
        match self {
            Self::Phone(phone) => phone.kill(),
            Self::Window(window) => window.kill(),
        }
    }
}

impl Stage {
    /// Opens the page over data that `prepare` may have filled before.
    pub(crate) async fn open(place: Place, look: Look, prepare: impl FnOnce(&Wearbook) -> Outcome) -> Outcome<Self> {
        let folders = Folders::new()?;
        prepare(&Wearbook::open(&folders.data())?)?;
        let (running, page) = start(place, look, &folders, &[]).await?;
        Ok(Self { place, look, folders, page, running })
    }

    /// Kills the program as the system does when memory is short or the power goes, and starts it anew.
    pub(crate) async fn kill_and_restart(&mut self) -> Outcome {
        self.kill_and_open(&[]).await
    }

    /// The same, and the system opens files with it.
    pub(crate) async fn kill_and_open(&mut self, files: &[PathBuf]) -> Outcome {
        self.running.kill()?;
        (self.running, self.page) = start(self.place, self.look, &self.folders, files).await?;
        Ok(())
    }

    /// Kills the program, loses everything of the shop, and starts it anew with files that the system opens with it.
    pub(crate) async fn begin_anew(&mut self, files: &[PathBuf]) -> Outcome {
        self.running.kill()?;
        std::fs::remove_dir_all(self.folders.data())?;
        (self.running, self.page) = start(self.place, self.look, &self.folders, files).await?;
        Ok(())
    }

    /// Opens a file as its receiver does, in a plain browser of the same make, where it is 360 pixels wide.
    pub(crate) async fn open_outside(&mut self, file: &Path) -> Outcome {
        if self.place != Place::Window {
            return Ok(self.page.client.goto(&format!("file://{}", file.display())).await?);
        }
        if let Running::Window(window) = &mut self.running {
            window.kill()?;
        }
        let (window, page) = Window::plain(self.look, &self.folders).await?;
        (self.running, self.page) = (Running::Window(window), page);
        // Its window can't be made so narrow; a frame can.
        let frame =
            format!("<title>frame</title><iframe width=360 height=640 src=\"file://{}\"></iframe>", file.display());
        let frame = self.folders.file("frame.html", frame.as_bytes())?;
        self.page.client.goto(&format!("file://{}", frame.display())).await?;
        Ok(self.page.client.enter_frame(0).await?)
    }

    /// Opens a file with the program while it runs. Answers `false` where no test can do that.
    pub(crate) fn open_with_it(&self, file: &Path) -> Outcome<bool> {
        match &self.running {
            Running::Window(window) => window.open_with_it(&self.folders, file).map(|()| true),
            Running::Phone(_) => Ok(false),
        }
    }

    /// Waits for a saved document whose name ends so, and answers its bytes.
    pub(crate) async fn saved_document(&self, ending: &str) -> Outcome<Vec<u8>> {
        let saved = self.page.until(async || match file_ending(&self.folders.saved(), ending)? {
            Some(file) => Ok(std::fs::read(file)?),
            None => fail(format!("No document ending in {ending} was saved.")),
        });
        saved.await
    }
}

fn file_ending(folder: &Path, ending: &str) -> Outcome<Option<PathBuf>> {
    for entry in std::fs::read_dir(folder)? {
        let path = entry?.path();
        if path.to_string_lossy().ends_with(ending) && path.metadata()?.len() > 0 {
            return Ok(Some(path));
        }
    }
    Ok(None)
}

async fn start(place: Place, look: Look, folders: &Folders, files: &[PathBuf]) -> Outcome<(Running, Page)> {
    match place {
        Place::Phone | Place::PhoneOnItsSide | Place::PhoneInHand => {
            let size = if place == Place::PhoneOnItsSide { (640, 360) } else { (360, 640) };
            Phone::start(look, folders, size, place == Place::PhoneInHand, files)
                .await
                .map(|(phone, page)| (Running::Phone(phone), page))
        }
        Place::Window => {
            Window::start(look, folders, files).await.map(|(window, page)| (Running::Window(window), page))
        }
    }
}

/// Plays a journey over data that `prepare` has filled. A picture of the page is kept when it fails.
pub(crate) fn play_over(
    place: Place,
    look: Look,
    prepare: impl FnOnce(&Wearbook) -> Outcome,
    journey: impl AsyncFnOnce(&mut Stage) -> Outcome,
) -> Outcome {
    let runtime = tokio::runtime::Builder::new_multi_thread().worker_threads(2).enable_all().build()?;
    runtime.block_on(async {
        let mut stage = Stage::open(place, look, prepare).await?;
        let outcome = match tokio::time::timeout(LONGEST, journey(&mut stage)).await {
            Ok(outcome) => outcome,
            Err(_) => fail(format!("The journey took longer than {} seconds.", LONGEST.as_secs())),
        };
        if let Err(failure) = outcome {
            return Err(with_picture(failure, &stage).await);
        }
        let Stage { page, .. } = stage;
        page.client.close().await?;
        Ok(())
    })
}

async fn with_picture(failure: Failure, stage: &Stage) -> Failure {
    let picture = tokio::time::timeout(Duration::from_secs(10), stage.page.client.screenshot()).await;
    let Ok(Ok(picture)) = picture else {
        return failure;
    };
    let name = std::thread::current().name().unwrap_or("journey").replace("::", "-");
    let path = process::target_folder().join(format!("{name}.png"));
    match std::fs::write(&path, picture) {
        Ok(()) => Failure(format!("{}\nThe page at that moment: {}", failure.0, path.display())),
        Err(_) => failure,
    }
}

/// Makes the two tests of a journey: from an empty shop, or over data that was filled in before.
macro_rules! on_both {
    ($journey:ident) => {
        $crate::stage::on_both!(|_| Ok(()), $journey);
    };
    ($prepare:expr, $journey:ident) => {
        $crate::stage::plays! { $prepare, $journey,
            on_a_phone: Phone Light,
            in_the_window: Window Light,
        }
    };
}
pub(crate) use on_both;

/// The same in both looks, over data that was filled in before.
macro_rules! in_both_looks {
    ($prepare:expr, $journey:ident) => {
        $crate::stage::plays! { $prepare, $journey,
            on_a_phone_in_the_light_look: Phone Light,
            on_a_phone_in_the_dark_look: Phone Dark,
            in_the_window_in_the_light_look: Window Light,
            in_the_window_in_the_dark_look: Window Dark,
        }
    };
}
pub(crate) use in_both_looks;

macro_rules! plays {
    ($prepare:expr, $journey:ident, $($name:ident: $place:ident $look:ident,)*) => {$(
        #[test]
        fn $name() -> $crate::failure::Outcome {
            $crate::stage::play_over($crate::stage::Place::$place, $crate::stage::Look::$look, $prepare, $journey)
        }
    )*};
}
pub(crate) use plays;
