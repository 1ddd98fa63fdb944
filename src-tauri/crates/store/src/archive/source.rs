//! JSON that is read as it goes, out of a file or an archive: no more of it is held than one entry.

use std::io::{self, BufReader, Read, Seek, SeekFrom};

use serde::de::DeserializeSeed;
use serde_json::Deserializer;
use zip::ZipArchive;

use super::limits::MAX_READ_ENTRY_BYTES;
use crate::StoreError;

/// What can be read from its start, more than once.
pub(super) trait Source {
    fn read_anew(&mut self) -> Result<Box<dyn Read + '_>, StoreError>;
    /// The most bytes that it may have, and what it is called.
    fn most(&self) -> u64;
}

/// A file by itself.
pub(super) struct Bare<R>(pub(super) R, pub(super) u64);

impl<R: Read + Seek> Source for Bare<R> {
    fn read_anew(&mut self) -> Result<Box<dyn Read + '_>, StoreError> {
        self.0.seek(SeekFrom::Start(0))?;
        Ok(Box::new(&mut self.0))
    }

    fn most(&self) -> u64 {
        self.1
    }
}

/// A file in an archive, by its place in the list.
pub(super) struct Entry<'a, R> {
    pub(super) zip: &'a mut ZipArchive<R>,
    pub(super) index: usize,
    pub(super) most: u64,
}

impl<R: Read + Seek> Source for Entry<'_, R> {
    fn read_anew(&mut self) -> Result<Box<dyn Read + '_>, StoreError> {
        Ok(Box::new(self.zip.by_index(self.index).map_err(unreadable)?))
    }

    fn most(&self) -> u64 {
        self.most
    }
}

/// What can't be read as a zip.
pub(super) fn unreadable(error: zip::result::ZipError) -> StoreError {
    StoreError::archive(format!("This file can’t be read as a .wearbook file ({error}): copy it again."))
}

/// Reads a JSON file from its start to its end. What is wrong with the JSON is told apart from what is wrong with the file.
pub(super) fn read_json<T>(
    source: &mut dyn Source,
    seed: impl for<'de> DeserializeSeed<'de, Value = T>,
) -> Result<Result<T, serde_json::Error>, StoreError> {
    let most = source.most();
    let mut guarded = Guarded::new(source.read_anew()?, most);
    let mut json = Deserializer::from_reader(BufReader::with_capacity(64 * 1024, &mut guarded));
    let read = seed.deserialize(&mut json).and_then(|read| json.end().map(|()| read));
    drop(json);
    match guarded.refused {
        Some(why) => Err(StoreError::archive(why)),
        None => Ok(read),
    }
}

/// Sees every byte before it is read as JSON: counts all, and those of one entry, so that nothing longer is ever held.
struct Guarded<R> {
    inner: R,
    left: u64,
    most: u64,
    /// In how many lists and maps it stands.
    depth: u32,
    in_text: bool,
    is_escaped: bool,
    /// Since an entry, or anything that stands outside the list of entries, began.
    since: u64,
    refused: Option<String>,
}

/// An entry stands in the list of entries, which stands in the file.
const DEPTH_OF_ENTRIES: u32 = 2;

impl<R: Read> Guarded<R> {
    fn new(inner: R, most: u64) -> Self {
        Self { inner, left: most, most, depth: 0, in_text: false, is_escaped: false, since: 0, refused: None }
    }

    fn see(&mut self, byte: u8) {
        self.since += 1;
        if self.in_text {
            self.in_text = self.is_escaped || byte != b'"';
            self.is_escaped = !self.is_escaped && byte == b'\\';
            return;
        }
        match byte {
            b'"' => self.in_text = true,
            b'[' | b'{' => self.depth = self.depth.saturating_add(1),
            b']' | b'}' => self.depth = self.depth.saturating_sub(1),
            b',' => {}
            _ => return,
        }
        if self.depth <= DEPTH_OF_ENTRIES && byte != b'"' {
            self.since = 0;
        }
    }

    fn refuse(&mut self, why: String) -> io::Error {
        self.refused = Some(why);
        io::Error::other("refused")
    }
}

impl<R: Read> Read for Guarded<R> {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        let count = self.inner.read(buffer)?;
        let Some(left) = self.left.checked_sub(count as u64) else {
            let most = self.most / (1024 * 1024);
            return Err(self.refuse(format!("The JSON in this file has more than {most} MB: it was altered.")));
        };
        self.left = left;
        for byte in buffer.iter().take(count) {
            self.see(*byte);
            if self.since > MAX_READ_ENTRY_BYTES {
                let most = MAX_READ_ENTRY_BYTES / (1024 * 1024);
                return Err(self.refuse(format!("An entry in this file has more than {most} MB, which no entry has.")));
            }
        }
        Ok(count)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde::de::IgnoredAny;
    use std::io::Cursor;
    use std::marker::PhantomData;

    fn read(json: &str, most: u64) -> Result<bool, String> {
        let mut bare = Bare(Cursor::new(json), most);
        let read = read_json(&mut bare, PhantomData::<IgnoredAny>).map_err(|error| error.to_string());
        read.map(|read| read.is_ok())
    }

    #[test]
    fn no_entry_longer_than_any_is_held() {
        let long = "x".repeat(MAX_READ_ENTRY_BYTES as usize - 100);
        let of = |entry: &str| read(&format!(r#"{{"edits": [{entry}, {entry}, 1], "a": 5}}"#), 1 << 30);
        assert_eq!(of(&format!(r#"{{"a": "{long}"}}"#)), Ok(true));
        assert_eq!(of(&format!(r#"{{"a": ["\"[{{\\", "{long}"]}}"#)), Ok(true));
        let refused = "An entry in this file has more than 8 MB, which no entry has.";
        assert_eq!(of(&format!(r#"{{"a": ["{long}", "{}"]}}"#, "y".repeat(100))), Err(refused.into()));
        assert_eq!(of(&" ".repeat(9 << 20)), Err(refused.into()));
        assert_eq!(read(&"[1,".repeat(100), 1 << 30), Ok(false));
        assert_eq!(read("[1, 2]", 5), Err("The JSON in this file has more than 0 MB: it was altered.".into()));
    }
}
