//! What a customer reads, of every whole engine: short sentences, a message of few lines, each word of the trade explained,
//! and the same figures in all forms.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

mod data;
mod entered;

use entered::Whole;
use wearbook_core::assess::assess;
use wearbook_core::date::Date;
use wearbook_core::document::{Block, CustomersPage, Desk, ProposalHead, Shop, customers_page, message};

/// Plain language for the public asks for sentences of 15 to 20 words on average (Federal Plain Language Guidelines, United
/// States, public domain: “Write short sentences”); here none is longer.
const LONGEST: usize = 20;
/// A message is read within a minute: adults read 238 words of non-fiction in that time on average (M. Brysbaert, “How many
/// words do we read per minute?”, Journal of Memory and Language 109, 2019; from memory).
const A_MINUTE: usize = 238;

/// Every text of the page that is read as sentences.
fn texts(page: &CustomersPage) -> Vec<String> {
    let mut all = vec![page.advice.clone(), page.not_examined.clone(), page.unpriced.clone()];
    all.extend(page.proposal.since.iter().chain(&page.proposal.said_since).cloned());
    all.extend(page.told.iter().map(|row| row.found.clone()));
    all.extend(page.found.iter().chain(&page.besides).chain(&page.asked).cloned());
    all.extend(page.how.iter().map(|link| link.words.clone()));
    all.extend(page.shown.iter().map(|photo| photo.sentence.clone()));
    all.extend(page.jobs.iter().flat_map(|job| [job.because.clone(), job.if_left.clone()]));
    for choice in &page.choices {
        all.extend([&choice.proposed, &choice.other, &choice.drawback, &choice.advice].map(Clone::clone));
    }
    all.extend(page.total.iter().flat_map(|total| [vec![total.left_out.clone()], total.beside.clone()].concat()));
    all
}

fn sentences(text: &str) -> Vec<&str> {
    text.split(['\n', '?', '!']).flat_map(|part| part.split(". ")).collect()
}

fn words(sentence: &str) -> usize {
    sentence.split_whitespace().filter(|word| word.chars().any(char::is_alphanumeric)).count()
}

#[test]
fn no_sentence_is_longer_than_a_customer_reads() {
    let shop = Shop { name: "Alder Creek Engine Works".into(), ..Shop::default() };
    let date = Date::new(2026, 3, 14).unwrap();
    let mut wrong = Vec::new();
    for (name, case) in Whole::all() {
        let job = case.job();
        let assessment = assess(&job);
        let desk = Desk { job: &job, assessment: &assessment, date, shop: &shop };
        let Block::CustomersPage(page) = &customers_page(&desk).blocks[0] else { panic!("no page") };
        let message = message(&desk);
        if std::env::var_os("SHOW").is_some() {
            println!("=== {name}\n{}\n{page:#?}", message.join("\n"));
        }
        if message.len() > 10 {
            wrong.push(format!("{name}: a message of {} lines", message.len()));
        }
        let length = message.iter().map(|line| words(line)).sum::<usize>();
        if length > A_MINUTE {
            wrong.push(format!("{name}: a message of {length} words"));
        }
        // What the message adds of its own: how to answer, and what the prices are.
        for text in texts(page).into_iter().chain([ProposalHead::HOW_TO_ANSWER.to_owned()]) {
            let long = sentences(&text).into_iter().filter(|sentence| words(sentence) > LONGEST);
            wrong.extend(long.map(|sentence| format!("{name}: {} words: {sentence}", words(sentence))));
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}
