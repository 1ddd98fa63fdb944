//! A part is found by the label on its bag: by the code typed from it, and by a photo of it.

use std::io::Cursor;

use image::{GrayImage, ImageFormat, Luma};
use wearbook_core::label::Code;
use wearbook_report::{QUIET_ZONE, Symbol};
use wearbook_store::JobId;

use crate::axe::{axe_core, violations};
use crate::failure::{Outcome, ensure, fail};
use crate::first_job::{holds, take_in};
use crate::page::Page;
use crate::stage::{Stage, on_both};

on_both!(journey);

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    take_in(page).await?;
    let shell = code(page, "main-shell.2.upper").await?;
    let piston = code(page, "piston.3").await?;

    page.sheet("Plan").await?;
    page.press("link", "Find by its label").await?;
    page.see("heading", "Find by its label").await?;
    page.client.execute(&axe_core()?, vec![]).await?;
    let found = violations(page, "finding by a label").await?;
    ensure(found.is_empty(), found.join("\n"))?;

    // Two characters exchanged by the hand: said, and nothing typed is lost.
    let typed = shell.in_groups().to_lowercase();
    let wrong: String = typed.chars().take(12).chain(typed.chars().skip(13)).collect();
    page.fill("Code on the label", &wrong).await?;
    page.press("button", "Find the part").await?;
    page.read("A code has 14 letters and digits, and these are 13").await?;
    ensure(page.value("Code on the label").await? == wrong, "The refusal lost what was typed.")?;
    page.fill("Code on the label", &typed).await?;
    page.press("button", "Find the part").await?;
    page.see("heading", "Main 2, upper shell").await?;

    page.sheet("Plan").await?;
    page.press("link", "Find by its label").await?;
    let plain = stage.folders.file("bench.png", &picture(None)?)?;
    page.choose_file("Choose a photo of the label", &plain).await?;
    page.read("No code can be read in this picture").await?;
    let label = stage.folders.file("label.png", &picture(Some(&piston))?)?;
    page.choose_file("Choose a photo of the label", &label).await?;
    page.see("heading", "Piston 3").await?;

    page.sheet("Hand over").await?;
    page.unfold("Other papers").await?;
    page.press("link", "Labels").await?;
    page.see("heading", "Labels").await?;
    page.press("button", "Save the labels (PDF)").await?;
    let labels = stage.saved_document("labels.pdf").await?;
    holds(stage, &labels, &["Piston 3", &shell.in_groups(), &piston.in_groups()])?;

    // The one in hand, from its own screen: a journal goes by the label of its shaft.
    let job = page.address().await?.trim_end_matches("/labels").to_owned();
    page.go(&format!("{job}/part/main-journal.2"), "Main 2, journal").await?;
    page.press("link", "Label: Crankshaft").await?;
    page.read("One label: Crankshaft.").await
}

/// The code of a part of the open job.
async fn code(page: &Page, part: &str) -> Outcome<Code> {
    let address = page.address().await?;
    let job = address.split('/').find_map(|step| step.parse::<JobId>().ok());
    match job.map(|job| part.parse().map(|part| Code::new(job.start(), part))).transpose()?.flatten() {
        Some(code) => Ok(code),
        None => fail(format!("{address} has no code for {part}.")),
    }
}

/// A grey bench, and on it the code of a label, eight pixels a module.
fn picture(code: Option<&Code>) -> Outcome<Vec<u8>> {
    let symbol = code.map(Symbol::of).transpose()?;
    let side = symbol.as_ref().map_or(0, Symbol::side) + 2 * QUIET_ZONE;
    let bright = |x: usize, y: usize| match &symbol {
        Some(symbol) if symbol.is_dark(x.wrapping_sub(QUIET_ZONE), y.wrapping_sub(QUIET_ZONE)) => 30,
        Some(_) if x < side && y < side => 230,
        _ => 120,
    };
    // The label begins some way in; before it everything lies outside.
    let at = |pixel: u32| (pixel as usize / 8).wrapping_sub(20);
    let picture = GrayImage::from_fn(800, 600, |x, y| Luma([bright(at(x), at(y))]));
    let mut png = Cursor::new(Vec::new());
    picture.write_to(&mut png, ImageFormat::Png)?;
    Ok(png.into_inner())
}
