//! A job may end without the work being done: the customer refuses it, and the engine goes back.

use serde::Serialize;

use super::EditId;
use crate::date::Date;
use crate::money::GoesBack;

/// The customer refused the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Refusal {
    /// The edit that noted it; undoing it takes the job up again.
    pub edit: EditId,
    /// How the engine goes back.
    pub goes_back: GoesBack,
    /// The day; none where it was not noted.
    pub made: Option<Date>,
}

impl Refusal {
    /// "refused on 3 May 2026; the engine goes back in boxes".
    pub fn words(self) -> String {
        let on = self.made.map_or_else(String::new, |day| format!(" on {}", day.in_words()));
        let how = match self.goes_back {
            GoesBack::InBoxes => "in boxes",
            GoesBack::PutTogether => "put together",
        };
        format!("refused{on}; the engine goes back {how}")
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::assess;
    use crate::date::Date;
    use crate::document::{Block, Desk, Shop, customers_page};
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, edit, job_of, then};
    use crate::job::{Change, Consent, Edit, Job};
    use serde_json::{Value, json};

    fn refuse() -> Value {
        json!({ "do": "refuse", "goes_back": "in-boxes", "made": "2026-05-03" })
    }

    fn opened() -> Job {
        job_of(&[
            arrange(&Arrangement::inline(2)),
            json!({ "do": "use-prices", "prices": { "currency": "EUR", "tax": { "rate": 1900 },
                "strip_down": { "strip_down": 40_000, "in_boxes": 3_000 } } }),
            json!({ "do": "tag", "part": "piston.1", "tag": "scuffing", "grade": 3 }),
            json!({ "do": "add-item", "item": { "list": "order", "what": "Gasket set", "quantity": 1, "because": "" } }),
        ])
    }

    #[test]
    fn nothing_is_free_to_order_or_to_be_machined_for_a_refused_job() {
        let mut job = opened();
        let waits = |job: &Job| {
            let lists = assess(job).lists;
            let items: Vec<_> = lists.into_iter().flat_map(|list| list.items).collect();
            assert!(items.len() > 5);
            items.into_iter().map(|item| (item.waits_for.first().cloned(), item.consent)).collect::<Vec<_>>()
        };
        assert!(waits(&job).iter().any(|(first, _)| first.is_none()));
        then(&mut job, 9, &refuse());
        for (first, consent) in waits(&job) {
            assert_eq!(first.as_deref(), Some("The customer refused the work: the engine goes back."));
            assert_eq!(consent, Some(Consent::No));
        }
        assert_eq!(assess(&job).still_open, [], "what is not done is not open");
    }

    /// What was agreed to may be charged, and nothing else. Own arithmetic.
    #[test]
    fn the_bill_is_for_the_strip_down_alone() {
        let mut job = opened();
        then(&mut job, 9, &refuse());
        assert_eq!(job.refusal_bill(), None, "nothing was agreed to");
        let order = json!({ "do": "order-strip-down", "order": job.strip_down_to_order() });
        let order = then(&mut job, 10, &order);
        let said = |agreed: bool| json!({ "do": "answer-strip-down", "answer": { "order": order, "agreed": agreed, "name": "A" } });
        then(&mut job, 11, &said(false));
        assert_eq!(job.refusal_bill(), None);
        then(&mut job, 12, &said(true));
        let bill = job.refusal_bill().unwrap();
        let gross: Vec<i64> = bill.iter().map(|line| line.sum.unwrap().gross.minor()).collect();
        assert_eq!(gross, [47_600, 3_570, 51_170]);
    }

    #[test]
    fn the_customers_page_asks_nothing_more() {
        let mut job = opened();
        let page = |job: &Job| {
            let shop = Shop::default();
            let paper = customers_page(&Desk { job, assessment: &assess(job), date: Date::EPOCH, shop: &shop });
            let Some(Block::CustomersPage(page)) = paper.blocks.into_iter().next() else { panic!("no page") };
            page
        };
        assert!(!page(&job).asked.is_empty());
        then(&mut job, 9, &refuse());
        let page = page(&job);
        assert_eq!(page.proposal.answered, "refused on 3 May 2026; the engine goes back in boxes");
        assert!(page.asked.is_empty() && !page.proposal.is_open() && page.proposal.dates().is_empty());
    }

    #[test]
    fn undoing_it_takes_the_job_up_again() {
        let edit_of = |n, change: Value| Edit { id: edit(n), change: serde_json::from_value(change).unwrap() };
        let mut edits = vec![edit_of(1, refuse())];
        assert_eq!(edits[0].sentence(&Job::default()), "The customer refused the work: returned in boxes");
        assert!(Job::fold(&edits).refusal.is_some());
        edits.push(edit_of(2, json!({ "do": "undo", "edit": edit(1) })));
        assert_eq!(Job::fold(&edits).refusal, None);
        let late: Change = serde_json::from_value(refuse()).unwrap();
        let mut closed = Job::default();
        then(&mut closed, 1, &json!({ "do": "close", "closed": true }));
        assert!(closed.check(&late).is_err(), "a closed job stays as it is");
    }
}
