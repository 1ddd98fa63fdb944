//! A photo is drawn on with the mouse and with buttons alone; what is drawn is told, printed and taken off again.

use crate::axe::{axe_core, violations};
use crate::failure::{Outcome, ensure};
use crate::first_job::{holds, take_in};
use crate::page::Page;
use crate::stage::{Stage, on_both};
use crate::worn_engine::picture;

on_both!(journey);

async fn journey(stage: &mut Stage) -> Outcome {
    take_in(&stage.page).await?;
    let photo = stage.folders.file("shell.jpg", &picture()?)?;
    let page = &stage.page;
    page.press("link", "Main 1, upper shell, not looked at").await?;
    page.choose_file("Choose photos", &photo).await?;
    page.press("link", "Enlarge photo 1 of Main 1, upper shell").await?;
    page.see("heading", "Photo 1 of Main 1, upper shell").await?;

    // With the mouse, as with a finger: an outline and what it shows.
    page.press("button", "Draw on it").await?;
    page.draw_over("img", "The photo, to draw on: outline").await?;
    page.fill("What is to be seen there", "lining lifted").await?;
    page.client.execute(&axe_core()?, vec![]).await?;
    let found = violations(page, "drawing on a photo").await?;
    ensure(found.is_empty(), found.join("\n"))?;
    page.press("button", "Save the drawing").await?;
    page.read("1 lining lifted").await?;

    // With buttons: an arrow is turned and moved, and cannot leave the picture.
    page.press("button", "Draw on it").await?;
    page.press_in("What to draw", "radio", "Arrow").await?;
    page.press("button", "Place it with buttons").await?;
    let before = drawn_lines(page).await?;
    page.press("button", "Turn").await?;
    page.press("button", "To the left").await?;
    ensure(drawn_lines(page).await? != before, "The arrow did not move.")?;
    page.press("button", "Save the drawing").await?;
    page.see("button", "Remove “Arrow”").await?;

    // A note must say something; the refusal loses nothing.
    page.press("button", "Draw on it").await?;
    page.press_in("What to draw", "radio", "Note").await?;
    page.press("button", "Save the drawing").await?;
    page.read("The note is empty: say what is to be seen there.").await?;
    page.press("button", "Draw nothing").await?;

    page.press("button", "Remove “Arrow”").await?;
    page.saved().await?;
    ensure(!page.has("button", "Remove “Arrow”").await?, "The arrow is still there.")?;
    page.press("link", "Back to the part").await?;
    page.see("heading", "Main 1, upper shell").await?;

    stage.kill_and_restart().await?;
    let page = &stage.page;
    page.press("link", "Enlarge photo 1 of Main 1, upper shell").await?;
    page.read("1 lining lifted").await?;

    page.sheet("Hand over").await?;
    page.press("button", "Save the report (PDF)").await?;
    let report = stage.saved_document(".pdf").await?;
    holds(stage, &report, &["1 lining lifted"])
}

/// The lines over the photo, as numbers.
async fn drawn_lines(page: &Page) -> Outcome<serde_json::Value> {
    let script = "return [...document.querySelectorAll('.markup-field .line')].map((line) => line.getAttribute('d'))";
    Ok(page.client.execute(script, vec![]).await?)
}
