//! The walk from part to part: a tag with all that belongs to it in sight, clean and on in one tap, taken back from the
//! next part, back to where the walk was begun, and a whole kind or row clean at once.

use crate::failure::{Outcome, ensure};
use crate::first_job::take_in;
use crate::page::Page;
use crate::stage::{Place, Stage, on_both};
use crate::worn_engine::picture;

on_both!(journey);

async fn journey(stage: &mut Stage) -> Outcome {
    take_in(&stage.page).await?;
    let photo = stage.folders.file("shell.jpg", &picture()?)?;
    let page = &stage.page;
    if stage.place == Place::Phone {
        back_folds_the_list_of_screens(page).await?;
    }
    page.press("link", "Main 1, upper shell, not looked at").await?;
    page.choose_file("Choose photos", &photo).await?;
    page.see("link", "Enlarge photo 1 of Main 1, upper shell").await?;
    page.press("button", "Scoring").await?;
    if stage.place == Place::Phone {
        all_in_sight(page).await?;
    }
    page.press("button", "Grade 2: …").await?;
    page.press("button", "Front edge, crown").await?;
    page.saved().await?;
    page.press("button", "Remove “scoring”").await?;
    page.read("Main 1, upper shell: scoring removed").await?;
    page.press("button", "Undo").await?;
    page.read("Undone: Main 1, upper shell: scoring removed").await?;

    page.press("link", "Next: Main 2, upper shell").await?;
    page.see("heading", "Main 2, upper shell").await?;
    page.press("button", "Clean, on to Main 3, upper shell").await?;
    page.see("heading", "Main 3, upper shell").await?;
    page.read("Main 2, upper shell: clean").await?;
    page.press("button", "Take back").await?;
    page.read("Undone: Main 2, upper shell: looked at and clean").await?;
    page.press("link", "Show").await?;
    page.see("heading", "Main 2, upper shell").await?;
    page.read("not looked at").await?;
    page.press("link", "Back").await?;
    page.see("heading", "Main 3, upper shell").await?;

    // However far the walk has gone, one step back leads to where it was begun.
    page.client.back().await?;
    page.see("heading", "Plan").await?;
    page.press("button", "Several clean at once").await?;
    page.see("button", "9 × main bearing shell, not looked at").await?;
    // What is folded again stays so, whatever is drawn anew.
    page.press("button", "Several clean at once").await?;
    for again in ["Undo", "Redo"] {
        page.press("button", again).await?;
        page.saved().await?;
    }
    ensure(!page.has("button", "9 × main bearing shell, not looked at").await?, "What was folded is open again.")?;
    page.press("button", "Several clean at once").await?;
    page.press("button", "9 × main bearing shell, not looked at").await?;
    page.read("Main 5, lower shell; Main 2, upper shell").await?;
    page.press("button", "All 9 clean").await?;
    page.see("link", "Main 2, upper shell, clean").await?;
    page.read("Clean: 9 × main bearing shell").await?;
    page.saved().await?;

    // One undo takes all of them back, and one redo does all again.
    page.press("button", "Undo").await?;
    page.read("Undone: 9 × main bearing shell: looked at and clean").await?;
    page.see("link", "Main 5, upper shell, not looked at").await?;
    page.see("link", "Main 2, upper shell, not looked at").await?;
    page.press("button", "Redo").await?;
    page.read("Done again: 9 × main bearing shell: looked at and clean").await?;
    page.see("link", "Main 5, upper shell, clean").await?;
    page.press("button", "Undo").await?;
    page.see("link", "Main 2, lower shell, not looked at").await?;
    page.saved().await?;
    one_row_clean_at_once(page).await
}

/// Before it leads anywhere; and a screen chosen in the list is one step away, not two.
async fn back_folds_the_list_of_screens(page: &Page) -> Outcome {
    let folded = async || {
        page.until(async || ensure(!page.has("link", "History").await?, "The list of screens is open.")).await?;
        page.see("heading", "Plan").await
    };
    page.press("button", "Screens").await?;
    page.see("link", "History").await?;
    page.client.back().await?;
    folded().await?;
    page.sheet("History").await?;
    page.client.back().await?;
    folded().await
}

/// What is laid out in a row, or one side of a kind; taken back by its own button, and after the page was loaded anew.
async fn one_row_clean_at_once(page: &Page) -> Outcome {
    page.press("radio", "In one row").await?;
    page.press("button", "Main 2: 4 parts, not looked at").await?;
    page.read("Main 2, housing bore; Main 2, upper shell; Main 2, lower shell; Main 2, journal").await?;
    page.press("button", "All 4 clean").await?;
    page.read("Clean: Main 2: 4 parts").await?;
    page.see("link", "Main 2, journal, clean").await?;
    page.press("button", "Take back").await?;
    page.read("Undone: Main 2: 4 parts: looked at and clean").await?;
    page.see("link", "Main 2, journal, not looked at").await?;

    page.press("radio", "Of one kind").await?;
    page.press("button", "5 × lower main bearing shell, not looked at").await?;
    page.press("button", "All 5 clean").await?;
    page.see("link", "Main 4, lower shell, clean").await?;
    page.see("link", "Main 4, upper shell, not looked at").await?;
    page.saved().await?;
    page.client.refresh().await?;
    page.see("link", "Main 4, lower shell, clean").await?;
    page.press("button", "Undo").await?;
    page.read("Undone: 5 × lower main bearing shell: looked at and clean").await?;
    page.see("link", "Main 1, lower shell, not looked at").await?;
    // In the history each is an entry of its own.
    page.sheet("History").await?;
    page.unfold_all().await?;
    page.read("Main 1, lower shell: looked at and clean").await?;
    page.read("Main 5, lower shell: looked at and clean").await
}

/// All four grades and every field of the open tag stand between the head of the screen and its foot.
async fn all_in_sight(page: &Page) -> Outcome {
    let script = "const foot = document.querySelector('.foot').getBoundingClientRect().top
        const shown = [...document.querySelectorAll('.grade, .zone-drawing button')].filter((field) => {
            const { top, bottom } = field.getBoundingClientRect()
            return top >= 0 && bottom <= foot
        })
        return shown.length";
    page.until(async || {
        let shown = page.client.execute(script, vec![]).await?;
        ensure(shown == 14, format!("Of four grades and ten fields {shown} are in sight."))
    })
    .await
}
