//! Where something stands in a network.

/// The place of a state: a site's root, or a branch that hangs on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CauseSeat {
    /// The site, by its number.
    pub site: usize,
    /// The branch, by its number at the site; none for the root.
    pub branch: Option<usize>,
}

/// Some pieces of evidence at a site: observations that are left out together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PiecesAt {
    /// The site, by its number.
    pub site: usize,
    /// The pieces, as [`super::Observation::piece`] has them.
    pub pieces: Vec<usize>,
}
