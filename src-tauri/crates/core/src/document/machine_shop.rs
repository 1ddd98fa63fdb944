//! The machine shop's page: what is held first, the pieces with what goes along, each operation with its sizes place by place
//! and room beside them to write what comes back.

use std::collections::BTreeSet;

use super::cautions::cautioned;
use super::chapter::chapter;
use super::desk::Desk;
use super::head::{engine_only, paper};
use super::paper::{Block, Paper};
use super::usual_form::usual_form;
use crate::assess::Assessment;
use crate::engine::{Arrangement, At, Part, PartKind};
use crate::job::{Job, ListKind};
use crate::list::ListItem;
use crate::measure::{Phase, Quantity, in_unit};
use crate::money::PriceKey;
use crate::operation::{goes_along, must_not, packed, piece_of};
use crate::sheet::SizeGroup;
use crate::sizing::{GroupPlan, PartPlan, sized_quantity};
use crate::view::PartView;
use crate::words::capitalised;
use crate::work::Work;

/// The page: it goes to another firm, and names the engine, not the customer.
pub fn machine_shop(desk: &Desk<'_>) -> Paper {
    let Desk { job, assessment, .. } = desk;
    let open: Vec<&ListItem> = items(assessment).filter(|item| !item.is_done()).collect();
    let mut blocks = vec![engine_only(desk)];
    let Some(arrangement) = job.arrangement.as_ref().filter(|_| !open.is_empty()) else {
        blocks.push(Block::Lead("Nothing goes to the machine shop.".into()));
        return paper(desk, TITLE, blocks);
    };
    let called = desk.shop.called();
    // What is known need not be filled in.
    let first = called.is_none().then_some("Call first before you do more");
    let blanks = ["Order number", "Wanted by"].into_iter().chain(first);
    if let (Some(Block::Facts(facts)), Some(called)) = (blocks.first_mut(), called) {
        facts.push(("Before you do more".into(), capitalised(&called)));
    }
    blocks.push(Block::Blanks(blanks.map(str::to_owned).collect()));
    blocks.extend(held(&open, arrangement));
    blocks.extend(pieces(&open, arrangement));
    blocks.extend(work(desk, &open));
    blocks.extend(back(assessment, &open));
    blocks.extend(cautioned(open.iter().copied()));
    blocks.push(Block::Blanks(["Date", "Name", "Signature"].map(str::to_owned).into()));
    paper(desk, TITLE, blocks)
}

const TITLE: &str = "For the machine shop";

fn items(assessment: &Assessment) -> impl Iterator<Item = &ListItem> {
    assessment.list(ListKind::MachineShop).into_iter().flat_map(|list| &list.items)
}

/// What must not be begun yet, apart from the rest and before it.
fn held(open: &[&ListItem], arrangement: &Arrangement) -> Vec<Block> {
    let mut all: Vec<Held> = Vec::new();
    for item in open.iter().filter(|item| !item.waits_for.is_empty()) {
        let piece = item.of.as_ref().and_then(|of| of.work()).map(|of| piece_of(of.kind, arrangement));
        let (work, _) = work_words(item);
        let work = if is_of_one(item, piece) { format!("{}: {work}", item.what) } else { work };
        match all.iter_mut().find(|own| own.piece.is_some() && own.piece == piece) {
            Some(own) => {
                own.works.push(work);
                own.waits_for.extend(item.waits_for.iter().map(String::as_str));
            }
            None => {
                let name = piece.map_or_else(|| item.what.clone(), name_of);
                let waits_for = item.waits_for.iter().map(String::as_str).collect();
                all.push(Held { piece, name, works: vec![work], waits_for });
            }
        }
    }
    let rows = all.iter().map(|own| {
        // A reason that several works share is said once.
        let mut said = BTreeSet::new();
        let reasons: Vec<&str> = own.waits_for.iter().copied().filter(|reason| said.insert(*reason)).collect();
        [own.name.clone(), own.works.join("; "), reasons.join(" ")]
    });
    let table = (!all.is_empty()).then(|| {
        Block::table(
            "Work that must not be begun yet, and what it waits for.",
            [("Piece", 3), ("Work", 9), ("Waits for", 8)],
            rows,
        )
    });
    chapter("Held: do not begin", table)
}

/// Whether it is done to one part that is not the piece itself, and goes by the name of that part.
fn is_of_one(item: &ListItem, piece: Option<PartKind>) -> bool {
    let of = item.of.as_ref().and_then(|of| of.work());
    let is_whole = piece.is_some_and(|piece| item.what == name_of(piece));
    !is_whole && of.is_some_and(|of| item.parts.iter().filter(|part| part.kind == of.kind).count() == 1)
}

/// What is held of a piece.
struct Held<'a> {
    /// None where the work is on no piece that is sent.
    piece: Option<PartKind>,
    name: String,
    works: Vec<String>,
    waits_for: Vec<&'a str>,
}

fn name_of(piece: PartKind) -> String {
    capitalised(&piece.row().name.said(Default::default()))
}

/// A work without its sizes, which stand place by place below: what is done, and the size wanted.
fn work_words(item: &ListItem) -> (String, String) {
    let size = if item.asked.size.is_some() { item.asked.words.clone() } else { String::new() };
    (if size.is_empty() { item.detail.clone() } else { size.clone() }, size)
}

/// Each piece once, with what goes along, how it travels and what must not be done to it.
fn pieces(open: &[&ListItem], arrangement: &Arrangement) -> Vec<Block> {
    let mut all: Vec<(PartKind, Vec<PriceKey>)> = Vec::new();
    for of in open.iter().filter_map(|item| item.of.as_ref()?.work()) {
        let piece = piece_of(of.kind, arrangement);
        match all.iter_mut().find(|(own, _)| *own == piece) {
            Some((_, works)) => works.push(of),
            None => all.push((piece, vec![of])),
        }
    }
    let joined = |works: &[PriceKey], told: fn(PriceKey) -> &'static str, between: &str| {
        let mut words: Vec<&str> = works.iter().map(|of| told(*of)).filter(|words| !words.is_empty()).collect();
        words.dedup();
        words.join(between)
    };
    let rows = all.iter().map(|(piece, works)| {
        [
            name_of(*piece),
            capitalised(&joined(works, goes_along, "; ")),
            packed(*piece).to_owned(),
            joined(works, must_not, " "),
        ]
    });
    let table = Block::table(
        "The pieces that are sent: what goes along, how each is packed, what must not be done.",
        [("Piece", 4), ("Goes along", 10), ("Packed", 11), ("Must not be done", 12)],
        rows,
    );
    chapter("Pieces, each with its label on", [table])
}

/// Each operation: what has a size with every place, all else in one table.
fn work(desk: &Desk<'_>, open: &[&ListItem]) -> Vec<Block> {
    let Desk { job, assessment, .. } = desk;
    let mut blocks: Vec<Block> = Vec::new();
    let mut others: Vec<[String; 4]> = Vec::new();
    for item in open.iter().filter(|item| item.waits_for.is_empty() || item.asked.size.is_some()) {
        match (sized(assessment, item), read_of(item)) {
            (Some(plan), _) => blocks.extend(of_group(job, plan, item)),
            (None, Some(quantity)) => blocks.extend(by_place(desk, item, quantity)),
            (None, None) => {
                others.push([item.what.clone(), item.quantity.to_string(), item.detail.clone(), notes(job, item)])
            }
        }
    }
    let others = (!others.is_empty()).then(|| {
        Block::table(
            "The other work: on what, how many, what is done, and what to mind.",
            [("On", 4), ("Pieces", 2), ("Work", 6), ("Mind", 15)],
            others,
        )
    });
    blocks.extend(others);
    chapter("Work", blocks)
}

/// The quantity that is written place by place when it comes back, of what has no plan of a group.
fn read_of(item: &ListItem) -> Option<Quantity> {
    let of = item.of.as_ref()?.work()?;
    let is_bore = of.kind == PartKind::TappetBore && matches!(of.work, Work::Machine | Work::Bush);
    if is_bore { Some(Quantity::Diameter) } else { sized_quantity(of) }
}

/// Each place with what was found, and room for what comes back.
fn by_place(desk: &Desk<'_>, item: &ListItem, quantity: Quantity) -> Vec<Block> {
    let Desk { job, assessment, .. } = desk;
    let of_kind = item.of.as_ref().and_then(|of| of.work()).map(|of| of.kind);
    let views = item.parts.iter().filter(|part| Some(part.kind) == of_kind).filter_map(|part| assessment.part(*part));
    let row = |view: &PartView| {
        let found = view.figures.iter().find(|figure| figure.quantity == quantity && figure.phase == Phase::Found);
        [view.label.clone(), found.map_or_else(|| "not measured".into(), |figure| figure.shown.clone()), String::new()]
    };
    let table = Block::Table {
        summary: format!("{}: each place as found, and room for what comes back.", item.what),
        head: ["Place", "Found", "Size back"].map(str::to_owned).to_vec(),
        widths: vec![6, 7, 9],
        rows: views.map(|view| row(view).to_vec()).collect(),
        to_fill: true,
    };
    let told = format!("{}. {}", item.detail, notes(job, item));
    vec![Block::subheading(format!("{}: {}", item.what, quantity.words(job.terms))), Block::Paragraph(told), table]
}

fn notes(job: &Job, item: &ListItem) -> String {
    let held = if item.waits_for.is_empty() { "" } else { "Held, see above." };
    let is_bored = item.of.as_ref().and_then(|of| of.work()).is_some_and(|of| of.work == Work::Machine);
    let usual = item.parts.first().filter(|_| is_bored).map(|part| usual_form(job, *part)).unwrap_or_default();
    [held, usual.as_str(), item.mind.as_str()].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" ")
}

/// The plan of sizes that an item carries out, if it is of such.
fn sized<'a>(assessment: &'a Assessment, item: &ListItem) -> Option<&'a GroupPlan> {
    let of = item.of.as_ref()?.work().filter(|of| matches!(of.work, Work::Machine | Work::Sleeve))?;
    let plan = assessment.plan(SizeGroup::of(of.kind).filter(|group| group.kind() == of.kind)?)?;
    plan.machined().next().is_some().then_some(plan)
}

fn of_group(job: &Job, plan: &GroupPlan, item: &ListItem) -> Vec<Block> {
    let unit = job.sheet.head.unit;
    let form = |part: Part, quantity: Quantity, name: &str| {
        let (_, most) = job.sheet.new_range(part, quantity);
        most.map(|most| format!("{name} at most {}", in_unit(most, unit)))
    };
    let permitted: Vec<String> = item
        .parts
        .first()
        .into_iter()
        .flat_map(|part| [form(*part, Quantity::OutOfRound, "out-of-round"), form(*part, Quantity::Taper, "taper")])
        .flatten()
        .collect();
    let usual = item.parts.first().map(|part| usual_form(job, *part)).unwrap_or_default();
    let permitted = match (permitted.as_slice(), usual.as_str()) {
        ([], "") => "Permitted: form as the engine’s manual says.".to_owned(),
        ([], usual) => usual.to_owned(),
        (stated, usual) => format!("Permitted: {}. {usual}", stated.join(", ")).trim_end().to_owned(),
    };
    let held = if item.waits_for.is_empty() { "" } else { "Held, see above. " };
    let finish = job.sheet.finish_of(plan.group).map(|finish| format!(" {}.", finish.words())).unwrap_or_default();
    let told = format!(
        "{held}Wanted: {}. {permitted}{finish} {}",
        if plan.finished_shown.is_empty() { "not known yet" } else { &plan.finished_shown },
        item.mind
    );
    let faults = plan.machined().filter(|part| !part.faults.is_empty());
    let faults: Vec<String> = faults.map(|part| format!("{}: {}", part.label, part.faults.join(" "))).collect();
    let row = |part: &PartPlan| {
        let found = if part.found_shown.is_empty() { "not measured" } else { &part.found_shown };
        let mut cells = vec![part.label.clone(), found.to_owned(), part.take_off_shown.clone()];
        cells.resize(PLACE.len() + written(plan.group).len(), String::new());
        // The width is ground on the main that takes the thrust, and on no other.
        if plan.group == SizeGroup::Mains && !is_thrust_main(job, part.part) {
            cells.pop();
            cells.push("–".into());
        }
        cells
    };
    let columns = || PLACE.iter().chain(written(plan.group));
    let table = Block::Table {
        summary: format!("{}: each place as found, what comes off, and room for what comes back.", item.what),
        head: columns().map(|(name, _)| (*name).to_owned()).collect(),
        widths: columns().map(|(_, width)| *width).collect(),
        rows: plan.machined().map(row).collect(),
        to_fill: true,
    };
    let told = [vec![told], faults].concat().join(" ");
    vec![Block::subheading(format!("{}: {}", item.what, plan.words)), Block::Paragraph(told), table]
}

/// What is written of the whole when it comes back.
fn back(assessment: &Assessment, open: &[&ListItem]) -> Option<Block> {
    let groups: Vec<SizeGroup> = open.iter().filter_map(|item| Some(sized(assessment, item)?.group)).collect();
    let is_shaft = groups.iter().any(|group| *group != SizeGroup::Bores);
    let straight = is_shaft.then_some("Straightness after grinding");
    let all = straight.into_iter().chain(["Finish", "Washed after"]);
    (!groups.is_empty()).then(|| Block::Blanks(all.map(str::to_owned).collect()))
}

/// What is told of each place.
const PLACE: [(&str, u8); 3] = [("Place", 6), ("Found", 7), ("Comes off", 4)];

/// What is written beside it when it comes back.
fn written(group: SizeGroup) -> &'static [(&'static str, u8)] {
    match group {
        SizeGroup::Bores => &[("Top", 4), ("Middle", 4), ("Bottom", 4), ("Cross-hatch", 4)],
        SizeGroup::Mains => &[("Size back", 5), ("Fillet radius", 4), ("Oil hole edge", 4), ("Thrust width", 3)],
        SizeGroup::Crankpins => &[("Size back", 5), ("Fillet radius", 4), ("Oil hole edge", 4)],
    }
}

fn is_thrust_main(job: &Job, journal: Part) -> bool {
    let thrust = job.arrangement.as_ref().map(|arrangement| arrangement.thrust_main);
    matches!(journal.at, At::Main(main) if Some(main) == thrust)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::job::testing::{arrange, job_of};
    use serde_json::{Value, json};

    fn page(changes: &[Value]) -> Paper {
        let arrange = arrange(&Arrangement::inline(4));
        let customer = json!({ "do": "fill", "field": "customer", "text": "A. Customer" });
        let changes: Vec<Value> = [arrange, customer].iter().chain(changes).cloned().collect();
        let job = job_of(&changes);
        machine_shop(&Desk::bare(&job, &assess(&job)))
    }

    fn scored(part: &str) -> Value {
        json!({ "do": "tag", "part": part, "tag": "scoring", "grade": 4 })
    }

    #[test]
    fn what_is_held_stands_first_and_the_customer_nowhere() {
        let paper = page(&[scored("crankpin.1"), scored("housing-bore.2")]);
        let headings: Vec<&str> = paper
            .blocks
            .iter()
            .filter_map(|block| match block {
                Block::Heading { level: 1, text } => Some(text.as_str()),
                _ => None,
            })
            .collect();
        assert_eq!(headings.first(), Some(&"Held: do not begin"), "{headings:?}");
        assert!(!format!("{paper:?}").contains("Customer"));
    }

    #[test]
    fn what_several_works_wait_for_is_said_once() {
        let paper = page(&[scored("crankpin.1"), scored("main-journal.1")]);
        let rows: Vec<&Vec<String>> = paper
            .blocks
            .iter()
            .filter_map(|block| match block {
                Block::Table { head, rows, .. } if head.last().is_some_and(|last| last == "Waits for") => Some(rows),
                _ => None,
            })
            .flatten()
            .collect();
        let of_shaft: Vec<&&Vec<String>> = rows.iter().filter(|row| row[0] == "Crankshaft").collect();
        let [row] = of_shaft[..] else { panic!("{rows:?}") };
        assert!(row[1].contains("; "), "several works in one row: {row:?}");
        let mut sentences: Vec<&str> = row[2].split(". ").collect();
        let all = sentences.len();
        sentences.sort_unstable();
        sentences.dedup();
        assert_eq!(sentences.len(), all, "{row:?}");
    }

    /// Each rod has a row to be filled, and the thrust main alone a width.
    #[test]
    fn there_is_room_for_what_comes_back() {
        let resized = json!({ "do": "overrule", "part": "rod.2", "outcome": "machine", "reason": "Out of round." });
        let rods = json!({ "do": "give-work", "of": { "kind": "rod", "work": "machine" }, "hands": "machine-shop" });
        let paper = page(&[scored("main-journal.1"), resized, rods]);
        let tables: Vec<(&Vec<String>, &Vec<Vec<String>>)> = paper
            .blocks
            .iter()
            .filter_map(|block| match block {
                Block::Table { head, rows, to_fill: true, .. } => Some((head, rows)),
                _ => None,
            })
            .collect();
        assert!(tables.iter().all(|(head, _)| head[0] == "Place"), "{tables:?}");
        assert!(format!("{:?}", paper.blocks).contains("Rod 2: Resize the big end"), "{paper:?}");
        // Once nothing else is open about the rods and the bolts are here, it goes.
        let clean = (1..=4).map(|n| json!({ "do": "clean", "part": format!("rod.{n}") }));
        let item = json!({ "key": { "of": "order", "kind": "rod-bolts" }, "quantity": 1 });
        let bolts = json!({ "do": "tick", "item": item, "tick": { "done": 1 } });
        let resized = json!({ "do": "overrule", "part": "rod.2", "outcome": "machine", "reason": "Out of round." });
        let changes: Vec<Value> = clean.chain([resized, bolts]).collect();
        let paper = page(&changes);
        let has_row = |block: &Block| match block {
            Block::Table { rows, to_fill: true, .. } => rows.iter().any(|row| row[..2] == ["Rod 2", "not measured"]),
            _ => false,
        };
        assert!(paper.blocks.iter().any(has_row), "{:#?}", paper.blocks);
    }

    #[test]
    fn nothing_to_send_is_said() {
        let paper = page(&[]);
        assert!(matches!(&paper.blocks[..], [Block::Facts(_), Block::Lead(_)]), "{:?}", paper.blocks);
    }
}
