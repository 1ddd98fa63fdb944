//! The way of a shot: asked for, taken, taken into its job. It holds at every step that the program may be ended.
//!
//! | what | the row | the file |
//! |---|---|---|
//! | the camera is about to open | waiting | none |
//! | the camera is open | waiting | none, or some of it |
//! | the camera has closed | taken, once the file is on the disk | whole |
//! | taken into the job | goes with the edit, in one transaction | removed after it |
//!
//! On phones the camera is another program, and the system often ends ours behind it: then nobody is left to be told
//! that the camera has closed, and [`Store::settle_shots`] finds the file at the next start.

use std::path::PathBuf;

use crate::ledger::{ShotRow, ShotState};
use crate::shot_id::ShotId;
use crate::{PhotoCheck, Store, StoreError};

/// What came of a camera that has closed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ShotEnd {
    /// A whole picture is there.
    Taken,
    /// It wrote nothing: the person changed their mind, or there is no camera.
    Nothing,
    /// What it wrote is no photo that can be kept; the sentence says why. It is gone.
    Broken(String),
}

impl Store {
    /// The file into which the camera writes a shot.
    ///
    /// # Errors
    /// [`StoreError::NoSuchShot`] if it does not wait any longer; what the database says.
    pub fn shot_file(&self, shot: &ShotId) -> Result<PathBuf, StoreError> {
        match self.read(|ledger| ledger.shot(shot))?.state {
            ShotState::Waiting => Ok(self.shots.path(shot)),
            ShotState::Taken => Err(StoreError::NoSuchShot),
        }
    }

    /// The bytes of a shot that was taken.
    ///
    /// # Errors
    /// [`StoreError::NoSuchShot`] if it was not, or if its file is gone; what the disk and the database say.
    pub fn shot_bytes(&self, shot: &ShotId) -> Result<Vec<u8>, StoreError> {
        self.read(|ledger| ledger.shot(shot))?;
        self.shots.read(shot)?.ok_or(StoreError::NoSuchShot)
    }

    /// The camera has closed: with a whole picture in its file the shot is taken, otherwise it is forgotten. May be
    /// told more than once.
    ///
    /// # Errors
    /// What the disk and the database say; the shot then waits as before.
    pub fn end_shot(&self, shot: &ShotId, check: PhotoCheck<'_>) -> Result<ShotEnd, StoreError> {
        match self.read(|ledger| ledger.shot(shot)) {
            Ok(ShotRow { state: ShotState::Taken, .. }) => return Ok(ShotEnd::Taken),
            Ok(_) => {}
            Err(StoreError::NoSuchShot) => return Ok(ShotEnd::Nothing),
            Err(error) => return Err(error),
        }
        let end = match self.shots.read(shot)?.map(|bytes| check(&bytes)) {
            Some(Ok(_)) => {
                self.shots.sync(shot)?;
                self.write(|ledger| ledger.take_shot(shot))?;
                return Ok(ShotEnd::Taken);
            }
            Some(Err(why)) => ShotEnd::Broken(why),
            None => ShotEnd::Nothing,
        };
        self.put_away_shot(shot)?;
        Ok(end)
    }

    /// Forgets a shot with its file.
    ///
    /// # Errors
    /// [`StoreError::NoSuchShot`] if it has been taken in or put away; what the disk and the database say.
    pub fn put_away_shot(&self, shot: &ShotId) -> Result<(), StoreError> {
        self.write(|ledger| ledger.forget_shot(shot))?;
        self.shots.remove(shot)
    }

    /// Removes the file of a shot that is in its job. Should that fail, the file is swept at the next start.
    ///
    /// # Errors
    /// What the disk says.
    pub fn clear_shot(&self, shot: &ShotId) -> Result<(), StoreError> {
        self.shots.remove(shot)
    }

    /// Settles what an earlier run of the program has left: a camera that was open then is open no longer. Files that
    /// no shot knows are removed. For the one program that opens cameras; a second that reads along must not.
    ///
    /// # Errors
    /// What the disk and the database say.
    pub fn settle_shots(&self, check: PhotoCheck<'_>) -> Result<(), StoreError> {
        for shot in self.shots_now()? {
            match shot.state {
                ShotState::Waiting => drop(self.end_shot(&shot.id, check)?),
                // Its file was taken away by other hands, or the row comes from a database that was recovered.
                ShotState::Taken if self.shots.read(&shot.id)?.is_none() => self.put_away_shot(&shot.id)?,
                ShotState::Taken => {}
            }
        }
        self.sweep_shots()
    }

    /// Removes files that no shot knows, but for those that an open camera may be writing.
    ///
    /// # Errors
    /// What the disk and the database say.
    pub fn sweep_shots(&self) -> Result<(), StoreError> {
        let shots = self.shots_now()?;
        let open_since = shots.iter().find(|shot| shot.state == ShotState::Waiting).map(|shot| shot.asked_at);
        let known: Vec<ShotId> = shots.into_iter().map(|shot| shot.id).collect();
        self.shots.sweep(&known, open_since)
    }

    fn shots_now(&self) -> Result<Vec<ShotRow>, StoreError> {
        self.read(|ledger| ledger.shots())
    }
}

#[cfg(test)]
mod tests {
    use std::fs;

    use super::*;
    use crate::{JobId, PhotoFacts, PhotoFormat, ShotOf};

    fn open() -> (tempfile::TempDir, Store, JobId) {
        let dir = tempfile::tempdir().unwrap();
        let store = Store::open(dir.path()).unwrap();
        let job = store.write::<_, StoreError>(|ledger| ledger.create_job(1)).unwrap();
        (dir, store, job)
    }

    fn begin(store: &Store, job: JobId) -> Result<ShotRow, StoreError> {
        store.write(|ledger| ledger.begin_shot(job, ShotOf::Part("main-shell.3.lower".parse().unwrap()), 5))
    }

    fn states(store: &Store) -> Vec<ShotState> {
        store.shots_now().unwrap().iter().map(|shot| shot.state).collect()
    }

    /// A whole picture of these tests ends so.
    fn whole(bytes: &[u8]) -> Result<PhotoFacts, String> {
        let facts = PhotoFacts { format: PhotoFormat::Jpeg, width: 1, height: 1 };
        if bytes.ends_with(b"end") { Ok(facts) } else { Err("It is not whole.".into()) }
    }

    #[test]
    fn a_second_camera_is_refused_while_one_is_open() {
        let (_dir, store, job) = open();
        let first = begin(&store, job).unwrap();
        assert_eq!(begin(&store, job).unwrap_err().code(), "shot-waiting");
        fs::write(store.shot_file(&first.id).unwrap(), b"picture end").unwrap();
        assert_eq!(store.end_shot(&first.id, &whole).unwrap(), ShotEnd::Taken);
        assert!(store.shot_file(&first.id).is_err(), "no camera may write over a photo that was taken");
        begin(&store, job).unwrap();
        assert_eq!(states(&store).len(), 2, "one is taken, the other waits");
    }

    #[track_caller]
    fn ends(file: Option<&[u8]>, first: ShotEnd, again: ShotEnd) {
        let (_dir, store, job) = open();
        let shot = begin(&store, job).unwrap().id;
        let path = store.shot_file(&shot).unwrap();
        if let Some(bytes) = file {
            fs::write(&path, bytes).unwrap();
        }
        assert_eq!(store.end_shot(&shot, &whole).unwrap(), first);
        assert_eq!(store.end_shot(&shot, &whole).unwrap(), again, "told twice");
        let is_taken = first == ShotEnd::Taken;
        assert_eq!((states(&store).len(), path.exists()), (usize::from(is_taken), is_taken));
        if is_taken {
            store.put_away_shot(&shot).unwrap();
        }
        assert_eq!((states(&store).len(), path.exists()), (0, false));
        assert_eq!(store.put_away_shot(&shot).unwrap_err().code(), "no-such-shot");
    }

    #[test]
    fn a_shot_is_taken_only_with_a_whole_picture() {
        ends(None, ShotEnd::Nothing, ShotEnd::Nothing);
        ends(Some(b""), ShotEnd::Nothing, ShotEnd::Nothing);
        ends(Some(b"pict"), ShotEnd::Broken("It is not whole.".into()), ShotEnd::Nothing);
        ends(Some(b"picture end"), ShotEnd::Taken, ShotEnd::Taken);
    }

    #[test]
    fn a_start_settles_what_was_left_and_sweeps_the_rest() {
        let (dir, store, job) = open();
        let taken = begin(&store, job).unwrap().id;
        fs::write(store.shot_file(&taken).unwrap(), b"picture end").unwrap();
        let stray = dir.path().join("files/shots/left-over.jpg");
        fs::write(&stray, b"picture end").unwrap();
        store.sweep_shots().unwrap();
        assert!(stray.exists(), "the open camera may be writing it");
        drop(store);

        let store = Store::open(dir.path()).unwrap();
        assert_eq!(states(&store), [ShotState::Waiting], "who only reads along changes nothing");
        store.settle_shots(&whole).unwrap();
        assert_eq!((states(&store), stray.exists()), (vec![ShotState::Taken], false));
        assert_eq!(store.shot_bytes(&taken).unwrap(), b"picture end");
        fs::remove_file(dir.path().join("files/shots").join(taken.file_name())).unwrap();
        store.settle_shots(&whole).unwrap();
        assert_eq!(states(&store), [], "what has no file is offered no more");
    }
}
