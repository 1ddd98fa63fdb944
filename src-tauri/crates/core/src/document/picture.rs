//! A photo in a paper.

use serde::Serialize;

use crate::job::{Markup, PhotoId, numbers};

/// A photo in a paper.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Picture {
    /// Which.
    pub photo: PhotoId,
    /// What it shows, in words, for those who can't see it.
    pub alt: String,
    /// What is drawn over it.
    pub markups: Vec<Markup>,
}

impl Picture {
    /// The notes on it, each under the number with which it is drawn.
    pub fn notes(&self) -> Vec<String> {
        let told = |(markup, number): (&Markup, Option<usize>)| Some(format!("{}\u{a0}{}", number?, markup.note()));
        self.markups.iter().zip(numbers(&self.markups)).filter_map(told).collect()
    }

    /// What is drawn over it, in words; empty if nothing is.
    pub fn drawn(&self) -> String {
        let unnoted = self.markups.iter().filter(|markup| markup.note().is_empty()).map(|markup| markup.words().into());
        self.notes().into_iter().chain(unnoted).collect::<Vec<String>>().join("; ")
    }
}
