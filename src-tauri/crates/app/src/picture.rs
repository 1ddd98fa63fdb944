//! Pictures between the store, which keeps bytes, and the photo crate, which understands them.

use wearbook_core::job::PhotoId;
use wearbook_store::{PhotoFacts, PhotoFormat, ShownSize};

use crate::{Error, Wearbook};

impl Wearbook {
    /// A derived picture; one that is missing is made again from the original.
    pub(crate) fn shown(&self, photo: &PhotoId, size: ShownSize) -> Result<Vec<u8>, Error> {
        if let Some(bytes) = self.store.shown(photo, size)? {
            return Ok(bytes);
        }
        let developed = wearbook_photo::develop(&self.store.original(photo)?)?;
        self.store.keep_shown(photo, ShownSize::Screen, &developed.screen)?;
        self.store.keep_shown(photo, ShownSize::Thumb, &developed.thumb)?;
        Ok(if size == ShownSize::Screen { developed.screen } else { developed.thumb })
    }
}

/// What the store notes of a picture.
pub(crate) fn facts(facts: &wearbook_photo::Facts) -> PhotoFacts {
    let format = match facts.format {
        wearbook_photo::Format::Jpeg => PhotoFormat::Jpeg,
        wearbook_photo::Format::Png => PhotoFormat::Png,
        wearbook_photo::Format::WebP => PhotoFormat::Webp,
    };
    PhotoFacts { format, width: facts.width, height: facts.height }
}

/// Holds a picture that comes in an archive to the same rules as one from a camera.
pub(crate) fn check(bytes: &[u8]) -> Result<PhotoFacts, String> {
    wearbook_photo::check(bytes).map(|found| facts(&found)).map_err(|refusal| refusal.message().to_owned())
}
