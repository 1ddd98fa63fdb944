//! Where two ways serve, both stand side by side: what each costs, whether it can be gone, which is recommended and which
//! the plan follows.

use serde::Serialize;

use super::{Money, PriceKey, PriceList, Work};
use crate::assess::PartView;
use crate::decide::Outcome;
use crate::engine::PartKind;
use crate::job::Job;
use crate::sheet::SizeGroup;
use crate::sizing::{Action, GroupPlan, Sizing};

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
    /// The person's reason, where they chose it.
    pub chosen_because: Option<String>,
}

impl Work {
    /// The ways among which a person may choose for a kind of part; none for most.
    pub fn ways_for(kind: PartKind) -> &'static [Self] {
        match kind {
            PartKind::Bore => &[Self::Machine, Self::Sleeve, Self::Replace],
            PartKind::Camshaft => &[Self::Replace, Self::WeldUp],
            _ => &[],
        }
    }

    /// The way in words, lower case: "a new camshaft".
    pub fn way_words(self, kind: PartKind) -> &'static str {
        match (kind, self) {
            (PartKind::Bore, Self::Machine) => "bore all to the next size, with new pistons",
            (PartKind::Bore, Self::Sleeve) => "sleeve those that need it, and keep the pistons that are sound",
            (PartKind::Bore, Self::Replace) => "a new block, with new pistons",
            (PartKind::Camshaft, Self::Replace) => "a new camshaft",
            (PartKind::Camshaft, Self::WeldUp) => "weld up and regrind the old one",
            _ => self.words(),
        }
    }
}

/// What there is to choose in this job.
pub fn ways(job: &Job, parts: &[PartView], sizing: &Sizing) -> Vec<Ways> {
    let bores = sizing.groups.iter().find(|plan| plan.group == SizeGroup::Bores);
    let all = [camshaft(job, parts), bores.and_then(|plan| worn_bores(job, parts, plan))];
    all.into_iter().flatten().collect()
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
        words: work.way_words(PartKind::Camshaft).into(),
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

fn is_crack(reason: &crate::decide::Reason) -> bool {
    reason.rule == "cracks" && reason.outcome == Outcome::Replace
}

/// Worn bores: all bored to the next size with new pistons, the worn ones sleeved, or, where no size is left, a new block.
fn worn_bores(job: &Job, parts: &[PartView], plan: &GroupPlan) -> Option<Ways> {
    let followed = match plan.action {
        Action::Machine => Work::Machine,
        Action::Sleeve => Work::Sleeve,
        Action::Replace => Work::Replace,
        _ => return None,
    };
    let bores = plan.parts.iter();
    let (all, worn) = (plan.parts.len(), bores.filter(|part| part.at_fault).count());
    if worn == 0 {
        return None;
    }
    // Pistons that are renewed for a reason of their own are so either way.
    let own = |view: &&PartView| {
        let mut reasons = view.decision.reasons.iter();
        view.kind == PartKind::Piston && reasons.any(|r| r.rule != "pistons-to-bores" && r.outcome == Outcome::Replace)
    };
    let pistons = parts.iter().filter(own).count();
    let way = |work, pieces: &[(PartKind, Work, usize)], ruled_out: String, mind: &str| Way {
        work,
        words: work.way_words(PartKind::Bore).into(),
        net: net(&job.prices, pieces),
        ruled_out,
        mind: mind.into(),
    };
    let new_pistons = (PartKind::Piston, Work::Replace, all);
    let bore = [(PartKind::Bore, Work::Machine, all), new_pistons];
    let sleeve = [(PartKind::Bore, Work::Sleeve, worn), (PartKind::Piston, Work::Replace, pistons)];
    let block = [(PartKind::Block, Work::Replace, 1), new_pistons];
    let wall = "The wall must be thick enough for the sleeve: have it sounded first.";
    let bore = way(Work::Machine, &bore, plan.no_size.clone().unwrap_or_default(), "");
    let sleeve = way(Work::Sleeve, &sleeve, String::new(), wall);
    let mut facts =
        if worn == all { format!("All {all} bores need it.") } else { format!("{worn} of {all} bores need it.") };
    let (usual, because, others) = if plan.no_size.is_some() {
        facts.push_str(" No listed size is left to bore them to.");
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
            Some(prices.each(price).times(i64::try_from(*count).unwrap_or(i64::MAX)))
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
    if std::iter::once(&usual).chain(&others).any(|way| way.ruled_out.is_empty() && way.net.is_none()) {
        told.push("Enter the prices that are missing to compare what they cost.".into());
    }
    let mut ways = vec![usual];
    ways.extend(others);
    ways.sort_by_key(|way| (Some(way) != best.as_ref(), !way.ruled_out.is_empty()));
    if let Some(first) = ways.first()
        && first.work != followed
    {
        told.push(format!("The plan now follows another way: {}.", followed.way_words(kind)));
    }
    let chosen = job.chosen_ways.get(&kind).filter(|chosen| chosen.way == followed);
    told.retain(|sentence| !sentence.is_empty());
    Ways {
        kind,
        what: what.into(),
        ways,
        because: told.join(" "),
        followed,
        chosen_because: chosen.map(|chosen| chosen.reason.clone()),
    }
}
