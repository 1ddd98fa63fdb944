//! The segments of a JPEG file (ITU-T T.81, annex B): a walk that finds what decodes, and leaves everything else
//! behind.

use super::watched::FILLER;

/// What a walk over a JPEG file found.
#[derive(Debug, Default)]
pub(super) struct Segments {
    /// The segments that decode and nothing else, then filler, then an end marker.
    pub(super) clean: Vec<u8>,
    /// Where in `clean` the filler begins.
    pub(super) filler_from: usize,
    /// The frame header, if there was one.
    pub(super) frame: Option<Frame>,
    /// Start-of-scan segments.
    pub(super) scans: usize,
    /// Components in the first scan.
    pub(super) scan_components: u8,
    /// Restart markers.
    pub(super) restarts: usize,
    /// MCUs between restart markers; 0 without.
    pub(super) restart_interval: usize,
    /// Whether the end marker is there.
    pub(super) ended: bool,
    /// Colour transform of an Adobe segment.
    pub(super) adobe: Option<u8>,
    /// The first EXIF block.
    pub(super) exif: Option<Vec<u8>>,
    /// Parts of the colour profile: number, bytes.
    profile: Vec<(u8, Vec<u8>)>,
}

/// A frame header.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Frame {
    /// The marker: 0xC0 to 0xCF.
    pub(super) process: u8,
    pub(super) precision: u8,
    pub(super) width: u32,
    pub(super) height: u32,
    /// Identifier and sampling factors (horizontal, vertical) of each component.
    pub(super) components: Vec<(u8, usize, usize)>,
}

impl Frame {
    fn read(process: u8, body: &[u8]) -> Option<Self> {
        let [precision, h1, h0, w1, w0, count, rest @ ..] = body else { return None };
        let components: Vec<_> = rest
            .as_chunks::<3>()
            .0
            .iter()
            .take(usize::from(*count))
            .map(|[id, factors, _]| (*id, usize::from(factors >> 4), usize::from(factors & 15)))
            .collect();
        let (width, height) = (u16::from_be_bytes([*w1, *w0]).into(), u16::from_be_bytes([*h1, *h0]).into());
        (components.len() == usize::from(*count)).then_some(Self {
            process,
            precision: *precision,
            width,
            height,
            components,
        })
    }

    /// How many MCUs a scan of all components has.
    pub(super) fn mcus(&self) -> usize {
        let most =
            |factor: fn(&(u8, usize, usize)) -> usize| self.components.iter().map(factor).max().unwrap_or(1).max(1);
        // A scan of one component is not interleaved: its MCU is one block, whatever the factors say.
        let (across, down) = if self.components.len() == 1 { (1, 1) } else { (most(|c| c.1), most(|c| c.2)) };
        (self.width as usize).div_ceil(8 * across) * (self.height as usize).div_ceil(8 * down)
    }
}

impl Segments {
    /// The colour profile, put together from its parts in the order of their numbers.
    pub(super) fn profile(&self) -> Option<Vec<u8>> {
        let mut parts: Vec<_> = self.profile.iter().collect();
        parts.sort_by_key(|(number, _)| *number);
        let bytes: Vec<u8> = parts.into_iter().flat_map(|(_, part)| part).copied().collect();
        (!bytes.is_empty()).then_some(bytes)
    }

    /// Walks over a file up to its first end marker, or to the end of the bytes. What follows (further pictures, a
    /// brightness map) is not looked at. Junk between segments is left out, as are comments and everything that a
    /// program has noted: a broken note must not spoil a good picture.
    pub(super) fn walk(bytes: &[u8]) -> Self {
        let mut found = Self { clean: Vec::with_capacity(bytes.len() + FILLER.len() + 4), ..Self::default() };
        found.clean.extend([0xFF, 0xD8]);
        let mut rest = bytes.get(2..).unwrap_or_default();
        while let Some((marker, after)) = next_marker(rest) {
            rest = match marker {
                0xD9 => {
                    found.ended = true;
                    break;
                }
                0x01 | 0xD0..=0xD8 => after,
                _ => match found.segment(marker, after) {
                    Some(after) => after,
                    None => break,
                },
            };
        }
        found.filler_from = found.clean.len();
        found.clean.extend(FILLER);
        found.clean.extend([0xFF, 0xD9]);
        found
    }

    /// Takes in one segment and returns what follows it; `None` when the bytes end within it.
    fn segment<'a>(&mut self, marker: u8, bytes: &'a [u8]) -> Option<&'a [u8]> {
        let (length, _) = bytes.split_first_chunk::<2>()?;
        let (with_length, after) = bytes.split_at_checked(usize::from(u16::from_be_bytes(*length)).max(2))?;
        let body = with_length.get(2..)?;
        match marker {
            0xDB | 0xC4 => self.keep(marker, with_length),
            0xDD => {
                self.restart_interval =
                    body.first_chunk::<2>().map_or(0, |interval| u16::from_be_bytes(*interval).into());
                self.keep(marker, with_length);
            }
            0xC0..=0xC7 | 0xC9..=0xCB | 0xCD..=0xCF => {
                self.frame = self.frame.take().or_else(|| Frame::read(marker, body));
                self.keep(marker, with_length);
            }
            0xDA => {
                self.scans += 1;
                if self.scans == 1 {
                    self.scan_components = body.first().copied().unwrap_or(0);
                    self.name_inks();
                }
                self.keep(marker, with_length);
                return Some(self.compressed(after));
            }
            0xE1 if body.starts_with(b"Exif\0\0") && self.exif.is_none() => self.exif = Some(body.to_vec()),
            0xE2 => {
                if let Some([number, _, part @ ..]) = body.strip_prefix(b"ICC_PROFILE\0") {
                    self.profile.push((*number, part.to_vec()));
                }
            }
            0xEE => {
                if let Some([_, _, _, _, _, _, transform, ..]) = body.strip_prefix(b"Adobe") {
                    self.adobe = Some(*transform);
                }
            }
            _ => {}
        }
        Some(after)
    }

    /// Tells the decoder how four components are stored. With three it is told by other means, since it takes an Adobe
    /// segment that says "not transformed" for a sign of four.
    fn name_inks(&mut self) {
        let Some(transform) = self.adobe else { return };
        if self.frame.as_ref().is_some_and(|frame| frame.components.len() == 4) {
            let transform = if transform == 0 { 0 } else { 2 };
            self.keep(0xEE, &[0, 14, b'A', b'd', b'o', b'b', b'e', 0, 100, 0, 0, 0, 0, transform]);
        }
    }

    fn keep(&mut self, marker: u8, with_length: &[u8]) {
        self.clean.extend([0xFF, marker]);
        self.clean.extend(with_length);
    }

    /// Takes in compressed data, with the restart markers among them, and returns what follows.
    fn compressed<'a>(&mut self, bytes: &'a [u8]) -> &'a [u8] {
        let mut from = 0;
        let end = loop {
            let Some(found) = bytes.get(from..).and_then(|rest| rest.iter().position(|byte| *byte == 0xFF)) else {
                break bytes.len();
            };
            match bytes.get(from + found + 1) {
                Some(0x00) => {}
                Some(0xD0..=0xD7) => self.restarts += 1,
                // Fill bytes before a marker.
                Some(0xFF) => {
                    from += found + 1;
                    continue;
                }
                _ => break from + found,
            }
            from += found + 2;
        };
        let (data, after) = bytes.split_at_checked(end).unwrap_or((bytes, &[]));
        self.clean.extend(data);
        // A lone 0xFF at the end would make a marker together with the filler.
        while self.clean.last() == Some(&0xFF) {
            self.clean.pop();
        }
        after
    }
}

/// The next marker and what follows it. Fill bytes, stuffed zeros and junk are passed over.
fn next_marker(bytes: &[u8]) -> Option<(u8, &[u8])> {
    let mut rest = bytes;
    loop {
        let at = rest.iter().position(|byte| *byte == 0xFF)?;
        rest = rest.get(at + 1..)?;
        match rest {
            [0x00 | 0xFF, ..] => {}
            [marker, after @ ..] => return Some((*marker, after)),
            [] => return None,
        }
    }
}
