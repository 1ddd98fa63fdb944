//! Where published manuals disagree, and the engine's own manual is silent: the shop says which view it follows.

use serde::{Deserialize, Serialize};

use crate::words::{Phrase, Terms};

/// A point on which published manuals disagree.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Dispute {
    /// Whether a tappet with a few pin-prick holes in its foot may go back.
    PittedTappets,
    /// Whether grinding one journal means grinding the other group of journals too.
    GroundJournals,
    /// Whether a rod whose big end has lost its size or form is resized or renewed.
    BigEnds,
    /// Whether a block whose deck is not flat is faced or renewed.
    Decks,
}

/// One view of a dispute.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct View {
    /// What is to be done, in words that stand after “here”: "any pit rejects the tappet".
    pub words: Phrase,
    /// Who says so.
    pub source: &'static str,
}

/// A dispute in words.
#[derive(Debug)]
pub struct DisputeRow {
    /// The question between the manuals.
    pub question: Phrase,
    /// The view that stands unless the shop chooses.
    pub usual: View,
    /// The other view.
    pub other: View,
}

impl Dispute {
    /// Every dispute.
    pub const ALL: [Self; 4] = [Self::PittedTappets, Self::GroundJournals, Self::BigEnds, Self::Decks];

    /// Both views. Of tappets the stricter one is usual; of journals the one that takes no metal off sound ones; of rods and
    /// decks what machine shops do.
    pub fn row(self) -> &'static DisputeRow {
        match self {
            Self::PittedTappets => &DisputeRow {
                question: Phrase("May a {tappet} with a few pin-prick holes go back?"),
                usual: View {
                    words: Phrase("any pit rejects the {tappet}"),
                    source: "aircraft piston-engine overhaul manual, para 6-45; TM 9-4310-397-14",
                },
                other: View { words: Phrase("a slightly pitted foot may go back"), source: "TM 10-3930-644-14&P" },
            },
            Self::GroundJournals => &DisputeRow {
                question: Phrase("When one journal is ground, which others are ground too?"),
                usual: View {
                    words: Phrase("all of its own kind, main journals or crankpins"),
                    source: "common practice",
                },
                other: View { words: Phrase("all journals of the crankshaft"), source: "TM 5-3805-262-34 p. 4-50" },
            },
            Self::BigEnds => &DisputeRow {
                question: Phrase("What becomes of a rod whose big end is out of size or round?"),
                usual: View { words: Phrase("the big end is resized"), source: "common practice" },
                other: View { words: Phrase("rod and cap are renewed"), source: "TM 9-2815-255-24" },
            },
            Self::Decks => &DisputeRow {
                question: Phrase("What becomes of a block whose deck is not flat?"),
                usual: View { words: Phrase("the deck is faced"), source: "common practice" },
                other: View { words: Phrase("the block is renewed"), source: "TM 55-1930-208-24 p. 4-74" },
            },
        }
    }

    /// Both views in a sentence in the shop's words, the one that is followed first.
    pub fn sentence(self, other_is_followed: bool, terms: Terms) -> String {
        let DisputeRow { usual, other, .. } = self.row();
        let (here, there) = if other_is_followed { (other, usual) } else { (usual, other) };
        format!(
            "Published manuals disagree. Followed here: {} ({}). The other view: {} ({}).",
            here.words.said(terms),
            here.source,
            there.words.said(terms),
            there.source
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_views_are_told_and_the_followed_one_first() {
        let terms = Terms::default();
        for dispute in Dispute::ALL {
            let DisputeRow { question, usual, other } = dispute.row();
            assert!(question.said(terms).ends_with('?'));
            let (by_default, chosen) = (dispute.sentence(false, terms), dispute.sentence(true, terms));
            for view in [usual, other] {
                assert!(by_default.contains(&*view.words.said(terms)) && chosen.contains(view.source), "{by_default}");
            }
            let [usual, other] = [usual, other].map(|view| view.words.said(terms));
            assert!(by_default.find(&*usual) < by_default.find(&*other), "{by_default}");
            assert!(chosen.find(&*other) < chosen.find(&*usual), "{chosen}");
        }
    }
}
