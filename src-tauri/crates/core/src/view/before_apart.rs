//! What is to be measured before a part comes off, and what can't be measured any longer.

use serde::Serialize;

use crate::engine::{Engine, Part};
use crate::job::{Job, PartRecord};
use crate::measure::{ONLY_TOGETHER, Phase, Quantity};

/// How it stands with what can be measured only while the engine is together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Chance {
    /// It can still be measured.
    Open,
    /// It was measured.
    Taken,
    /// A part that had to be in its place has come off: no longer possible before reassembly.
    Gone,
}

/// One quantity that is measured before a part comes off.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct BeforeApart {
    /// Of which part.
    pub part: Part,
    /// What.
    pub quantity: Quantity,
    /// In the shop's words: "Rod 3: side play".
    pub words: String,
    /// The parts of which the first to come off takes the chance away, in strip-down order.
    pub before: Vec<Part>,
    /// Whether it was measured, as the engine was found.
    pub chance: Chance,
}

/// All of it, in strip-down order of what comes off. A part that was looked at or measured has come off.
pub(crate) fn before_apart(engine: &Engine, job: &Job) -> Vec<BeforeApart> {
    let found = |part: Part| {
        job.readings.iter().filter(move |taken| taken.reading.part == part && taken.reading.phase == Phase::Found)
    };
    let is_off = |part: &Part| job.parts.get(part).is_some_and(PartRecord::looked_at) || found(*part).next().is_some();
    let rows = ONLY_TOGETHER
        .iter()
        .flat_map(|row| engine.parts().iter().filter(|part| part.kind == row.of).map(move |part| (row, *part)));
    rows.map(|(row, part)| {
        let before: Vec<Part> = engine.parts().iter().copied().filter(|off| row.is_lost_with(part, *off)).collect();
        let chance = if found(part).any(|taken| taken.reading.quantity == row.quantity) {
            Chance::Taken
        } else if before.iter().any(is_off) {
            Chance::Gone
        } else {
            Chance::Open
        };
        let words = format!("{}: {}", engine.label(part), row.quantity.words(engine.terms()));
        BeforeApart { part, quantity: row.quantity, words, before, chance }
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::Arrangement;
    use crate::job::testing::{arranged, then};
    use serde_json::json;

    fn chance(job: &Job, part: &str) -> Chance {
        let engine = Engine::new(job.arrangement.clone().unwrap()).unwrap();
        let part: Part = part.parse().unwrap();
        before_apart(&engine, job).into_iter().find(|first| first.part == part).unwrap().chance
    }

    #[test]
    fn what_was_not_measured_in_time_can_no_longer_be() {
        let mut job = arranged(Arrangement::inline(4));
        assert_eq!(chance(&job, "crankshaft"), Chance::Open);

        then(&mut job, 1, &json!({ "do": "clean", "part": "main-shell.2.lower" }));
        assert_eq!((chance(&job, "crankshaft"), chance(&job, "rod.1")), (Chance::Gone, Chance::Open));

        let wall = json!({ "part": "rod-shell.1.lower", "quantity": "wall", "value": "1.5 mm" });
        then(&mut job, 2, &json!({ "do": "measure", "reading": wall }));
        assert_eq!((chance(&job, "rod.1"), chance(&job, "rod.2")), (Chance::Gone, Chance::Open));

        let late = json!({ "part": "crankshaft", "quantity": "end-float", "value": "0.15 mm", "phase": "fitted" });
        then(&mut job, 3, &json!({ "do": "measure", "reading": late }));
        let read = json!({ "part": "rod.1", "quantity": "side-play", "value": "0.25 mm" });
        then(&mut job, 4, &json!({ "do": "measure", "reading": read }));
        assert_eq!((chance(&job, "crankshaft"), chance(&job, "rod.1")), (Chance::Gone, Chance::Taken));
    }

    #[test]
    fn it_is_told_in_the_shops_words_with_what_comes_off() {
        let engine = Engine::new(Arrangement::inline(2)).unwrap();
        let all = before_apart(&engine, &Job::default());
        let rod = all.iter().find(|first| first.part.to_string() == "rod.2").unwrap();
        assert_eq!(rod.words, "Rod 2: side play");
        let before: Vec<String> = rod.before.iter().map(Part::to_string).collect();
        assert_eq!(before, ["rod-shell.2.lower", "rod-shell.2.upper", "rings.2"]);
    }
}
