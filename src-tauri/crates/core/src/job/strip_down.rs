//! The strip-down order: what the customer was told before anything was opened, and the answer to it.

use serde::{Deserialize, Serialize};

use super::{EditId, FromAfar, SaidBy, Stroke};
use crate::date::Date;
use crate::money::StripDownOrder;

/// A strip-down order as it was shown, with its answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct OrderedStripDown {
    /// The edit that made it.
    pub edit: EditId,
    /// Exactly what was shown.
    pub order: StripDownOrder,
    /// The day on which it was made; none where it was not noted.
    pub made: Option<Date>,
    /// The last answer to it.
    pub answer: Option<StripDownAnswer>,
}

impl OrderedStripDown {
    /// Whether the customer has agreed to it.
    pub fn is_agreed(&self) -> bool {
        self.answer.as_ref().is_some_and(|answer| answer.agreed)
    }
}

/// What the customer answered to a strip-down order.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct StripDownAnswer {
    /// The edit in which the order was made.
    pub order: EditId,
    /// Whether the engine may be opened.
    pub agreed: bool,
    /// Who answered.
    pub name: String,
    /// How: "signed on the screen", "by telephone".
    #[serde(default)]
    pub way: String,
    /// When and whence, if it came by telephone or message.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub afar: Option<FromAfar>,
    /// The day on which it was noted, where the shop is. Unknown of what was answered before days were noted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub said: Option<Date>,
    /// The signature, if it was drawn.
    #[serde(default)]
    pub signature: Vec<Stroke>,
}

impl StripDownAnswer {
    /// Who answered and how.
    pub fn said_by(&self) -> SaidBy<'_> {
        let Self { name, way, afar, said, signature, .. } = self;
        SaidBy { name, way, afar: afar.as_ref(), said: *said, signature }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::testing::{arranged, edit, job_of, then};
    use crate::job::{Change, Edit, Job, RecordedChange};
    use crate::money::Money;
    use serde_json::{Value, json};

    fn prices() -> Value {
        json!({ "do": "use-prices", "prices": { "currency": "EUR", "tax": { "rate": 1900 },
            "strip_down": { "strip_down": 40_000, "in_boxes": 3_000, "destroyed": "Head gasket", "most_days": 14 } } })
    }

    fn answer(order: EditId) -> Value {
        json!({ "do": "answer-strip-down", "answer": { "order": order, "agreed": true, "name": "A. Harrow",
            "way": "by telephone", "afar": { "number": "0100 200", "date": "2026-05-03", "time": "14:20" } } })
    }

    #[track_caller]
    fn refused(job: &Job, change: &Value, because: &str) {
        let change: Change = serde_json::from_value(change.clone()).unwrap();
        let why = job.check(&change).unwrap_err().to_string();
        assert!(why.contains(because), "{why}");
    }

    #[test]
    fn it_is_filled_in_from_the_shops_prices_and_the_first_estimate() {
        let estimate = json!({ "do": "note-estimate", "lines": [{ "what": "Round sum", "net": 300_000 }] });
        let came = json!({ "do": "add-ancillary", "item": { "what": "Starter", "remark": "Cracked flange" } });
        let order = job_of(&[prices(), estimate, came]).strip_down_to_order();
        assert_eq!(order.terms.strip_down, Some(Money::from_minor(40_000)));
        assert_eq!(order.terms.put_together, None, "no price is made up");
        assert_eq!(order.estimate, Some(Money::from_minor(357_000)));
        assert_eq!(order.received, ["Starter: Cracked flange"]);
        assert_eq!(Job::default().strip_down_to_order(), StripDownOrder::default());
    }

    #[test]
    fn it_is_kept_as_it_was_shown() {
        let mut job = job_of(&[prices()]);
        let made = json!({ "do": "order-strip-down", "order": job.strip_down_to_order(), "made": "2026-05-03" });
        let order = then(&mut job, 2, &made);
        then(&mut job, 3, &answer(order));
        then(&mut job, 4, &json!({ "do": "use-prices", "prices": { "currency": "EUR" } }));
        let ordered = job.strip_down().unwrap();
        assert!(ordered.is_agreed());
        assert_eq!(ordered.order.terms.strip_down, Some(Money::from_minor(40_000)));
        assert_eq!(
            ordered.answer.as_ref().unwrap().said_by().words(),
            "A. Harrow, by telephone, 0100 200, 2026-05-03 14:20"
        );
    }

    #[test]
    fn nothing_is_typed_past_the_job() {
        let job = job_of(&[prices()]);
        let order = json!(job.strip_down_to_order());
        for (field, wrong) in [
            ("currency", json!("USD")),
            ("tax", json!({ "rate": 0 })),
            ("estimate", json!(1)),
            ("received", json!(["x"])),
        ] {
            let mut other = order.clone();
            other[field] = wrong;
            refused(&job, &json!({ "do": "order-strip-down", "order": other }), "not what follows from the job now");
        }
        let mut other = order.clone();
        other["terms"]["most_days"] = json!(0);
        refused(&job, &json!({ "do": "order-strip-down", "order": other }), "from 1 to 365 days");
    }

    /// 16 CCR 3356(e).
    #[test]
    fn a_yes_that_proves_nothing_does_not_count() {
        let mut job = job_of(&[prices()]);
        refused(&job, &answer(edit(7)), "no such strip-down order");
        let made = json!({ "do": "order-strip-down", "order": job.strip_down_to_order() });
        let order = then(&mut job, 2, &made);
        for field in ["number", "date", "time"] {
            let mut short = answer(order);
            short["answer"]["afar"][field] = json!("");
            refused(&job, &short, "an answer from afar does not count");
        }
        let mut nameless = answer(order);
        nameless["answer"]["name"] = json!(" ");
        refused(&job, &nameless, "Say who answered");
    }

    #[test]
    fn undoing_it_takes_it_back() {
        let order = json!({ "do": "order-strip-down", "order": Job::default().strip_down_to_order() });
        let edit_of = |n, change: Value| Edit { id: edit(n), change: serde_json::from_value(change).unwrap() };
        let mut edits = vec![edit_of(1, order), edit_of(2, answer(edit(1)))];
        assert!(edits.iter().all(|edit| matches!(edit.change, RecordedChange::Known(_))));
        assert!(Job::fold(&edits).strip_down().is_some_and(OrderedStripDown::is_agreed));
        assert_eq!(edits[0].sentence(&Job::default()), "Strip-down order: no price yet");
        assert_eq!(edits[1].sentence(&Job::default()), "A. Harrow agreed to the strip-down");
        edits.push(edit_of(3, json!({ "do": "undo", "edit": edit(2) })));
        assert!(Job::fold(&edits).strip_down().is_some_and(|ordered| ordered.answer.is_none()));
        edits.push(edit_of(4, json!({ "do": "undo", "edit": edit(1) })));
        assert_eq!(Job::fold(&edits).strip_down(), None);
    }

    /// An order with no more in it than an earlier version of it must have.
    #[test]
    fn a_bare_order_is_read() {
        let mut job = arranged(crate::engine::Arrangement::inline(1));
        then(&mut job, 1, &json!({ "do": "order-strip-down", "order": { "currency": "XXX", "terms": {} } }));
        assert_eq!(job.strip_down().unwrap().made, None);
    }
}
