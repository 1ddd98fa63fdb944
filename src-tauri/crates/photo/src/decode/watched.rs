//! A byte source for the JPEG decoder that notices when the picture ends too early.
//!
//! A decoder that runs out of compressed data makes some up and shows grey. So the data are followed by filler, and
//! this source counts how often the decoder asks for it. A complete picture needs none; the decoder only looks a few
//! bytes ahead.

use std::cell::Cell;

use zune_core::bytestream::{ZByteIoError, ZByteReaderTrait, ZCursor, ZSeekFrom};

/// How many bytes of filler follow the data: more than the decoder can look ahead.
pub(super) const FILLER: [u8; 64] = [0x55; 64];

/// The decoder fetches four bytes at a time and holds at most eight that it has not used.
const LOOK_AHEAD_FETCHES: u32 = 2;

/// Bytes of which those from `filler_from` on are filler.
pub(super) struct Watched<'a> {
    bytes: ZCursor<&'a [u8]>,
    filler_from: u64,
    fetches: &'a Cell<u32>,
}

impl<'a> Watched<'a> {
    /// `fetches` counts what has been taken from the filler; ask [`ran_out`] after decoding.
    pub(super) fn new(bytes: &'a [u8], filler_from: usize, fetches: &'a Cell<u32>) -> Self {
        Self { bytes: ZCursor::new(bytes), filler_from: filler_from as u64, fetches }
    }
}

/// Whether the decoder wanted more data than there were.
pub(super) fn ran_out(fetches: &Cell<u32>) -> bool {
    fetches.get() > LOOK_AHEAD_FETCHES
}

impl ZByteReaderTrait for Watched<'_> {
    #[inline(always)]
    fn read_byte_no_error(&mut self) -> u8 {
        self.bytes.read_byte_no_error()
    }

    /// The compressed data are read by this function, four bytes at a time; markers are looked for by the one above.
    #[inline(always)]
    fn read_exact_bytes(&mut self, buf: &mut [u8]) -> Result<(), ZByteIoError> {
        if buf.len() == 4 && self.bytes.z_position()? >= self.filler_from {
            self.fetches.set(self.fetches.get().saturating_add(1));
        }
        self.bytes.read_exact_bytes(buf)
    }

    #[inline(always)]
    fn read_bytes(&mut self, buf: &mut [u8]) -> Result<usize, ZByteIoError> {
        self.bytes.read_bytes(buf)
    }

    #[inline(always)]
    fn peek_bytes(&mut self, buf: &mut [u8]) -> Result<usize, ZByteIoError> {
        self.bytes.peek_bytes(buf)
    }

    #[inline(always)]
    fn peek_exact_bytes(&mut self, buf: &mut [u8]) -> Result<(), ZByteIoError> {
        self.bytes.peek_exact_bytes(buf)
    }

    #[inline(always)]
    fn z_seek(&mut self, from: ZSeekFrom) -> Result<u64, ZByteIoError> {
        self.bytes.z_seek(from)
    }

    #[inline(always)]
    fn is_eof(&mut self) -> Result<bool, ZByteIoError> {
        self.bytes.is_eof()
    }

    #[inline(always)]
    fn z_position(&mut self) -> Result<u64, ZByteIoError> {
        self.bytes.z_position()
    }

    fn read_remaining(&mut self, sink: &mut Vec<u8>) -> Result<usize, ZByteIoError> {
        self.bytes.read_remaining(sink)
    }
}
