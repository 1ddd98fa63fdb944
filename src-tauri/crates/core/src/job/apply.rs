//! What each change does to a job. Total: a change that no longer fits (its part has gone with a corrected
//! arrangement) is still recorded; the assessment leaves out what the engine lacks.

use super::{Change, ChosenSize, ChosenWay, Drawn, EditId, Job, Overrule, Proposed, TagRecord, Taken};

impl Job {
    /// Adds what a change does. [`Job::fold`] is the way to a whole job: it also settles what was undone.
    pub fn apply(&mut self, id: EditId, change: &Change) {
        match change {
            Change::Fill { field, text } if text.trim().is_empty() => {
                self.texts.remove(field);
            }
            Change::Fill { field, text } => {
                self.texts.insert(*field, text.clone());
            }
            Change::Recall { fact, answer } => {
                self.history.insert(*fact, *answer);
            }
            Change::Arrange { arrangement } => self.arrangement = Some(arrangement.clone()),
            Change::NoteMark { place, mark } => {
                self.marks.insert(*place, mark.clone());
            }
            Change::AddPhoto { part, photo } => {
                let photos = &mut self.parts.entry(*part).or_default().photos;
                if !photos.contains(photo) {
                    photos.push(photo.clone());
                }
            }
            Change::RemovePhoto { part, photo } => {
                self.parts.entry(*part).or_default().photos.retain(|kept| kept != photo);
            }
            Change::MarkUp { part, photo, markup } => {
                let drawn = self.parts.entry(*part).or_default().drawn.entry(photo.clone()).or_default();
                drawn.push(Drawn { edit: id, markup: (**markup).clone() });
            }
            Change::Tag { part, tag, grade, zones } => {
                let record = self.parts.entry(*part).or_default();
                record.clean = false;
                record.tags.insert(*tag, TagRecord { grade: *grade, zones: zones.clone() });
            }
            Change::Untag { part, tag } => {
                self.parts.entry(*part).or_default().tags.remove(tag);
            }
            Change::Clean { part } => {
                let record = self.parts.entry(*part).or_default();
                record.tags.clear();
                record.clean = true;
            }
            Change::Remark { part, text } => self.parts.entry(*part).or_default().note = text.trim().to_owned(),
            Change::Overrule { part, outcome, reason } => {
                self.parts.entry(*part).or_default().overrule =
                    Some(Overrule { outcome: *outcome, reason: reason.trim().to_owned() });
            }
            Change::FollowRules { part } => self.parts.entry(*part).or_default().overrule = None,
            Change::NoteInstrument { instrument } => {
                self.instruments.insert(instrument.id.clone(), (**instrument).clone());
            }
            Change::UseSheet { sheet } => self.sheet = (**sheet).clone(),
            Change::HeadSheet { head } => self.sheet.head = (**head).clone(),
            Change::StateLine { line } => self.sheet.state((**line).clone()),
            Change::DropLine { of } => self.sheet.lines.retain(|line| line.of != **of),
            Change::StateUndersize { undersize } => self.sheet.state_undersize((**undersize).clone()),
            Change::DropUndersize { journals, size } => {
                self.sheet.undersizes.retain(|row| row.journals != *journals || row.size.length != size.length);
            }
            Change::StateOversize { oversize } => self.sheet.state_oversize((**oversize).clone()),
            Change::DropOversize { size } => self.sheet.oversizes.retain(|row| row.size.length != size.length),
            Change::Measure { reading } => self.readings.push(Taken { edit: id, reading: (**reading).clone() }),
            Change::FoundSize { group, size: Some(size) } => {
                self.found_sizes.insert(*group, size.clone());
            }
            Change::FoundSize { group, size: None } => {
                self.found_sizes.remove(group);
            }
            Change::ChooseSize { group, size: Some(size), reason } => {
                let chosen = ChosenSize { size: size.clone(), reason: reason.trim().to_owned() };
                self.chosen_sizes.insert(*group, chosen);
            }
            Change::ChooseSize { group, size: None, .. } => {
                self.chosen_sizes.remove(group);
            }
            Change::ChooseWay { kind, way: Some(way), reason } => {
                self.chosen_ways.insert(*kind, ChosenWay { way: *way, reason: reason.trim().to_owned() });
            }
            Change::ChooseWay { kind, way: None, .. } => {
                self.chosen_ways.remove(kind);
            }
            Change::UsePrices { prices } => self.prices = (**prices).clone(),
            Change::SetPrice { price } => self.prices.enter(*price),
            Change::NoteEstimate { lines } => self.estimate.clone_from(lines),
            Change::Tick { item, tick } => self.tick(item, tick),
            Change::AddItem { item } => self.own_items.push((id, item.clone())),
            Change::Propose { quote } => {
                self.proposals.push(Proposed { edit: id, quote: (**quote).clone(), answer: None });
            }
            Change::AnswerProposal { answer } => {
                if let Some(proposed) = self.proposals.iter_mut().find(|proposed| proposed.edit == answer.proposal) {
                    proposed.answer = Some((**answer).clone());
                }
            }
            Change::Close { closed } => self.closed = closed.then_some(id),
            // Settled before the fold begins.
            Change::Undo { .. } => {}
        }
    }
}
