//! Two shelves become one: nothing of either is lost in silence.

use serde_json::Value;

use crate::ledger::ShelfLine;
use crate::{Ledger, ShelfKind, StoreError};

/// Of a thing that stands otherwise on the shelf here than in an archive.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ShelfDiffers {
    /// What it is.
    pub kind: ShelfKind,
    /// Its name.
    pub name: String,
    /// Which holds now.
    pub holds: ShelfHolds,
}

/// Which of two things of one name holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ShelfHolds {
    /// The one of the archive, which is later.
    Theirs,
    /// The one here, which is later.
    Ours,
    /// The one here, for it is not known which is later: the other stands beside it under this name.
    Both(String),
}

/// Puts a thing of an archive on the shelf. What is here already, under its name or beside it, changes nothing.
pub(super) fn unite(ledger: &Ledger<'_>, theirs: &ShelfLine) -> Result<Option<ShelfDiffers>, StoreError> {
    let keep = |name: &str, content: &str, at| ledger.keep_on_shelf(theirs.kind, name, content, at);
    let Some(ours) = ledger.shelf_line(theirs.kind, &theirs.name)? else {
        keep(&theirs.name, theirs.content.get(), theirs.changed_at)?;
        return Ok(None);
    };
    let content = read(theirs)?;
    // What can't be read here yields to what can.
    let is_same = read(&ours).map(|ours| ours == content);
    let (at, our_at) = (theirs.changed_at, ours.changed_at);
    let holds = match is_same {
        Ok(true) if at > our_at => return keep(&theirs.name, ours.content.get(), at).map(|()| None),
        Ok(true) => return Ok(None),
        Ok(false) if at.min(our_at) == 0 || at == our_at => match beside(ledger, theirs, &content)? {
            Some(name) => ShelfHolds::Both(name),
            None => return Ok(None),
        },
        Ok(false) if at < our_at => ShelfHolds::Ours,
        Ok(false) | Err(_) => {
            keep(&theirs.name, theirs.content.get(), at)?;
            ShelfHolds::Theirs
        }
    };
    Ok(Some(ShelfDiffers { kind: theirs.kind, name: theirs.name.clone(), holds }))
}

/// Puts it beside the one of its name, unless it is there under whatever name.
fn beside(ledger: &Ledger<'_>, theirs: &ShelfLine, content: &Value) -> Result<Option<String>, StoreError> {
    let nameless = without_name(theirs.kind, content.clone());
    for line in ledger.shelf_lines()?.iter().filter(|line| line.kind == theirs.kind) {
        if read(line).is_ok_and(|line_content| without_name(line.kind, line_content) == nameless) {
            return Ok(None);
        }
    }
    for n in 2.. {
        let name = numbered(theirs.kind, &theirs.name, n);
        if ledger.shelf_line(theirs.kind, &name)?.is_none() {
            let renamed = renamed(theirs.kind, content.clone(), &name);
            ledger.keep_on_shelf(theirs.kind, &name, &renamed.to_string(), theirs.changed_at)?;
            return Ok(Some(name));
        }
    }
    Ok(None)
}

fn read(line: &ShelfLine) -> Result<Value, StoreError> {
    serde_json::from_str(line.content.get()).map_err(|_| StoreError::Damaged)
}

/// The name of the nth of a name. An instrument is named by at most 40 small letters, digits and hyphens.
fn numbered(kind: ShelfKind, name: &str, n: u32) -> String {
    match kind {
        ShelfKind::Instrument => format!("{}-{n}", name.chars().take(34).collect::<String>()),
        ShelfKind::Sheet => format!("{name} ({n})"),
        ShelfKind::Prices => n.to_string(),
    }
}

/// Where its content says its name.
fn name_of(kind: ShelfKind, content: &mut Value) -> Option<&mut Value> {
    match kind {
        ShelfKind::Instrument => content.get_mut("id"),
        ShelfKind::Sheet => content.pointer_mut("/head/name"),
        ShelfKind::Prices => None,
    }
}

fn renamed(kind: ShelfKind, mut content: Value, name: &str) -> Value {
    if let Some(named) = name_of(kind, &mut content) {
        *named = name.into();
    }
    content
}

fn without_name(kind: ShelfKind, content: Value) -> Value {
    renamed(kind, content, "")
}
