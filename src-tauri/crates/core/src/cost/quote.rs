//! What the rebuild costs: one line for each kind of part and work, from the decisions.

use std::collections::BTreeMap;

use super::proposed_jobs::proposed_jobs;
use crate::engine::{Engine, PartKind};
use crate::job::{EditId, Job, OwnItem};
use crate::money::{
    Applies, Charge, Money, OwnCharge, PriceKey, PriceList, Quote, QuoteLine, StandingCharge, StandingPrice,
};
use crate::operation::Operation;
use crate::view::{PartView, with_new_caps};
use crate::words::{Terms, capitalised, plural};
use crate::work::{Hands, Work};

/// Puts together what the parts that are renewed and the operations cost at these prices.
pub fn quote(engine: &Engine, job: &Job, parts: &[PartView], operations: &[Operation]) -> Quote {
    let prices = &job.prices;
    let terms = engine.terms();
    let mut by_key: BTreeMap<PriceKey, Vec<&PartView>> = BTreeMap::new();
    let is_renewed = |view: &PartView| view.decision.work() == Some(Work::Replace);
    // A new camshaft brings its lobes: they are not charged again.
    let is_brought = |view: &PartView| {
        let with = view.part.comes_with(engine.arrangement());
        with.is_some_and(|with| parts.iter().any(|other| other.part == with && is_renewed(other)))
    };
    for view in parts.iter().filter(|view| is_renewed(view) && !is_brought(view)) {
        by_key.entry(PriceKey { kind: view.kind, work: Work::Replace }).or_default().push(view);
    }
    let capped = with_new_caps(job, parts);
    if !capped.is_empty() {
        by_key.insert(PriceKey { kind: PartKind::HousingBore, work: Work::Replace }, capped);
    }
    let mut lines: Vec<QuoteLine> = by_key
        .into_iter()
        .map(|(of, views)| {
            let line = line(of, Hands::Here, &views, because(&views, terms), prices, engine);
            let supply = job.supplies.get(&of.kind).copied().unwrap_or_default();
            let told = supply.state_words(prices.currency);
            let what = if told.is_empty() { line.what.clone() } else { format!("{} ({told})", line.what) };
            QuoteLine { what, state: Some(supply.state), ..line }
        })
        .collect();
    let mut done: BTreeMap<PriceKey, Vec<&Operation>> = BTreeMap::new();
    for own in operations {
        done.entry(own.of).or_default().push(own);
    }
    lines.extend(done.into_iter().map(|(of, all)| {
        let charged = all.iter().flat_map(|own| own.of_kind());
        let views: Vec<&PartView> = charged.filter_map(|part| parts.iter().find(|view| view.part == *part)).collect();
        // What is done to several at once has one reason; lines of single parts have each their own.
        let because = if let [one] = all.as_slice() { one.because.clone() } else { because(&views, terms) };
        let hands = all.first().map_or(Hands::Here, |own| own.hands);
        line(of, hands, &views, because, prices, engine)
    }));
    lines.sort_by(|one, other| one.of.cmp(&other.of));
    lines.extend(job.own_items.iter().filter(|(_, item)| item.is_charged()).map(|(edit, item)| own(*edit, item)));
    let goes = operations.iter().any(|own| own.hands == Hands::MachineShop);
    lines.extend(standing(engine, prices, &lines, goes));
    let jobs = proposed_jobs(job, &lines, parts);
    Quote { jobs, ..Quote::of(lines, prices) }
}

/// An item of the shop's own.
fn own(edit: EditId, item: &OwnItem) -> QuoteLine {
    QuoteLine {
        of: Charge::Own(OwnCharge { own: edit.to_string() }),
        what: if item.quantity > 1 { format!("{} {}", item.quantity, item.what) } else { item.what.clone() },
        parts: vec![],
        quantity: item.quantity,
        each: item.price,
        net: item.price.map(|price| price.times(i64::from(item.quantity))),
        because: if item.because.trim().is_empty() { "Added by hand.".into() } else { item.because.clone() },
        state: None,
    }
}

/// What stands on every bill. A share is one of all that is found or added, not of other standing lines.
fn standing(engine: &Engine, prices: &PriceList, others: &[QuoteLine], goes_to_machine_shop: bool) -> Vec<QuoteLine> {
    let found: Money = others.iter().filter_map(|line| line.net).sum();
    let applies = |line: &&StandingPrice| line.applies == Applies::Always || goes_to_machine_shop;
    let line = |line: &StandingPrice| {
        let net = line.cost(prices.hour, found);
        QuoteLine {
            of: Charge::Standing(StandingCharge { standing: line.of }),
            what: line.of.said(Some(engine.arrangement())).into(),
            parts: vec![],
            quantity: 1,
            each: Some(net),
            net: Some(net),
            because: match line.applies {
                Applies::Always => "Belongs to every rebuild.".into(),
                Applies::WithMachining => "Something goes to the machine shop.".into(),
            },
            state: None,
        }
    };
    let mut all: Vec<&StandingPrice> = prices.standing.iter().filter(applies).collect();
    all.sort_by_key(|line| line.of);
    all.into_iter().map(line).collect()
}

fn line(
    of: PriceKey,
    hands: Hands,
    views: &[&PartView],
    because: String,
    prices: &PriceList,
    engine: &Engine,
) -> QuoteLine {
    let quantity = pieces(of.kind, views.len());
    let price = prices.price(of);
    QuoteLine {
        of: of.into(),
        what: format!("{}: {}", capitalised(&named(of, quantity, engine)), of.kind.work_words(of.work)),
        parts: views.iter().map(|view| view.part).collect(),
        quantity,
        each: price.and_then(|price| prices.cost(price, hands, 1)),
        net: price.and_then(|price| prices.cost(price, hands, quantity)),
        because,
        state: None,
    }
}

/// The reason that weighs most, with the parts of which it is told: a finding says more than a rule that holds whatever is
/// found.
fn because(views: &[&PartView], terms: Terms) -> String {
    let Some(worst) = views.iter().rev().max_by_key(|view| view.worst) else { return String::new() };
    let told = worst.decision.because().to_owned();
    let alike = views.iter().filter(|view| view.worst.is_some() && view.decision.because() == told);
    let labels: Vec<&str> = alike.map(|view| view.label.as_str()).collect();
    // A part of which there is but one is named by the line itself, and sentences about a group name their part.
    let is_named = worst.label.eq_ignore_ascii_case(&worst.kind.row().name.said(terms)) || worst.decision.is_of_group();
    match labels.as_slice() {
        [] => told,
        _ if is_named => told,
        [one] => format!("{one}: {told}"),
        [one, other] => format!("{one}; {other}: {told}"),
        [one, other, more @ ..] => format!("{one}; {other} and {} more: {told}", more.len()),
    }
}

/// Pairs of shells and the set of thrust faces count as one.
fn pieces(kind: PartKind, parts: usize) -> u32 {
    let parts = u32::try_from(parts).unwrap_or(u32::MAX);
    match kind {
        PartKind::MainShell | PartKind::RodShell | PartKind::ThrustFace => parts.div_ceil(2),
        _ => parts,
    }
}

fn named(of: PriceKey, quantity: u32, engine: &Engine) -> String {
    let name = if of.work == Work::Replace { of.kind.renewed_as(engine.arrangement()) } else { of.kind.row().name };
    let one = name.said(engine.terms());
    let name = match of.kind {
        PartKind::MainShell | PartKind::RodShell => format!("{one}s, pairs"),
        PartKind::ThrustFace => "thrust bearing, set".into(),
        _ if quantity > 1 => plural(&one),
        _ => one.into(),
    };
    if quantity > 1 { format!("{quantity} {name}") } else { name }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::TagRecord;
    use crate::job::testing::arranged;
    use crate::wear::{Grade, Tag};

    /// What the line for new pistons says of its reason.
    #[track_caller]
    fn pistons_because(scuffed: &[(u8, usize)], expected: &str) {
        let mut job = arranged(Arrangement::inline(6));
        for (n, grade) in scuffed {
            let record = TagRecord { grade: Grade::ALL[*grade - 1], zones: Default::default() };
            let part = format!("piston.{n}").parse().unwrap();
            job.parts.entry(part).or_default().tags.insert(Tag::Scuffing, record);
        }
        let quote = assess(&job).quote;
        let key = PriceKey { kind: PartKind::Piston, work: Work::Replace };
        let line = quote.lines.iter().find(|line| line.of == key).unwrap();
        assert_eq!(line.because, expected);
    }

    #[test]
    fn a_line_says_which_parts_brought_it_about() {
        let torn = "Scuffing, grade 3: Torn streaks that catch a fingernail.";
        pistons_because(&[(2, 3)], &format!("Piston 2: {torn}"));
        pistons_because(&[(2, 3), (5, 3)], &format!("Piston 2; Piston 5: {torn}"));
        pistons_because(&[(1, 3), (2, 3), (5, 3)], &format!("Piston 1; Piston 2 and 1 more: {torn}"));
        let worse = "Piston 5: Scuffing, grade 4: Metal has been dragged and built up.";
        pistons_because(&[(2, 3), (5, 4)], worse);
    }

    #[test]
    fn a_new_camshaft_brings_its_lobes() {
        let mut job = arranged(Arrangement::inline(2));
        let record = TagRecord { grade: Grade::ALL[3], zones: Default::default() };
        job.parts.entry("lobe.1.intake.1".parse().unwrap()).or_default().tags.insert(Tag::WornNose, record);
        let renewed: Vec<PartKind> = assess(&job)
            .quote
            .lines
            .iter()
            .filter_map(|line| line.of.work())
            .filter(|of| of.work == Work::Replace)
            .map(|of| of.kind)
            .collect();
        assert!(renewed.contains(&PartKind::Camshaft), "{renewed:?}");
        assert!(!renewed.contains(&PartKind::Lobe), "the lobes are charged besides their shaft: {renewed:?}");
    }
}
