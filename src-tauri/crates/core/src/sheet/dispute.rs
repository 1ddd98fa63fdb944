//! Where published manuals disagree, and the engine's own manual is silent: the shop says which view it follows.

use serde::{Deserialize, Serialize};

/// A point on which published manuals disagree.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Dispute {
    /// Whether a tappet with a few pin-prick holes in its foot may go back.
    PittedTappets,
    /// Whether grinding one journal means grinding the other group of journals too.
    GroundJournals,
}

/// One view of a dispute.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct View {
    /// What is to be done, in words that stand after “here”: "any pit rejects the tappet".
    pub words: &'static str,
    /// Who says so.
    pub source: &'static str,
}

/// A dispute in words.
#[derive(Debug)]
pub struct DisputeRow {
    /// The question between the manuals.
    pub question: &'static str,
    /// The view that stands unless the shop chooses.
    pub usual: View,
    /// The other view.
    pub other: View,
}

impl Dispute {
    /// Every dispute.
    pub const ALL: [Self; 2] = [Self::PittedTappets, Self::GroundJournals];

    /// Both views. Of tappets the stricter one is usual; of journals the one that takes no metal off sound ones.
    pub fn row(self) -> &'static DisputeRow {
        match self {
            Self::PittedTappets => &DisputeRow {
                question: "May a tappet with a few pin-prick holes go back?",
                usual: View {
                    words: "any pit rejects the tappet",
                    source: "aircraft piston-engine overhaul manual, para 6-45; TM 9-4310-397-14",
                },
                other: View { words: "a slightly pitted foot may go back", source: "TM 10-3930-644-14&P" },
            },
            Self::GroundJournals => &DisputeRow {
                question: "When one journal is ground, which others are ground too?",
                usual: View {
                    words: "all of its own kind, main journals or crankpins",
                    source: "two manuals of other engines",
                },
                other: View { words: "all journals of the crankshaft", source: "TM 5-3805-262-34 p. 4-50" },
            },
        }
    }

    /// Both views in a sentence, the one that is followed first.
    pub fn sentence(self, other_is_followed: bool) -> String {
        let DisputeRow { usual, other, .. } = self.row();
        let (here, there) = if other_is_followed { (other, usual) } else { (usual, other) };
        format!(
            "Published manuals disagree. Followed here: {} ({}). The other view: {} ({}).",
            here.words, here.source, there.words, there.source
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_views_are_told_and_the_followed_one_first() {
        for dispute in Dispute::ALL {
            let DisputeRow { question, usual, other } = dispute.row();
            assert!(question.ends_with('?'));
            let (by_default, chosen) = (dispute.sentence(false), dispute.sentence(true));
            for view in [usual, other] {
                assert!(by_default.contains(view.words) && chosen.contains(view.source), "{by_default}");
            }
            assert!(by_default.find(usual.words) < by_default.find(other.words), "{by_default}");
            assert!(chosen.find(other.words) < chosen.find(usual.words), "{chosen}");
        }
    }
}
