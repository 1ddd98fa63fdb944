//! What a picture may cost: the caps that keep a hostile file from filling the memory or stopping the phone.

use crate::refusal::Refusal;

/// The largest file, in bytes. A 50-megapixel phone JPEG of the best quality has about 25 MB.
pub const MAX_BYTES: usize = 40 * 1024 * 1024;

/// The most pixels. A 64-megapixel picture needs about 200 MB as RGB and, while a progressive JPEG of full colour
/// resolution is read, 400 MB more: below the gigabyte that a phone can spare.
pub const MAX_PIXELS: u64 = 64_000_000;

/// The longest side in pixels. The panoramas of phones have up to about 16 000.
pub const MAX_SIDE: u32 = 20_000;

/// The most passes of a progressive JPEG. Cameras and web tools write 6 to 15; each pass costs a walk over the whole
/// picture, however few bytes it has.
pub const MAX_SCANS: usize = 32;

/// The largest EXIF block that is looked at. In a JPEG it can't be larger than 64 KiB.
pub(crate) const MAX_EXIF_BYTES: usize = 128 * 1024;

/// The largest colour profile that is looked at. A camera's has a few kilobytes, a large press profile 3 MB.
pub(crate) const MAX_PROFILE_BYTES: usize = 4 * 1024 * 1024;

/// What a decoder may allocate besides the pixels: rows, text, profiles.
pub(crate) const MAX_DECODER_BYTES: usize = 64 * 1024 * 1024;

/// Refuses a file that is too large to be looked at.
pub(crate) fn check_bytes(bytes: &[u8]) -> Result<(), Refusal> {
    if bytes.len() <= MAX_BYTES {
        return Ok(());
    }
    let (found, most) = (bytes.len() / (1024 * 1024), MAX_BYTES / (1024 * 1024));
    Err(Refusal::new(
        "photo-too-large",
        format!(
            "This file has {found} MB, and {most} MB is the most that is read here: take the picture again with a smaller picture size."
        ),
    ))
}

/// Refuses a size that would take too much memory; `width` and `height` come from the header, before any pixel is read.
pub(crate) fn check_size(width: u32, height: u32) -> Result<(), Refusal> {
    if width == 0 || height == 0 {
        return Err(Refusal::broken("its header says that it has no pixels"));
    }
    let pixels = u64::from(width) * u64::from(height);
    if pixels <= MAX_PIXELS && width.max(height) <= MAX_SIDE {
        return Ok(());
    }
    Err(Refusal::new(
        "photo-too-many-pixels",
        format!(
            "This picture says it has {width} × {height} pixels, and at most {} million and {MAX_SIDE} along a side are read here: take it again with a smaller picture size.",
            MAX_PIXELS / 1_000_000
        ),
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(width: u32, height: u32, expected: Option<&str>) {
        let found = check_size(width, height).err().map(|refusal| refusal.code());
        assert_eq!(found, expected, "{width} × {height}");
    }

    #[test]
    fn sizes() {
        check(4000, 3000, None);
        check(8000, 8000, None);
        check(20_000, 3_200, None);
        check(8001, 8000, Some("photo-too-many-pixels"));
        check(20_001, 1, Some("photo-too-many-pixels"));
        check(u32::MAX, u32::MAX, Some("photo-too-many-pixels"));
        check(0, 5, Some("photo-broken"));
    }

    #[test]
    fn bytes() {
        assert!(check_bytes(&vec![0; MAX_BYTES]).is_ok());
        assert_eq!(check_bytes(&vec![0; MAX_BYTES + 1]).unwrap_err().code(), "photo-too-large");
    }
}
