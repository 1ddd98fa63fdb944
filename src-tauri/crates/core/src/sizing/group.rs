//! The plan of a group: one size for all mains, one for all crankpins, one for all bores.

use super::condition::{Condition, condition};
use super::plan::{Action, GroupPlan, Missing, PartPlan, plan_of, sentence};
use super::words::{range_words, size_text, size_words};
use crate::engine::{BoreWall, Cylinders, Part};
use crate::figure::Readings;
use crate::measure::{Length, Sense, in_unit};
use crate::sheet::{Dispute, SizeGroup, SizeRow};
use crate::work::Work;

/// The smallest size beyond `found` that cleans up everything: the first whose finished range lies wholly within what the
/// worst part still has. Shells for slight wear are no size to machine to.
///
/// On journals that is the first undersize whose largest ground diameter does not exceed what the worst journal cleans
/// up at; on bores the first oversize whose smallest finished bore is not below it (common practice; conservative, since
/// the shop may finish anywhere in the range).
pub fn smallest_size(series: &[SizeRow], sense: Sense, found: Length, cleans_up_at: Length) -> Option<&SizeRow> {
    series.iter().find(|row| {
        let cleans = match sense {
            Sense::Least => row.diameter.1 <= cleans_up_at,
            Sense::Most => row.diameter.0 >= cleans_up_at,
        };
        !row.without_grinding && row.size > found && cleans
    })
}

/// Why a coated bore that is worn goes to no size (common practice).
const COATED: &str = "A coated wall is not bored: boring takes the coating off.";

/// What was decided, before it is put into words for each part.
struct Decided {
    action: Action,
    size: Option<Length>,
    by: Option<Part>,
    because: String,
}

/// A group with the condition of each of its parts.
struct Group<'a> {
    readings: &'a Readings<'a>,
    group: SizeGroup,
    /// Why it is machined although it is sound itself.
    along: Option<String>,
    found: Length,
    series: Vec<SizeRow>,
    seen: Vec<(Part, Condition)>,
}

/// The plan of each group; where the shop grinds all journals of a crankshaft together, one group takes the other along.
pub(super) fn plans(readings: &Readings<'_>) -> Vec<GroupPlan> {
    let mut plans: Vec<GroupPlan> = SizeGroup::ALL.into_iter().map(|group| plan(readings, group, None)).collect();
    if !readings.job.sheet.follows_other(Dispute::GroundJournals) {
        return plans;
    }
    let is_ground = |group: SizeGroup| plan_of(&plans, group).is_some_and(|plan| plan.action == Action::Machine);
    let along = match (is_ground(SizeGroup::Mains), is_ground(SizeGroup::Crankpins)) {
        (true, false) => SizeGroup::Crankpins,
        (false, true) => SizeGroup::Mains,
        _ => return plans,
    };
    if let Some(taken) = plans.iter_mut().find(|plan| plan.group == along && plan.action != Action::Replace) {
        let why = format!(
            "Other journals of the crankshaft must be ground. {}",
            Dispute::GroundJournals.sentence(true, readings.engine.terms())
        );
        *taken = plan(readings, along, Some(why));
    }
    plans
}

/// Plans one group. One part machined means all of the group machined, to one size (TM 5-3805-262-34 p. 4-50 and two
/// further manuals for journals; common practice for bores). `along` says why it is machined even if it is sound itself.
fn plan(readings: &Readings<'_>, group: SizeGroup, along: Option<String>) -> GroupPlan {
    let sheet = &readings.job.sheet;
    let parts = readings.engine.parts().iter().copied().filter(|part| part.kind == group.kind());
    let this = Group {
        readings,
        group,
        along,
        found: readings.found_sizes().groups.get(&group).copied().unwrap_or_default(),
        series: sheet.series(group),
        seen: parts.map(|part| (part, condition(readings, part, group.sense()))).collect(),
    };
    let mut missing: Vec<Missing> = this.seen.iter().flat_map(|(_, condition)| condition.missing.clone()).collect();
    let mut notices: Vec<String> = this.earlier_size().into_iter().collect();
    let mut open = Vec::new();
    let by_size = this.decide(&mut open);
    let no_size = (by_size.action == Action::Replace).then(|| by_size.because.clone());
    let decided = this.chosen(this.by_way(by_size, &mut open, &mut notices), &mut notices);
    missing.extend(open);
    // Once one part must be machined, all are, and how near the others come to their limits no longer matters; where only
    // some are sleeved it does for the rest.
    if !matches!(decided.action, Action::Machine | Action::Replace) {
        let stay = this
            .seen
            .iter()
            .filter(|(_, seen)| !matches!(decided.action, Action::Sleeve | Action::Renew) || !seen.at_fault());
        missing.extend(stay.flat_map(|(_, seen)| seen.close.iter().chain(&seen.odd).cloned()));
    }
    let row = decided.size.and_then(|size| sheet.row(group, size));
    let finished = row.map(|row| row.diameter);
    let words = |size| size_words(size, group, readings);
    let size_shown = decided.size.map_or_else(String::new, words);
    GroupPlan {
        group,
        action: decided.action,
        words: decided.action.words(group, &size_shown),
        size: decided.size,
        size_shown,
        found_shown: words(this.found),
        finished,
        finished_shown: finished.map_or_else(String::new, |range| range_words(range, readings)),
        decided_by: decided.by,
        because: decided.because,
        chosen_because: this.chosen_because(decided.action),
        no_size,
        settled: missing.is_empty()
            && decided.action != Action::Open
            && (decided.size.is_some() || decided.action == Action::Replace),
        missing,
        parts: this
            .seen
            .iter()
            .map(|(part, seen)| this.part(*part, seen, decided.action, decided.size, finished))
            .collect(),
        notices,
    }
}

impl Group<'_> {
    fn label(&self, part: Part) -> String {
        self.readings.engine.label(part)
    }

    fn show(&self, length: Length) -> String {
        in_unit(length, self.readings.unit())
    }

    /// The diameter at which a part cleans up: its worst diameter less the scratch on both sides and the allowance, or
    /// for a bore more by them.
    fn cleans_up_at(&self, condition: &Condition) -> Option<Length> {
        let (smallest, largest, _) = condition.diameter?;
        let away = condition.scratch.times(2, 1) + self.readings.job.sheet.clean_up();
        Some(match self.group.sense() {
            Sense::Least => smallest - away,
            Sense::Most => largest + away,
        })
    }

    /// The part that needs the most, what it cleans up at, and how surely that is known.
    fn worst(&self) -> Option<(Part, Length, Length)> {
        let all = self.seen.iter().filter_map(|(part, seen)| {
            let uncertainty = Length::root_sum_square([seen.diameter?.2, seen.scratch_uncertainty.times(2, 1)]);
            Some((*part, self.cleans_up_at(seen)?, uncertainty))
        });
        match self.group.sense() {
            Sense::Least => all.min_by_key(|(_, cleans, _)| *cleans),
            // The first of several alike, as on journals.
            Sense::Most => all.min_by_key(|(_, cleans, _)| -*cleans),
        }
    }

    fn decide(&self, missing: &mut Vec<Missing>) -> Decided {
        let decided = |action, size, by, because: String| Decided { action, size, by, because };
        if let Some((part, why)) = self.too_deep() {
            let end = match self.group {
                SizeGroup::Bores if self.has_cylinders_of_their_own() => "",
                SizeGroup::Bores if self.is_coated() => " A coated wall is not bored.",
                SizeGroup::Bores => " It takes a sleeve, or a new block.",
                _ => "",
            };
            return decided(Action::Replace, None, Some(part), format!("{why}{end}"));
        }
        let slight = self.slight_wear();
        if let Some((part, why)) = self.damaged().or(self.worn().filter(|_| slight.is_none())) {
            return self.machine(part, &why, missing);
        }
        if let (Some(why), Some((part, _))) = (&self.along, self.seen.first()) {
            return self.machine(*part, why, missing);
        }
        if self.worst().is_none() {
            return decided(Action::Open, None, None, "Nothing has been measured yet.".into());
        }
        if let Some((row, part)) = slight {
            let size = size_text(row.size, self.readings);
            let why = format!(
                "{} is slightly worn: shells {size} undersize take that up without grinding.",
                self.label(part)
            );
            return decided(Action::UndersizeShells, Some(self.found), Some(part), why);
        }
        if self.readings.job.sheet.standard(self.group).is_none() {
            missing.push(self.no_standard());
            return decided(Action::Open, None, None, "The sheet does not say what is right.".into());
        }
        let polish = self.seen.iter().find(|(_, seen)| seen.polish);
        match polish.filter(|_| self.group != SizeGroup::Bores) {
            Some((part, _)) => {
                let why = format!(
                    "{} has light damage that may polish out; size and form are within limits.",
                    self.label(*part)
                );
                decided(Action::Polish, Some(self.found), Some(*part), why)
            }
            None => decided(Action::Keep, Some(self.found), None, "Size and form are within limits.".into()),
        }
    }

    /// What is wrong with the first part that can't stay, as far as a size or a sleeve can mend it.
    fn fault(&self) -> Option<(Part, String)> {
        self.too_deep().or_else(|| self.damaged()).or_else(|| self.worn())
    }

    /// The first part that is damaged deeper than the sheet allows to be machined.
    fn too_deep(&self) -> Option<(Part, String)> {
        self.first(|seen| seen.too_deep.as_deref())
    }

    /// The first part whose form is outside its limits, or that is damaged so that it must be machined.
    fn damaged(&self) -> Option<(Part, String)> {
        self.first(|seen| seen.faults.first().map(String::as_str))
    }

    /// The first part of which there is something to say, with that in a sentence.
    fn first(&self, words: impl Fn(&Condition) -> Option<&str>) -> Option<(Part, String)> {
        self.seen.iter().find_map(|(part, seen)| Some((*part, sentence(&self.label(*part), words(seen)?))))
    }

    /// The first part whose size is worn beyond its limit.
    fn worn(&self) -> Option<(Part, String)> {
        let side = if self.group.sense() == Sense::Least { "below" } else { "beyond" };
        let (part, _) = self.seen.iter().find(|(_, seen)| seen.worn_size)?;
        Some((*part, format!("{} is worn {side} its limit.", self.label(*part))))
    }

    /// The size to machine to, or the end of the road.
    fn machine(&self, part: Part, why: &str, missing: &mut Vec<Missing>) -> Decided {
        let decided = |action, size, by, because: String| Decided { action, size, by: Some(by), because };
        if self.is_coated() {
            return decided(Action::Replace, None, part, format!("{why} {COATED}"));
        }
        let Some((worst, cleans, uncertainty)) = self.worst() else {
            return decided(
                Action::Machine,
                None,
                part,
                format!("{why} The size can’t be said before it is measured."),
            );
        };
        let sense = self.group.sense();
        let unlucky = if sense == Sense::Least { cleans - uncertainty } else { cleans + uncertainty };
        let pick = smallest_size(&self.series, sense, self.found, cleans);
        let sure = smallest_size(&self.series, sense, self.found, unlucky);
        let (name, at) = (self.label(worst), self.show(cleans));
        let size_of =
            |row: Option<&SizeRow>| row.map_or_else(|| "none".into(), |row| size_text(row.size, self.readings));
        if pick != sure {
            let words = format!(
                "it cleans up at {at} ± {}, too close to tell {} from {}: measure it again, or with a surer instrument.",
                self.show(uncertainty),
                size_of(pick),
                size_of(sure)
            );
            missing.push(Missing::reading(worst, name.clone(), words));
        }
        if let Some(row) = pick {
            let because = format!(
                "{why} {name} needs the most: it cleans up at {at}. The smallest size that reaches that is {}.",
                size_text(row.size, self.readings)
            );
            return decided(Action::Machine, Some(row.size), worst, because);
        }
        if self.series.iter().all(|row| row.without_grinding) {
            let words = format!("The sheet lists no sizes for the {}: enter the series.", self.group.label());
            missing.push(Missing::sheet(words));
            return decided(Action::Machine, None, worst, format!("{why} The sheet lists no size to machine to."));
        }
        let end = match self.group {
            SizeGroup::Bores => "no listed size is that large: sleeve it, or replace the block",
            _ => "no listed size is that small: the crankshaft can’t be ground again",
        };
        decided(Action::Replace, None, worst, format!("{why} {name} cleans up at {at}, and {end}."))
    }

    /// The shells for slight wear that take up the wear of every journal below standard, and the journal worn most; none
    /// where a journal is worn further, or nothing is worn (TM 5-4320-300-14: only where grinding is not needed).
    fn slight_wear(&self) -> Option<(&SizeRow, Part)> {
        if self.found != Length::default() {
            return None;
        }
        let worn = self.seen.iter().filter(|(_, seen)| seen.worn_size);
        let (part, smallest) =
            worn.filter_map(|(part, seen)| Some((*part, seen.diameter?.0))).min_by_key(|(_, smallest)| *smallest)?;
        let row = self.series.iter().find(|row| row.without_grinding && row.diameter.0 <= smallest)?;
        Some((row, part))
    }

    /// Whether its walls are plated or coated: a cutter or a hone would go through the layer on which the rings run.
    fn is_coated(&self) -> bool {
        let wall = self.readings.engine.arrangement().construction.bore_wall;
        self.group == SizeGroup::Bores && wall == Some(BoreWall::Coated)
    }

    fn has_cylinders_of_their_own(&self) -> bool {
        self.readings.engine.arrangement().construction.has_cylinders_of_their_own()
    }

    /// Wet liners are renewed whatever is wrong with them (TM 5-3805-281-24-2), barrels where they can’t be bored or a person
    /// chose to.
    fn is_renewed(&self, planned: &Decided, chosen: Option<Work>) -> bool {
        match self.readings.engine.arrangement().construction.cylinders {
            Some(Cylinders::WetLiners) => true,
            Some(Cylinders::Barrels) => {
                chosen == Some(Work::Replace) || planned.action == Action::Replace && chosen != Some(Work::Sleeve)
            }
            _ => false,
        }
    }

    /// Bores that no listed size cleans up are sleeved: that saves the block (common practice). A person may choose to sleeve
    /// them, or to take a new block, where boring would serve as well.
    fn by_way(&self, planned: Decided, open: &mut Vec<Missing>, notices: &mut Vec<String>) -> Decided {
        let chosen = self.readings.job.chosen_ways.get(&self.group.kind());
        let at_fault = self.seen.iter().find(|(_, seen)| seen.at_fault()).map(|(part, _)| *part);
        if self.group != SizeGroup::Bores || at_fault.is_none() {
            return planned;
        }
        let because = self.fault().map_or_else(|| planned.because.clone(), |(_, why)| why);
        let chosen = chosen.map(|chosen| chosen.way);
        if self.is_renewed(&planned, chosen) {
            open.clear();
            return Decided { action: Action::Renew, size: Some(self.found), by: at_fault, because };
        }
        match chosen {
            Some(Work::Sleeve) => {
                open.clear();
                self.sleeved(Decided { by: at_fault, because, ..planned }, open)
            }
            Some(Work::Replace) => {
                open.clear();
                Decided { action: Action::Replace, size: None, by: at_fault, because }
            }
            Some(_) if planned.action == Action::Replace => {
                notices.push(format!("Boring, the chosen way, does not put it right. {}", planned.because));
                self.sleeved(planned, open)
            }
            None if planned.action == Action::Replace => self.sleeved(planned, open),
            _ => planned,
        }
    }

    /// Sleeved bores are finished to the size that the others keep.
    fn sleeved(&self, planned: Decided, open: &mut Vec<Missing>) -> Decided {
        if self.readings.job.sheet.row(self.group, self.found).is_none() {
            open.push(self.no_standard());
        }
        Decided { action: Action::Sleeve, size: Some(self.found), ..planned }
    }

    fn no_standard(&self) -> Missing {
        Missing::sheet(format!("Enter the standard diameter of the {} in the sheet.", self.group.label()))
    }

    /// A person's reason, for the way or for the size.
    fn chosen_because(&self, action: Action) -> Option<String> {
        let job = self.readings.job;
        let way = job.chosen_ways.get(&self.group.kind()).filter(|chosen| match action {
            Action::Sleeve => chosen.way == Work::Sleeve,
            Action::Replace | Action::Renew => chosen.way == Work::Replace,
            _ => false,
        });
        let size = job.chosen_sizes.get(&self.group);
        way.map(|chosen| chosen.reason.clone()).or_else(|| size.map(|chosen| chosen.reason.clone()))
    }

    /// A person's own choice of size goes before the plan's; what speaks against it stays visible.
    fn chosen(&self, planned: Decided, notices: &mut Vec<String>) -> Decided {
        let Some(chosen) = self.readings.job.chosen_sizes.get(&self.group) else { return planned };
        let size = chosen.size.length;
        if planned.action == Action::Renew {
            notices.push(format!("The chosen size {} waits: what is worn is renewed.", size_text(size, self.readings)));
            return planned;
        }
        if self.is_coated() && size != self.found {
            notices.push(format!("The chosen size {} waits: {COATED}", size_text(size, self.readings)));
            return planned;
        }
        let way = self.readings.job.chosen_ways.get(&self.group.kind()).map(|chosen| chosen.way);
        if matches!(
            (planned.action, way),
            (Action::Sleeve, Some(Work::Sleeve)) | (Action::Replace, Some(Work::Replace))
        ) {
            notices.push(format!(
                "The chosen size {} waits: the chosen way leaves no bore to be bored to it.",
                size_text(size, self.readings)
            ));
            return planned;
        }
        if planned.size.is_some_and(|planned| size < planned)
            || matches!(planned.action, Action::Replace | Action::Sleeve)
        {
            notices.push(format!(
                "The chosen size {} does not clean up all {}: {}",
                size_text(size, self.readings),
                self.group.label(),
                planned.because
            ));
        }
        if self.readings.job.sheet.row(self.group, size).is_none() {
            notices.push(format!("The sheet does not list the chosen size {}.", size_text(size, self.readings)));
        }
        let action = if size > self.found { Action::Machine } else { planned.action };
        Decided { action, size: Some(size), because: format!("Chosen by hand: {}", chosen.reason), ..planned }
    }

    /// All parts measure like a size of the series although nobody said that they had been machined before.
    fn earlier_size(&self) -> Option<String> {
        if self.readings.job.found_sizes.contains_key(&self.group) {
            return None;
        }
        let measured: Vec<(Length, Length)> =
            self.seen.iter().filter_map(|(_, seen)| seen.diameter.map(|(low, high, _)| (low, high))).collect();
        // Worn by no more than twice the width of the range.
        let near = |row: &&SizeRow| {
            let (low, high) = row.diameter;
            let worn = (high - low).times(2, 1);
            !row.without_grinding
                && measured.iter().all(|(smallest, largest)| match self.group.sense() {
                    Sense::Least => *largest <= high && *smallest >= low - worn,
                    Sense::Most => *smallest >= low && *largest <= high + worn,
                })
        };
        let row = self.series.iter().filter(|_| measured.len() > 1).find(near)?;
        Some(format!(
            "All {} measure like {}. Read the size stamped on the old {}: if they were machined before, say so.",
            self.group.label(),
            size_words(row.size, self.group, self.readings),
            if self.group == SizeGroup::Bores { "pistons" } else { "shells" }
        ))
    }

    fn part(
        &self,
        part: Part,
        seen: &Condition,
        action: Action,
        size: Option<Length>,
        finished: Option<(Length, Length)>,
    ) -> PartPlan {
        let slight = self.slight_wear().filter(|_| action == Action::UndersizeShells && seen.worn_size);
        let mate = slight.map(|(row, _)| row.size).or(size);
        let take_off = match (action, seen.diameter, finished) {
            (Action::Machine, Some((smallest, largest, _)), Some((low, high))) => {
                let middle = (low + high).times(1, 2);
                Some(if self.group.sense() == Sense::Least { largest - middle } else { middle - smallest })
            }
            _ => None,
        };
        PartPlan {
            part,
            label: self.label(part),
            found_shown: seen
                .diameter
                .map_or_else(String::new, |(low, high, _)| range_words((low, high), self.readings)),
            cleans_up_at: self.cleans_up_at(seen),
            take_off,
            take_off_shown: take_off.map_or_else(String::new, |length| self.show(length)),
            at_fault: seen.at_fault(),
            polish: seen.polish,
            faults: seen.faults.clone(),
            mate,
            mate_shown: mate.map_or_else(String::new, |size| size_words(size, self.group, self.readings)),
        }
    }
}
