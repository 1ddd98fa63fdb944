//! Labels for the bags and tags of what comes off: the position in words, whose engine it is, and the code that leads back.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

use super::desk::Desk;
use super::head::{paper, typed};
use crate::assess::Assessment;
use crate::date::Date;
use crate::engine::{At, Engine, Half, Part, PartKind};
use crate::job::{ListKind, TextField};
use crate::label::{Code, JobStart, Piece};
use crate::view::Seen;

/// What labels are printed on.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum LabelStock {
    /// Sheets of paper, to be cut up.
    #[default]
    Sheet,
    /// A roll 62 mm wide, 29 mm for each.
    Roll,
}

/// Labels for pieces of a job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Labels {
    /// The title, for the file's properties.
    pub title: String,
    /// The machine and the engine.
    pub subtitle: String,
    /// The day on which they are printed, where the shop is.
    pub date: Date,
    /// In the order in which the pieces come out of the engine; none before its arrangement is known, and where none is wanted.
    pub labels: Vec<Label>,
}

/// What stands on a label.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Label {
    /// The piece, as a mechanic calls it: "Main 3, upper shell".
    pub piece: String,
    /// Customer and machine, each a line; may be empty.
    pub job: Vec<String>,
    /// Where it leads.
    pub code: Code,
}

/// Of which pieces labels are wanted.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Pieces {
    /// Of all that come off.
    #[default]
    All,
    /// Of those on which the machine shop still has to work.
    MachineShop,
    /// Of those that nobody has looked at yet.
    NotLookedAt,
    /// Of one: this part, or the piece that it stays on.
    Of(Part),
}

impl Pieces {
    /// Why there are none, of an engine of which it is known how it is laid out.
    pub fn none(self) -> &'static str {
        match self {
            Self::All => "Nothing of this engine gets a label.",
            Self::MachineShop => "Nothing goes to the machine shop.",
            Self::NotLookedAt => "Every piece has been looked at.",
            Self::Of(_) => "This engine has no such piece, or it gets no label.",
        }
    }
}

/// A field of a sheet of labels, from left to right and from top to bottom: the first that is still free.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(type = "number"))]
#[serde(try_from = "u8", into = "u8")]
pub struct SheetField(u8);

impl SheetField {
    /// Three beside each other, eight below each other.
    pub const ON_A_SHEET: u8 = 24;

    /// Fields before it, which are used up.
    pub fn used(self) -> u8 {
        self.0.saturating_sub(1)
    }
}

/// A whole sheet.
impl Default for SheetField {
    fn default() -> Self {
        Self(1)
    }
}

impl TryFrom<u8> for SheetField {
    type Error = String;

    fn try_from(number: u8) -> Result<Self, String> {
        if (1..=Self::ON_A_SHEET).contains(&number) {
            return Ok(Self(number));
        }
        Err(format!("Field {number}: the fields of a sheet go from 1 to {}.", Self::ON_A_SHEET))
    }
}

impl From<SheetField> for u8 {
    fn from(field: SheetField) -> Self {
        field.0
    }
}

/// Writes a label for each of these pieces of a job whose name begins so.
pub fn labels(desk: &Desk<'_>, job: JobStart, pieces: Pieces) -> Labels {
    let lines = [TextField::Customer, TextField::Machine].into_iter().filter_map(|field| typed(desk.job, field));
    let lines: Vec<String> = lines.collect();
    let arrangement = desk.job.arrangement.clone();
    let engine = arrangement.and_then(|arrangement| Engine::speaking(arrangement, desk.job.terms).ok());
    let of = |engine: &Engine| {
        let wanted = wanted(desk.assessment, engine, pieces);
        let parts = engine.outside().iter().chain(engine.parts()).flat_map(|part| coming_off(*part));
        let own = parts.filter_map(|part| Piece::of(part, engine).filter(|piece| piece.part == part));
        let label =
            |piece: Piece| Some(Label { code: Code::new(job, piece.part)?, piece: piece.name, job: lines.clone() });
        own.filter(|piece| wanted.as_ref().is_none_or(|wanted| wanted.contains(&piece.part)))
            .filter_map(label)
            .collect()
    };
    let head = paper(desk, "Labels", vec![]);
    let labels = engine.as_ref().map(of).unwrap_or_default();
    Labels { title: head.title, subtitle: head.subtitle, date: head.date, labels }
}

/// The parts to whose labels the wish comes down; none for all of them.
fn wanted(assessment: &Assessment, engine: &Engine, pieces: Pieces) -> Option<BTreeSet<Part>> {
    let pieces_of = |parts: &[Part]| parts.iter().filter_map(|part| Some(Piece::of(*part, engine)?.part)).collect();
    match pieces {
        Pieces::All => None,
        Pieces::Of(part) => Some(pieces_of(&[part])),
        Pieces::MachineShop => {
            let items = assessment.list(ListKind::MachineShop).into_iter().flat_map(|list| &list.items);
            let parts: Vec<Part> = items.filter(|item| !item.is_done()).flat_map(|item| item.parts.clone()).collect();
            Some(pieces_of(&parts))
        }
        Pieces::NotLookedAt => {
            let parts = assessment.parts.iter().map(|view| (view.part, view.seen));
            let all = assessment.outside.iter().map(|view| (view.part, view.seen)).chain(parts);
            Some(all.filter(|(_, seen)| *seen == Seen::NotLooked).map(|(part, _)| part).collect())
        }
    }
}

/// What comes off at the turn of a part: with the lower shell of a main its cap, which is called by its bore.
fn coming_off(part: Part) -> Vec<Part> {
    match (part.kind, part.at) {
        (PartKind::MainShell, At::MainHalf(n, Half::Lower)) => {
            vec![Part { kind: PartKind::HousingBore, at: At::Main(n) }, part]
        }
        (PartKind::HousingBore, _) => vec![],
        _ => vec![part],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::{Arrangement, Construction, Cylinders, ThrustBearing, every_arrangement};
    use crate::job::{Job, PartRecord, TagRecord};
    use crate::wear::{Grade, Tag};
    use serde_json::{Value, json};

    fn printed(arrangement: Arrangement) -> Vec<Label> {
        let texts = [(TextField::Customer, "A. Customer ".to_owned()), (TextField::Machine, "Winch".to_owned())];
        let job = Job { arrangement: Some(arrangement), texts: texts.into(), ..Job::default() };
        let assessment = assess(&Job::default());
        labels(&Desk::bare(&job, &assessment), JobStart::of(7 << 90), Pieces::All).labels
    }

    /// Of a four whose crankpin 2 is scored deeply and whose other parts but three were looked at.
    #[track_caller]
    fn chosen(pieces: Value, told: &[&str]) {
        let arrangement = Arrangement::inline(4);
        let open = ["crankshaft", "piston.2", "main-shell.3.upper"];
        let parts = Engine::new(arrangement.clone()).unwrap();
        let all = parts.parts().iter().chain(parts.outside()).filter(|part| !open.contains(&part.to_string().as_str()));
        let record = |part: &Part| {
            let scored = TagRecord { grade: Grade::THREE, zones: [].into() };
            let is_scored = part.to_string() == "crankpin.2";
            let tags = is_scored.then_some((Tag::Scoring, scored)).into_iter().collect();
            (*part, PartRecord { clean: !is_scored, tags, ..PartRecord::default() })
        };
        let job = Job { arrangement: Some(arrangement), parts: all.map(record).collect(), ..Job::default() };
        let pieces: Pieces = serde_json::from_value(pieces).unwrap();
        let labels = labels(&Desk::bare(&job, &assess(&job)), JobStart::of(0), pieces).labels;
        assert_eq!(labels.iter().map(|label| label.piece.as_str()).collect::<Vec<_>>(), told, "{pieces:?}");
    }

    #[test]
    fn a_chosen_few_are_printed_and_one_alone() {
        chosen(json!({ "of": "main-shell.3.upper" }), &["Main 3, upper shell"]);
        chosen(json!({ "of": "housing-bore.3" }), &["Main 3, cap"]);
        // A journal has no bag: its shaft has the label.
        chosen(json!({ "of": "main-journal.3" }), &["Crankshaft"]);
        chosen(json!({ "of": "core-plugs" }), &[]);
        chosen(json!({ "of": "piston.9" }), &[]);
        chosen(json!("not-looked-at"), &["Piston 2", "Crankshaft", "Main 3, upper shell"]);
        chosen(json!("machine-shop"), &["Crankshaft"]);
    }

    #[test]
    fn a_sheet_is_begun_at_one_of_its_fields() {
        assert_eq!((SheetField::default().used(), SheetField::try_from(7).unwrap().used()), (0, 6));
        for wrong in [0, 25] {
            assert!(serde_json::from_value::<SheetField>(json!(wrong)).is_err());
        }
    }

    fn pieces(arrangement: Arrangement) -> Vec<String> {
        printed(arrangement).into_iter().map(|label| label.piece).collect()
    }

    #[test]
    fn each_piece_gets_one_in_the_order_of_stripping() {
        let pieces = pieces(Arrangement::inline(2));
        let told = [
            "Oil filter",
            "Air cleaner and duct",
            "Breather",
            "Sump",
            "Head bolt set",
            "Pushrod 1, intake",
            "Pushrod 1, exhaust",
            "Pushrod 2, intake",
            "Pushrod 2, exhaust",
            "Oil pump",
            "Oil pick-up",
            "Timing drive",
            "Pump or distributor drive",
            "Rod 1, lower shell",
            "Rod 1, upper shell",
            "Rod 1",
            "Piston 1",
            "Rings 1",
            "Rod 2, lower shell",
            "Rod 2, upper shell",
            "Rod 2",
            "Piston 2",
            "Rings 2",
            "Rod bolt set",
            "Main cap bolt set",
            "Main 1, cap",
            "Main 1, lower shell",
            "Main 2, cap",
            "Main 2, lower shell",
            "Main 3, cap",
            "Main 3, lower shell",
            "Crankshaft",
            "Main 1, upper shell",
            "Main 2, upper shell",
            "Main 3, upper shell",
            "Thrust face, front side of main 2",
            "Thrust face, rear side of main 2",
            "Tappet 1, intake",
            "Tappet 1, exhaust",
            "Tappet 2, intake",
            "Tappet 2, exhaust",
            "Camshaft",
            "Cylinder block",
        ];
        assert_eq!(pieces, told);
    }

    #[test]
    fn what_is_a_piece_follows_from_how_the_engine_is_made() {
        let made = |construction| pieces(Arrangement { construction, ..Arrangement::inline(1) });
        let flanged = made(Construction { thrust: Some(ThrustBearing::Flange), ..Construction::default() });
        assert!(!flanged.iter().any(|piece| piece.starts_with("Thrust")), "{flanged:?}");
        let barrels = made(Construction { cylinders: Some(Cylinders::Barrels), ..Construction::default() });
        assert!(barrels.contains(&"Cylinder barrel 1".to_owned()), "{barrels:?}");
    }

    #[test]
    fn no_two_labels_of_an_engine_say_the_same() {
        for arrangement in every_arrangement() {
            let labels = printed(arrangement);
            let pieces: BTreeSet<&str> = labels.iter().map(|label| label.piece.as_str()).collect();
            let codes: BTreeSet<String> = labels.iter().map(|label| label.code.to_string()).collect();
            assert!(pieces.len() == labels.len() && codes.len() == labels.len(), "{pieces:?}");
        }
    }

    #[test]
    fn whose_it_is_stands_on_each() {
        for label in printed(Arrangement::vee(8)) {
            assert_eq!(label.job, ["A. Customer", "Winch"]);
        }
    }

    #[test]
    fn without_an_arrangement_there_are_none() {
        let (job, assessment) = (Job::default(), assess(&Job::default()));
        assert!(labels(&Desk::bare(&job, &assessment), JobStart::of(0), Pieces::All).labels.is_empty());
    }
}
