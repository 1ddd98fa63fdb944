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
    // Of what lies outside the judged parts.
    Milky,
    FuelSmell,
    Thickened,
    LowLevel,
    HighLevel,
    SoftFlakes,
    AluminiumFlakes,
    SteelFlakes,
    SteelSplinters,
    FinePaste,
    Grit,
    ByPassed,
    Plugged,
    Torn,
    Missing,
    Leak,
    OilFilm,
    Fumes,
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
    pub const ALL: [Self; 40] = {
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
            Milky,
            FuelSmell,
            Thickened,
            LowLevel,
            HighLevel,
            SoftFlakes,
            AluminiumFlakes,
            SteelFlakes,
            SteelSplinters,
            FinePaste,
            Grit,
            ByPassed,
            Plugged,
            Torn,
            Missing,
            Leak,
            OilFilm,
            Fumes,
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
                meaning: "Discoloured by heat, which does not wipe off: the part ran too hot here.",
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
            // Water first, then milky: Army subcourse OD 1001, lesson 4; cloudy: Navy Engineman 3, testing lubricating oil.
            Self::Milky => &TagRow {
                id: "milky",
                name: "milky",
                meaning: "Water or coolant has got into the oil.",
                grades: [
                    "A trace of cream in a cold spot.",
                    "Cloudy, or a layer of cream.",
                    "Milky throughout, or thick cream.",
                    "Thick emulsion, or plain water comes first.",
                ],
            },
            // Thin and smelling of fuel: common practice.
            Self::FuelSmell => &TagRow {
                id: "fuel-smell",
                name: "thinned by fuel",
                meaning: "Fuel has got into the oil and thins it.",
                grades: [
                    "A whiff of fuel.",
                    "Smells of fuel and feels thin.",
                    "Smells strongly and runs like water.",
                    "More fuel than oil, and the level has risen.",
                ],
            },
            // Dark oil alone is no definite sign: Navy Engineman 3, testing lubricating oil.
            Self::Thickened => &TagRow {
                id: "thickened",
                name: "black and thick",
                meaning: "The oil is worn out: too old, too hot or full of soot.",
                grades: [
                    "Dark, but runs freely.",
                    "Black, and slow to run.",
                    "Thick, with lumps.",
                    "Like tar: it hardly runs out.",
                ],
            },
            Self::LowLevel => &TagRow {
                id: "low-level",
                name: "low level",
                meaning: "There was too little in it.",
                grades: [
                    "Just below the low mark.",
                    "Well below the low mark.",
                    "About half of it is missing.",
                    "Hardly any left.",
                ],
            },
            // Too high: most likely water, Army subcourse OD 1001, lesson 4.
            Self::HighLevel => &TagRow {
                id: "high-level",
                name: "level too high",
                meaning: "There was too much in it: overfilled, or something has run in.",
                grades: [
                    "Just above the high mark.",
                    "Well above the high mark.",
                    "About half as much again.",
                    "Full to where the shaft turns, or beyond.",
                ],
            },
            // Shells and bushes: common practice.
            Self::SoftFlakes => &TagRow {
                id: "soft-flakes",
                name: "soft metal flakes",
                meaning: "Grey or copper-coloured bearing metal, which no magnet picks up.",
                grades: [
                    "A few fine glints, seen in the light.",
                    "Glints all over.",
                    "Flakes that can be picked up.",
                    "A layer of metal.",
                ],
            },
            // Of a piston, five as the bound: TM 1-1500-204-23-1, para f (aircraft).
            Self::AluminiumFlakes => &TagRow {
                id: "aluminium-flakes",
                name: "aluminium flakes",
                meaning: "Light, white metal that no magnet picks up: mostly of a piston.",
                grades: ["One or two.", "Up to five.", "More than five.", "A layer of metal."],
            },
            // Up to twenty, without others, are often foreign matter: TM 1-1500-204-23-1, para f (aircraft).
            Self::SteelFlakes => &TagRow {
                id: "steel-flakes",
                name: "thin steel flakes",
                meaning: "Thin flakes that a magnet picks up.",
                grades: ["A few.", "Up to twenty.", "More than twenty.", "Too many to count."],
            },
            // Grains or splinters above a trace are a failure under way: TM 1-1500-204-23-1, para f (aircraft).
            Self::SteelSplinters => &TagRow {
                id: "steel-splinters",
                name: "steel splinters",
                meaning: "Grains or splinters that a magnet picks up: a hard part is breaking up.",
                grades: ["A trace.", "Several.", "Many, or large ones.", "Pieces that can be told to be of a part."],
            },
            // Common practice.
            Self::FinePaste => &TagRow {
                id: "fine-paste",
                name: "fine paste",
                meaning: "Fine iron dust on the magnet; a little is ordinary.",
                grades: ["A thin grey film.", "A soft cap.", "A thick cap.", "All that the magnet holds."],
            },
            Self::Grit => &TagRow {
                id: "grit",
                name: "grit or dust",
                meaning: "Sand, dust or other dirt where it should be clean.",
                grades: [
                    "A trace, felt between the fingers.",
                    "A thin layer, or grains here and there.",
                    "Grains all over.",
                    "A thick layer.",
                ],
            },
            // What is looked at when a shell failed: TM 5-3810-300-24&P-3, 1.3.4.
            Self::ByPassed => &TagRow {
                id: "by-passed",
                name: "by-passed or collapsed",
                meaning: "Oil has gone past the filter element instead of through it.",
                grades: [
                    "Dirt on the seat of the by-pass valve.",
                    "Folds lie flat, or the valve does not close.",
                    "The element is caved in, or the valve sticks open.",
                    "The element is burst, or the valve is broken.",
                ],
            },
            Self::Plugged => &TagRow {
                id: "plugged",
                name: "plugged",
                meaning: "Dirt has closed the way through.",
                grades: ["Dirty, but mostly open.", "About half closed.", "Nearly closed.", "Closed."],
            },
            Self::Torn => &TagRow {
                id: "torn",
                name: "torn or leaking",
                meaning: "It lets by what it should keep out.",
                grades: [
                    "A hard seal or a loose clamp, no gap seen.",
                    "A pinhole or a narrow gap.",
                    "A tear or gap that a fingernail enters.",
                    "Open: split, or off its seat.",
                ],
            },
            Self::Missing => &TagRow {
                id: "missing",
                name: "missing or wrong",
                meaning: "Something is not there, or is not the one that belongs there.",
                grades: [
                    "A wrong one that seems to fit.",
                    "A wrong one that does not fit.",
                    "Missing, the opening stopped up with something else.",
                    "Missing, the opening bare.",
                ],
            },
            // The most common cause of oil used: TM 5-4210-230-14&P-1, chart 16.
            Self::Leak => &TagRow {
                id: "leak",
                name: "leaking",
                meaning: "It has leaked out here.",
                grades: ["Damp; dust sticks to it.", "Wet, without drops.", "Drops hang from it.", "It has run down."],
            },
            // By the cooler while it runs: TM 9-2320-272-24-2, table 4-1.
            Self::OilFilm => &TagRow {
                id: "oil-film",
                name: "oil in the coolant",
                meaning: "Engine oil has got into the coolant.",
                grades: [
                    "A film with colours.",
                    "Drops of oil on top.",
                    "A layer of oil or brown cream.",
                    "Brown cream throughout.",
                ],
            },
            // Rings stuck: NAVEDTRA 14075, figure 3-18.
            Self::Fumes => &TagRow {
                id: "fumes",
                name: "fumes",
                meaning: "Gas from the cylinders blows past the rings and out here.",
                grades: ["A wisp, seen when it ran.", "A steady puff.", "Blows hard.", "Blows oil out with it."],
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
