//! Where more than one way serves to put a kind of part right: what a person may choose among.

use super::PartKind;
use crate::work::Work;

impl PartKind {
    /// The ways among which a person may choose; none for most.
    pub fn ways(self) -> &'static [Work] {
        match self {
            Self::Bore => &[Work::Machine, Work::Sleeve, Work::Replace],
            Self::TappetBore => &[Work::Machine, Work::Bush],
            Self::Camshaft => &[Work::Replace, Work::WeldUp],
            _ => &[],
        }
    }

    /// A way of putting it right in words, lower case: "a new camshaft".
    pub fn way_words(self, way: Work) -> &'static str {
        match (self, way) {
            (Self::Bore, Work::Machine) => "bore all to the next size, with new pistons",
            (Self::Bore, Work::Sleeve) => "sleeve those that need it, and keep the pistons that are sound",
            (Self::Bore, Work::Replace) => "a new block, with new pistons",
            (Self::TappetBore, Work::Machine) => "ream those that need it to the next oversize",
            (Self::TappetBore, Work::Bush) => "bush those that need it, back to standard",
            (Self::Camshaft, Work::Replace) => "a new camshaft",
            (Self::Camshaft, Work::WeldUp) => "weld up and regrind the old one",
            _ => way.words(),
        }
    }

    /// What speaks against a way, whatever it costs, in a sentence (common practice); may be empty.
    pub fn drawback(self, way: Work) -> &'static str {
        match (self, way) {
            (Self::Bore, Work::Machine) => "It takes metal that the next overhaul would need.",
            (Self::Bore, Work::Sleeve) => "One wall is then new and the others are not.",
            (Self::TappetBore, Work::Machine) => "It needs followers of that size from then on.",
            (Self::TappetBore, Work::Bush) => "A bush can work loose if it is fitted badly.",
            (Self::Camshaft, Work::WeldUp) => "A welded face may wear sooner than a new one.",
            _ => "",
        }
    }
}
