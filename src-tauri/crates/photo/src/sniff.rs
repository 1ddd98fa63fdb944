//! What a file is, by its first bytes. Names and declared types are not asked: phones get both wrong.

use crate::refusal::Refusal;

/// What a file is. JPEG, PNG and WebP are read; the others are known only to be refused with a helpful sentence.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Format {
    /// JPEG, also the first picture of a file with several (MPO, and photos that carry a brightness map for bright
    /// screens).
    Jpeg,
    /// PNG; of a moving one the still picture.
    Png,
    /// WebP; of a moving one the first picture.
    WebP,
    /// HEIC or HEIF, what phones write when set to save space.
    Heic,
    /// AVIF.
    Avif,
    /// GIF.
    Gif,
    /// Windows bitmap.
    Bmp,
    /// TIFF, and the raw files of cameras that are built like one.
    Tiff,
    /// JPEG 2000, as a file or as a bare code stream.
    Jpeg2000,
    /// JPEG XL.
    JpegXl,
    /// PDF.
    Pdf,
    /// A film.
    Video,
    /// A file without any bytes.
    Empty,
    /// None of these.
    Unknown,
}

impl Format {
    /// The name that people know it by.
    pub fn name(self) -> &'static str {
        self.row().0
    }

    /// The sentence with which a file of this kind is refused; `None` for the kinds that are read.
    pub(crate) fn refusal(self) -> Option<Refusal> {
        let (_, code, message) = self.row();
        (!code.is_empty()).then(|| Refusal::new(code, message))
    }

    /// Name, refusal code, refusal sentence.
    fn row(self) -> (&'static str, &'static str, &'static str) {
        match self {
            Self::Jpeg => ("JPEG", "", ""),
            Self::Png => ("PNG", "", ""),
            Self::WebP => ("WebP", "", ""),
            Self::Heic => (
                "HEIC",
                "photo-heic",
                "This is a HEIC picture, which can't be read here: set the camera to 'most compatible' (JPEG) or share the picture as JPEG.",
            ),
            Self::Avif => {
                ("AVIF", "photo-avif", "This is an AVIF picture, which can't be read here: save or share it as JPEG.")
            }
            Self::Gif => ("GIF", "photo-gif", "This is a GIF, which is no photo: choose a JPEG, PNG or WebP picture."),
            Self::Bmp => {
                ("BMP", "photo-bmp", "This is a BMP picture, which can't be read here: save it as JPEG or PNG.")
            }
            Self::Tiff => (
                "TIFF",
                "photo-tiff",
                "This is a TIFF or a camera's raw file, which can't be read here: set the camera to JPEG or save the picture as JPEG or PNG.",
            ),
            Self::Jpeg2000 => (
                "JPEG 2000",
                "photo-jpeg-2000",
                "This is a JPEG 2000 picture, which can't be read here: save it as an ordinary JPEG.",
            ),
            Self::JpegXl => (
                "JPEG XL",
                "photo-jpeg-xl",
                "This is a JPEG XL picture, which can't be read here: save it as an ordinary JPEG.",
            ),
            Self::Pdf => {
                ("PDF", "photo-pdf", "This is a PDF document and no photo: choose a JPEG, PNG or WebP picture.")
            }
            Self::Video => ("video", "photo-video", "This is a film and no photo: take a still picture."),
            Self::Empty => (
                "empty file",
                "photo-empty",
                "This file is empty: copy it again from the camera, or take the picture again.",
            ),
            Self::Unknown => (
                "unknown",
                "photo-unknown-format",
                "This file is no picture that can be read here: choose a JPEG, PNG or WebP picture.",
            ),
        }
    }
}

/// Says what a file is by its first bytes. Never fails and reads at most a few dozen bytes.
pub fn sniff(bytes: &[u8]) -> Format {
    let begins = |magic: &[u8]| bytes.starts_with(magic);
    match bytes {
        [] => Format::Empty,
        _ if begins(b"\xFF\xD8\xFF") => Format::Jpeg,
        _ if begins(b"\x89PNG\r\n\x1A\n") => Format::Png,
        [b'R', b'I', b'F', b'F', _, _, _, _, b'W', b'E', b'B', b'P', ..] => Format::WebP,
        [b'R', b'I', b'F', b'F', _, _, _, _, b'A', b'V', b'I', b' ', ..] => Format::Video,
        [_, _, _, _, b'f', b't', b'y', b'p', brands @ ..] => media_file(brands),
        [_, _, _, _, b'm', b'o', b'o', b'v' | b'f', ..] | [_, _, _, _, b'm', b'd', b'a', b't', ..] => Format::Video,
        _ if begins(b"\x1A\x45\xDF\xA3") => Format::Video,
        _ if begins(b"GIF87a") || begins(b"GIF89a") => Format::Gif,
        _ if begins(b"II*\0") || begins(b"MM\0*") || begins(b"II+\0") || begins(b"MM\0+") => Format::Tiff,
        _ if begins(b"\0\0\0\x0CjP  ") || begins(b"\xFF\x4F\xFF\x51") => Format::Jpeg2000,
        _ if begins(b"\0\0\0\x0CJXL ") || begins(b"\xFF\x0A") => Format::JpegXl,
        _ if begins(b"%PDF-") => Format::Pdf,
        // Two letters alone would claim any text that begins so: the four zero bytes that are reserved must be there
        // too.
        [b'B', b'M', _, _, _, _, 0, 0, 0, 0, ..] => Format::Bmp,
        _ => Format::Unknown,
    }
}

/// Tells apart what begins with a file type box (ISO/IEC 14496-12): the main brand first, then up to six of those it
/// claims to be compatible with.
fn media_file(brands: &[u8]) -> Format {
    let mut words = brands.as_chunks::<4>().0.iter().enumerate().filter(|(index, _)| *index != 1).take(7);
    words
        .find_map(|(_, brand)| match brand {
            b"avif" | b"avis" => Some(Format::Avif),
            b"heic" | b"heix" | b"heim" | b"heis" | b"hevc" | b"hevx" | b"hevm" | b"hevs" => Some(Format::Heic),
            b"crx " => Some(Format::Tiff),
            b"jp2 " | b"jpx " | b"jpm " => Some(Format::Jpeg2000),
            _ => None,
        })
        .unwrap_or(match brands {
            [b'm', b'i' | b's', b'f', b'1', ..] => Format::Heic,
            _ => Format::Video,
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(bytes: &[u8], expected: Format) {
        assert_eq!(sniff(bytes), expected, "{:?}", bytes.escape_ascii().to_string());
    }

    #[test]
    fn magic_bytes() {
        check(b"", Format::Empty);
        check(b"\xFF\xD8\xFF\xE0\0\x10JFIF", Format::Jpeg);
        check(b"\x89PNG\r\n\x1A\n\0\0\0\rIHDR", Format::Png);
        check(b"RIFF\x10\0\0\0WEBPVP8 ", Format::WebP);
        check(b"RIFF\x10\0\0\0AVI LIST", Format::Video);
        check(b"RIFF\x10\0\0\0WAVEfmt ", Format::Unknown);
        check(b"\0\0\0\x18ftypheic\0\0\0\0mif1heic", Format::Heic);
        check(b"\0\0\0\x18ftypheix\0\0\0\0mif1heix", Format::Heic);
        check(b"\0\0\0\x18ftyphevc\0\0\0\0msf1hevc", Format::Heic);
        check(b"\0\0\0\x18ftypmif1\0\0\0\0mif1heic", Format::Heic);
        check(b"\0\0\0\x18ftypmsf1\0\0\0\0msf1iso8", Format::Heic);
        check(b"\0\0\0\x18ftypmif1\0\0\0\0mif1avif", Format::Avif);
        check(b"\0\0\0\x18ftypavif\0\0\0\0avifmif1", Format::Avif);
        check(b"\0\0\0\x18ftypmp42\0\0\0\0isommp42", Format::Video);
        check(b"\0\0\0\x14ftypqt  \0\0\0\0qt  ", Format::Video);
        check(b"\0\0\0\x14moov\0\0\0\0", Format::Video);
        check(b"\x1A\x45\xDF\xA3\x01", Format::Video);
        check(b"GIF89a\x01\0", Format::Gif);
        check(b"BM\x36\0\0\0\0\0\0\0\x36\0", Format::Bmp);
        check(b"BMs are what the text names", Format::Unknown);
        check(b"II*\0\x08\0\0\0", Format::Tiff);
        check(b"MM\0*\0\0\0\x08", Format::Tiff);
        check(b"\0\0\0\x0CjP  \r\n\x87\n", Format::Jpeg2000);
        check(b"\xFF\x4F\xFF\x51\0\x29", Format::Jpeg2000);
        check(b"\xFF\x0A\xFA\x7F", Format::JpegXl);
        check(b"%PDF-1.7\n", Format::Pdf);
        check(b"\xFF\xD8", Format::Unknown);
        check(b"hello", Format::Unknown);
    }

    #[test]
    fn every_refusal_is_a_sentence_with_a_way_out() {
        let refused = [
            Format::Heic,
            Format::Avif,
            Format::Gif,
            Format::Bmp,
            Format::Tiff,
            Format::Jpeg2000,
            Format::JpegXl,
            Format::Pdf,
            Format::Video,
            Format::Empty,
            Format::Unknown,
        ];
        for refusal in refused.map(|format| format.refusal().unwrap()) {
            assert!(refusal.code().starts_with("photo-"), "{refusal:?}");
            assert!(refusal.message().starts_with("This ") && refusal.message().ends_with('.'), "{refusal:?}");
            assert!(refusal.message().contains(": "), "no way out: {refusal:?}");
        }
        for read in [Format::Jpeg, Format::Png, Format::WebP] {
            assert_eq!(read.refusal(), None);
        }
    }
}
