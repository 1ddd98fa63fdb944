//! What can't be is refused with a sentence, and nothing that was entered is lost.

use crate::failure::{Outcome, ensure};
use crate::first_job::take_in;
use crate::stage::{Stage, on_both};

on_both!(journey);

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    take_in(page).await?;

    page.sheet("Take in").await?;
    for _ in 0..5 {
        page.press("button", "One more: Main bearings").await?;
    }
    page.press("button", "Save the changed arrangement").await?;
    page.read("10 mains: a crankshaft with 4 crankpins has 2 to 5.").await?;
    page.see("button", "Save the changed arrangement").await?;
    ensure(page.value("Customer").await? == "A. Harrow", "The refusal lost what was entered.")?;

    page.sheet("Plan").await?;
    page.press("link", "Main 1, upper shell, not looked at").await?;
    page.see("heading", "Main 1, upper shell").await?;
    let photo = stage.folders.file("shell.jpg", HEIC)?;
    page.choose_file("Choose photos", &photo).await?;
    page.read("HEIC").await?;
    ensure(!page.has("link", "Enlarge photo 1 of …").await?, "The refused picture stayed on the page.")
}

/// The first bytes of a HEIC picture, as ISO/IEC 23008-12 has them. The name says JPEG: only the bytes count.
const HEIC: &[u8] = b"\0\0\0\x18ftypheic\0\0\0\0mif1heic\0\0\0\x08mdat";
