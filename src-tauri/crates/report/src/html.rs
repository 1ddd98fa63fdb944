//! The customer's page as one web page in one file: one column, photos inside, no script, nothing asked of the network.

use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use maud::{DOCTYPE, Markup, PreEscaped, html as markup};
use wearbook_core::document::{
    Block, Choice, CustomersPage, Image, JobToDecide, Paper, Picture, ProposalHead, Shown, Total,
};

use crate::clean::line;
use crate::content::Pictures;
use crate::drawing;
use crate::pdf::{Resolution, Source, printable};

/// Colours for day and night, and letters that grow with the reader's own size.
const STYLE: &str = include_str!("html.css");

/// Writes the customer's page of a paper; nothing but its title where it has none.
pub fn html(paper: &Paper, pictures: Source<'_>) -> String {
    let pictures = printable(Resolution::Mail, paper, pictures);
    let title = [line(&paper.title), line(&paper.subtitle)].into_iter().filter(|part| !part.is_empty());
    let title = title.collect::<Vec<_>>().join(": ");
    let pages = paper.blocks.iter().filter_map(|block| match block {
        Block::CustomersPage(page) => Some(page),
        _ => None,
    });
    let written = markup! {
        (DOCTYPE)
        html lang="en-GB" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                // Whatever was typed, nothing is fetched and nothing runs.
                meta http-equiv="Content-Security-Policy"
                    content="default-src 'none'; img-src data:; style-src 'unsafe-inline'";
                title { (title) }
                style { (PreEscaped(STYLE)) }
            }
            body {
                main {
                    @for page in pages { (whole(page, paper, &pictures)) }
                }
            }
        }
    };
    written.into_string()
}

fn whole(page: &CustomersPage, paper: &Paper, pictures: &Pictures) -> Markup {
    markup! {
        header {
            @if let Some((name, address)) = page.shop.split_first() {
                p { strong { (line(name)) } @if !address.is_empty() { ", " (line(&address.join(", "))) } }
            }
            p { (line(&paper.subtitle)) " · " (paper.date.in_words()) }
            @if !page.facts.is_empty() {
                dl { @for (name, value) in &page.facts { div { dt { (line(name)) } dd { (line(value)) } } } }
            }
        }
        h1 { (line(&page.advice)) }
        @if !page.told.is_empty() || !page.found.is_empty() {
            section {
                h2 { @if page.told.is_empty() { "What we found" } @else { "What you told us, what we found" } }
                @if !page.told.is_empty() {
                    dl.told { @for row in &page.told { div {
                        dt { (line(&row.told)) }
                        dd { strong { (line(&row.answer)) "." } " " (line(&row.found)) }
                    } } }
                }
                @for sentence in &page.found { p { (line(sentence)) } }
            }
        }
        @if !page.how.is_empty() || !page.besides.is_empty() {
            section {
                h2 { "How it happened" }
                @if !page.how.is_empty() {
                    dl.how { @for link in &page.how { div { dt { (link.head) } dd { (line(&link.words)) "." } } } }
                }
                @for sentence in &page.besides { p { "Besides: " (line(sentence)) } }
            }
        }
        @if !page.shown.is_empty() {
            section {
                h2 { "In pictures" }
                @for shown in &page.shown { (figure(shown, pictures)) }
            }
        }
        @if !page.jobs.is_empty() { (jobs(page)) }
        @if let Some(total) = &page.total { (costs(total)) }
        @if !page.choices.is_empty() {
            section { h2 { "Another way" } @for own in &page.choices { (choice(own)) } }
        }
        @if !page.not_examined.is_empty() { section { h2 { "Not examined" } p { (line(&page.not_examined)) } } }
        @if !page.asked.is_empty() {
            section { h2 { "What we ask you" } @for sentence in &page.asked { p { (line(sentence)) } } }
        }
        (answered(&page.proposal))
    }
}

fn figure(shown: &Shown, pictures: &Pictures) -> Markup {
    markup! {
        figure {
            @match &shown.image {
                Image::Photo(picture) => (photo(picture, pictures)),
                // A drawing of ours: what was typed does not stand in it.
                Image::Zones(zones) => div.drawing role="img" aria-label=(line(&zones.alt)) {
                    (PreEscaped(drawing::zones(zones)))
                },
            }
            figcaption { (line(&shown.caption())) }
        }
    }
}

fn photo(picture: &Picture, pictures: &Pictures) -> Markup {
    let Some(printable) = pictures.get(&picture.photo) else { return markup! { p.missing { "picture missing" } } };
    let alt = [line(&picture.alt), line(&picture.drawn())].into_iter().filter(|part| !part.is_empty());
    let alt = alt.collect::<Vec<_>>().join(". Drawn on it: ");
    let printable = printable.clone().with(&picture.markups);
    let source = format!("data:{};base64,{}", printable.mime(), BASE64_STANDARD.encode(&printable.bytes));
    markup! { div role="img" aria-label=(alt) { (PreEscaped(printable.wrapped(&source))) } }
}

fn jobs(page: &CustomersPage) -> Markup {
    let proposal = &page.proposal;
    let currency = page.total.as_ref().map(|total| total.currency.as_str()).unwrap_or_default();
    markup! {
        section {
            h2 {
                @if proposal.number == 0 { "What has to be done" } @else { "Proposal " (proposal.number) ": what to decide" }
            }
            p.dates {
                @if let Some(made) = proposal.made { "Made on " (made.in_words()) ". " }
                @if let Some(until) = proposal.valid_until { "Valid until " (until.in_words()) "." }
                @if proposal.number == 0 { "Not proposed yet: a numbered proposal follows." }
            }
            ol.jobs { @for own in &page.jobs { (job(own, currency)) } }
        }
    }
}

fn job(job: &JobToDecide, currency: &str) -> Markup {
    markup! {
        li {
            h3 { span { (job.number) " " (line(&job.title)) } span.price {
                @if job.price.is_empty() { "no price yet" } @else {
                    @if job.at_least { "at least " } (job.price) " " (currency)
                }
            } }
            p { em { (job.need.words()) } ". " (line(&job.because)) }
            p { em { "If left: " } (line(&job.if_left)) }
            @if let Some(answer) = job.answer { p { "Your answer: " strong { (answer.words()) } } }
        }
    }
}

fn costs(total: &Total) -> Markup {
    markup! {
        section {
            h2 { "What it costs" }
            table {
                tr { th scope="row" { "Without tax" } td { (total.net) } }
                tr { th scope="row" { "Tax, " (total.tax_rate) } td { (total.tax) } }
                tr.sum {
                    th scope="row" { @if total.at_least { "Total, at least" } @else { "Total" } }
                    td { (total.gross) " " (total.currency) }
                }
            }
            @if !total.left_out.is_empty() { p { (line(&total.left_out)) " Not in the sum." } }
            @for sentence in &total.beside { p { (line(sentence)) } }
        }
    }
}

fn choice(choice: &Choice) -> Markup {
    markup! {
        p {
            (line(&choice.what)) ". Proposed: " (line(&choice.proposed)) ". Instead: " (line(&choice.other))
            @if !choice.saving.is_empty() { ", " (line(&choice.saving)) }
            ". " (line(&choice.drawback)) " " (line(&choice.advice))
        }
    }
}

fn answered(proposal: &ProposalHead) -> Markup {
    markup! {
        @if !proposal.since.is_empty() {
            section { h2 { "Not yet agreed" } @for own in &proposal.since { p { (line(own)) } } }
        }
        @if !proposal.answered.is_empty() {
            section {
                h2 { "Answered" }
                p { (line(&proposal.answered)) }
                @if !proposal.signature.is_empty() {
                    div.signature role="img" aria-label="Signature" { (PreEscaped(drawing::signature(&proposal.signature))) }
                }
            }
        }
        @if proposal.is_open() {
            section {
                h2 { "Your answer" }
                p { "Answer each number with yes, no or later. By telephone or message it counts with name, number, date and time." }
            }
        }
    }
}
