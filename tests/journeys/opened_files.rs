//! Files that the system opens with the program are taken in by the page, one after the other; what is refused is told by
//! name and keeps none of the others out. A second start hands its file to the window that is open.

use crate::failure::{Outcome, ensure};
use crate::stage::{Stage, on_both};
use crate::worn_engine;

on_both!(worn_engine::enter, journey);

const NAME: &str = "A. Harrow · Dredger winch";

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Plan").await?;
    page.sheet("Hand over").await?;
    page.unfold("Other papers").await?;
    page.press("button", "Export the job as an archive").await?;
    let archive = stage.saved_document(".wearbook").await?;
    let archive = stage.folders.file("harrow.wearbook", &archive)?;
    let half = std::fs::read(&archive)?;
    let half = stage.folders.file("half.wearbook", half.get(..half.len() / 2).unwrap_or_default())?;

    // Alone it is opened at its plan, whatever was open before.
    page.go("#/settings", "Settings").await?;
    stage.kill_and_open(std::slice::from_ref(&archive)).await?;
    stage.page.see("heading", "Plan").await?;

    stage.kill_and_open(&[half.clone(), archive.clone()]).await?;
    let page = &stage.page;
    page.see("heading", "Plan").await?;
    page.read("half.wearbook: This is not a .wearbook file, or its end is missing: copy it again.").await?;

    // What was taken in is not taken in again.
    page.go("#/settings", "Settings").await?;
    page.client.refresh().await?;
    page.see("heading", "Settings").await?;

    if stage.open_with_it(&half)? {
        page.read("This is not a .wearbook file, or its end is missing: copy it again.").await?;
        page.go("#/settings", "Settings").await?;
        stage.open_with_it(&archive)?;
        page.see("heading", "Plan").await?;
    }

    // Several are chosen at once; the list says how many came.
    page.go("#/jobs", "Jobs").await?;
    page.choose_file("Open an archive", &half).await?;
    page.read("copy it again.").await?;
    page.read(NAME).await?;
    page.choose_file("Open an archive", &archive).await?;
    page.see("heading", "Plan").await?;
    ensure(!page.text().await?.contains("copy it again."), "The refusal of another file stays.")
}
