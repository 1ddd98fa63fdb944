//! What can't be is refused with a sentence, and nothing that was entered is lost.

use crate::failure::{Outcome, ensure};
use crate::first_job::take_in;
use crate::stage::{Stage, on_both};
use crate::worn_engine::picture_of;

on_both!(journey);

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    take_in(page).await?;

    page.sheet("Take in").await?;
    page.press("link", "2 Engine").await?;
    page.press("button", "Cylinders and mains…").await?;
    for _ in 0..5 {
        page.press("button", "One more: Main bearings").await?;
    }
    page.press("button", "Save and go on").await?;
    page.read("10 mains: a crankshaft with 4 crankpins has 2 to 5.").await?;
    page.see("button", "Save and go on").await?;

    // Neither another step nor the end of the page loses what was refused; it can be dropped.
    page.press("link", "1 Customer").await?;
    page.see("link", "2 Engine not saved").await?;
    ensure(page.value("Customer").await? == "A. Harrow", "The refusal lost what was entered.")?;
    page.fill("Machine", "Dredger winch, port side").await?;
    page.client.refresh().await?;
    page.see("heading", "Take in, step 1 of 3").await?;
    page.until(async || {
        let machine = page.value("Machine").await?;
        ensure(machine == "Dredger winch, port side", format!("What was typed last is lost: {machine}."))
    })
    .await?;
    page.read("A. Harrow · Dredger winch, port side").await?;
    page.press("link", "2 Engine not saved").await?;
    page.read("Entered last time, not saved yet.").await?;
    page.see("button", "Cylinders and mains In-line 4, 10 mains, thrust on main 5").await?;
    page.press("button", "Drop it").await?;
    page.see("button", "Cylinders and mains In-line 4, 5 mains, thrust on main 3").await?;

    page.sheet("Plan").await?;
    page.press("link", "Main 1, upper shell, not looked at").await?;
    page.see("heading", "Main 1, upper shell").await?;
    let photo = stage.folders.file("shell.jpg", HEIC)?;
    page.choose_file("Choose photos", &photo).await?;
    page.read("HEIC").await?;
    ensure(!page.has("link", "Enlarge photo 1 of …").await?, "The refused picture stayed on the page.")?;

    // One of several is told by its name, and the others are taken.
    let first = stage.folders.file("first.jpg", &picture_of(3)?)?;
    let third = stage.folders.file("third.jpg", &picture_of(4)?)?;
    page.choose_files("Choose photos", &[first.as_path(), photo.as_path(), third.as_path()]).await?;
    page.read("Not taken: shell.jpg.").await?;
    page.read("2 photos saved.").await?;
    page.see("link", "Enlarge photo 2 of Main 1, upper shell").await
}

/// The first bytes of a HEIC picture, as ISO/IEC 23008-12 has them. The name says JPEG: only the bytes count.
const HEIC: &[u8] = b"\0\0\0\x18ftypheic\0\0\0\0mif1heic\0\0\0\x08mdat";
