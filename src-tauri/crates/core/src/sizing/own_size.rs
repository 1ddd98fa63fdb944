//! What came back of parts that are brought to the sheet's own size, each by itself: the seats of the mains and of a camshaft
//! in the casting, the ends of rods, a pump's faces. Journals and bores that share a size, and bores of tappets, have plans
//! of their own.

use std::collections::BTreeMap;

use super::read_back::{ReadBack, ReadBackLine, unmeasured};
use crate::engine::{Part, PartKind};
use crate::figure::{Figure, Readings};
use crate::measure::{Bound, Bounds, Conformity, Phase, Quantity, limits_in_unit};
use crate::money::PriceKey;
use crate::words::plural;
use crate::work::Work;

/// What was measured, with what follows from it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Known<'a> {
    pub(crate) readings: &'a Readings<'a>,
    pub(crate) figures: &'a BTreeMap<Part, Vec<Figure>>,
}

impl<'a> Known<'a> {
    fn figures_of(&self, part: Part, phase: Phase) -> impl Iterator<Item = &'a Figure> {
        self.figures.get(&part).into_iter().flatten().filter(move |figure| figure.phase == phase)
    }
}

/// The quantity that such a work brings to its size; none where it has none of its own.
pub fn sized_quantity(of: PriceKey) -> Option<Quantity> {
    match (of.kind, of.work) {
        (PartKind::HousingBore | PartKind::CamJournal | PartKind::CamBearing, Work::Machine) => {
            Some(Quantity::Diameter)
        }
        (PartKind::Rod, Work::Machine) => Some(Quantity::BigEndBore),
        (PartKind::Rod, Work::Bush) => Some(Quantity::SmallEndBore),
        (PartKind::PumpBody, Work::Machine) => Some(Quantity::Depth),
        (PartKind::PumpCover, Work::Machine) => Some(Quantity::CoverWear),
        _ => None,
    }
}

/// What came back of parts to which such a work is done. None where the sheet does not say what is wanted: then the tick
/// says that it is done.
pub(crate) fn own_size(known: &Known<'_>, of: PriceKey, parts: &[Part]) -> Option<ReadBack> {
    let quantity = sized_quantity(of)?;
    // A cam journal that is ground leaves the sheet's range: the undersize of its bearings says to what.
    if of.kind == PartKind::CamJournal {
        return None;
    }
    let readings = known.readings;
    let first = parts.iter().find(|part| part.kind == of.kind)?;
    let (least, most) = readings.job.sheet.new_range(*first, quantity);
    let bounds = Bounds { least: least.map(Bound::including), most: most.map(Bound::including) };
    let bounds = Some(bounds).filter(|bounds| *bounds != Bounds::default())?;
    let asked = limits_in_unit(&bounds, readings.unit());
    let parts: Vec<ReadBackLine> =
        parts.iter().filter(|part| part.kind == of.kind).map(|part| line(known, of, *part, quantity, &asked)).collect();
    let terms = readings.engine.terms();
    let name = plural(&of.kind.row().name.said(terms));
    Some(ReadBack {
        group: None,
        of,
        quantity,
        label: if of.kind == PartKind::Rod { format!("{name}, {}", quantity.words(terms)) } else { name },
        asked,
        confirmed: parts.iter().all(|line| line.verdict == Some(Conformity::Within) && line.problem.is_empty()),
        parts,
    })
}

fn line(known: &Known<'_>, of: PriceKey, part: Part, quantity: Quantity, asked: &str) -> ReadBackLine {
    let of_size = |phase| known.figures_of(part, phase).find(|figure| figure.quantity == quantity);
    // Form is judged with it, save at a rod's small end: what is told of a rod's form is its big end's.
    let has_form = quantity != Quantity::SmallEndBore;
    let is_form = |figure: &&Figure| has_form && matches!(figure.quantity, Quantity::OutOfRound | Quantity::Taper);
    let size = of_size(Phase::Machined);
    let wrong_form = known
        .figures_of(part, Phase::Machined)
        .filter(is_form)
        .find(|figure| figure.verdict.is_some_and(|verdict| verdict != Conformity::Within));
    // As far as a used one may wear, a finished one must not be from the start.
    let (least, most) = known.readings.job.sheet.new_range(part, quantity);
    let is_in =
        |size: &Figure| least.is_none_or(|least| size.low >= least) && most.is_none_or(|most| size.high <= most);
    let (verdict, problem) = match (size, wrong_form) {
        (None, _) => (None, unmeasured(known.readings.job, of)),
        (Some(size), _) if !is_in(size) => {
            (Some(Conformity::Outside), format!("it is {}; asked for was {asked}.", size.shown))
        }
        (Some(_), Some(form)) => (form.verdict, format!("{} {}", form.name, form.because)),
        (Some(size), None) => {
            let problem = missing(known, part, quantity).or_else(|| line_of_bores(known, part));
            let within = size.verdict.unwrap_or(Conformity::Within);
            let close = (within != Conformity::Within).then(|| format!("{} {}", size.name, size.because));
            (Some(within), close.or(problem).unwrap_or_default())
        }
    };
    ReadBackLine {
        part,
        label: known.readings.engine.label(part),
        found_shown: of_size(Phase::Found).map_or_else(String::new, |figure| figure.shown.clone()),
        shown: size.map_or_else(String::new, |figure| figure.shown.clone()),
        verdict,
        problem,
    }
}

/// It is right only if it was measured at every place.
fn missing(known: &Known<'_>, part: Part, quantity: Quantity) -> Option<String> {
    let has = part.kind.has(quantity)?;
    let readings = known.readings;
    let read = |spot| readings.quantity(part, quantity, Phase::Machined).any(|standing| standing.reading.spot == spot);
    let spots: Vec<String> =
        has.spots.needed().into_iter().filter(|spot| !read(*spot)).map(|spot| spot.label()).collect();
    (!spots.is_empty()).then(|| format!("measure it as machined at {}.", spots.join("; ")))
}

/// Seats that were bored because they were out of line are right once the line was measured anew: their size alone does
/// not tell.
fn line_of_bores(known: &Known<'_>, part: Part) -> Option<String> {
    if part.kind != PartKind::HousingBore {
        return None;
    }
    let is_line = |figure: &&Figure| matches!(figure.quantity, Quantity::LineAdjacent | Quantity::LineOverall);
    let of_line = |phase| {
        let figures = known.figures.values().flatten().filter(move |figure| figure.phase == phase);
        figures.filter(is_line).collect::<Vec<_>>()
    };
    let was_out = of_line(Phase::Found).iter().any(|figure| figure.is_found_outside());
    let now = of_line(Phase::Machined);
    if !was_out {
        return None;
    }
    if now.is_empty() {
        return Some("measure the line of the main bores as machined.".into());
    }
    let wrong = now.iter().find(|figure| figure.verdict != Some(Conformity::Within))?;
    Some(format!("{} {}", wrong.name, wrong.because))
}

#[cfg(test)]
mod tests {
    use crate::assess::{Assessment, assess};
    use crate::engine::Arrangement;
    use crate::job::ListKind;
    use crate::job::testing::{arrange, job_of};
    use serde_json::{Value, json};

    const ENDS: [&str; 2] = ["a", "b"];

    /// Rod 1 with a big end that is worn out, and what came back of it.
    fn after(back: &[&str], wanted: Value) -> Assessment {
        let mut line =
            json!({ "of": { "kind": "rod", "quantity": "big-end-bore" }, "limit": "2.2400 in", "source": "invented" });
        for (key, value) in wanted.as_object().unwrap() {
            line[key] = value.clone();
        }
        let read = |direction: &str, value: &str, phase: &str| {
            json!({ "do": "measure", "reading": { "part": "rod.1", "quantity": "big-end-bore", "value": value,
                "phase": phase, "spot": { "direction": direction } } })
        };
        let mut changes = vec![
            arrange(&Arrangement::inline(1)),
            json!({ "do": "clean", "part": "rod.1" }),
            json!({ "do": "state-line", "line": line }),
        ];
        changes.extend(ENDS.map(|at| read(at, "2.2450 in", "found")));
        changes.extend(ENDS.iter().zip(back).map(|(at, value)| read(at, value, "machined")));
        assess(&job_of(&changes))
    }

    /// What is said of it, and whether it is behind.
    #[track_caller]
    fn check(back: &[&str], problem: &str, is_right: bool) {
        let assessment = after(back, json!({ "min": "2.2380 in", "max": "2.2385 in" }));
        let [own] = &assessment.sizing.read_back[..] else { panic!("{:#?}", assessment.sizing.read_back) };
        let line = &own.parts[0];
        assert_eq!((own.asked.as_str(), line.found_shown.as_str()), ("2.2380 to 2.2385 in", "2.2450 in"));
        assert_eq!((line.problem.as_str(), own.confirmed), (problem, is_right));
        let shop = &assessment.list(ListKind::MachineShop).unwrap().items;
        let resize = shop.iter().find(|item| item.detail.starts_with("Resize the big end")).unwrap();
        assert_eq!(resize.is_right, is_right);
        assert!(resize.detail.ends_with("; 2.2380 to 2.2385 in"), "{}", resize.detail);
    }

    #[test]
    fn a_big_end_is_behind_once_it_came_back_within() {
        check(&[], "not machined and measured yet.", false);
        check(&["2.2383 in"], "measure it as machined at B.", false);
        check(&["2.2383 in", "2.2382 in"], "", true);
        let wrong = "it is 2.2383 to 2.2390 in; asked for was 2.2380 to 2.2385 in.";
        check(&["2.2383 in", "2.2390 in"], wrong, false);
    }

    #[test]
    fn nothing_is_asked_for_that_the_sheet_does_not_say() {
        let assessment = after(&[], json!({}));
        assert!(assessment.sizing.read_back.is_empty(), "how far a used one may wear is no size to machine to");
    }
}
