//! The customer's page has one content in all its forms: what stands on the sheet stands on the web page and in the plain
//! text, and the message leaves out only what does not change the answer.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "clippy.toml lets tests do so, but not the functions that they share"
)]

mod jobs;
#[path = "outside/said.rs"]
mod said;

use jobs::{demo, more_machining, proposed, signed, written};
use said::{said, squeezed};
use wearbook_core::document::{Block, CustomersPage, Section, customers_page, message};
use wearbook_core::job::Job;
use wearbook_core::under_way::UnderWay;
use wearbook_report::{Print, html, pdf, text};

/// Whatever must be found in every form.
fn content(page: &CustomersPage) -> Vec<String> {
    let mut all = in_short(page);
    all.extend(page.facts.iter().map(|(_, value)| value.clone()));
    all.extend(page.told.iter().map(|row| row.found.clone()));
    all.extend(page.found.iter().chain(&page.besides).cloned());
    all.push(page.not_examined.clone());
    all.extend(page.how.iter().map(|link| link.words.clone()));
    all.extend(page.jobs.iter().flat_map(|job| [job.because.clone(), job.if_left.clone()]));
    all.extend(page.choices.iter().map(|choice| choice.drawback.clone()));
    all
}

/// Whatever must be found in the message too: what is wrong, why, what must be done, the cost, what is left out, what is to
/// be decided.
fn in_short(page: &CustomersPage) -> Vec<String> {
    let mut all = vec![page.advice.clone(), page.unpriced.clone(), page.proposal.answered.clone()];
    all.extend(page.told.iter().flat_map(|row| [row.told.clone(), row.answer.clone()]));
    all.extend(page.how.iter().take(2).map(|link| link.words.clone()));
    all.extend(page.found.first().cloned());
    let sentences = [&page.asked, &page.proposal.since, &page.proposal.said_since];
    all.extend(sentences.into_iter().flatten().cloned());
    for job in &page.jobs {
        all.extend([job.title.clone(), job.need.words().to_owned(), job.price.clone()]);
    }
    for choice in &page.choices {
        all.extend([choice.proposed.clone(), choice.other.clone(), choice.saving.clone()]);
    }
    if let Some(total) = &page.total {
        all.extend([&total.net, &total.tax, &total.gross, &total.left_out].map(Clone::clone));
        all.extend(total.beside.clone());
        all.extend(
            total.agreed.iter().flat_map(|own| [own.head(), own.net.clone(), own.tax.clone(), own.gross.clone()]),
        );
    }
    all.extend((!page.proposal.since.is_empty()).then(|| page.heading(Section::Since)));
    all.retain(|words| !words.is_empty());
    all
}

/// The words of a web page.
fn untagged(html: &str) -> String {
    let body = html.split_once("<main>").unwrap().1;
    let words: Vec<&str> = body.split('<').filter_map(|part| Some(part.split_once('>')?.1)).collect();
    words.join(" ").replace("&amp;", "&").replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"")
}

#[track_caller]
fn says_the_same_in_every_form(job: &Job) {
    let paper = written(job, customers_page);
    let Block::CustomersPage(page) = &paper.blocks[0] else { panic!("no page") };
    let (none, way) = (|_: &_| None, UnderWay::default());
    let file = pdf(&paper, Print::default(), &none, &way).unwrap();
    let mut forms = vec![("web page", untagged(&html(&paper, &none, &way).unwrap())), ("text", text(&paper))];
    forms.extend(said("pdftotext", &["-raw", "FILE", "-"], &file).map(|words| ("sheet", words)));
    for (form, words) in &forms {
        let words = squeezed(words).to_lowercase();
        for own in content(page) {
            assert!(words.contains(&squeezed(&own).to_lowercase()), "“{own}” is not in the {form}: {words}");
        }
    }
    let words = written(job, message).join(" ");
    let forms = [squeezed(&words).to_lowercase(), unexplained(&words)];
    assert_eq!(words.contains("not examined"), !page.not_examined.is_empty(), "{words}");
    for own in in_short(page) {
        let is_there = forms[0].contains(&squeezed(&own).to_lowercase()) || forms[1].contains(&unexplained(&own));
        assert!(is_there, "“{own}” is not in the message: {words}");
    }
}

/// A word of the trade is explained where it first stands, which is not the same place in a shorter form.
fn unexplained(words: &str) -> String {
    let told = words.split('(').map(|part| part.split_once(')').map_or(part, |(_, after)| after).trim());
    squeezed(&told.collect::<Vec<_>>().join(" ")).to_lowercase().replace(" :", ":").replace(" .", ".")
}

#[test]
fn what_the_sheet_says_every_form_says() {
    let (job, _) = demo(false);
    let unpriced = Job { prices: Default::default(), ..job.clone() };
    let found_since = more_machining(signed(job.clone()));
    for job in
        [unpriced, job.clone(), proposed(job.clone()), more_machining(proposed(job.clone())), signed(job), found_since]
    {
        says_the_same_in_every_form(&job);
    }
}

/// What the customer signed stays as it was read; what is found afterwards stands apart.
#[test]
fn a_late_find_changes_nothing_above_the_signature() {
    let (job, _) = demo(false);
    let page = |job: &Job| match written(job, customers_page).blocks.into_iter().next() {
        Some(Block::CustomersPage(page)) => *page,
        other => panic!("{other:?}"),
    };
    let (before, after) = (page(&signed(job.clone())), page(&more_machining(signed(job))));
    assert_eq!(before.proposal.said_since, Vec::<String>::new());
    let read = |page: &CustomersPage| {
        let CustomersPage { advice, told, found, shown, how, besides, choices, jobs, not_examined, .. } = page.clone();
        (advice, told, found, shown, how, besides, choices, jobs, not_examined)
    };
    assert_eq!(read(&before), read(&after));
    assert!(!after.proposal.said_since.is_empty() && !after.proposal.since.is_empty(), "{:?}", after.proposal);
}
