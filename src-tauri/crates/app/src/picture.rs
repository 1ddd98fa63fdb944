//! Pictures between the store, which keeps bytes, and the photo crate, which understands them.

use wearbook_core::job::PhotoId;
use wearbook_store::{PhotoFacts, PhotoFormat, ShownSize};

use crate::{Error, Wearbook};

impl Wearbook {
    /// A derived picture; one that is missing is made again from the original, or from what stands in for it.
    pub(crate) fn shown(&self, photo: &PhotoId, size: ShownSize) -> Result<Vec<u8>, Error> {
        if let Some(bytes) = self.store.shown(photo, size)? {
            return Ok(bytes);
        }
        let developed = wearbook_photo::develop(&self.store.picture(photo)?)?;
        self.store.keep_shown(photo, ShownSize::Screen, &developed.screen)?;
        self.store.keep_shown(photo, ShownSize::Thumb, &developed.thumb)?;
        Ok(if size == ShownSize::Screen { developed.screen } else { developed.thumb })
    }
}

/// What the store notes of a picture that the photo crate has read.
///
/// # Errors
/// `photo-unknown-format` if the photo crate reads more kinds than the store keeps.
pub(crate) fn facts(facts: &wearbook_photo::Facts) -> Result<PhotoFacts, Error> {
    let name = facts.format.name();
    let format = PhotoFormat::from_name(&name.to_lowercase()).ok_or_else(|| {
        Error::new("photo-unknown-format", format!("A {name} picture can’t be kept here: choose JPEG, PNG or WebP."))
    })?;
    Ok(PhotoFacts { format, width: facts.width, height: facts.height })
}

/// Holds a picture that comes in an archive to the same rules as one from a camera.
pub(crate) fn check(bytes: &[u8]) -> Result<PhotoFacts, String> {
    let found = wearbook_photo::check(bytes).map_err(|refusal| refusal.message().to_owned())?;
    facts(&found).map_err(|error| error.message)
}

/// The longest side of a picture that is given away, in pixels: a page of print has no more.
const GIVEN_AWAY: u32 = 4096;

/// The picture and nothing else: neither where it was taken nor with which camera.
pub(crate) fn clean(bytes: &[u8]) -> Result<(Vec<u8>, PhotoFacts), String> {
    let cleaned = wearbook_photo::outgoing(bytes, GIVEN_AWAY).map_err(|refusal| refusal.message().to_owned())?;
    let facts = check(&cleaned)?;
    Ok((cleaned, facts))
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_photo::Format;

    #[test]
    fn every_kind_that_is_read_is_kept() {
        for (read, kept) in
            [(Format::Jpeg, PhotoFormat::Jpeg), (Format::Png, PhotoFormat::Png), (Format::WebP, PhotoFormat::Webp)]
        {
            assert_eq!(PhotoFormat::from_name(&read.name().to_lowercase()), Some(kept));
        }
    }

    #[test]
    fn an_archive_may_hold_any_photo_that_can_be_added() {
        assert_eq!(wearbook_store::MAX_PHOTO_BYTES, wearbook_photo::MAX_BYTES as u64);
    }
}
