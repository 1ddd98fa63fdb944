//! What becomes of photos that the camera was asked for.

use std::path::PathBuf;

use wearbook_store::{ShotEnd, ShotId};

use crate::{Error, Wearbook, picture};

impl Wearbook {
    /// Settles what an earlier run of the program has left: a camera that was open then is open no longer, and a file that
    /// was on its way in has to be sent again. For the program that has the page.
    ///
    /// # Errors
    /// What the store says.
    pub fn settle(&self) -> Result<(), Error> {
        self.store.sweep_arrivals()?;
        Ok(self.store.settle_shots(&picture::check)?)
    }

    /// The file into which the camera shall write.
    pub(crate) fn shot_file(&self, shot: &ShotId) -> Result<PathBuf, Error> {
        Ok(self.store.shot_file(shot)?)
    }

    /// The camera has closed. Answers whether there is a photo.
    pub(crate) fn end_shot(&self, shot: &ShotId) -> Result<bool, Error> {
        match self.store.end_shot(shot, &picture::check)? {
            ShotEnd::Taken => Ok(true),
            ShotEnd::Nothing => Ok(false),
            ShotEnd::Broken(why) => Err(Error::new("shot-broken", why)),
        }
    }
}
