//! Shells that crack from fatigue.

use super::{Rule, RuleId, Says, WearLine, from};
use crate::engine::PartKind::{MainShell, RodShell};
use crate::wear::{Grade, Tag};
use crate::work::Outcome::Replace;

/// A few hairlines are the checking of an overlay, which manuals let pass.
pub(super) const LINES: &[WearLine] = &[from(Grade::TWO, &[MainShell, RodShell], &[Tag::FatigueCracks], Replace)];

pub(super) const RULE: Rule = Rule {
    id: RuleId("shell-fatigue"),
    why: "A shell with a net of cracks loses its metal; very small cracks or single small cavities of an overlay (checking) are no reason.",
    source: "TM 9-2320-302-34 WP 0041; TM 55-1905-221-14-3. A Navy text is more lenient (from a copy, page not confirmed).",
    says: Says::OnPart(|_, part, record| {
        let (outcome, seen) = super::read(LINES, part, record)?;
        Some((
            outcome,
            format!(
                "{seen} Published manuals disagree: Army manuals discard a cracked or flaking shell; a Navy text lets one run with up to 10 per cent of its loaded area lost. At an overhaul it is renewed by either."
            ),
        ))
    }),
};
