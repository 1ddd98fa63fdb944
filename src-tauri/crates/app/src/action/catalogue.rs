//! The trade's tables, so that no trade word is written twice.

use std::collections::BTreeMap;

use serde::Serialize;
use wearbook_core::cause::{Strength, complaint_source};
use wearbook_core::caution::{self, Caution, GOVERNS, Screen};
use wearbook_core::decide::rules;
use wearbook_core::engine::{Arrangement, PartKind};
use wearbook_core::figure::Figure;
use wearbook_core::job::{Answer, Complaint, Consent, HistoryFact, TextField};
use wearbook_core::measure::{
    Conformity, Has, InstrumentKind, LengthUnit, Material, Phase, Quantity, Sense, Spot, Station,
};
use wearbook_core::money::{Applies, Currency, JobScope, Money, Need, OldPart, PartState, Standing};
use wearbook_core::sheet::{Dispute, SizeGroup, View};
use wearbook_core::view::OrderState;
use wearbook_core::wear::{Tag, Zone, ZoneMap};
use wearbook_core::words::{Term, Terms, Usage};
use wearbook_core::work::{Outcome, Work};

use crate::{Error, Settings, Wearbook};

/// Nothing to be told.
pub type Arguments = super::Nothing;
/// The tables.
pub type Reply = Catalogue;

/// Answers the tables in the shop's words. They change only when it chooses others.
///
/// # Errors
/// What the store says.
pub fn act(book: &Wearbook, _: Arguments) -> Result<Reply, Error> {
    let terms = book.store.read(Settings::load)?.terms;
    Ok(Catalogue {
        kinds: PartKind::ALL.into_iter().map(|id| kind(id, terms)).collect(),
        tags: Tag::ALL.into_iter().map(tag).collect(),
        zone_maps: zone_maps()?,
        outcomes: Outcome::ALL.into_iter().map(|id| OutcomeEntry { id, words: id.words() }).collect(),
        text_fields: TextField::ALL.into_iter().map(|id| TextFieldEntry { id, label: id.label() }).collect(),
        history_facts: HistoryFact::PAST
            .into_iter()
            .map(|id| HistoryFactEntry { id, question: id.question() })
            .collect(),
        complaints: Complaint::ALL.map(|id| ComplaintEntry { id, words: id.words(), source: complaint_source(id) }).to_vec(),
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
        standing: Standing::ALL.map(|id| StandingEntry { id, words: id.words() }).to_vec(),
        applies: Applies::ALL.map(|id| AppliesEntry { id, words: id.words() }).to_vec(),
        rules: rules::ALL
            .iter()
            .map(|rule| RuleEntry { id: rule.id.as_str(), why: rule.why(terms).into(), source: rule.source })
            .collect(),
        disputes: Dispute::ALL.into_iter().map(|id| dispute(id, terms)).collect(),
        strengths: Strength::ALL
            .into_iter()
            .map(|id| StrengthEntry { id, above: id.above(), words: id.words() })
            .collect(),
        conformities: Conformity::ALL.map(conformity).to_vec(),
        not_judged: Figure::OPEN,
        order_states: OrderState::ALL.map(|id| OrderStateEntry { id, words: id.words() }).to_vec(),
        answers: Answer::ALL.map(|id| AnswerEntry { id, words: id.words() }).to_vec(),
        consents: Consent::ALL.map(|id| ConsentEntry { id, words: id.words() }).to_vec(),
        part_states: PartState::ALL.map(|id| PartStateEntry { id, words: id.words() }).to_vec(),
        old_parts: OldPart::ALL.map(|id| OldPartEntry { id, words: id.words() }).to_vec(),
        job_scopes: JobScope::ALL.map(|id| JobScopeEntry { id, title: id.title() }).to_vec(),
        needs: Need::ALL.map(|id| NeedEntry { id, words: id.words() }).to_vec(),
        materials: Material::ALL.map(|id| MaterialEntry { id, words: id.words() }).to_vec(),
        amounts: Amounts { decimals: Currency::uneven().collect(), largest: Money::LARGEST },
        terms: Term::ALL.into_iter().map(|id| term(id, terms)).collect(),
        governs: GOVERNS,
        cautions: Screen::ALL
            .map(|screen| ScreenCautions { screen, cautions: caution::of_screen(screen) })
            .to_vec(),
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
    /// What a customer may complain of.
    pub complaints: Vec<ComplaintEntry>,
    /// Ordinary engines to start from.
    pub arrangements: Vec<StartingPoint>,
    /// Kinds of measuring instrument.
    pub instrument_kinds: Vec<InstrumentKindEntry>,
    /// The phases of a rebuild, in order.
    pub phases: Vec<PhaseEntry>,
    /// The groups that go to one size.
    pub size_groups: Vec<SizeGroupEntry>,
    /// All work that has a price, on whatever part.
    pub works: Vec<WorkEntry>,
    /// Lines that stand on every bill.
    pub standing: Vec<StandingEntry>,
    /// When such a line applies.
    pub applies: Vec<AppliesEntry>,
    /// The rules by which parts are decided.
    pub rules: Vec<RuleEntry>,
    /// Where published manuals disagree and a shop says which view it follows.
    pub disputes: Vec<DisputeEntry>,
    /// How strongly evidence speaks, the weakest first.
    pub strengths: Vec<StrengthEntry>,
    /// What a reading says about a limit.
    pub conformities: Vec<ConformityEntry>,
    /// What stands for it where something must be known first, in words.
    pub not_judged: &'static str,
    /// Whether a line may be ordered.
    pub order_states: Vec<OrderStateEntry>,
    /// Answers to a question about the engine's past.
    pub answers: Vec<AnswerEntry>,
    /// Answers of the customer to a line of a proposal.
    pub consents: Vec<ConsentEntry>,
    /// In what state a part is bought.
    pub part_states: Vec<PartStateEntry>,
    /// Where old parts go.
    pub old_parts: Vec<OldPartEntry>,
    /// The jobs in which a bill is put to the customer.
    pub job_scopes: Vec<JobScopeEntry>,
    /// How much a job of a proposal is needed, least first.
    pub needs: Vec<NeedEntry>,
    /// What parts are made of.
    pub materials: Vec<MaterialEntry>,
    /// How amounts are written.
    pub amounts: Amounts,
    /// Where the trade is split by country and the shop chooses.
    pub terms: Vec<TermEntry>,
    /// What stands above every decision and step of the work: said once on a screen.
    pub governs: &'static str,
    /// What can hurt in what is begun on a screen.
    pub cautions: Vec<ScreenCautions>,
}

/// What can hurt in what is begun on a screen.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct ScreenCautions {
    /// The screen.
    pub screen: Screen,
    /// The gravest first.
    pub cautions: Vec<&'static Caution>,
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
    pub name: String,
    /// The word that follows a position.
    pub short: String,
    /// The tags that make sense for it, nearest to hand first.
    pub tags: Vec<Tag>,
    /// Its drawing.
    pub zone_map: ZoneMap,
    /// What can be done about it, mildest first; nothing where it is only recorded.
    pub outcomes: Vec<Outcome>,
    /// The work that may be done to it and has a price.
    pub works: Vec<WorkEntry>,
    /// Whether it is renewed whatever it looks like.
    pub always_renewed: bool,
    /// Whether a manual may tell intake and exhaust apart.
    pub is_by_port: bool,
    /// What it is usually made of, where it may be measured warm.
    pub material: Option<Material>,
    /// The kinds that are walked with the same instrument in the hand, in the order of the walk; may be empty.
    pub walked_with: Vec<PartKind>,
    /// What is measured of it in the order of measuring, then what follows.
    pub quantities: Vec<QuantityEntry>,
    /// How it is looked at, in a sentence, where it is only recorded; else empty.
    pub look: &'static str,
}

/// A quantity as one kind of part has it.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct QuantityEntry {
    /// The quantity.
    pub id: Quantity,
    /// In words, lower case.
    pub words: String,
    /// Whether a person reads it off an instrument; else it only follows.
    pub is_read: bool,
    /// Whether wear makes it smaller: a limit is then the least allowed, else the most.
    pub wears_smaller: bool,
    /// Where it is read, in the order in which a hand walks over the part.
    pub spots: Vec<SpotEntry>,
    /// How it is measured, in a sentence; may be empty.
    pub how: &'static str,
    /// What the directions A and B mean, in words.
    pub directions: [&'static str; 2],
    /// Whether it is a size, which no small signed amount can be.
    pub is_size: bool,
    /// Whether it is read over a length, which must be told with it.
    pub is_over_a_length: bool,
    /// The quantities that are read together with it, part by part; may be empty.
    pub read_with: Vec<Quantity>,
}

/// A place at which a quantity is read.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct SpotEntry {
    /// The place.
    pub spot: Spot,
    /// In words: "front, A"; empty for the only place.
    pub label: String,
    /// Its station in words: "front"; empty where there is none.
    pub station: &'static str,
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
    /// What such an instrument usually achieves where it reads in inches: common practice.
    pub inch: Usual,
    /// The same where it reads in millimetres.
    pub millimetre: Usual,
}

/// What instruments of a kind usually achieve.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Usual {
    /// The smallest step: "0.0001 in".
    pub resolution: String,
    /// The expanded uncertainty: "0.0002 in".
    pub uncertainty: String,
}

/// What a reading says about a limit.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct ConformityEntry {
    /// Within, outside or between.
    pub id: Conformity,
    /// In words, lower case.
    pub words: &'static str,
    /// Of a clearance to expect, in words.
    pub of_what_comes: &'static str,
}

/// A line that stands on every bill.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct StandingEntry {
    /// Which.
    pub id: Standing,
    /// In words.
    pub words: &'static str,
}

/// When a standing line applies.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct AppliesEntry {
    /// When.
    pub id: Applies,
    /// In words, lower case.
    pub words: &'static str,
}

/// Whether a line may be ordered.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct OrderStateEntry {
    /// The state.
    pub id: OrderState,
    /// In words, lower case.
    pub words: &'static str,
}

/// An answer to a question about the engine's past.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct AnswerEntry {
    /// The answer.
    pub id: Answer,
    /// In words, lower case.
    pub words: &'static str,
}

/// An answer of the customer.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct ConsentEntry {
    /// The answer.
    pub id: Consent,
    /// In words, lower case.
    pub words: &'static str,
}

/// In what state a part is bought.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct PartStateEntry {
    /// The state.
    pub id: PartState,
    /// In words, lower case.
    pub words: &'static str,
}

/// Where an old part goes.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct OldPartEntry {
    /// Where to.
    pub id: OldPart,
    /// In words, lower case.
    pub words: &'static str,
}

/// A job of a bill.
#[derive(Debug, Clone, Copy, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct JobScopeEntry {
    /// What it is about.
    pub id: JobScope,
    /// Its title.
    pub title: &'static str,
}

/// How much a job of a proposal is needed.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct NeedEntry {
    /// How much.
    pub id: Need,
    /// In a word, lower case.
    pub words: &'static str,
}

/// What a part is made of.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct MaterialEntry {
    /// The material.
    pub id: Material,
    /// In words, lower case.
    pub words: &'static str,
}

/// How amounts are written.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Amounts {
    /// The decimals of a currency by its three letters; two where it is not named here.
    #[cfg_attr(feature = "schema", ts(type = "Record<string, number>"))]
    pub decimals: BTreeMap<&'static str, u32>,
    /// The largest, in minor units.
    pub largest: Money,
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
    /// Where the fields form a table: the row, in words.
    pub row: Option<&'static str>,
    /// And the column.
    pub column: Option<&'static str>,
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

/// A complaint.
#[derive(Debug, Clone, Copy, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct ComplaintEntry {
    /// The written form.
    pub id: Complaint,
    /// In words, as it is picked.
    pub words: &'static str,
    /// Where it is written what makes it.
    pub source: &'static str,
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
    pub why: String,
    /// Where it comes from.
    pub source: &'static str,
}

/// A thing that the trade calls by two names, by country.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct TermEntry {
    /// The thing.
    pub id: Term,
    /// Its name in British workshops, lower case.
    pub british: &'static str,
    /// Its name in American workshops, lower case.
    pub american: &'static str,
    /// What this shop calls several of it, lower case.
    pub plural: String,
}

/// A point on which published manuals disagree.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct DisputeEntry {
    /// The point.
    pub id: Dispute,
    /// The question between the manuals.
    pub question: String,
    /// The view that stands unless the shop chooses, with its source.
    pub usual: String,
    /// The other view, with its source.
    pub other: String,
}

fn term(id: Term, terms: Terms) -> TermEntry {
    TermEntry { id, british: id.name(Usage::British), american: id.name(Usage::American), plural: terms.plural(id) }
}

fn dispute(id: Dispute, terms: Terms) -> DisputeEntry {
    let row = id.row();
    let view = |view: &View| format!("{} ({})", view.words.said(terms), view.source);
    DisputeEntry { id, question: row.question.said(terms).into(), usual: view(&row.usual), other: view(&row.other) }
}

fn kind(id: PartKind, terms: Terms) -> KindEntry {
    let row = id.row();
    KindEntry {
        id,
        name: row.name.said(terms).into(),
        short: row.short.said(terms).into(),
        tags: row.tags.to_vec(),
        zone_map: row.zones,
        outcomes: row.outcomes.to_vec(),
        works: id.works().into_iter().map(|work| WorkEntry { id: work, words: id.work_words(work) }).collect(),
        always_renewed: row.always_renewed,
        is_by_port: id.is_by_port(),
        material: Material::usual(id),
        walked_with: id.walked_with().to_vec(),
        quantities: id.quantities().iter().map(|has| quantity(id, has, terms)).collect(),
        look: id.look(),
    }
}

fn quantity(kind: PartKind, has: &Has, terms: Terms) -> QuantityEntry {
    let needed = has.spots.needed();
    let spots = has.spots.all().into_iter();
    QuantityEntry {
        id: has.quantity,
        words: has.quantity.words(terms).into(),
        is_read: has.is_read(),
        wears_smaller: has.sense == Sense::Least,
        spots: spots
            .map(|spot| SpotEntry {
                spot,
                label: spot.label(),
                station: spot.station.map_or("", Station::label),
                needed: needed.contains(&spot),
            })
            .collect(),
        how: has.quantity.how(),
        directions: has.quantity.directions(kind),
        is_size: has.quantity.is_size(),
        is_over_a_length: has.quantity.is_over_a_length(),
        read_with: has.quantity.read_with().to_vec(),
    }
}

fn instrument_kind(id: InstrumentKind) -> InstrumentKindEntry {
    let usual = |unit| {
        let (resolution, uncertainty) = id.usual_in(unit);
        Usual { resolution, uncertainty }
    };
    InstrumentKindEntry {
        id,
        name: id.name(),
        inch: usual(LengthUnit::Inch),
        millimetre: usual(LengthUnit::Millimetre),
    }
}

fn conformity(id: Conformity) -> ConformityEntry {
    ConformityEntry { id, words: id.words(), of_what_comes: id.of_what_comes() }
}

fn zone(id: Zone) -> ZoneEntry {
    let (row, column) = id.in_table().unzip();
    ZoneEntry { id, label: id.label(), row, column }
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
        let zones = map.zones().iter().copied().map(zone).collect();
        maps.insert(name.as_str().unwrap_or_default().to_owned(), zones);
    }
    Ok(maps)
}
