//! The customer's page as one web page in one file: one column, photos inside, no script, nothing asked of the network.

use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use maud::{DOCTYPE, Markup, PreEscaped, html as markup};
use wearbook_core::document::{
    Block, CustomersPage, Image, JobToDecide, Paper, Picture, ProposalHead, Section, Shown, Total,
};
use wearbook_core::under_way::{Stopped, UnderWay};

use crate::clean::line;
use crate::content::Pictures;
use crate::drawing;
use crate::mail::ON_A_SCREEN;
use crate::pdf::{Resolution, Source, printable};

/// Colours for day and night, and letters that grow with the reader's own size.
const STYLE: &str = include_str!("html.css");

/// Writes the customer's page of a paper; nothing but its title where it has none.
///
/// # Errors
/// [`Stopped`].
pub fn html(paper: &Paper, pictures: Source<'_>, way: &UnderWay) -> Result<String, Stopped> {
    let pictures = printable(Resolution::Mail, paper, pictures, &|_| ON_A_SCREEN, way)?;
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
    Ok(written.into_string())
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
                h2 { (page.heading(Section::Found)) }
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
                h2 { (page.heading(Section::How)) }
                @if !page.how.is_empty() {
                    dl.how { @for link in &page.how { div { dt { (link.head) } dd { (line(&link.words)) "." } } } }
                }
                @for sentence in &page.besides { p { @if !page.how.is_empty() { "Besides: " } (line(sentence)) } }
            }
        }
        @if !page.shown.is_empty() {
            section {
                h2 { (page.heading(Section::Shown)) }
                @for shown in &page.shown { (figure(shown, pictures)) }
            }
        }
        @if !page.jobs.is_empty() { (jobs(page)) }
        @if let Some(total) = &page.total { (costs(page, total)) }
        @if !page.unpriced.is_empty() { section { h2 { (page.heading(Section::Costs)) } p { (line(&page.unpriced)) } } }
        @if !page.choices.is_empty() {
            section { h2 { (page.heading(Section::Choices)) } @for own in &page.choices { p { (line(&own.words())) } } }
        }
        @if !page.not_examined.is_empty() { section { h2 { (page.heading(Section::NotExamined)) } p { (line(&page.not_examined)) } } }
        @if !page.asked.is_empty() {
            section { h2 { (page.heading(Section::Asked)) } @for sentence in &page.asked { p { (line(sentence)) } } }
        }
        (answered(page))
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
            h2 { (page.heading(Section::Jobs)) }
            @if !proposal.dates().is_empty() {
                p.dates { (proposal.dates()) @if page.total.is_some() { ". Prices without tax" } "." }
            }
            ol.jobs { @for own in &page.jobs { (job(own, currency)) } }
        }
    }
}

fn job(job: &JobToDecide, currency: &str) -> Markup {
    markup! {
        li {
            h3 {
                span { (job.number) " " (line(&job.title)) }
                @if !currency.is_empty() { span.price { (job.price_words(currency)) } }
            }
            p { em { (job.need.words()) } ". " (line(&job.because)) }
            p { em { "If left: " } (line(&job.if_left)) }
            @if let Some(answer) = job.answer { p { "Your answer: " strong { (answer.words()) } } }
        }
    }
}

fn costs(page: &CustomersPage, total: &Total) -> Markup {
    markup! {
        section {
            h2 { (page.heading(Section::Costs)) }
            table {
                @let agreed = total.agreed.as_ref();
                @if let Some(own) = agreed {
                    tr { td {} th scope="col" { (own.head()) } th scope="col" { (Total::ALL_JOBS) } }
                }
                tr { th scope="row" { "Without tax" } @if let Some(own) = agreed { td { (own.net) } } td { (total.net) } }
                tr {
                    th scope="row" { "Tax, " (total.tax_rate) }
                    @if let Some(own) = agreed { td { (own.tax) } }
                    td { (total.tax) }
                }
                tr.sum {
                    th scope="row" { (total.sum_words()) }
                    @if let Some(own) = agreed { td { (own.gross) } }
                    td { (total.gross) }
                }
            }
            @if !total.left_out.is_empty() { p { (line(&total.left_out)) } }
            @for sentence in &total.beside { p { (line(sentence)) } }
        }
    }
}

fn answered(page: &CustomersPage) -> Markup {
    let proposal = &page.proposal;
    markup! {
        @if !proposal.said_since.is_empty() {
            section {
                h2 { (page.heading(Section::SaidSince)) }
                @for own in &proposal.said_since { p { (line(own)) } }
            }
        }
        @if !proposal.since.is_empty() {
            section { h2 { (page.heading(Section::Since)) } @for own in &proposal.since { p { (line(own)) } } }
        }
        @if !proposal.answered.is_empty() {
            section {
                h2 { (page.heading(Section::Answer)) }
                p { (line(&proposal.answered)) }
                @if !proposal.signature.is_empty() {
                    div.signature role="img" aria-label="Signature" { (PreEscaped(drawing::signature(&proposal.signature))) }
                }
            }
        }
        @if proposal.is_open() {
            section {
                h2 { (page.heading(Section::Answer)) }
                p { (ProposalHead::HOW_TO_ANSWER) }
            }
        }
    }
}
