//! Long lists of parts in few words: "all 8 crankpins" instead of eight names.

use crate::assess::PartView;
use crate::engine::{At, Half, PartKind};
use crate::words::plural;

/// The names of some parts of one kind, shortened where they are all of that kind or of one half of it.
pub(super) fn named(some: &[&PartView], all: &[PartView]) -> String {
    let Some(first) = some.first() else { return String::new() };
    let name = plural(first.kind.row().name);
    let all_of = |half: &str| format!("all {} {half}{name}", some.len());
    let of_kind = |half: Option<Half>| {
        all.iter().filter(|view| view.kind == first.kind && (half.is_none() || view.part.at.half() == half)).count()
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
    let numbers: Option<Vec<u8>> = some.iter().map(|view| number(view)).collect();
    match numbers {
        Some(numbers) if some.len() > 2 => {
            let list: Vec<String> = numbers.iter().map(u8::to_string).collect();
            format!("{name} {}", list.join(", "))
        }
        _ => some.iter().map(|view| view.label.as_str()).collect::<Vec<_>>().join("; "),
    }
}

/// The number that tells a part from its likes, where one number does.
fn number(view: &PartView) -> Option<u8> {
    match (view.kind, view.part.at) {
        (PartKind::Crankpin, At::Crankpin(n)) | (_, At::Main(n) | At::Cylinder(n)) => Some(n),
        _ => None,
    }
}
