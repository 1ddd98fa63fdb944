//! The texts under which ticks were written before items had keys: "order main-shell 0.010 in undersize". They stand in
//! logs for ever, so they are read for ever; nothing writes them any more.

use super::{ItemKey, ListKind, former_put_right};
use crate::engine::PartKind;
use crate::measure::{Entry, Length};
use crate::words::{Terms, capitalised, plural};
use crate::work::Work;

/// What an old text tells.
#[derive(Debug)]
pub(super) struct FormerItem {
    /// The item.
    pub(super) key: ItemKey,
    /// Its words, as far as the text has them.
    pub(super) words: String,
    /// Its size beyond standard; none if it has none, or it was not known yet.
    pub(super) size: Option<Length>,
}

impl FormerItem {
    /// Reads an old text. One that is not understood is kept as it came.
    pub(super) fn read(text: &str) -> Self {
        let (list, rest) = text.split_once(' ').unwrap_or((text, ""));
        let read = match list {
            "order" => sized(rest, |kind, _| ItemKey::Order { kind, parts: vec![] }),
            "machine" => sized(rest, machine),
            "rebuild" => part(ListKind::RebuildHere, rest),
            "clean" => part(ListKind::Clean, rest),
            "look" => part(ListKind::LookAgain, rest),
            "right" => put_right(rest),
            "own" => rest.parse().ok().map(|edit| bare(ItemKey::Own { edit }, String::new())),
            _ => None,
        };
        read.unwrap_or_else(|| {
            let list = match list {
                "machine" => ListKind::MachineShop,
                "rebuild" => ListKind::RebuildHere,
                "clean" => ListKind::Clean,
                "look" => ListKind::LookAgain,
                "right" => ListKind::PutRight,
                _ => ListKind::Order,
            };
            bare(ItemKey::Former { list, words: text.to_owned() }, text.to_owned())
        })
    }
}

fn bare(key: ItemKey, words: String) -> FormerItem {
    FormerItem { key, words, size: None }
}

/// "main-shell 0.010 in undersize", "rings size not known yet", "core-plugs".
fn sized(rest: &str, key: impl Fn(PartKind, Option<Length>) -> ItemKey) -> Option<FormerItem> {
    let (kind, size) = rest.split_once(' ').unwrap_or((rest, ""));
    let kind = PartKind::from_id(kind)?;
    let length = match size {
        "standard" => Some(Length::default()),
        _ => size.strip_suffix(" undersize").or_else(|| size.strip_suffix(" oversize")).and_then(length_of),
    };
    let name = capitalised(&plural(&kind.row().name.said(Terms::default())));
    let words = if size.is_empty() { name } else { format!("{name}, {size}") };
    Some(FormerItem { key: key(kind, length), words, size: length })
}

fn length_of(text: &str) -> Option<Length> {
    Entry::try_from(text.to_owned()).ok().map(|entry| entry.length)
}

/// Bores that were finished to standard had been sleeved; what else was done the text does not tell.
fn machine(kind: PartKind, size: Option<Length>) -> ItemKey {
    let work = match (kind, size) {
        (PartKind::Bore, Some(size)) if size == Length::default() => Some(Work::Sleeve),
        _ => None,
    };
    ItemKey::Operation { kind, work }
}

fn part(list: ListKind, rest: &str) -> Option<FormerItem> {
    Some(bare(ItemKey::Part { list, part: rest.parse().ok()? }, String::new()))
}

fn put_right(rest: &str) -> Option<FormerItem> {
    let (cause, words) = rest.split_once(' ')?;
    let check = former_put_right::id_of(cause, words)?;
    Some(bare(ItemKey::PutRight { cause: cause.to_owned(), check: check.to_owned() }, words.to_owned()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::Asked;
    use serde_json::{Value, json};

    #[track_caller]
    fn check(old: &str, key: Value, size: Option<i64>, words: &str) {
        let asked: Asked = serde_json::from_value(json!(old)).unwrap();
        assert_eq!(serde_json::to_value(&asked.key).unwrap(), key);
        assert_eq!((asked.size.map(Length::nanometres), asked.words.as_str(), asked.quantity), (size, words, 0));
        let again: Asked = serde_json::from_value(serde_json::to_value(&asked).unwrap()).unwrap();
        assert_eq!(again, asked, "today's form tells all that the old text told");
    }

    #[test]
    fn old_texts_are_read_for_ever() {
        let shells = json!({ "of": "order", "kind": "main-shell" });
        check(
            "order main-shell 0.010 in undersize",
            shells.clone(),
            Some(254_000),
            "Main bearing shells, 0.010 in undersize",
        );
        check("order main-shell standard", shells, Some(0), "Main bearing shells, standard");
        let rings = json!({ "of": "order", "kind": "rings" });
        check("order rings size not known yet", rings, None, "Piston ring sets, size not known yet");
        check("order core-plugs", json!({ "of": "order", "kind": "core-plugs" }), None, "Core plugs");
        let pins = json!({ "of": "machine", "kind": "crankpin" });
        check("machine crankpin 0.25 mm undersize", pins, Some(250_000), "Crankpins, 0.25 mm undersize");
        let sleeved = json!({ "of": "machine", "kind": "bore", "work": "sleeve" });
        check("machine bore standard", sleeved, Some(0), "Cylinder bores, standard");
        check("clean block", json!({ "of": "part", "list": "clean", "part": "block" }), None, "");
        check("look crankpin.2", json!({ "of": "part", "list": "look-again", "part": "crankpin.2" }), None, "");
        check("rebuild oil-pump", json!({ "of": "part", "list": "rebuild-here", "part": "oil-pump" }), None, "");
        let own = json!({ "of": "own", "edit": "000000000001-0000-0000000000000001" });
        check("own 000000000001-0000-0000000000000001", own, None, "");
    }

    #[test]
    fn what_is_not_understood_is_kept() {
        let unknown = "order no-such-part";
        check(unknown, json!({ "of": "former", "list": "order", "words": unknown }), None, unknown);
        let right = "right no-such-cause Look at it.";
        check(right, json!({ "of": "former", "list": "put-right", "words": right }), None, right);
        check("", json!({ "of": "former", "list": "order", "words": "" }), None, "");
    }
}
