//! The symbol in which a label's code is drawn (ISO/IEC 18004).

use qrcode::{Color, EcLevel, QrCode, Version};
use wearbook_core::label::Code;

use crate::NotSet;

/// Modules that stay white around it (ISO/IEC 18004).
pub const QUIET_ZONE: usize = 4;
/// The side of a module on paper, in millimetres: nine dots of a printer with 300 dots to the inch.
pub const MODULE_MM: f64 = 0.762;

/// A square of modules, dark or light, without its quiet zone.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Symbol {
    side: usize,
    dark: Vec<bool>,
}

impl Symbol {
    /// The symbol of a code: version 1, where a quarter of what is read may be wrong.
    ///
    /// # Errors
    /// [`NotSet`] if the code were too long, which none is.
    pub fn of(code: &Code) -> Result<Self, NotSet> {
        let symbol = QrCode::with_version(code.to_string(), Version::Normal(1), EcLevel::Q)
            .map_err(|error| NotSet::Refused(format!("The code {code} can’t be drawn: {error}.")))?;
        let side = symbol.width();
        Ok(Self { side, dark: symbol.into_colors().into_iter().map(|color| color == Color::Dark).collect() })
    }

    /// Modules along a side.
    pub fn side(&self) -> usize {
        self.side
    }

    /// Whether a module is dark, counted from the upper left; outside none is.
    pub fn is_dark(&self, x: usize, y: usize) -> bool {
        x < self.side && y < self.side && self.dark.get(y * self.side + x).is_some_and(|dark| *dark)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_core::label::JobStart;

    #[test]
    fn it_is_of_the_smallest_version_and_has_its_three_finder_patterns() {
        let code = Code::new(JobStart::of(u128::MAX), "main-shell.3.upper".parse().unwrap()).unwrap();
        let symbol = Symbol::of(&code).unwrap();
        assert_eq!(symbol.side(), 21);
        // ISO/IEC 18004, figure of the finder pattern: 1, 1, 3, 1, 1 modules along its middle, and a light separator.
        for (left, top) in [(0, 0), (14, 0), (0, 14)] {
            let middle: Vec<bool> = (0..7).map(|x| symbol.is_dark(left + x, top + 3)).collect();
            assert_eq!(middle, [true, false, true, true, true, false, true]);
        }
        assert!((0..8).all(|x| !symbol.is_dark(x, 7)));
        assert!(!symbol.is_dark(21, 0) && !symbol.is_dark(0, 21) && !symbol.is_dark(0, usize::MAX));
    }
}
