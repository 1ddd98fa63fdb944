//! What can hurt the hand, a part or the shop, and where it is said: on the part in the hand, at the work on it, on a
//! screen, in the report. A table ([`ALL`]) whose order is that of gravity; no spot shows more than the two gravest.

mod row;
mod table;

pub use row::{Caution, Screen};
pub use table::ALL;

use crate::engine::PartKind;
use crate::wear::Tag;
use crate::work::Work;

/// What stands above every caution, decision and step of the work: said once on a screen or paper.
pub const GOVERNS: &str = "The engine’s own manual and local rules govern; this is advice, and the mechanic decides.";

/// How many are read at one spot (our judgement): a third is passed over, and the others with it.
pub const AT_ONE_SPOT: usize = 2;

/// What holds of a part in the hand.
pub fn of_part(kind: PartKind, tags: &[Tag]) -> Vec<&'static Caution> {
    let shows = |(tag, kinds): &(Tag, &[PartKind])| tags.contains(tag) && holds(kinds, kind);
    gravest(|row| row.kinds.contains(&kind) || row.tags.iter().any(shows))
}

/// What holds of a work on parts of a kind, without what is said already.
pub fn of_work(kind: PartKind, work: Work, said: &[&'static Caution]) -> Vec<&'static Caution> {
    let is_done = |(own, kinds): &(Work, &[PartKind])| *own == work && holds(kinds, kind);
    gravest(|row| row.works.iter().any(is_done) && !said.contains(&row))
}

/// What holds on a screen.
pub fn of_screen(screen: Screen) -> Vec<&'static Caution> {
    gravest(|row| row.screens.contains(&screen))
}

/// What a customer should know.
pub fn for_customer() -> Vec<&'static Caution> {
    gravest(|row| row.is_for_customer)
}

/// As many of the table as one spot shows, the gravest first.
pub fn gravest(is: impl Fn(&'static Caution) -> bool) -> Vec<&'static Caution> {
    ALL.iter().filter(|row| is(row)).take(AT_ONE_SPOT).collect()
}

fn holds(kinds: &[PartKind], kind: PartKind) -> bool {
    kinds.is_empty() || kinds.contains(&kind)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    /// Rows whose part or work there is not yet, with what will show them.
    const TO_COME: [(&str, &str); 3] = [
        ("air-in-cylinder", "the leak-down test"),
        ("valve-locks", "the valves and their springs"),
        ("burnt-seals", "the seals"),
    ];

    /// Every spot there is, in words, with what it shows.
    fn spots() -> Vec<(String, Vec<&'static Caution>)> {
        let mut all = vec![("for the customer".to_owned(), for_customer())];
        all.extend(Screen::ALL.map(|screen| (format!("{screen:?}"), of_screen(screen))));
        for kind in PartKind::ALL {
            all.push((format!("{kind:?}"), of_part(kind, &[])));
            let tags = kind.row().tags;
            all.extend(tags.iter().map(|tag| (format!("{kind:?}, {tag:?}"), of_part(kind, &[*tag]))));
            all.push((format!("{kind:?}, every tag"), of_part(kind, tags)));
            let works = kind.works().into_iter();
            all.extend(works.map(|work| (format!("{kind:?}, {work:?}"), of_work(kind, work, &[]))));
        }
        all
    }

    #[test]
    fn every_caution_shows_somewhere_or_waits_for_its_part() {
        let shown: BTreeSet<&str> = spots().iter().flat_map(|(_, rows)| rows).map(|row| row.id).collect();
        let hidden: BTreeSet<&str> = ALL.iter().map(|row| row.id).filter(|id| !shown.contains(id)).collect();
        assert_eq!(hidden, TO_COME.map(|(id, _)| id).into());
    }

    #[test]
    fn no_spot_shows_more_than_two() {
        for (spot, rows) in spots() {
            let told: Vec<&str> = rows.iter().map(|row| row.id).collect();
            assert!(told.len() <= 2, "{spot}: {told:?}");
        }
    }

    #[test]
    fn what_names_a_place_can_be_met_there() {
        for row in ALL {
            for (work, kinds) in row.works {
                let can = |kind: &&PartKind| kind.works().contains(work);
                assert!(kinds.iter().all(|kind| can(&kind)), "{}: {work:?} is not done to all of {kinds:?}", row.id);
            }
            for (tag, kinds) in row.tags {
                assert!(kinds.iter().all(|kind| kind.row().tags.contains(tag)), "{}: {tag:?} of {kinds:?}", row.id);
            }
        }
    }

    #[test]
    fn a_row_is_short_and_says_where_it_comes_from() {
        let ids: BTreeSet<&str> = ALL.iter().map(|row| row.id).collect();
        assert_eq!(ids.len(), ALL.len(), "an id stands twice");
        for row in ALL {
            let words = row.line.split_whitespace().count();
            assert!(words <= 25 && row.line.ends_with('.'), "{}: {words} words", row.id);
            assert!(row.about.split_whitespace().count() <= 4 && row.source.ends_with('.'), "{}", row.id);
        }
    }

    #[track_caller]
    fn check(rows: &[&Caution], ids: &[&str]) {
        let told: Vec<&str> = rows.iter().map(|row| row.id).collect();
        assert_eq!(told, ids);
    }

    #[test]
    fn the_gravest_come_first_and_nothing_is_said_twice() {
        let lifting = of_part(PartKind::Crankshaft, &[Tag::Cracks]);
        check(&lifting, &["lifting", "stand"]);
        check(&of_work(PartKind::Crankshaft, Work::CrackTest, &[]), &["lifting", "crack-test"]);
        check(&of_work(PartKind::Crankshaft, Work::CrackTest, &lifting), &["crack-test"]);
        check(&of_work(PartKind::Block, Work::Clean, &[]), &["corrosive-bath", "caustic-on-aluminium"]);
        check(&of_work(PartKind::MainShell, Work::Replace, &[]), &["turned-by-hand"]);
        check(&of_work(PartKind::Rings, Work::Replace, &[]), &[]);
    }
}
