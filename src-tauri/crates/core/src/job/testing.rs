//! Jobs for the tests of every module, made as they are made at the bench: each change is checked before it is applied.

use proptest::prelude::*;
use serde_json::{Value, json};

use super::{
    Answer, Change, DeviceId, Edit, EditId, HistoryFact, Job, OnIntake, OnJob, OnPart, RecordedChange, TextField,
};
use crate::engine::{Arrangement, Engine, Part};
use crate::wear::Grade;

/// The id of the `n`th edit of a test.
pub(crate) fn edit(n: u64) -> EditId {
    EditId::next(None, n, DeviceId(1))
}

/// A job of these changes, in the form in which they stand in a log.
#[track_caller]
pub(crate) fn job_of(changes: &[Value]) -> Job {
    let mut job = Job::default();
    for (n, change) in (1..).zip(changes) {
        then(&mut job, n, change);
    }
    job
}

/// A job of which no more is known than the arrangement.
pub(crate) fn arranged(arrangement: Arrangement) -> Job {
    Job { arrangement: Some(arrangement), ..Job::default() }
}

/// The same as an edit: what begins almost every job.
pub(crate) fn arrange(arrangement: &Arrangement) -> Value {
    json!({ "do": "arrange", "arrangement": arrangement })
}

/// Goes on with a job by its `n`th edit.
#[track_caller]
pub(crate) fn then(job: &mut Job, n: u64, change: &Value) -> EditId {
    let change: Change = serde_json::from_value(change.clone()).unwrap();
    assert_eq!(job.check(&change), Ok(()), "{change:?}");
    let id = edit(n);
    job.apply(id, &change);
    id
}

/// The id of the `n`th edit of one of three devices.
pub(crate) fn id(n: u64) -> EditId {
    EditId::next(None, n, DeviceId(n % 3))
}

/// A change at random, of this version or a newer one.
pub(crate) fn any_change() -> impl Strategy<Value = RecordedChange> {
    let engine = Engine::new(Arrangement::vee(8)).unwrap();
    let part = prop::sample::select([engine.parts(), engine.outside()].concat());
    let tag_of = |part: Part| {
        (prop::sample::select(part.kind.row().tags), prop::sample::select(&Grade::ALL[..])).prop_map(
            move |(tag, grade)| {
                Change::OnPart(OnPart::Tag {
                    part,
                    tag,
                    grade,
                    zones: part.kind.row().zones.zones().first().copied().into_iter().collect(),
                })
            },
        )
    };
    let known = prop_oneof![
        4 => part.clone().prop_flat_map(tag_of),
        1 => part.clone().prop_flat_map(|part| prop::sample::select(part.kind.row().tags).prop_map(move |tag| Change::OnPart(OnPart::Untag { part, tag }))),
        1 => part.clone().prop_map(|part| Change::OnPart(OnPart::Clean { part })),
        1 => (part, "[a-z ]{0,8}").prop_map(|(part, text)| Change::OnPart(OnPart::Remark { part, text })),
        1 => "[a-z]{0,8}".prop_map(|text| Change::OnIntake(OnIntake::Fill { field: TextField::Customer, text })),
        1 => Just(Change::OnIntake(OnIntake::Recall { fact: HistoryFact::Overheated, answer: Answer::Yes })),
        1 => prop::sample::select(vec![Arrangement::vee(8), Arrangement::inline(4)]).prop_map(|arrangement| Change::OnIntake(OnIntake::Arrange { arrangement })),
        2 => (0u64..40).prop_map(|n| Change::OnJob(OnJob::Undo { edit: id(n) })),
        1 => any::<bool>().prop_map(|closed| Change::OnJob(OnJob::Close { closed })),
    ];
    prop_oneof![
        9 => known.prop_map(RecordedChange::Known),
        1 => (0u8..9).prop_map(|n| RecordedChange::Unknown(json!({ "do": "later", "n": n }))),
    ]
}

/// A log at random, in no order, with edits of three devices and some that arrive twice or differ under one id.
pub(crate) fn any_log() -> impl Strategy<Value = Vec<Edit>> {
    prop::collection::vec((0u64..40, any_change()), 0..40)
        .prop_map(|entries| entries.into_iter().map(|(n, change)| Edit { id: id(n), change }).collect())
}
