//! What a person did to one part: photos, tags, remarks, a decision of their own.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

use super::known::{Job, Overrule, TagRecord};
use super::markup::MOST_ON_A_PHOTO;
use super::refused::{MAX_PHOTOS_PER_PART, MAX_TEXT, Refused, check_length};
use super::{Drawn, EditId, Markup, PhotoId};
use crate::engine::{Part, PartKind};
use crate::sheet::{Journals, MAX_MARK};
use crate::wear::{Grade, Tag, Zone};
use crate::words::{a, capitalised, first_words};
use crate::work::Outcome;

/// What a person did to one part: photos, tags, remarks, a decision of their own.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(tag = "do", rename_all = "kebab-case", deny_unknown_fields)]
pub enum OnPart {
    /// Added a photo to a part.
    AddPhoto {
        /// The part.
        part: Part,
        /// The photo's content.
        photo: PhotoId,
        /// How sharp it is, the higher the sharper; not said by those who have not measured it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "schema", ts(optional))]
        sharpness: Option<u16>,
    },
    /// Took a photo off a part; the picture itself is kept.
    RemovePhoto {
        /// The part.
        part: Part,
        /// The photo's content.
        photo: PhotoId,
    },
    /// Drew something over a photo. Undoing the edit takes it off again.
    MarkUp {
        /// The part.
        part: Part,
        /// The photo's content.
        photo: PhotoId,
        /// What was drawn.
        markup: Box<Markup>,
    },
    /// Picked a photo for the customer, or took it off the picks again; the picture itself stays where it is.
    ShowPhoto {
        /// The part.
        part: Part,
        /// The photo's content.
        photo: PhotoId,
        /// Whether it is shown.
        shown: bool,
    },
    /// Tagged a part, or changed the grade or zones of its tag. It is then no longer *clean*.
    Tag {
        /// The part.
        part: Part,
        /// What was seen.
        tag: Tag,
        /// How bad.
        grade: Grade,
        /// Where; may be empty.
        #[serde(default)]
        zones: BTreeSet<Zone>,
    },
    /// Took a tag off.
    Untag {
        /// The part.
        part: Part,
        /// The tag.
        tag: Tag,
    },
    /// Looked at a part and found it clean; its tags go.
    Clean {
        /// The part.
        part: Part,
    },
    /// Looked at the back of a shell and found it clean, whereupon what was seen there goes; or has not after all.
    CleanBack {
        /// The shell.
        part: Part,
        /// Whether it is.
        clean: bool,
    },
    /// Wrote a remark on a part; empty text clears it.
    Remark {
        /// The part.
        part: Part,
        /// What was written.
        text: String,
    },
    /// Read the mark by which shells are graded, on the housing or the journal; empty text clears it.
    ReadMark {
        /// The housing, rod or journal that it is stamped for.
        part: Part,
        /// The mark.
        mark: String,
    },
    /// Noted that the cap of a main bore is renewed, or is not after all: lost, broken or not of this block.
    RenewCap {
        /// The main bore.
        part: Part,
        /// Whether it is.
        renewed: bool,
    },
    /// Decided otherwise than the rules.
    Overrule {
        /// The part.
        part: Part,
        /// What is to be done.
        outcome: Outcome,
        /// Why.
        reason: String,
    },
    /// Went back to the rules' view.
    FollowRules {
        /// The part.
        part: Part,
    },
}

/// Photos that a mechanic can pick for the customer's page.
pub const MOST_SHOWN_PHOTOS: usize = 3;

impl OnPart {
    /// The part that it is about.
    pub fn part(&self) -> Part {
        match self {
            Self::AddPhoto { part, .. }
            | Self::RemovePhoto { part, .. }
            | Self::MarkUp { part, .. }
            | Self::ShowPhoto { part, .. }
            | Self::Tag { part, .. }
            | Self::Untag { part, .. }
            | Self::Clean { part }
            | Self::CleanBack { part, .. }
            | Self::Remark { part, .. }
            | Self::ReadMark { part, .. }
            | Self::RenewCap { part, .. }
            | Self::Overrule { part, .. }
            | Self::FollowRules { part } => *part,
        }
    }

    /// What stands in `do` of each form.
    pub(super) const DOES: &[&str] = &[
        "add-photo",
        "remove-photo",
        "mark-up",
        "show-photo",
        "tag",
        "untag",
        "clean",
        "clean-back",
        "remark",
        "read-mark",
        "renew-cap",
        "overrule",
        "follow-rules",
    ];

    /// Whether it fits the job: see [`Job::check`].
    pub(super) fn check(&self, job: &Job) -> Result<(), Refused> {
        match self {
            Self::Remark { text, .. } => check_length("The text", text, MAX_TEXT),
            Self::ReadMark { part, mark } => {
                if !Journals::ALL.iter().any(|journals| journals.are_marked_on(part.kind)) {
                    let name = part.kind.row().name.said(job.terms);
                    return Err(Refused(format!(
                        "Shells are graded by marks of block, rods and crankshaft, not of a {name}."
                    )));
                }
                check_length("The mark", mark, MAX_MARK)
            }
            Self::RenewCap { part, .. } if part.kind != PartKind::HousingBore => {
                Err(Refused(format!("A {} has no cap of its own.", part.kind.row().name.said(job.terms))))
            }
            Self::CleanBack { part, .. } if !part.kind.has_back() => {
                Err(Refused(format!("A {} has no back of its own.", part.kind.row().name.said(job.terms))))
            }
            Self::AddPhoto { part, .. } => {
                let held = job.parts.get(part).map_or(0, |record| record.photos.len());
                if held >= MAX_PHOTOS_PER_PART {
                    return Err(Refused(format!(
                        "This part has {held} photos already, the most it can hold: remove one first."
                    )));
                }
                Ok(())
            }
            Self::MarkUp { part, photo, markup } => check_markup(job, *part, photo, markup),
            Self::ShowPhoto { part, photo, shown: true } => check_shown(job, *part, photo),
            Self::Tag { part, tag, zones, .. } => {
                let row = part.kind.row();
                let name = row.name.said(job.terms);
                if !row.tags.contains(tag) {
                    return Err(Refused(format!("{} can't be tagged “{}”.", capitalised(&a(&name)), tag.row().name)));
                }
                match zones.iter().find(|zone| !row.zones.zones().contains(zone)) {
                    Some(zone) => Err(Refused(format!("{} has no zone “{}”.", capitalised(&a(&name)), zone.label()))),
                    None => Ok(()),
                }
            }
            Self::Overrule { part, .. } if part.kind.is_outside() => {
                let name = part.kind.row().name.said(job.terms);
                Err(Refused(format!("Nothing is decided about {}: it is only recorded.", a(&name))))
            }
            Self::Overrule { part, outcome, reason } => {
                let row = part.kind.row();
                if !row.outcomes.contains(outcome) {
                    let possible: Vec<&str> = row.outcomes.iter().map(|outcome| outcome.words()).collect();
                    return Err(Refused(format!(
                        "“{}” is not possible for {}: choose {}.",
                        outcome.words(),
                        a(&row.name.said(job.terms)),
                        possible.join(", ")
                    )));
                }
                if reason.trim().is_empty() {
                    return Err(Refused("The reason is empty: say why you decide otherwise.".into()));
                }
                check_length("The reason", reason, MAX_TEXT)
            }
            Self::RemovePhoto { .. }
            | Self::ShowPhoto { .. }
            | Self::Untag { .. }
            | Self::Clean { .. }
            | Self::CleanBack { .. }
            | Self::RenewCap { .. }
            | Self::FollowRules { .. } => Ok(()),
        }
    }

    /// Whether it has an effect: see [`Job::fits`].
    pub(super) fn fits(&self, job: &Job) -> Result<(), Refused> {
        self.check(job)
    }

    /// What it does to the job: see [`Job::apply`].
    pub(super) fn apply(&self, id: EditId, job: &mut Job) {
        match self {
            Self::AddPhoto { part, photo, sharpness } => {
                job.sharpness.extend(sharpness.map(|sharpness| (photo.clone(), sharpness)));
                let photos = &mut job.parts.entry(*part).or_default().photos;
                if !photos.contains(photo) {
                    photos.push(photo.clone());
                }
            }
            Self::RemovePhoto { part, photo } => {
                job.parts.entry(*part).or_default().photos.retain(|kept| kept != photo);
                job.shown_photos.retain(|shown| *shown != (*part, photo.clone()));
            }
            Self::ShowPhoto { part, photo, shown } => {
                job.shown_photos.retain(|shown| *shown != (*part, photo.clone()));
                if *shown {
                    job.shown_photos.push((*part, photo.clone()));
                }
            }
            Self::MarkUp { part, photo, markup } => {
                let drawn = job.parts.entry(*part).or_default().drawn.entry(photo.clone()).or_default();
                drawn.push(Drawn { edit: id, markup: (**markup).clone() });
            }
            Self::Tag { part, tag, grade, zones } => {
                let record = job.parts.entry(*part).or_default();
                record.clean = false;
                record.back_clean &= *tag != Tag::BrightBack && !zones.contains(&Zone::Back);
                record.tags.insert(*tag, TagRecord { grade: *grade, zones: zones.clone() });
            }
            Self::Untag { part, tag } => {
                job.parts.entry(*part).or_default().tags.remove(tag);
            }
            Self::Clean { part } => {
                let record = job.parts.entry(*part).or_default();
                record.tags.clear();
                record.clean = true;
            }
            Self::CleanBack { part, clean } => {
                let record = job.parts.entry(*part).or_default();
                record.back_clean = *clean;
                if *clean {
                    // What lay at the back alone is gone with it.
                    record.tags.retain(|tag, seen| {
                        let was_there = seen.zones.remove(&Zone::Back);
                        *tag != Tag::BrightBack && !(was_there && seen.zones.is_empty())
                    });
                }
            }
            Self::Remark { part, text } => job.parts.entry(*part).or_default().note = text.trim().to_owned(),
            Self::ReadMark { part, mark } => {
                job.grade_marks.remove(part);
                if !mark.trim().is_empty() {
                    job.grade_marks.insert(*part, mark.trim().to_owned());
                }
            }
            Self::RenewCap { part, renewed: true } => {
                job.renewed_caps.insert(*part);
            }
            Self::RenewCap { part, renewed: false } => {
                job.renewed_caps.remove(part);
            }
            Self::Overrule { part, outcome, reason } => {
                job.parts.entry(*part).or_default().overrule =
                    Some(Overrule { outcome: *outcome, reason: reason.trim().to_owned() });
            }
            Self::FollowRules { part } => job.parts.entry(*part).or_default().overrule = None,
        }
    }

    /// What was done, in words: see [`Edit::sentence`](super::Edit::sentence).
    pub(super) fn sentence(&self, job: &Job) -> String {
        match self {
            Self::AddPhoto { part, .. } => format!("{}: photo added", job.label(*part)),
            Self::RemovePhoto { part, .. } => format!("{}: photo removed", job.label(*part)),
            Self::ShowPhoto { part, shown: true, .. } => format!("{}: photo picked for the customer", job.label(*part)),
            Self::ShowPhoto { part, .. } => format!("{}: photo not picked after all", job.label(*part)),
            Self::MarkUp { part, markup, .. } if markup.note().is_empty() => {
                format!("{}: {} drawn on a photo", job.label(*part), markup.words())
            }
            Self::MarkUp { part, markup, .. } => {
                format!("{}: {} drawn on a photo: {}", job.label(*part), markup.words(), first_words(markup.note()))
            }
            Self::Tag { part, tag, grade, zones } => {
                let places: Vec<&str> = zones.iter().copied().map(Zone::label).collect();
                let places = if places.is_empty() { String::new() } else { format!(" ({})", places.join("; ")) };
                format!("{}: {}, grade {}{places}", job.label(*part), tag.row().name, grade.number())
            }
            Self::Untag { part, tag } => format!("{}: {} removed", job.label(*part), tag.row().name),
            Self::Clean { part } => format!("{}: looked at and clean", job.label(*part)),
            Self::CleanBack { part, clean: true } => format!("{}: back looked at and clean", job.label(*part)),
            Self::CleanBack { part, clean: false } => format!("{}: back not looked at after all", job.label(*part)),
            Self::ReadMark { part, mark } if mark.trim().is_empty() => {
                format!("{}: grade mark cleared", job.label(*part))
            }
            Self::RenewCap { part, renewed } => {
                let is = if *renewed { "is renewed" } else { "stays" };
                format!("{}: its cap {is}", job.label(*part))
            }
            Self::ReadMark { part, mark } => format!("{}: grade mark {}", job.label(*part), first_words(mark)),
            Self::Remark { part, text } if text.trim().is_empty() => format!("{}: remark cleared", job.label(*part)),
            Self::Remark { part, text } => format!("{}: {}", job.label(*part), first_words(text)),
            Self::Overrule { part, outcome, .. } => {
                format!("{}: decided “{}” against the rules", job.label(*part), outcome.words())
            }
            Self::FollowRules { part } => format!("{}: back to the rules’ view", job.label(*part)),
        }
    }
}

/// Refuses a pick too many, or of a photo that the part does not have.
fn check_shown(job: &Job, part: Part, photo: &PhotoId) -> Result<(), Refused> {
    if !job.parts.get(&part).is_some_and(|record| record.photos.contains(photo)) {
        return Err(Refused("This part has no such photo to show: add the photo first.".into()));
    }
    let others = job.shown_photos.iter().filter(|(own, shown)| *own != part || shown != photo).count();
    if others >= MOST_SHOWN_PHOTOS {
        return Err(Refused(format!(
            "{MOST_SHOWN_PHOTOS} photos are picked for the customer, the most that are shown: remove one first."
        )));
    }
    Ok(())
}

/// Refuses what can't be drawn on this photo of this part.
fn check_markup(job: &Job, part: Part, photo: &PhotoId, markup: &Markup) -> Result<(), Refused> {
    let record = job.parts.get(&part).filter(|record| record.photos.contains(photo));
    let Some(record) = record else {
        return Err(Refused("This part has no such photo to draw on: add the photo first.".into()));
    };
    if record.drawn.get(photo).map_or(0, Vec::len) >= MOST_ON_A_PHOTO {
        return Err(Refused(format!("{MOST_ON_A_PHOTO} things are drawn on this photo: remove one first.")));
    }
    markup.check()
}

#[cfg(test)]
mod tests {
    use super::super::testing::{arrange, job_of};
    use super::*;
    use crate::engine::Arrangement;
    use serde_json::{Value, json};

    fn shell(changes: &[Value]) -> super::super::PartRecord {
        let job = job_of(&[&[arrange(&Arrangement::inline(4))], changes].concat());
        job.parts.get(&"rod-shell.2.upper".parse().unwrap()).cloned().unwrap_or_default()
    }

    fn back(clean: bool) -> Value {
        json!({ "do": "clean-back", "part": "rod-shell.2.upper", "clean": clean })
    }

    fn tag(tag: &str, zones: &[&str]) -> Value {
        json!({ "do": "tag", "part": "rod-shell.2.upper", "tag": tag, "grade": 2, "zones": zones })
    }

    /// A clean face says nothing of the back, nor the other way round.
    #[test]
    fn face_and_back_are_two_looks() {
        let face = json!({ "do": "clean", "part": "rod-shell.2.upper" });
        let record = shell(&[face]);
        assert!(record.looked_at() && !record.back_looked_at());
        let record = shell(&[back(true)]);
        assert!(!record.looked_at() && record.back_looked_at());
        assert!(!shell(&[back(true), back(false)]).back_looked_at());
    }

    #[test]
    fn damage_at_the_back_and_a_clean_back_exclude_each_other() {
        assert!(!shell(&[back(true), tag("bright-back", &[])]).back_clean);
        assert!(!shell(&[back(true), tag("hot-spot", &["back"])]).back_clean);
        assert!(shell(&[back(true), tag("hot-spot", &["middle-crown"])]).back_clean);
        let marked = [tag("bright-back", &[]), tag("pitting", &["back"]), tag("hot-spot", &["middle-crown", "back"])];
        let record = shell(&[&marked[..], &[back(true)]].concat());
        assert!(record.back_clean && record.tags.len() == 1, "{:?}", record.tags);
        assert_eq!(record.tags[&Tag::HotSpot].zones, BTreeSet::from([Zone::MiddleCrown]));
    }

    #[test]
    fn what_has_no_back_has_none_to_look_at() {
        let job = job_of(&[arrange(&Arrangement::inline(4))]);
        let part: Part = "piston.1".parse().unwrap();
        let refused = OnPart::CleanBack { part, clean: true }.check(&job).unwrap_err();
        assert_eq!(refused.0, "A piston has no back of its own.");
    }
}
