//! What a cause asks for on pieces that are renewed: it is not done, and it is said why.

use crate::cause::CauseReport;
use crate::engine::PartKind;
use crate::view::PartView;
use crate::words::{Terms, plural};
use crate::work::Outcome;

/// Notes with everything that the causes ask for on pieces that are all renewed that it is not needed.
pub(crate) fn strike_moot(causes: &mut CauseReport, parts: &[PartView], terms: Terms) {
    let of_kind = |kind: &PartKind| parts.iter().filter(|view| view.kind == *kind).count();
    let is_renewed = |kind: &PartKind| {
        let mut of_kind = parts.iter().filter(|view| view.kind == *kind).peekable();
        of_kind.peek().is_some() && of_kind.all(|view| view.decision.outcome == Outcome::Replace)
    };
    let name = |kind: &PartKind| {
        let name = kind.row().name.said(terms);
        if of_kind(kind) > 1 { plural(&name) } else { name.into() }
    };
    for todo in causes.causes.iter_mut().flat_map(|cause| cause.check.iter_mut().chain(&mut cause.put_right)) {
        if !todo.on.is_empty() && todo.on.iter().all(is_renewed) {
            let names: Vec<String> = todo.on.iter().map(name).collect();
            let is_one = matches!(todo.on, [kind] if of_kind(kind) == 1);
            let are = if is_one { "is" } else { "are" };
            todo.moot = format!("the {} {are} renewed", names.join(" and the "));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};
    use serde_json::json;

    #[test]
    fn what_is_not_needed_says_why() {
        let embedded = |n: u8| json!({ "do": "tag", "part": format!("main-shell.{n}.lower"), "tag": "embedded-debris", "grade": 3 });
        let mut changes = vec![arrange(&Arrangement::inline(4))];
        changes.extend((1..=5).map(embedded));
        changes.push(json!({ "do": "tag", "part": "crankshaft", "tag": "cracks", "grade": 4 }));
        let causes = assess(&job_of(&changes)).causes;
        let dirt = causes.causes.iter().find(|cause| cause.id == "dirt-in-oil").unwrap();
        let moot = |id: &str| dirt.put_right.iter().find(|todo| todo.id == id).map(|todo| todo.moot.as_str());
        assert_eq!(moot("remove-particles"), Some("the crankshaft is renewed"));
        assert_eq!(moot("flush-oil-ways"), Some(""), "the block stays");
    }
}
