//! How it happened, as one chain: how it got in, what it was, what it did, what was noticed.

use crate::assess::Assessment;
use crate::cause::CauseView;
use crate::document::page::Link;
use crate::words::capitalised;

/// From this probability on a cause is told without a word of doubt.
const SURE_FROM: f64 = 0.9;
/// Causes told besides the one of the chain.
const BESIDES: usize = 2;

/// The causes that are named, likeliest first; none before enough was seen.
fn named(assessment: &Assessment) -> impl Iterator<Item = &CauseView> {
    let causes = &assessment.causes;
    causes.causes.iter().filter(|view| causes.enough_seen && view.named)
}

/// The chain of the likeliest cause; nothing while none is named.
pub(super) fn how(assessment: &Assessment) -> Vec<Link> {
    let Some(CauseView { chain, plainly, .. }) = named(assessment).next() else { return vec![] };
    let link = |head: &str, words: String| (!words.is_empty()).then(|| Link { head: head.to_owned(), words });
    // A sentence each: what was found stands there whole, for it is put right.
    let ways = chain.ways.iter().map(|way| capitalised(way)).collect::<Vec<_>>().join(". ");
    let way_in = match (chain.has_way_in, ways.is_empty()) {
        (true, true) if chain.look_labels.is_empty() => "Not known".into(),
        (true, true) => format!("Not known yet. To be looked at: {}", chain.look_labels.join(", ").to_lowercase()),
        _ => ways,
    };
    [
        link("How it got in", way_in),
        link("What it was", plainly.trim_end_matches('.').to_owned()),
        link("What it did", chain.damage.first().map(|damage| capitalised(damage)).unwrap_or_default()),
        link("What you noticed", chain.complaints.join("; ")),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// What else is likely, a sentence each.
pub(super) fn besides(assessment: &Assessment) -> Vec<String> {
    named(assessment).skip(1).take(BESIDES).map(likely).collect()
}

/// What is no more than likely is not told as certain.
fn likely(view: &CauseView) -> String {
    if view.probability >= SURE_FROM { view.plainly.clone() } else { format!("Likely: {}", lowered(&view.plainly)) }
}

/// Likewise of a sentence that stands behind a word.
fn lowered(sentence: &str) -> String {
    let mut letters = sentence.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}
