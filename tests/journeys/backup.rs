//! The shop is saved elsewhere, read back by the program itself, and comes back from there.

use crate::failure::{Outcome, ensure};
use crate::page::Page;
use crate::stage::{Place, Stage, on_both};
use crate::worn_engine;

on_both!(worn_engine::enter, journey);

const NAME: &str = "A. Harrow · Dredger winch";

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Plan").await?;
    to_backup(page).await?;
    page.read("Nothing of this shop is saved elsewhere yet.").await?;
    page.press("button", "Save the whole shop").await?;
    page.read("Last saved and read back").await?;
    let shop = stage.saved_document(".wearbook").await?;
    let shop = stage.folders.file("shop.wearbook", &shop)?;
    if stage.place == Place::Window {
        into_a_folder(stage).await?;
    }

    // Taken in where all of it is, nothing changes; the job opens.
    let page = &stage.page;
    page.go("#/jobs", "Jobs").await?;
    page.choose_file("Open an archive", &shop).await?;
    page.see("heading", "Plan").await?;

    // With every file of the shop gone it comes back.
    stage.begin_anew(&[shop]).await?;
    let page = &stage.page;
    page.see("heading", "Plan").await?;
    page.go("#/jobs", "Jobs").await?;
    page.read(NAME).await
}

async fn to_backup(page: &Page) -> Outcome {
    page.go("#/settings", "Settings").await?;
    page.press("link", "Backup").await?;
    page.see("heading", "Backup").await
}

async fn into_a_folder(stage: &Stage) -> Outcome {
    let page = &stage.page;
    page.press("button", "Choose a folder").await?;
    page.read("Saved and read back: 1 job changed").await?;
    page.press("button", "Save what changed now").await?;
    page.read("Saved and read back: 0 jobs changed").await?;
    let saved = std::fs::read_dir(stage.folders.backups())?.count();
    ensure(saved == 2, format!("{saved} files lie in the folder for backups."))?;
    page.press("button", "Take in all backups of a folder").await?;
    page.see("heading", "Plan").await?;
    to_backup(page).await?;
    page.press("button", "No longer into this folder").await?;
    page.see("button", "Choose a folder").await
}
