//! The trade's tables, so that no trade word is written twice.

use std::collections::BTreeMap;

use serde::Serialize;
use wearbook_core::cause::Strength;
use wearbook_core::decide::rules;
use wearbook_core::document::CAUTIONS;
use wearbook_core::engine::{Arrangement, PartKind};
use wearbook_core::job::{HistoryFact, TextField};
use wearbook_core::measure::{Has, InstrumentKind, Phase, Quantity, Sense, Spot};
use wearbook_core::work::{Outcome, Work};
use wearbook_core::sheet::{Dispute, SizeGroup, View};
use wearbook_core::wear::{Tag, Zone, ZoneMap};

use crate::{Error, Wearbook};

/// Nothing to be told.
pub type Arguments = super::Nothing;
/// The tables.
pub type Reply = Catalogue;

/// Answers the tables. They never change while the program runs.
///
/// # Errors
/// None that can happen.
pub fn act(_: &Wearbook, _: Arguments) -> Result<Reply, Error> {
    Ok(Catalogue {
        kinds: PartKind::ALL.into_iter().map(kind).collect(),
        tags: Tag::ALL.into_iter().map(tag).collect(),
        zone_maps: zone_maps()?,
        outcomes: Outcome::ALL.into_iter().map(|id| OutcomeEntry { id, words: id.words() }).collect(),
        text_fields: TextField::ALL.into_iter().map(|id| TextFieldEntry { id, label: id.label() }).collect(),
        history_facts: HistoryFact::ALL
            .into_iter()
            .map(|id| HistoryFactEntry { id, question: id.question() })
            .collect(),
        arrangements: vec![
            StartingPoint { name: "In-line", arrangement: Arrangement::inline(4) },
            StartingPoint { name: "V", arrangement: Arrangement::vee(8) },
            StartingPoint { name: "Flat", arrangement: Arrangement::flat(4) },
        ],
        instrument_kinds: InstrumentKind::ALL.into_iter().map(instrument_kind).collect(),
        phases: Phase::ALL.into_iter().map(|id| PhaseEntry { id, label: id.label() }).collect(),
        size_groups: SizeGroup::ALL
            .into_iter()
            .map(|id| SizeGroupEntry { id, label: id.label(), kind: id.kind() })
            .collect(),
        works: Work::ALL.into_iter().map(|id| WorkEntry { id, words: id.words() }).collect(),
        rules: rules::ALL
            .iter()
            .map(|rule| RuleEntry { id: rule.id.as_str(), why: rule.why, source: rule.source })
            .collect(),
        disputes: Dispute::ALL.into_iter().map(dispute).collect(),
        strengths: Strength::ALL
            .into_iter()
            .map(|id| StrengthEntry { id, above: id.above(), words: id.words() })
            .collect(),
        cautions: CAUTIONS.iter().map(|caution| caution.text).collect(),
    })
}

/// The trade's tables.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Catalogue {
    /// Kinds of part.
    pub kinds: Vec<KindEntry>,
    /// Kinds of wear.
    pub tags: Vec<TagEntry>,
    /// The zones of each drawing, in the order of the drawing.
    #[cfg_attr(feature = "schema", ts(type = "Record<ZoneMap, Array<ZoneEntry>>"))]
    pub zone_maps: BTreeMap<String, Vec<ZoneEntry>>,
    /// What can be done about a part, mildest first.
    pub outcomes: Vec<OutcomeEntry>,
    /// The lines of a job's sheet.
    pub text_fields: Vec<TextFieldEntry>,
    /// The questions about an engine's past.
    pub history_facts: Vec<HistoryFactEntry>,
    /// Ordinary engines to start from.
    pub arrangements: Vec<StartingPoint>,
    /// Kinds of measuring instrument.
    pub instrument_kinds: Vec<InstrumentKindEntry>,
    /// The phases of a rebuild, in order.
    pub phases: Vec<PhaseEntry>,
    /// The groups that go to one size.
    pub size_groups: Vec<SizeGroupEntry>,
    /// Work that has a price.
    pub works: Vec<WorkEntry>,
    /// The rules by which parts are decided.
    pub rules: Vec<RuleEntry>,
    /// Where published manuals disagree and a shop says which view it follows.
    pub disputes: Vec<DisputeEntry>,
    /// How strongly evidence speaks, the weakest first.
    pub strengths: Vec<StrengthEntry>,
    /// What stands where the risk is.
    pub cautions: Vec<&'static str>,
}

/// A step of how strongly evidence speaks.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct StrengthEntry {
    /// The step.
    pub id: Strength,
    /// The weight above which evidence is so strong, in doublings of the odds.
    pub above: f64,
    /// How it speaks, in words: "clearly".
    pub words: &'static str,
}

/// A kind of part.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct KindEntry {
    /// The kind.
    pub id: PartKind,
    /// The full name in the singular, lower case.
    pub name: &'static str,
    /// The word that follows a position.
    pub short: &'static str,
    /// The tags that make sense for it, nearest to hand first.
    pub tags: Vec<Tag>,
    /// Its drawing.
    pub zone_map: ZoneMap,
    /// What can be done about it, mildest first.
    pub outcomes: Vec<Outcome>,
    /// Whether it is renewed whatever it looks like.
    pub always_renewed: bool,
    /// What is measured of it in the order of measuring, then what follows.
    pub quantities: Vec<QuantityEntry>,
}

/// A quantity as one kind of part has it.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct QuantityEntry {
    /// The quantity.
    pub id: Quantity,
    /// In words, lower case.
    pub words: &'static str,
    /// Whether a person reads it off an instrument; else it only follows.
    pub is_read: bool,
    /// Whether wear makes it smaller: a limit is then the least allowed, else the most.
    pub wears_smaller: bool,
    /// Where it is read, in the order in which a hand walks over the part.
    pub spots: Vec<SpotEntry>,
}

/// A place at which a quantity is read.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct SpotEntry {
    /// The place.
    pub spot: Spot,
    /// In words: "front, A"; empty for the only place.
    pub label: String,
    /// Whether a set is incomplete without it.
    pub needed: bool,
}

/// A kind of measuring instrument.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct InstrumentKindEntry {
    /// The kind.
    pub id: InstrumentKind,
    /// In words, lower case.
    pub name: &'static str,
    /// Its usual resolution in micrometres: common practice.
    pub resolution_um: i64,
    /// Its usual expanded uncertainty in micrometres: common practice.
    pub uncertainty_um: i64,
}

/// A phase of the rebuild.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct PhaseEntry {
    /// The phase.
    pub id: Phase,
    /// In words.
    pub label: &'static str,
}

/// A group that goes to one size.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct SizeGroupEntry {
    /// The group.
    pub id: SizeGroup,
    /// In words, plural.
    pub label: &'static str,
    /// Its kind of part.
    pub kind: PartKind,
}

/// A kind of wear.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct TagEntry {
    /// The tag.
    pub id: Tag,
    /// Its name, lower case.
    pub name: &'static str,
    /// One line that a customer understands.
    pub meaning: &'static str,
    /// The sentence of each grade, 1 to 4.
    pub grades: [&'static str; 4],
    /// Whether it reports damage.
    pub is_damage: bool,
}

/// A field of a drawing.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct ZoneEntry {
    /// The zone.
    pub id: Zone,
    /// In words.
    pub label: &'static str,
}

/// What can be done.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct OutcomeEntry {
    /// The outcome.
    pub id: Outcome,
    /// In words, lower case.
    pub words: &'static str,
}

/// A line of the sheet.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct TextFieldEntry {
    /// The line.
    pub id: TextField,
    /// Its name on the sheet.
    pub label: &'static str,
}

/// A question about the engine's past.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct HistoryFactEntry {
    /// The fact.
    pub id: HistoryFact,
    /// The question as asked.
    pub question: &'static str,
}

/// An ordinary engine.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct StartingPoint {
    /// What it is called.
    pub name: &'static str,
    /// Its layout.
    pub arrangement: Arrangement,
}

/// Work that has a price.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct WorkEntry {
    /// The work.
    pub id: Work,
    /// In words, lower case.
    pub words: &'static str,
}

/// A rule by which parts are decided.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct RuleEntry {
    /// Its written form.
    pub id: &'static str,
    /// Why, in a sentence.
    pub why: &'static str,
    /// Where it comes from.
    pub source: &'static str,
}

/// A point on which published manuals disagree.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct DisputeEntry {
    /// The point.
    pub id: Dispute,
    /// The question between the manuals.
    pub question: &'static str,
    /// The view that stands unless the shop chooses, with its source.
    pub usual: String,
    /// The other view, with its source.
    pub other: String,
}

fn dispute(id: Dispute) -> DisputeEntry {
    let row = id.row();
    let view = |view: &View| format!("{} ({})", view.words, view.source);
    DisputeEntry { id, question: row.question, usual: view(&row.usual), other: view(&row.other) }
}

fn kind(id: PartKind) -> KindEntry {
    let row = id.row();
    KindEntry {
        id,
        name: row.name,
        short: row.short,
        tags: row.tags.to_vec(),
        zone_map: row.zones,
        outcomes: row.outcomes.to_vec(),
        always_renewed: row.always_renewed,
        quantities: id.quantities().iter().map(quantity).collect(),
    }
}

fn quantity(has: &Has) -> QuantityEntry {
    let needed = has.spots.needed();
    let spots = has.spots.all().into_iter();
    QuantityEntry {
        id: has.quantity,
        words: has.quantity.words(),
        is_read: has.is_read(),
        wears_smaller: has.sense == Sense::Least,
        spots: spots.map(|spot| SpotEntry { spot, label: spot.label(), needed: needed.contains(&spot) }).collect(),
    }
}

fn instrument_kind(id: InstrumentKind) -> InstrumentKindEntry {
    let (resolution_um, uncertainty_um) = id.usual();
    InstrumentKindEntry { id, name: id.name(), resolution_um, uncertainty_um }
}

fn tag(id: Tag) -> TagEntry {
    let row = id.row();
    TagEntry { id, name: row.name, meaning: row.meaning, grades: row.grades, is_damage: id.is_damage() }
}

/// Every drawing that a kind uses, under its written form.
fn zone_maps() -> Result<BTreeMap<String, Vec<ZoneEntry>>, Error> {
    let mut maps = BTreeMap::new();
    for map in PartKind::ALL.map(|kind| kind.row().zones) {
        let name = serde_json::to_value(map).map_err(|error| Error::new("answer", error.to_string()))?;
        let zones = map.zones().iter().map(|id| ZoneEntry { id: *id, label: id.label() }).collect();
        maps.insert(name.as_str().unwrap_or_default().to_owned(), zones);
    }
    Ok(maps)
}
