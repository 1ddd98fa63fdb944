//! Long lists of parts in few words: "all 8 crankpins" instead of eight names.

use crate::assess::Assessment;
use crate::engine::{At, Half, Port};
use crate::view::PartView;
use crate::words::{counted, plural};

/// Parts of which `key` tells the same, together with what it tells, in the order of their first part.
pub(super) fn grouped<'a, Key: PartialEq>(
    views: &[&'a PartView],
    key: impl Fn(&PartView) -> Key,
) -> Vec<(Key, Vec<&'a PartView>)> {
    let mut groups: Vec<(Key, Vec<&PartView>)> = Vec::new();
    for view in views {
        let own = key(view);
        match groups.iter_mut().find(|(key, _)| *key == own) {
            Some((_, group)) => group.push(view),
            None => groups.push((own, vec![view])),
        }
    }
    groups
}

/// Each kind of part in a few words.
pub(super) fn by_kind(views: &[&PartView], assessment: &Assessment) -> Vec<String> {
    grouped(views, |view| view.kind).iter().map(|(_, group)| named(group, assessment)).collect()
}

/// The first few, and how many there are besides.
pub(super) fn some_of(groups: &[String], most: usize) -> String {
    let named: Vec<&str> = groups.iter().take(most).map(String::as_str).collect();
    match groups.len().saturating_sub(most) {
        0 => named.join("; "),
        more => format!("{}; and {}", named.join("; "), counted(more, "other kind of part", "other kinds of part")),
    }
}

/// The names of some parts of one kind, shortened where they are all of that kind or of one half of it.
pub(super) fn named(some: &[&PartView], assessment: &Assessment) -> String {
    let Some(first) = some.first() else { return String::new() };
    let name = plural(&first.kind.row().name.said(assessment.terms));
    let all_of = |half: &str| format!("all {} {half}{name}", some.len());
    let of_kind = |half: Option<Half>| {
        let all = assessment.parts.iter();
        all.filter(|view| view.kind == first.kind && (half.is_none() || view.part.at.half() == half)).count()
    };
    let only_half =
        |half: Half| some.iter().all(|view| view.part.at.half() == Some(half)) && some.len() == of_kind(Some(half));
    if some.len() > 2 {
        if some.len() == of_kind(None) {
            return all_of("");
        }
        if only_half(Half::Upper) {
            return all_of("upper ");
        }
        if only_half(Half::Lower) {
            return all_of("lower ");
        }
    }
    match some.iter().map(|view| place(view)).collect::<Option<Vec<String>>>() {
        Some(places) if some.len() > 2 => format!("{name} {}", places.join(", ")),
        _ => some.iter().map(|view| view.label.as_str()).collect::<Vec<_>>().join("; "),
    }
}

/// Parts of one kind with their kind's name first, as a reader calls them who has no plan: "main journals 3, 4". Others
/// as they are labelled.
pub(super) fn called(some: &[&PartView], assessment: &Assessment) -> String {
    let Some(first) = some.first() else { return String::new() };
    let name = first.kind.row().name.said(assessment.terms);
    match some.iter().map(|view| place(view)).collect::<Option<Vec<String>>>() {
        Some(places) if places.len() > 1 => format!("{} {}", plural(&name), places.join(", ")),
        Some(places) => format!("{name} {}", places.join("")),
        None => some.iter().map(|view| view.label.to_lowercase()).collect::<Vec<_>>().join("; "),
    }
}

/// The few letters that tell a part from its likes: "3", "2 upper", "4 intake".
fn place(view: &PartView) -> Option<String> {
    let of_half = |n: u8, half: Half| format!("{n} {}", if half == Half::Upper { "upper" } else { "lower" });
    match view.part.at {
        At::Main(n) | At::Cylinder(n) | At::Crankpin(n) | At::CamBearing(1, n) => Some(n.to_string()),
        At::MainHalf(n, half) | At::CylinderHalf(n, half) => Some(of_half(n, half)),
        At::Valve(n, Port::Intake, 1) => Some(format!("{n} intake")),
        At::Valve(n, Port::Exhaust, 1) => Some(format!("{n} exhaust")),
        At::Engine | At::ThrustSide(_) | At::Camshaft(_) | At::CamBearing(..) | At::Valve(..) => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::arranged;

    #[track_caller]
    fn reads(parts: &[&str], words: &str) {
        let assessment = assess(&arranged(Arrangement::inline(4)));
        let all = &assessment.parts;
        let some: Vec<&PartView> = all.iter().filter(|view| parts.contains(&view.part.to_string().as_str())).collect();
        assert_eq!(some.len(), parts.len());
        assert_eq!(named(&some, &assessment), words);
    }

    #[test]
    fn lists_are_as_short_as_they_can_be() {
        reads(&["piston.2"], "Piston 2");
        reads(&["piston.1", "piston.3"], "Piston 1; Piston 3");
        reads(&["piston.1", "piston.3", "piston.4"], "pistons 1, 3, 4");
        reads(&["crankpin.1", "crankpin.2", "crankpin.3", "crankpin.4"], "all 4 crankpins");
        reads(
            &["rod-shell.1.upper", "rod-shell.2.upper", "rod-shell.3.upper", "rod-shell.4.upper"],
            "all 4 upper rod bearing shells",
        );
        reads(
            &["rod-shell.1.upper", "rod-shell.2.upper", "rod-shell.3.lower"],
            "rod bearing shells 1 upper, 2 upper, 3 lower",
        );
        reads(
            &["tappet.1.intake.1", "tappet.1.exhaust.1", "tappet.4.exhaust.1"],
            "tappets 1 intake, 1 exhaust, 4 exhaust",
        );
    }
}
