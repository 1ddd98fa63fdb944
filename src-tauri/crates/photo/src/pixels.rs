//! Decoded pixels: 8 bits a sample, rows from the top, no padding.

/// What one pixel consists of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Layout {
    Grey,
    Rgb,
    /// Colour and opacity, colour not multiplied by the opacity.
    Rgba,
}

impl Layout {
    /// Bytes in a pixel.
    pub(crate) fn bytes(self) -> usize {
        match self {
            Self::Grey => 1,
            Self::Rgb => 3,
            Self::Rgba => 4,
        }
    }
}

/// A decoded picture. `samples` has exactly `width * height * layout.bytes()` bytes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Pixels {
    pub(crate) width: u32,
    pub(crate) height: u32,
    pub(crate) layout: Layout,
    pub(crate) samples: Vec<u8>,
}

impl Pixels {
    /// The picture on white paper: what was see-through becomes white.
    pub(crate) fn on_white(self) -> Self {
        if self.layout != Layout::Rgba {
            return self;
        }
        let (pixels, _) = self.samples.as_chunks::<4>();
        let samples = pixels.iter().flat_map(|&[r, g, b, a]| [r, g, b].map(|sample| over_white(sample, a))).collect();
        Self { layout: Layout::Rgb, samples, ..self }
    }
}

fn over_white(sample: u8, opacity: u8) -> u8 {
    let (sample, opacity) = (u32::from(sample), u32::from(opacity));
    let mixed = (sample * opacity + 255 * (255 - opacity) + 127) / 255;
    mixed.min(255) as u8
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn see_through_becomes_white() {
        let pixels = Pixels {
            width: 3,
            height: 1,
            layout: Layout::Rgba,
            samples: vec![10, 20, 30, 255, 10, 20, 30, 0, 0, 0, 0, 128],
        };
        assert_eq!(pixels.on_white().samples, [10, 20, 30, 255, 255, 255, 127, 127, 127]);
    }
}
