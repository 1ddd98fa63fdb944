//! Turns hostile picture bytes into safe picture bytes.
//!
//! A photo comes from a phone, a card, a message or somebody else's computer, and may be anything. This crate says what
//! it is, refuses it with a sentence that helps, or makes the pictures that the app shows and hands out. Functions from
//! bytes to bytes: no files, no clock, no network.
//!
//! ```
//! # fn main() -> Result<(), wearbook_photo::Refusal> {
//! # let mut png = std::io::Cursor::new(Vec::new());
//! # image::RgbImage::new(60, 40).write_to(&mut png, image::ImageFormat::Png).unwrap();
//! # let bytes = png.into_inner();
//! let developed = wearbook_photo::develop(&bytes)?;
//! assert_eq!((developed.facts.width, developed.facts.height), (60, 40));
//! assert!(developed.thumb.starts_with(b"\xFF\xD8"));
//!
//! let refusal = wearbook_photo::check(b"%PDF-1.7").unwrap_err();
//! assert_eq!(refusal.code(), "photo-pdf");
//! # Ok(())
//! # }
//! ```
//!
//! **Strict about pixels, lenient about the rest.** Broken notes, odd resolutions, junk between headers and a missing
//! end mark are passed over as long as every pixel is there. A picture that is cut off is refused, because the missing
//! part would be shown grey, and grey looks like a clean surface.
//!
//! **Bounded.** The constants in this crate cap bytes, pixels and passes before anything is allocated: no input takes
//! more than ten seconds or a gigabyte.
//!
//! What it does *not* do: it does not keep the original (the store does), does not read HEIC, and does not judge
//! sharpness or exposure. Of moving pictures it takes the first. It follows the EXIF orientation only, not the one in
//! XMP. It ignores the profiles of grey and of four-ink pictures, and the brightness maps for bright screens.

mod code;
mod colour;
mod decode;
mod develop;
mod encode;
mod exif;
mod limits;
mod orient;
mod outgoing;
mod pixels;
mod refusal;
mod resize;
mod sharpness;
mod sniff;

pub use code::codes;
pub use develop::{Developed, Facts, SCREEN_SIDE, THUMB_BYTES, THUMB_SIDE, check, develop};
pub use limits::{MAX_BYTES, MAX_PIXELS, MAX_SCANS, MAX_SIDE};
pub use orient::Orientation;
pub use outgoing::{outgoing, outgoing_within};
pub use refusal::Refusal;
pub use sniff::{Format, sniff};
