//! Where two ways serve, both stand side by side: what each costs, whether it can be gone, which is recommended and which
//! the plan follows.

use serde::Serialize;

use crate::decide::rules;
use crate::engine::{BoreWall, PartKind};
use crate::job::Job;
use crate::money::{Money, PriceKey, PriceList};
use crate::sheet::SizeGroup;
use crate::sizing::{Action, GroupPlan, TappetBores};
use crate::view::{PartView, Sizing};
use crate::work::{Hands, Outcome, Work};

/// One way.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Way {
    /// The work, by which it is chosen.
    pub work: Work,
    /// In words: "a new camshaft".
    pub words: String,
    /// What it costs without tax; none where the shop has not priced all of it.
    pub net: Option<Money>,
    /// Why it can't be gone, in a sentence; empty if it can.
    pub ruled_out: String,
    /// What must be seen to first, in a sentence; may be empty.
    pub mind: String,
}

/// Ways that serve the same end.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Ways {
    /// The kind of part.
    pub kind: PartKind,
    /// To what end.
    pub what: String,
    /// The ways, the recommended first.
    pub ways: Vec<Way>,
    /// Why the first is recommended.
    pub because: String,
    /// The way that the plan, the lists and the quote follow.
    pub followed: Work,
    /// Whether the shop has not priced all that could be gone, so that they can't be compared.
    pub unpriced: bool,
    /// The person's reason, where they chose it.
    pub chosen_because: Option<String>,
}

/// What there is to choose in this job; nothing of what has come back right.
pub fn ways(job: &Job, parts: &[PartView], sizing: &Sizing) -> Vec<Ways> {
    let bores = sizing.plan(SizeGroup::Bores);
    let tappet_bores = sizing.tappet_bores.as_ref().and_then(|plan| tappet_bores(job, parts, plan));
    let all = [camshaft(job, parts), bores.and_then(|plan| worn_bores(job, parts, plan)), tappet_bores];
    let is_behind = |kind| parts.iter().any(|view| view.kind == kind && sizing.is_right(view.part));
    all.into_iter().flatten().filter(|ways| !is_behind(ways.kind)).collect()
}

/// How the ways of one end are weighed.
struct Weighed<'a> {
    job: &'a Job,
    kind: PartKind,
    what: &'static str,
    followed: Work,
    /// What the parts say, in a sentence; may be empty.
    facts: String,
    /// Taken unless another is clearly cheaper.
    usual: Way,
    /// Why it is the usual one.
    because: &'static str,
    others: Vec<Way>,
}

/// A worn camshaft: new, or welded up and reground. Flat tappets are renewed either way.
fn camshaft(job: &Job, parts: &[PartView]) -> Option<Ways> {
    let is_worn = |view: &&PartView| {
        let welded = view.decision.way == Some(Work::WeldUp);
        view.kind == PartKind::Camshaft && (view.decision.outcome == Outcome::Replace || welded)
    };
    let worn: Vec<&PartView> = parts.iter().filter(is_worn).collect();
    let followed = worn.first()?.decision.work()?;
    let way = |work, ruled_out: &str| Way {
        work,
        words: PartKind::Camshaft.way_words(work).into(),
        net: net(&job.prices, &[(PartKind::Camshaft, work, worn.len())]),
        ruled_out: ruled_out.into(),
        mind: String::new(),
    };
    let cracked = worn.iter().flat_map(|view| &view.decision.reasons).any(is_crack);
    let weld = way(Work::WeldUp, if cracked { "A cracked camshaft is not welded up." } else { "" });
    Some(weigh(Weighed {
        job,
        kind: PartKind::Camshaft,
        what: "The worn camshaft",
        followed,
        facts: String::new(),
        usual: way(Work::Replace, ""),
        because: "A new one keeps its hardness and its warranty, so it is taken unless the old one is clearly cheaper.",
        others: vec![weld],
    }))
}

/// Worn bores of tappets: reamed for oversize tappets, or bushed for standard ones. The tappets are renewed either way.
fn tappet_bores(job: &Job, parts: &[PartView], plan: &TappetBores) -> Option<Ways> {
    let mended = |view: &&PartView| plan.has(view.part) && view.decision.outcome == Outcome::Machine;
    let worn = parts.iter().filter(mended).count();
    if worn == 0 {
        return None;
    }
    let way = |work, ruled_out: &str, mind: &str| Way {
        work,
        words: PartKind::TappetBore.way_words(work).into(),
        net: net(&job.prices, &[(PartKind::TappetBore, work, worn), (PartKind::Tappet, Work::Replace, worn)]),
        ruled_out: ruled_out.into(),
        mind: mind.into(),
    };
    let ream = way(Work::Machine, &plan.no_size, "");
    let bush = way(Work::Bush, "", "The wall must be thick enough for the bush.");
    let (usual, because, other) = if plan.no_size.is_empty() {
        (
            ream,
            "Reaming leaves the iron of the casting to run in, so it is done unless bushes are clearly cheaper.",
            bush,
        )
    } else {
        (bush, "Bushes keep the casting.", ream)
    };
    Some(weigh(Weighed {
        job,
        kind: PartKind::TappetBore,
        what: "The worn bores in which followers slide",
        followed: plan.way,
        facts: String::new(),
        usual,
        because,
        others: vec![other],
    }))
}

fn is_crack(reason: &crate::decide::Reason) -> bool {
    reason.rule == rules::CRACKS && reason.outcome == Outcome::Replace
}

/// Worn bores: all bored to the next size with new pistons, the worn ones sleeved, or, where no size is left, a new block.
fn worn_bores(job: &Job, parts: &[PartView], plan: &GroupPlan) -> Option<Ways> {
    let followed = match plan.action {
        Action::Machine => Work::Machine,
        Action::Sleeve => Work::Sleeve,
        Action::Replace => Work::Replace,
        _ => return None,
    };
    // In a block that is renewed for another reason there is nothing to choose.
    let block = parts.iter().find(|view| view.kind == PartKind::Block);
    if plan.action != Action::Replace && block.is_some_and(|view| view.decision.outcome == Outcome::Replace) {
        return None;
    }
    let bores = plan.parts.iter();
    let (all, worn) = (plan.parts.len(), bores.filter(|part| part.at_fault).count());
    if worn == 0 {
        return None;
    }
    // Pistons that are renewed for a reason of their own are so either way.
    let own = |view: &&PartView| {
        let mut reasons = view.decision.reasons.iter();
        view.kind == PartKind::Piston
            && reasons.any(|r| r.rule != rules::PISTONS_TO_BORES && r.outcome == Outcome::Replace)
    };
    let pistons = parts.iter().filter(own).count();
    let way = |work, pieces: &[(PartKind, Work, usize)], ruled_out: String, mind: &str| Way {
        work,
        words: PartKind::Bore.way_words(work).into(),
        net: net(&job.prices, pieces),
        ruled_out,
        mind: mind.into(),
    };
    let new_pistons = (PartKind::Piston, Work::Replace, all);
    let bore = [(PartKind::Bore, Work::Machine, all), new_pistons];
    // Boring ends with honing; beside sleeves the other bores are honed for the new rings.
    let sleeve = [
        (PartKind::Bore, Work::Sleeve, worn),
        (PartKind::Bore, Work::Hone, all.saturating_sub(worn)),
        (PartKind::Piston, Work::Replace, pistons),
    ];
    let block = [(PartKind::Block, Work::Replace, 1), new_pistons];
    let construction = job.arrangement.as_ref().map(|own| own.construction);
    let is_coated = construction.is_some_and(|own| own.bore_wall == Some(BoreWall::Coated));
    let wall = match is_coated {
        true => "A specialist sleeves it, or coats the old wall anew: ask which before it is sent.",
        false => "The wall must be thick enough for the sleeve: have it sounded first.",
    };
    let bore = way(Work::Machine, &bore, plan.no_size.clone().unwrap_or_default(), "");
    let sleeve = way(Work::Sleeve, &sleeve, String::new(), wall);
    let mut facts = if worn == all {
        format!("All {all} bores need it.")
    } else {
        format!("{worn} of {all} bores {} it.", if worn == 1 { "needs" } else { "need" })
    };
    let (usual, because, others) = if plan.no_size.is_some() {
        if !is_coated {
            facts.push_str(" No listed size is left to bore them to.");
        }
        let block = way(Work::Replace, &block, String::new(), "");
        (sleeve, "Sleeves keep the block.", vec![bore, block])
    } else {
        let mut others = vec![sleeve];
        others.extend((followed == Work::Replace).then(|| way(Work::Replace, &block, String::new(), "")));
        (bore, "Boring all makes every cylinder alike, so it is done unless sleeves are clearly cheaper.", others)
    };
    Some(weigh(Weighed { job, kind: PartKind::Bore, what: "The worn bores", followed, facts, usual, because, others }))
}

/// What so many pieces of work cost; none where the shop has not priced all of them.
fn net(prices: &PriceList, pieces: &[(PartKind, Work, usize)]) -> Option<Money> {
    let needed = pieces.iter().filter(|(.., count)| *count > 0);
    needed
        .map(|(kind, work, count)| {
            let price = prices.price(PriceKey { kind: *kind, work: *work })?;
            prices.cost(price, Hands::MachineShop, u32::try_from(*count).unwrap_or(u32::MAX))
        })
        .sum()
}

/// Another way must save a fifth to be recommended before the usual one (our judgement: it is the riskier one). Where the
/// plan follows another way than the recommended, that is said.
fn weigh(Weighed { job, kind, what, followed, facts, usual, because, others }: Weighed<'_>) -> Ways {
    let cheaper = |way: &&Way| {
        let clearly = way.net.zip(usual.net).is_some_and(|(way, usual)| way.times(5) < usual.times(4));
        way.ruled_out.is_empty() && clearly
    };
    let best = others.iter().filter(cheaper).min_by_key(|way| way.net).cloned();
    let mut told =
        vec![facts, if best.is_some() { "It costs less by more than a fifth.".into() } else { because.into() }];
    let unpriced = std::iter::once(&usual).chain(&others).any(|way| way.ruled_out.is_empty() && way.net.is_none());
    let mut ways = vec![usual];
    ways.extend(others);
    ways.sort_by_key(|way| (Some(way) != best.as_ref(), !way.ruled_out.is_empty()));
    if let Some(first) = ways.first()
        && first.work != followed
    {
        let cost = ways.iter().find(|way| way.work == followed).and_then(|way| way.net).zip(first.net);
        let dearer = match cost {
            Some((followed, first)) if followed > first => {
                format!(", {} dearer without tax", job.prices.currency.show(followed - first))
            }
            _ => String::new(),
        };
        told.push(format!("The plan now follows another way{dearer}: {}.", kind.way_words(followed)));
    }
    let chosen = job.chosen_ways.get(&kind).filter(|chosen| chosen.way == followed);
    told.retain(|sentence| !sentence.is_empty());
    Ways {
        kind,
        what: what.into(),
        ways,
        because: told.join(" "),
        followed,
        unpriced,
        chosen_because: chosen.map(|chosen| chosen.reason.clone()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::{Assessment, assess};
    use crate::job::testing::job_of;
    use crate::job::{ItemKey, ListKind};
    use serde_json::{Value, json};

    /// An in-line four with bores of 3.500 in, a limit of 3.505 in and one oversize of 0.010 in; `sleeve` is what a sleeve
    /// costs, boring 20.00 and a piston 30.00.
    fn after(sleeve: i64, done: &[Value]) -> Assessment {
        let price = |kind: &str, work: &str, part: i64| json!({ "of": { "kind": kind, "work": work }, "part": part });
        let sheet = json!({
            "head": { "name": "Any", "source": "", "unit": "inch" },
            "lines": [{ "of": { "kind": "bore", "quantity": "diameter" }, "min": "3.500 in", "max": "3.501 in", "limit": "3.505 in", "source": "" }],
            "undersizes": [], "oversizes": [{ "size": "0.010 in", "source": "" }],
        });
        let prices = [
            price("bore", "machine", 2_000),
            price("piston", "replace", 3_000),
            price("bore", "sleeve", sleeve),
            price("bore", "hone", 100),
            price("camshaft", "replace", 20_000),
            price("camshaft", "weld-up", 15_000),
        ];
        let before = [
            json!({ "do": "arrange", "arrangement": crate::engine::Arrangement::inline(4) }),
            json!({ "do": "use-sheet", "sheet": sheet }),
            json!({ "do": "use-prices", "prices": { "currency": "EUR", "prices": prices } }),
        ];
        let changes: Vec<Value> = before.iter().chain(done).cloned().collect();
        assess(&job_of(&changes))
    }

    fn bore(n: u8, inches: &str) -> Value {
        json!({ "do": "measure", "reading": { "part": format!("bore.{n}"), "quantity": "diameter", "phase": "found",
            "spot": { "station": "top", "direction": "a" }, "value": inches } })
    }

    fn choose(kind: &str, way: &str) -> Value {
        json!({ "do": "choose-way", "kind": kind, "way": way, "reason": "The customer wants it so." })
    }

    #[track_caller]
    fn first(assessment: &Assessment, kind: PartKind) -> (Work, Work, &str) {
        let ways = assessment.ways.iter().find(|ways| ways.kind == kind).unwrap();
        (ways.ways[0].work, ways.followed, &ways.because)
    }

    #[track_caller]
    fn lists(assessment: &Assessment, kind: ListKind, key: &ItemKey, detail: &str) {
        let list = assessment.list(kind).unwrap();
        let there = list.items.iter().find(|own| own.asked.key == *key);
        assert!(there.is_some_and(|own| own.detail.starts_with(detail)), "{key:?}: {:#?}", list.items);
    }

    fn order(kind: PartKind) -> ItemKey {
        ItemKey::Order { kind, parts: vec![] }
    }

    #[track_caller]
    fn charges(assessment: &Assessment, kind: PartKind, work: Work, quantity: u32) {
        let line = assessment.quote.lines.iter().find(|line| line.of == PriceKey { kind, work });
        assert_eq!(line.map_or(0, |line| line.quantity), quantity, "{kind:?} {work:?}");
    }

    #[test]
    fn bores_are_bored_unless_sleeves_are_clearly_cheaper() {
        let usual = "1 of 4 bores needs it. Boring all makes every cylinder alike, so it is done unless sleeves are clearly cheaper.";
        // Boring all with pistons: 4 × 50.00; four fifths of that are 160.00. Beside a sleeve three bores are honed, 3.00.
        assert_eq!(
            first(&after(15_700, &[bore(2, "3.506 in")]), PartKind::Bore),
            (Work::Machine, Work::Machine, usual)
        );
        let argued = "1 of 4 bores needs it. It costs less by more than a fifth. The plan now follows another way, 41.00 EUR dearer without tax: bore all to the next size, with new pistons.";
        assert_eq!(
            first(&after(15_600, &[bore(2, "3.506 in")]), PartKind::Bore),
            (Work::Sleeve, Work::Machine, argued)
        );
    }

    #[test]
    fn without_a_size_left_sleeves_are_the_plan_and_boring_is_ruled_out() {
        let assessment = after(99_900, &[bore(1, "3.500 in"), bore(2, "3.520 in")]);
        let reason = "1 of 4 bores needs it. No listed size is left to bore them to. Sleeves keep the block.";
        assert_eq!(first(&assessment, PartKind::Bore), (Work::Sleeve, Work::Sleeve, reason));
        let bored = assessment.ways[0].ways.iter().find(|way| way.work == Work::Machine).unwrap();
        assert!(bored.ruled_out.contains("no listed size is that large"), "{}", bored.ruled_out);
        charges(&assessment, PartKind::Bore, Work::Sleeve, 1);
        charges(&assessment, PartKind::Piston, Work::Replace, 0);
    }

    #[test]
    fn a_coated_bore_is_not_bored_whatever_is_chosen() {
        let construction = json!({ "bore_wall": "coated" });
        let mut engine = serde_json::to_value(crate::engine::Arrangement::inline(4)).unwrap();
        engine["construction"] = construction;
        let coated = json!({ "do": "arrange", "arrangement": engine });
        let assessment = after(99_900, &[coated, bore(2, "3.506 in"), choose("bore", "machine")]);
        assert_eq!(first(&assessment, PartKind::Bore).1, Work::Sleeve);
        let bored = assessment.ways[0].ways.iter().find(|way| way.work == Work::Machine).unwrap();
        assert!(bored.ruled_out.ends_with("A coated wall is not bored: boring takes the coating off."), "{bored:?}");
        charges(&assessment, PartKind::Bore, Work::Machine, 0);
    }

    #[test]
    fn a_chosen_sleeve_goes_through_to_list_quote_and_plan() {
        let assessment = after(15_000, &[bore(2, "3.506 in"), choose("bore", "sleeve")]);
        assert_eq!(first(&assessment, PartKind::Bore).1, Work::Sleeve);
        lists(
            &assessment,
            ListKind::MachineShop,
            &ItemKey::Operation { kind: PartKind::Bore, work: Some(Work::Sleeve) },
            "Sleeve with the machinist’s own and finish to standard, 3.5000 to 3.5010 in; found: Bore 2 3.5060 in",
        );
        charges(&assessment, PartKind::Bore, Work::Sleeve, 1);
        charges(&assessment, PartKind::Piston, Work::Replace, 0);
        let plan = assessment.plan(SizeGroup::Bores).unwrap();
        assert_eq!(plan.machined().map(|own| own.label.as_str()).collect::<Vec<_>>(), ["Bore 2"]);
        assert_eq!(plan.chosen_because.as_deref(), Some("The customer wants it so."));
    }

    #[test]
    fn a_new_block_brings_its_bores_and_holds_the_pistons() {
        let assessment = after(15_000, &[bore(2, "3.520 in"), choose("bore", "replace")]);
        lists(&assessment, ListKind::Order, &order(PartKind::Block), "");
        lists(&assessment, ListKind::Order, &order(PartKind::Piston), "size not known yet");
        charges(&assessment, PartKind::Block, Work::Replace, 1);
        charges(&assessment, PartKind::Bore, Work::Replace, 0);
        assert!(assessment.sizing.orders.iter().all(|line| line.waits_for.len() == 1 || line.kind != PartKind::Piston));
    }

    #[test]
    fn a_camshaft_is_welded_up_by_choice_and_not_with_a_crack() {
        let worn = json!({ "do": "tag", "part": "lobe.2.intake.1", "tag": "worn-nose", "grade": 3 });
        let assessment = after(0, &[worn.clone(), choose("camshaft", "weld-up")]);
        // 150.00 is less than four fifths of 200.00.
        assert_eq!(
            first(&assessment, PartKind::Camshaft),
            (Work::WeldUp, Work::WeldUp, "It costs less by more than a fifth.")
        );
        lists(
            &assessment,
            ListKind::MachineShop,
            &ItemKey::Operation { kind: PartKind::Camshaft, work: Some(Work::WeldUp) },
            "Weld up and regrind",
        );
        charges(&assessment, PartKind::Camshaft, Work::WeldUp, 1);
        charges(&assessment, PartKind::Lobe, Work::WeldUp, 0);
        charges(&assessment, PartKind::Tappet, Work::Replace, 8);
        let crack = json!({ "do": "tag", "part": "camshaft.1", "tag": "cracks", "grade": 2 });
        let assessment = after(0, &[worn, choose("camshaft", "weld-up"), crack]);
        assert_eq!(first(&assessment, PartKind::Camshaft).1, Work::Replace);
        charges(&assessment, PartKind::Camshaft, Work::Replace, 1);
    }
}
