//! A job is put away once its archive is saved, brought back from the list, put away again, and comes back by its archive only
//! when that is asked for.

use crate::failure::{Outcome, ensure};
use crate::page::Page;
use crate::stage::{Stage, on_both};
use crate::worn_engine;

on_both!(worn_engine::enter, journey);

const NAME: &str = "A. Harrow · Dredger winch";

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    put_away(page).await?;
    page.read("Its archive comes first: none was saved since the last entry.").await?;
    page.see("heading", "Hand over").await?;
    page.press("button", "Save the archive, then put away").await?;
    page.see("heading", "Jobs").await?;
    page.read("Put away for 30 days").await?;
    let archive = stage.saved_document(".wearbook").await?;
    let archive = stage.folders.file("of-another-device.wearbook", &archive)?;
    ensure(!page.has("link", NAME).await?, "What is put away stands on the list.")?;

    stage.kill_and_restart().await?;
    let page = &stage.page;
    page.go("#/jobs", "Jobs").await?;
    page.press("button", "Put away: 1 job").await?;
    page.read("can be brought back until").await?;
    page.press("button", &format!("Bring back: {NAME}")).await?;
    page.see("heading", "Plan").await?;

    // Nothing was entered since, so its archive still holds all of it.
    put_away(page).await?;
    page.see("heading", "Jobs").await?;
    page.choose_file("Open an archive", &archive).await?;
    page.read("The job in of-another-device.wearbook was put away here.").await?;
    page.press("button", "Leave it away").await?;
    page.see("button", "Put away: 1 job").await?;
    page.choose_file("Open an archive", &archive).await?;
    page.press("button", "Take it in all the same").await?;
    page.see("heading", "Plan").await?;
    page.go("#/jobs", "Jobs").await?;
    page.read(NAME).await?;
    ensure(!page.has("button", "Put away: 1 job").await?, "It is called put away still.")
}

async fn put_away(page: &Page) -> Outcome {
    page.see("heading", "Plan").await?;
    page.sheet("Hand over").await?;
    page.unfold("Put the job away").await?;
    page.press("button", "Put it away").await
}
