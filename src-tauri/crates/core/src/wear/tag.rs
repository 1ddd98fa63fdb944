//! The tags and their table: what each means in a customer's words, and what its four grades look like.

use serde::{Deserialize, Serialize};

use super::Grade;
use crate::words::capitalised;

/// A kind of wear or damage.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
#[allow(missing_docs, reason = "the names are the trade's own; the table describes each")]
pub enum Tag {
    Scoring,
    EmbeddedDebris,
    Pitting,
    HotSpot,
    CopperShowing,
    Wiping,
    FatigueCracks,
    LiningLoss,
    Corrosion,
    BrightBack,
    Rust,
    Scuffing,
    Spalling,
    DishedFace,
    StuckPlunger,
    WornNose,
    Bent,
    Seizure,
    Cracks,
    Deposits,
    HandlingDamage,
    LooksEven,
}

/// What a tag means.
#[derive(Debug)]
pub struct TagRow {
    /// The written form.
    pub id: &'static str,
    /// The name, lower case.
    pub name: &'static str,
    /// One line a customer understands.
    pub meaning: &'static str,
    /// The sentence of each grade, 1 to 4.
    pub grades: [&'static str; 4],
}

impl Tag {
    /// Every tag, in the order of the table.
    pub const ALL: [Self; 22] = {
        use Tag::*;
        [
            Scoring,
            EmbeddedDebris,
            Pitting,
            HotSpot,
            CopperShowing,
            Wiping,
            FatigueCracks,
            LiningLoss,
            Corrosion,
            BrightBack,
            Rust,
            Scuffing,
            Spalling,
            DishedFace,
            StuckPlunger,
            WornNose,
            Bent,
            Seizure,
            Cracks,
            Deposits,
            HandlingDamage,
            LooksEven,
        ]
    };

    /// Whether it reports damage; *looks even* reports ordinary use.
    pub fn is_damage(self) -> bool {
        self != Self::LooksEven
    }

    /// The sentence of one of its grades.
    pub fn sentence(self, grade: Grade) -> &'static str {
        let index = usize::from(grade.number()) - 1;
        self.row().grades.get(index).copied().unwrap_or("")
    }

    /// A finding in a sentence: "Scuffing, grade 3: Torn streaks that catch a fingernail."
    pub fn told(self, grade: Grade) -> String {
        format!("{}, grade {}: {}", capitalised(self.row().name), grade.number(), self.sentence(grade))
    }

    /// Its row of the table.
    pub fn row(self) -> &'static TagRow {
        match self {
            Self::Scoring => &TagRow {
                id: "scoring",
                name: "scoring",
                meaning: "Scratches in the direction of movement, cut by hard particles.",
                grades: [
                    "Lines can be seen but not felt.",
                    "A fingernail feels the lines.",
                    "A fingernail catches in the lines.",
                    "Deep grooves; metal is gone or pushed up.",
                ],
            },
            Self::EmbeddedDebris => &TagRow {
                id: "embedded-debris",
                name: "embedded debris",
                meaning: "Hard particles pressed into the soft bearing metal.",
                grades: [
                    "A few fine specks.",
                    "Specks all over one field, many with a bright ring.",
                    "Particles that can be felt, over several fields.",
                    "The surface is peppered; particles stand proud.",
                ],
            },
            Self::Pitting => &TagRow {
                id: "pitting",
                name: "pitting",
                meaning: "Small holes with sharp edges where metal has broken out or been eaten away.",
                grades: [
                    "A few pin-prick holes.",
                    "Scattered holes, felt as roughness.",
                    "Many holes that catch a fingernail.",
                    "Holes run together; metal is missing.",
                ],
            },
            Self::HotSpot => &TagRow {
                id: "hot-spot",
                name: "hot spot",
                meaning: "Discoloured by heat: the part ran too hot here.",
                grades: [
                    "A faint straw tint.",
                    "A clear brown patch.",
                    "A blue or dark patch.",
                    "Black, or the metal has softened or flowed.",
                ],
            },
            Self::CopperShowing => &TagRow {
                id: "copper-showing",
                name: "copper showing",
                meaning: "The running layer is worn away and the copper layer below shows.",
                grades: [
                    "A warm shine through the grey.",
                    "A patch smaller than a thumbnail.",
                    "A broad band of copper.",
                    "Copper over most of the loaded face, or steel showing.",
                ],
            },
            Self::Wiping => &TagRow {
                id: "wiping",
                name: "wiping",
                meaning: "Bearing metal has been smeared along by the shaft.",
                grades: [
                    "Slight smearing at one place.",
                    "A smeared field with a felt edge.",
                    "Metal pushed into the groove or over the edge.",
                    "Metal has flowed over most of the face.",
                ],
            },
            Self::FatigueCracks => &TagRow {
                id: "fatigue-cracks",
                name: "fatigue cracks",
                meaning: "A net of fine cracks from too much load, too often.",
                grades: [
                    "A few hairlines.",
                    "A net of hairlines in one field.",
                    "A net over several fields, pieces loose.",
                    "Pieces have fallen out.",
                ],
            },
            Self::LiningLoss => &TagRow {
                id: "lining-loss",
                name: "lining loss",
                meaning: "Pieces of the bearing metal are missing from the steel back.",
                grades: [
                    "A missing flake at an edge.",
                    "Missing pieces smaller than a fingertip.",
                    "A field is bare.",
                    "Most of the loaded face is bare.",
                ],
            },
            Self::Corrosion => &TagRow {
                id: "corrosion",
                name: "corrosion",
                meaning: "The surface has been eaten by acid, water or coolant.",
                grades: [
                    "Dull stain, surface still smooth.",
                    "Etched and matt, slightly rough.",
                    "Rough, with pits; layer partly gone.",
                    "Deeply eaten; layer gone over whole fields.",
                ],
            },
            Self::BrightBack => &TagRow {
                id: "bright-back",
                name: "bright back",
                meaning: "Polished or rusty spots on the outside: the part has been moving in its seat.",
                grades: [
                    "One small shiny spot.",
                    "Several shiny spots.",
                    "Broad polished areas or red-brown dust.",
                    "Metal picked up or torn; the part has turned.",
                ],
            },
            Self::Rust => &TagRow {
                id: "rust",
                name: "rust and scale",
                meaning: "Rust from water or long standing.",
                grades: [
                    "Light film that wipes off.",
                    "Stain that needs polishing off.",
                    "Rust with pits that a fingernail catches.",
                    "Scale; metal is missing.",
                ],
            },
            Self::Scuffing => &TagRow {
                id: "scuffing",
                name: "scuffing",
                meaning: "Surfaces have rubbed dry and torn each other.",
                grades: [
                    "Polished, dull streaks.",
                    "Roughened streaks that can be felt.",
                    "Torn streaks that catch a fingernail.",
                    "Metal has been dragged and built up.",
                ],
            },
            Self::Spalling => &TagRow {
                id: "spalling",
                name: "spalling",
                meaning: "Flakes have broken out of a hardened surface.",
                grades: [
                    "One or two pin-head craters.",
                    "Several craters.",
                    "Flakes the size of a fingernail clipping.",
                    "The hardened face is broken up.",
                ],
            },
            Self::DishedFace => &TagRow {
                id: "dished-face",
                name: "dished face",
                meaning: "The foot is worn hollow: it has stopped turning or lost its crown.",
                grades: [
                    "Flat where it should be slightly crowned.",
                    "A straight-edge shows light at the edges.",
                    "Hollow that can be felt.",
                    "Deeply hollow with a raised rim.",
                ],
            },
            Self::StuckPlunger => &TagRow {
                id: "stuck-plunger",
                name: "stuck plunger",
                meaning: "The hydraulic plunger does not move freely.",
                grades: [
                    "Stiff, frees after washing.",
                    "Sticks at one place.",
                    "Moves only under a press.",
                    "Seized or rusted fast.",
                ],
            },
            Self::WornNose => &TagRow {
                id: "worn-nose",
                name: "worn lobe",
                meaning: "The tip of the cam is worn down, so the valve no longer opens fully.",
                grades: [
                    "Track widened, no step felt.",
                    "A slight step at the edge of the track.",
                    "Nose visibly flatter than its neighbours.",
                    "Nose rounded off; lobe nearly round.",
                ],
            },
            Self::Bent => &TagRow {
                id: "bent",
                name: "bent or stretched",
                meaning: "The part is no longer straight, or longer than it was made.",
                grades: [
                    "Suspected: roll it on a flat plate, or measure it.",
                    "Wobbles when rolled, or a gauge shows it.",
                    "The eye sees a bend or a waist.",
                    "Folded, necked down or broken.",
                ],
            },
            Self::Seizure => &TagRow {
                id: "seizure",
                name: "seizure marks",
                meaning: "Surfaces have welded together for a moment and torn apart.",
                grades: [
                    "A small smear of foreign metal.",
                    "A streak of picked-up metal.",
                    "Several torn and smeared streaks.",
                    "The part has seized.",
                ],
            },
            Self::Cracks => &TagRow {
                id: "cracks",
                name: "crack",
                meaning: "A crack in the body of the part.",
                grades: [
                    "A suspected hairline: test it.",
                    "A hairline shown by a crack test.",
                    "A crack seen with the naked eye.",
                    "Broken through or a piece missing.",
                ],
            },
            Self::Deposits => &TagRow {
                id: "deposits",
                name: "sludge or varnish",
                meaning: "Dirt, sludge, carbon or varnish has built up.",
                grades: [
                    "A thin film.",
                    "A layer that scrapes off.",
                    "A thick layer, passages narrowed.",
                    "Passages blocked or rings stuck fast.",
                ],
            },
            Self::HandlingDamage => &TagRow {
                id: "handling-damage",
                name: "handling damage",
                meaning: "A knock, file mark or scratch from handling, not from running.",
                grades: [
                    "A mark off the working surface.",
                    "A small mark on the working surface.",
                    "A raised burr on the working surface.",
                    "Bent or broken by handling.",
                ],
            },
            Self::LooksEven => &TagRow {
                id: "looks-even",
                name: "even wear",
                meaning: "An even working pattern: ordinary wear.",
                grades: [
                    "Hardly a pattern: nearly new.",
                    "Even grey pattern over about two thirds.",
                    "Even pattern, running layer getting thin.",
                    "Even pattern, worn through to the next layer.",
                ],
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::PartKind;

    #[test]
    fn written_form_and_json_form_agree() {
        for tag in Tag::ALL {
            assert_eq!(serde_json::to_value(tag).unwrap(), tag.row().id);
        }
    }

    #[test]
    fn every_tag_serves_some_part_and_every_part_has_distinct_tags() {
        for tag in Tag::ALL {
            assert!(PartKind::ALL.iter().any(|kind| kind.row().tags.contains(&tag)), "{tag:?} fits no part");
        }
        for kind in PartKind::ALL {
            let mut tags = kind.row().tags.to_vec();
            tags.sort_unstable();
            tags.dedup();
            assert_eq!(tags.len(), kind.row().tags.len(), "{kind:?} lists a tag twice");
        }
    }

    #[test]
    fn grades_are_sentences_that_differ() {
        for tag in Tag::ALL {
            let grades = tag.row().grades;
            for (n, sentence) in grades.iter().enumerate() {
                assert!(sentence.ends_with('.'), "{tag:?} grade {}", n + 1);
                assert_eq!(grades.iter().filter(|other| *other == sentence).count(), 1, "{tag:?} repeats a grade");
            }
        }
    }
}
