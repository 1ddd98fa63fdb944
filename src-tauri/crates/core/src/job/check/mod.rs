//! The border of the log: a change from outside is held against the job before it is appended.

mod reading;

use super::refused::{MAX_MARK, MAX_NAME, MAX_PARTS_OF_ITEM, MAX_PHOTOS_PER_PART, MAX_TEXT, Refused, check_length};
use super::{Asked, Change, ItemKey, Job};
use crate::engine::{Engine, Part, PartKind};
use crate::work::Work;

impl Job {
    /// Whether a change fits this job.
    ///
    /// # Errors
    /// [`Refused`] with a sentence for the person who made it.
    pub fn check(&self, change: &Change) -> Result<(), Refused> {
        self.check_open(change)?;
        if let Some(part) = change.part() {
            self.check_part(part)?;
        }
        match change {
            Change::Fill { text, .. } | Change::Remark { text, .. } => check_length("The text", text, MAX_TEXT),
            Change::Arrange { arrangement } => arrangement.check().map_err(|impossible| Refused(impossible.0)),
            Change::NoteMark { place, mark } => {
                let arrangement = self.arrangement.as_ref().ok_or_else(no_arrangement)?;
                if !super::MarkPlace::all(arrangement).contains(place) {
                    return Err(Refused(format!("This engine has no {}.", place.label().to_lowercase())));
                }
                if mark.text.trim().is_empty() {
                    return Err(Refused(
                        "The mark is empty: enter what is stamped there, or what you marked it with.".into(),
                    ));
                }
                check_length("The mark", &mark.text, MAX_MARK)
            }
            Change::AddPhoto { part, .. } => {
                let held = self.parts.get(part).map_or(0, |record| record.photos.len());
                if held >= MAX_PHOTOS_PER_PART {
                    return Err(Refused(format!(
                        "This part has {held} photos already, the most it can hold: take one off first."
                    )));
                }
                Ok(())
            }
            Change::MarkUp { part, photo, markup } => super::markup::check_markup(self, *part, photo, markup),
            Change::Tag { part, tag, zones, .. } => {
                let row = part.kind.row();
                if !row.tags.contains(tag) {
                    return Err(Refused(format!("A {} can't be tagged “{}”.", row.name, tag.row().name)));
                }
                match zones.iter().find(|zone| !row.zones.zones().contains(zone)) {
                    Some(zone) => Err(Refused(format!("A {} has no zone “{}”.", row.name, zone.label()))),
                    None => Ok(()),
                }
            }
            Change::Overrule { part, outcome, reason } => {
                let row = part.kind.row();
                if !row.outcomes.contains(outcome) {
                    let possible: Vec<&str> = row.outcomes.iter().map(|outcome| outcome.words()).collect();
                    return Err(Refused(format!(
                        "“{}” is not possible for a {}: choose {}.",
                        outcome.words(),
                        row.name,
                        possible.join(", ")
                    )));
                }
                if reason.trim().is_empty() {
                    return Err(Refused("The reason is empty: say why you decide otherwise.".into()));
                }
                check_length("The reason", reason, MAX_TEXT)
            }
            Change::NoteInstrument { instrument } => reading::check_instrument(instrument),
            Change::UseSheet { sheet } => {
                reading::check_head(&sheet.head)?;
                sheet.check().map_err(Refused)
            }
            Change::HeadSheet { head } => reading::check_head(head),
            Change::StateLine { line } => {
                check_length("The source", &line.source, MAX_NAME)?;
                check_length("The name", &line.of.name, MAX_NAME)?;
                let mut sheet = self.sheet.clone();
                sheet.state((**line).clone());
                sheet.check().map_err(Refused)
            }
            Change::StateUndersize { undersize } => self.sheet.check_undersize(undersize).map_err(Refused),
            Change::StateOversize { oversize } => self.sheet.check_oversize(oversize).map_err(Refused),
            Change::Measure { reading } => reading::check_reading(self, reading),
            Change::FoundSize { size, .. } => reading::check_size(size.as_ref()),
            Change::ChooseSize { size, reason, .. } => {
                reading::check_size(size.as_ref())?;
                if size.is_some() && reason.trim().is_empty() {
                    return Err(Refused("The reason is empty: say why this size is chosen.".into()));
                }
                check_length("The reason", reason, MAX_TEXT)
            }
            Change::ChooseWay { kind, way, reason } => {
                check_way(*kind, *way)?;
                if way.is_some() && reason.trim().is_empty() {
                    return Err(Refused("The reason is empty: say why this way is chosen.".into()));
                }
                check_length("The reason", reason, MAX_TEXT)
            }
            Change::UsePrices { prices } => prices.check().map_err(Refused),
            Change::SetPrice { price } => price.check().map_err(Refused),
            Change::NoteEstimate { lines } => {
                const MOST_LINES: usize = 500;
                if lines.len() > MOST_LINES {
                    return Err(Refused(format!("An estimate of {} lines: {MOST_LINES} at most.", lines.len())));
                }
                lines.iter().try_for_each(|line| {
                    check_length("The line", &line.what, MAX_NAME)?;
                    match line.net.is_price() {
                        true => Ok(()),
                        false => Err(Refused(format!("“{}”: an amount must be nought or more.", line.what))),
                    }
                })
            }
            Change::Tick { item, tick } => {
                check_asked(item)?;
                check_length("The date", &tick.date, MAX_NAME)?;
                check_length("The part number", &tick.part_number, MAX_NAME)?;
                check_length("The note", &tick.note, MAX_TEXT)
            }
            Change::AddItem { item } => {
                if item.what.trim().is_empty() || item.quantity == 0 {
                    return Err(Refused("Say what is to be done or ordered, and how many of it.".into()));
                }
                check_length("The item", &item.what, MAX_NAME)?;
                check_length("The reason", &item.because, MAX_TEXT)
            }
            Change::AnswerProposal { answer } => {
                check_length("The name", &answer.name, MAX_NAME)?;
                check_length("The way", &answer.way, MAX_NAME)?;
                super::approval::check_answer(answer, &self.proposals).map_err(Refused)
            }
            // Whether it is what follows from the job can only be said above: `assess::check`.
            Change::Propose { .. }
            | Change::Recall { .. }
            | Change::Close { .. }
            | Change::DropLine { .. }
            | Change::DropUndersize { .. }
            | Change::DropOversize { .. }
            | Change::RemovePhoto { .. }
            | Change::Untag { .. }
            | Change::Clean { .. }
            | Change::FollowRules { .. }
            | Change::Undo { .. } => Ok(()),
        }
    }

    /// A job that is closed stays as it was handed over, until it is opened again.
    fn check_open(&self, change: &Change) -> Result<(), Refused> {
        let opens = match change {
            Change::Close { .. } => true,
            Change::Undo { edit } => self.closed == Some(*edit),
            _ => false,
        };
        if self.closed.is_some() && !opens {
            return Err(Refused(
                "This job is closed: open it again, under “Hand over”, before anything is changed.".into(),
            ));
        }
        Ok(())
    }

    fn check_part(&self, part: Part) -> Result<(), Refused> {
        let arrangement = self.arrangement.clone().ok_or_else(no_arrangement)?;
        let engine = Engine::new(arrangement).map_err(|impossible| Refused(impossible.0))?;
        engine.require(part).map(|_| ()).map_err(|missing| Refused(missing.0))
    }
}

/// Whether such an item can be: what it is called and asks for may go with the next reading, so no more is held against it.
fn check_asked(asked: &Asked) -> Result<(), Refused> {
    check_length("The item", &asked.words, MAX_TEXT)?;
    match &asked.key {
        ItemKey::Order { parts, .. } if parts.len() > MAX_PARTS_OF_ITEM => {
            Err(Refused(format!("An item of {} parts: {MAX_PARTS_OF_ITEM} at most.", parts.len())))
        }
        ItemKey::PutRight { cause, check } => {
            check_length("The cause", cause, MAX_NAME)?;
            check_length("The check", check, MAX_NAME)
        }
        ItemKey::Former { words, .. } => check_length("The item", words, MAX_TEXT),
        _ => Ok(()),
    }
}

fn check_way(kind: PartKind, way: Option<Work>) -> Result<(), Refused> {
    let ways = kind.ways();
    let name = kind.row().name;
    match way {
        _ if ways.is_empty() => Err(Refused(format!("There is only one way for a {name}: nothing to choose."))),
        Some(way) if !ways.contains(&way) => {
            let possible: Vec<&str> = ways.iter().map(|way| kind.way_words(*way)).collect();
            Err(Refused(format!(
                "“{}” is no way to choose for a {name}: choose {}.",
                way.words(),
                possible.join("; or ")
            )))
        }
        _ => Ok(()),
    }
}

fn no_arrangement() -> Refused {
    Refused("The engine has no arrangement yet: enter its layout first.".into())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::Arrangement;
    use crate::job::testing::{arranged, edit};

    fn job() -> Job {
        arranged(Arrangement::inline(4))
    }

    #[track_caller]
    fn refused(json: serde_json::Value, because: &str) {
        let change: Change = serde_json::from_value(json).unwrap();
        assert_eq!(job().check(&change).unwrap_err().to_string(), because);
    }

    #[test]
    fn what_does_not_fit_is_refused_with_a_sentence() {
        use serde_json::json;
        refused(
            json!({"do": "clean", "part": "piston.5"}),
            "This engine has no piston 5: its arrangement is in-line 4, 5 mains, thrust on main 3.",
        );
        refused(
            json!({"do": "tag", "part": "piston.1", "tag": "copper-showing", "grade": 1}),
            "A piston can't be tagged “copper showing”.",
        );
        refused(
            json!({"do": "tag", "part": "piston.1", "tag": "scuffing", "grade": 1, "zones": ["nose"]}),
            "A piston has no zone “nose”.",
        );
        refused(
            json!({"do": "overrule", "part": "main-shell.1.upper", "outcome": "put-back", "reason": "hurry"}),
            "“put back” is not possible for a main bearing shell: choose replace.",
        );
        refused(
            json!({"do": "choose-way", "kind": "bore", "way": "weld-up", "reason": "hurry"}),
            "“weld up and regrind” is no way to choose for a cylinder bore: choose bore all to the next size, with new pistons; or sleeve those that need it, and keep the pistons that are sound; or a new block, with new pistons.",
        );
        refused(
            json!({"do": "choose-way", "kind": "piston", "way": "replace", "reason": "hurry"}),
            "There is only one way for a piston: nothing to choose.",
        );
        refused(
            json!({"do": "choose-way", "kind": "camshaft", "way": "weld-up", "reason": " "}),
            "The reason is empty: say why this way is chosen.",
        );
        refused(
            json!({"do": "overrule", "part": "piston.1", "outcome": "put-back", "reason": " "}),
            "The reason is empty: say why you decide otherwise.",
        );
        refused(
            json!({"do": "note-mark", "place": {"main-cap": 6}, "mark": {"text": "6", "marking": "found", "side": null, "points": null}}),
            "This engine has no main cap 6.",
        );
        refused(
            json!({"do": "fill", "field": "customer", "text": "x".repeat(10_001)}),
            "The text has 10001 characters: 10000 at most.",
        );
    }

    #[test]
    fn a_closed_job_stays_as_it_is_until_it_is_opened_again() {
        let clean = Change::Clean { part: "piston.1".parse().unwrap() };
        let mut job = job();
        job.apply(edit(7), &Change::Close { closed: true });
        for change in [&clean, &Change::Undo { edit: edit(3) }] {
            assert!(job.check(change).unwrap_err().to_string().starts_with("This job is closed: open it again"));
        }
        for change in [Change::Undo { edit: edit(7) }, Change::Close { closed: false }] {
            assert_eq!(job.check(&change), Ok(()));
        }
        job.apply(edit(8), &Change::Close { closed: false });
        assert_eq!(job.check(&clean), Ok(()));
    }

    #[test]
    fn parts_need_an_arrangement_first() {
        let change = Change::Clean { part: "piston.1".parse().unwrap() };
        assert_eq!(
            Job::default().check(&change).unwrap_err().to_string(),
            "The engine has no arrangement yet: enter its layout first."
        );
    }
}
