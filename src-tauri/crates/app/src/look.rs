//! How the page looks to the person at the bench.

use serde::{Deserialize, Serialize};

/// How light or dark the page is.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Look {
    /// As the device says.
    #[default]
    Device,
    /// Dark ink on light paper.
    Light,
    /// Light ink on dark paper.
    Dark,
}

impl Look {
    /// Its written form.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Device => "device",
            Self::Light => "light",
            Self::Dark => "dark",
        }
    }

    /// The one of this written form; as the device says if there is none.
    pub(crate) fn named(name: &str) -> Self {
        [Self::Light, Self::Dark].into_iter().find(|look| look.name() == name).unwrap_or_default()
    }
}

/// How large the page's text is, in per cent of what the device asks for: from 100 to 200.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(transparent)]
pub struct TextSize(pub u16);

impl Default for TextSize {
    fn default() -> Self {
        Self(100)
    }
}

impl TextSize {
    /// The size of this written form; the device's own if it is none.
    pub(crate) fn written(text: &str) -> Self {
        text.parse().map(Self).ok().filter(|size| size.is_possible()).unwrap_or_default()
    }

    /// Whether text of this size can be read and leaves room for the rest.
    pub(crate) fn is_possible(self) -> bool {
        (100..=200).contains(&self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_never_set_or_is_not_known_is_as_the_device_says() {
        assert_eq!((Look::named(""), TextSize::written("")), (Look::Device, TextSize(100)));
        assert_eq!((Look::named("sepia"), TextSize::written("900")), (Look::Device, TextSize(100)));
        assert_eq!((Look::named("dark"), TextSize::written("150")), (Look::Dark, TextSize(150)));
    }
}
