//! The pages of a database file as they lie on the disk, with those that stand only in its log of writes beside it.
//!
//! The form of both files: sqlite.org, “Database File Format”, sections 1.3, 1.6, 2.1 and 4.1.

use std::collections::BTreeMap;

/// Bytes of the two files.
#[derive(Debug)]
pub(super) struct Pages<'a> {
    main: &'a [u8],
    size: usize,
    /// The newest of each page in the log of writes.
    written: BTreeMap<usize, &'a [u8]>,
}

const LOG_HEADER: usize = 32;
const FRAME_HEADER: usize = 24;

impl<'a> Pages<'a> {
    /// Finds the pages. Where the header is damaged the size that the program has always used is taken.
    pub(super) fn of(main: &'a [u8], log: &'a [u8]) -> Self {
        let told =
            number(main, 16, 2).or_else(|| number(log, 8, 4)).map_or(0, |size| if size == 1 { 65_536 } else { size });
        let size = if told.is_power_of_two() && (512..=65_536).contains(&told) { told } else { 4096 };
        let mut written = BTreeMap::new();
        let salts = log.get(16..24);
        for frame in log.get(LOG_HEADER..).unwrap_or_default().chunks_exact(FRAME_HEADER + size) {
            let (header, page) = frame.split_at(FRAME_HEADER);
            // Behind the frames of now stand some of before.
            if header.get(8..16) == salts
                && let Some(at) = number(header, 0, 4)
            {
                written.insert(at, page);
            }
        }
        Self { main, size, written }
    }

    /// The same without the log of writes: what it has overwritten may be whole.
    pub(super) fn before(&self) -> Self {
        Self { written: BTreeMap::new(), ..*self }
    }

    /// How many there may be.
    pub(super) fn count(&self) -> usize {
        let last = self.written.keys().next_back().copied().unwrap_or(0);
        last.max(self.main.len().div_ceil(self.size))
    }

    /// One of them, counted from 1; the last may be cut off.
    pub(super) fn page(&self, at: usize) -> Option<&'a [u8]> {
        if let Some(page) = self.written.get(&at) {
            return Some(page);
        }
        let start = at.checked_sub(1)?.checked_mul(self.size)?;
        let end = start.saturating_add(self.size).min(self.main.len());
        self.main.get(start..end).filter(|page| !page.is_empty())
    }

    /// The bytes of every row on a page; none on one that holds no rows.
    pub(super) fn rows(&self, at: usize) -> Vec<Vec<u8>> {
        let Some(page) = self.page(at) else { return vec![] };
        // The first page begins with the header of the file.
        let start = if at == 1 { 100 } else { 0 };
        let (kind, cells) = match (page.get(start), number(page, start + 3, 2)) {
            (Some(kind @ (0x02 | 0x0A | 0x0D)), Some(cells)) => (*kind, cells),
            _ => return vec![],
        };
        let pointers = start + if kind == 0x02 { 12 } else { 8 };
        let cell = |nth: usize| self.cell(page, kind, number(page, pointers + 2 * nth, 2)?);
        (0..cells.min(self.size)).filter_map(cell).collect()
    }

    /// A row, wherever it goes on.
    fn cell(&self, page: &[u8], kind: u8, at: usize) -> Option<Vec<u8>> {
        let mut rest = page.get(at..)?;
        if kind == 0x02 {
            rest = rest.get(4..)?;
        }
        let length = usize::try_from(varint(&mut rest)?).ok().filter(|length| *length <= LONGEST)?;
        if kind == 0x0D {
            varint(&mut rest)?;
        }
        let most = if kind == 0x0D { self.size - 35 } else { (self.size - 12) * 64 / 255 - 23 };
        let least = (self.size - 12) * 32 / 255 - 23;
        if length <= most {
            return rest.get(..length).map(<[u8]>::to_vec);
        }
        let fitting = least + (length - least) % (self.size - 4);
        let here = if fitting <= most { fitting } else { least };
        let mut row = rest.get(..here)?.to_vec();
        let mut next = number(rest, here, 4)?;
        // Each further page adds something, so this ends, even where the pages go round in a ring.
        while row.len() < length {
            let further = self.page(next)?;
            let take = (length - row.len()).min(self.size - 4);
            row.extend_from_slice(further.get(4..4 + take)?);
            next = number(further, 0, 4)?;
        }
        Some(row)
    }
}

/// The longest row that is followed: an entry has a megabyte at most.
const LONGEST: usize = 4 * 1024 * 1024;

/// A value of a row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Value {
    /// Nothing, a fraction or bytes: none of ours are that.
    Other,
    Number(i64),
    Text(String),
}

impl Value {
    pub(super) fn text(&self) -> Option<&str> {
        match self {
            Self::Text(text) => Some(text),
            _ => None,
        }
    }
}

/// The values of a row; none if it is not one.
pub(super) fn values(row: &[u8]) -> Option<Vec<Value>> {
    let mut header = row;
    let length = usize::try_from(varint(&mut header)?).ok()?;
    let used = row.len() - header.len();
    let mut header = header.get(..length.checked_sub(used)?)?;
    let mut body = row.get(length..)?;
    let mut values = Vec::new();
    while !header.is_empty() {
        let kind = varint(&mut header)?;
        let length = match kind {
            0 | 8 | 9 => 0,
            1..=4 => usize::try_from(kind).ok()?,
            5 => 6,
            6 | 7 => 8,
            10 | 11 => return None,
            _ => usize::try_from((kind - 12) / 2).ok()?,
        };
        let (bytes, rest) = body.split_at_checked(length)?;
        body = rest;
        values.push(match kind {
            8 => Value::Number(0),
            9 => Value::Number(1),
            1..=6 => Value::Number(signed(bytes)),
            13.. if kind % 2 == 1 => Value::Text(String::from_utf8(bytes.to_vec()).ok()?),
            _ => Value::Other,
        });
    }
    body.is_empty().then_some(values)
}

fn signed(bytes: &[u8]) -> i64 {
    let first = if bytes.first().is_some_and(|byte| byte & 0x80 != 0) { -1 } else { 0 };
    bytes.iter().fold(first, |number, byte| (number << 8) | i64::from(*byte))
}

fn number(bytes: &[u8], at: usize, length: usize) -> Option<usize> {
    let bytes = bytes.get(at..at.checked_add(length)?)?;
    Some(bytes.iter().fold(0, |number, byte| (number << 8) | usize::from(*byte)))
}

fn varint(bytes: &mut &[u8]) -> Option<u64> {
    let mut number = 0;
    for nth in 0..9 {
        let (byte, rest) = bytes.split_first()?;
        *bytes = rest;
        if nth == 8 {
            return Some((number << 8) | u64::from(*byte));
        }
        number = (number << 7) | u64::from(byte & 0x7F);
        if byte & 0x80 == 0 {
            return Some(number);
        }
    }
    None
}
