//! The two things that we want from a camera's notes: which way up, and when. The rest is never looked at.

use crate::limits::MAX_EXIF_BYTES;
use crate::orient::Orientation;

/// What the EXIF block of a picture says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Notes {
    pub(crate) orientation: Orientation,
    pub(crate) taken_at: Option<String>,
}

/// Reads an EXIF block, with or without the `Exif` marker before it. A block that is broken, or not there, is no reason
/// to refuse a photo: what can be read of it counts, for the rest the picture stands as stored and has no date.
pub(crate) fn read(block: Option<&[u8]>) -> Notes {
    let Some(exif) = block.and_then(parse) else {
        return Notes { orientation: Orientation::AS_STORED, taken_at: None };
    };
    let orientation = exif
        .get_field(exif::Tag::Orientation, exif::In::PRIMARY)
        .and_then(|field| field.value.get_uint(0))
        .map_or(Orientation::AS_STORED, Orientation::from_exif);
    let taken_at =
        exif.get_field(exif::Tag::DateTimeOriginal, exif::In::PRIMARY).and_then(|field| match &field.value {
            exif::Value::Ascii(texts) => texts.first().and_then(|text| date_time(text)),
            _ => None,
        });
    Notes { orientation, taken_at }
}

fn parse(block: &[u8]) -> Option<exif::Exif> {
    if block.len() > MAX_EXIF_BYTES {
        return None;
    }
    let tiff = block.strip_prefix(b"Exif\0\0").unwrap_or(block);
    let parsed = exif::Reader::new().continue_on_error(true).read_raw(tiff.to_vec());
    parsed.or_else(|error| error.distill_partial_result(|_| ())).ok()
}

/// `2026:03:14 09:26:53`, the way EXIF writes it, as `2026-03-14T09:26:53`; `None` unless it is a date that exists.
fn date_time(text: &[u8]) -> Option<String> {
    let text = std::str::from_utf8(text).ok()?.trim_end_matches(['\0', ' ']);
    if text.len() != 19 {
        return None;
    }
    let (date, time) = text.split_once(' ')?;
    let [year, month, day] = three_numbers(date)?;
    let [hour, minute, second] = three_numbers(time)?;
    let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let last_day = match month {
        2 if leap => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        1..=12 => 31,
        _ => return None,
    };
    let exists = year >= 1 && (1..=last_day).contains(&day) && hour < 24 && minute < 60 && second < 60;
    exists.then(|| format!("{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}:{second:02}"))
}

/// Three groups of digits with colons between; the first may be a year, the others have two digits.
fn three_numbers(text: &str) -> Option<[u32; 3]> {
    let mut groups = text.split(':').map(|group| {
        let digits = group.bytes().all(|byte| byte.is_ascii_digit());
        digits.then(|| group.parse().ok()).flatten()
    });
    let numbers = [groups.next()??, groups.next()??, groups.next()??];
    groups.next().is_none().then_some(numbers)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, expected: Option<&str>) {
        assert_eq!(date_time(text.as_bytes()).as_deref(), expected, "{text}");
    }

    #[test]
    fn dates() {
        check("2026:03:14 09:26:53", Some("2026-03-14T09:26:53"));
        check("2026:03:14 09:26:53\0", Some("2026-03-14T09:26:53"));
        check("2024:02:29 00:00:00", Some("2024-02-29T00:00:00"));
        check("2026:02:29 00:00:00", None);
        check("2026:13:01 00:00:00", None);
        check("2026:04:31 00:00:00", None);
        check("2026:03:14 24:00:00", None);
        check("0000:00:00 00:00:00", None);
        check("    :  :     :  :  ", None);
        check("2026-03-14 09:26:53", None);
        check("2026:03:14T09:26:53", None);
        check("+026:03:14 09:26:53", None);
        check("2026:03:14 09:26", None);
        check("", None);
    }

    #[test]
    fn junk_is_passed_over() {
        for junk in [&b""[..], b"Exif\0\0", b"II*\0", b"II*\0\xFF\xFF\xFF\xFF", &[0xFF; 200], &[0; MAX_EXIF_BYTES + 1]]
        {
            assert_eq!(read(Some(junk)), read(None));
        }
    }
}
