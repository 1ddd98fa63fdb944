//! The marks of a V8 by the thumb: one of each kind is entered, every other is noted by one tap. Then what can be measured
//! only before it comes apart.

use std::time::Duration;

use crate::crank::enter_all;
use crate::failure::{Outcome, ensure};
use crate::page::Page;
use crate::stage::{Stage, on_both};

on_both!(enter_all, journey);

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Main 1, journal").await?;
    page.sheet("Marks").await?;
    page.read("21 marks still to note.").await?;
    enter_the_first(page, "Rod 1").await?;
    note(page, "rod cap 1", 1).await?;
    for n in 2..=8 {
        note(page, &format!("rod {n}"), n).await?;
        note(page, &format!("rod cap {n}"), n).await?;
    }
    enter_the_first(page, "Main cap 1").await?;
    for n in 2..=4 {
        note(page, &format!("main cap {n}"), n).await?;
    }
    // Past the time of a double tap.
    tokio::time::sleep(Duration::from_millis(400)).await;
    page.press("button", "Nothing there: I mark it “5”, on the left, points to the front").await?;
    page.read("Every cap and rod has its mark noted.").await?;
    page.see("link", "Main cap 5 “5”, made here, on the left, points to the front").await?;
    page.saved().await?;
    put_one_right(page).await?;
    measure_before_it_comes_apart(page).await
}

async fn enter_the_first(page: &Page, place: &str) -> Outcome {
    page.see("heading", place).await?;
    page.press("button", "Fill in 1").await?;
    page.press_in("On the side", "radio", "Left").await?;
    page.press_in("Arrow or tang points to the", "radio", "Front").await?;
    note(page, &place.to_lowercase(), 1).await
}

/// One tap, which says what it notes. One that comes as fast as the second of a double tap is not taken.
async fn note(page: &Page, place: &str, n: u8) -> Outcome {
    let name = format!("Note {place}: “{n}”, on the left, points to the front");
    page.see("button", &name).await?;
    page.until(async || {
        if page.has("button", &name).await? {
            page.press("button", &name).await?;
        }
        ensure(!page.has("button", &name).await?, format!("“{name}” was not taken."))
    })
    .await
}

/// A wrong one is opened by its line, and the odd one is told.
async fn put_one_right(page: &Page) -> Outcome {
    page.press("link", "Rod cap 3 …").await?;
    page.see("heading", "Rod cap 3").await?;
    page.fill("What stands there", "4").await?;
    page.read("Stands on rod cap 4 already.").await?;
    note(page, "rod cap 3", 4).await?;
    page.read("Rod 3 is marked “3” but its cap “4”").await?;
    page.press("button", "Undo").await?;
    page.see("link", "Rod cap 3 “3”, on the left, points to the front").await?;
    page.saved().await
}

/// The journals are in the hand: the end float can't be read any longer. The rods are still in.
async fn measure_before_it_comes_apart(page: &Page) -> Outcome {
    page.see("button", "Before the caps come off: 8 to measure").await?;
    page.see("link", "Crankshaft: end float no longer possible before reassembly").await?;
    page.press("link", "Rod 1: side play not measured").await?;
    page.see("textbox", "Rod 1, side play, in inches").await?;
    page.type_out("0.008\n").await?;
    page.see("textbox", "Rod 2, side play, in inches").await?;
    page.saved().await?;
    page.sheet("Marks").await?;
    page.see("link", "Rod 1: side play 0.008 in").await?;
    page.see("button", "Before the caps come off: 7 to measure").await?;

    let here = page.address().await?;
    let job = here.split("/marks").next().unwrap_or_default();
    page.go(&format!("{job}/part/rod-shell.2.lower"), "Rod 2, lower shell").await?;
    page.see("link", "Rod 2: side play measure before it comes apart").await?;
    page.press("button", "Looked at and clean").await?;
    page.see("link", "Rod 2: side play no longer possible before reassembly").await?;
    page.go(&format!("{job}/measure/rod.2/side-play"), "Rod 2").await?;
    page.read("No longer possible before reassembly").await
}
