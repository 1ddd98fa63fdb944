//! A photo fills the screen, is zoomed, leafed through and taken anew; it is drawn on with the mouse and with buttons
//! alone; what is drawn is told, printed and removed again.

use crate::axe::{axe_core, violations};
use crate::failure::{Outcome, ensure, fail};
use crate::first_job::{holds, take_in};
use crate::page::Page;
use crate::stage::{Stage, on_both};
use crate::worn_engine::{picture, picture_of};

on_both!(journey);

async fn journey(stage: &mut Stage) -> Outcome {
    take_in(&stage.page).await?;
    let photo = stage.folders.file("shell.jpg", &picture()?)?;
    let sharper = stage.folders.file("sharper.jpg", &picture_of(3)?)?;
    let page = &stage.page;
    page.press("link", "Main 1, upper shell, not looked at").await?;
    page.choose_file("Choose photos", &photo).await?;
    page.press("link", "Enlarge photo 1 of Main 1, upper shell").await?;
    page.see("heading", "Photo 1 of Main 1, upper shell").await?;

    // Larger with buttons and with keys, and whole again.
    let whole = seen_width(page).await?;
    page.press("button", "Zoom in").await?;
    ensure(seen_width(page).await? > whole * 1.4, "The button does not make the photo larger.")?;
    page.press("button", "Whole").await?;
    ensure((seen_width(page).await? - whole).abs() < 1.0, "The photo is not whole again.")?;
    page.client.execute("document.querySelector('.photo-frame').focus()", vec![]).await?;
    page.key('+').await?;
    ensure(seen_width(page).await? > whole * 1.4, "The key does not make the photo larger.")?;

    // What is drawn on the larger photo is as wide as the hand went on it.
    page.press("button", "Draw on it").await?;
    page.draw_over("img", "The photo, to draw on: outline").await?;
    let width = drawn_width(page).await? * seen_width(page).await?;
    ensure((width - 60.0).abs() < 4.0, format!("The line is {width} pixels wide, and the hand went 60."))?;
    page.press("button", "Discard the drawing").await?;
    page.press("button", "Whole").await?;

    // With the mouse, as with a finger: an outline and what it shows.
    page.press("button", "Draw on it").await?;
    page.draw_over("img", "The photo, to draw on: outline").await?;
    page.fill("What is to be seen there", "lining lifted").await?;
    page.client.execute(&axe_core()?, vec![]).await?;
    let found = violations(page, "drawing on a photo").await?;
    ensure(found.is_empty(), found.join("\n"))?;
    page.press("button", "Save the drawing").await?;
    page.saved().await?;
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
    page.press("button", "1 lining lifted · Arrow").await?;
    page.see("button", "Remove “Arrow”").await?;

    // A note must say something; the refusal loses nothing.
    page.press("button", "Draw on it").await?;
    page.press_in("What to draw", "radio", "Note").await?;
    page.press("button", "Save the drawing").await?;
    page.read("The note is empty: say what is to be seen there.").await?;
    page.press("button", "Discard the drawing").await?;

    page.press("button", "1 lining lifted · Arrow").await?;
    page.press("button", "Remove “Arrow”").await?;
    page.saved().await?;
    ensure(!page.has("button", "Remove “Arrow”").await?, "The arrow is still there.")?;

    // Taken anew: both are there until one is chosen, and both can be.
    page.choose_file("Retake", &sharper).await?;
    page.see("heading", "Which to keep?").await?;
    page.saved().await?;
    page.press("button", "Keep both").await?;
    page.see("heading", "Photo 2 of Main 1, upper shell").await?;
    page.press("link", "Previous: Photo 1 of Main 1, upper shell").await?;
    page.see("heading", "Photo 1 of Main 1, upper shell").await?;
    page.press("link", "Next: Photo 2 of Main 1, upper shell").await?;
    page.see("heading", "Photo 2 of Main 1, upper shell").await?;
    page.press("link", "Compare").await?;
    page.press("link", "Photo 1 of Main 1, upper shell").await?;
    page.see("heading", "Side by side").await?;
    page.client.execute(&axe_core()?, vec![]).await?;
    let found = violations(page, "two photos side by side").await?;
    ensure(found.is_empty(), found.join("\n"))?;
    page.press("link", "Back to the photo").await?;
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

/// How wide the photo is laid out, in pixels, once it is there; the frame shows a part of it.
async fn seen_width(page: &Page) -> Outcome<f64> {
    let script = "const { width, height } = document.querySelector('.photo-sheet').getBoundingClientRect()
        const { naturalWidth, naturalHeight } = document.querySelector('.photo-sheet img')
        return Math.abs(width / height - naturalWidth / naturalHeight) < 0.01 ? width : null";
    page.until(async || match page.client.execute(script, vec![]).await?.as_f64() {
        Some(width) => Ok(width),
        None => fail("The photo is not there."),
    })
    .await
}

/// How wide what is being drawn is, as a share of the photo.
async fn drawn_width(page: &Page) -> Outcome<f64> {
    let script = "const line = document.querySelector('.markup-before .line')
        return line.getBBox().width / line.ownerSVGElement.viewBox.baseVal.width";
    Ok(page.client.execute(script, vec![]).await?.as_f64().unwrap_or_default())
}

/// The lines over the photo, as numbers.
async fn drawn_lines(page: &Page) -> Outcome<serde_json::Value> {
    let script = "return [...document.querySelectorAll('.markup-field .line')].map((line) => line.getAttribute('d'))";
    Ok(page.client.execute(script, vec![]).await?)
}
