//! With the phone in the hand: a photo by the phone's own camera, the program killed behind it, a sheet that is closed
//! again. The harness does what a phone does, as the file `behaves.json` says.

use serde_json::{Value, json};

use crate::axe::{axe_core, violations};
use crate::failure::{Outcome, ensure, fail};
use crate::page::Page;
use crate::stage::{Look, Place, Stage, play_over};
use crate::worn_engine::{self, picture_of};

const SHELL: &str = "Main 2, upper shell";

#[test]
fn by_the_camera_of_the_phone() -> Outcome {
    play_over(Place::PhoneInHand, Look::Light, worn_engine::enter, photographed)
}

#[test]
fn part_after_part() -> Outcome {
    play_over(Place::PhoneInHand, Look::Dark, worn_engine::enter, in_turn)
}

#[test]
fn by_the_share_sheet_of_the_phone() -> Outcome {
    play_over(Place::PhoneInHand, Look::Dark, worn_engine::enter, shared)
}

async fn photographed(stage: &mut Stage) -> Outcome {
    let shell = open_shell(stage).await?;

    // A slow camera: how far it is stands at the part.
    behave(stage, json!({ "camera": { "takes_millis": 1500, "writes": seen(stage, 2)? } }))?;
    stage.page.press("button", "Take a photo").await?;
    stage.page.read("The camera is open.").await?;
    stage.page.see("link", &format!("Enlarge photo 1 of {SHELL}")).await?;

    // Taken anew by the same camera: old and new stand side by side.
    behave(stage, json!({ "camera": { "writes": seen(stage, 7)? } }))?;
    stage.page.press("link", &format!("Enlarge photo 1 of {SHELL}")).await?;
    stage.page.press("button", "Retake").await?;
    stage.page.see("heading", "Which to keep?").await?;
    stage.page.press("button", "Keep both").await?;
    stage.page.go(&shell, SHELL).await?;
    stage.page.see("link", &format!("Enlarge photo 2 of {SHELL}")).await?;

    // The person goes back; the disk is full; nothing is left of either.
    behave(stage, json!({ "camera": {} }))?;
    stage.page.press("button", "Take a photo").await?;
    stage.page.read("No photo was taken.").await?;
    behave(stage, json!({ "camera": { "says": "no-room" } }))?;
    stage.page.press("button", "Take a photo").await?;
    stage.page.read("There is no room left on this device").await?;
    stage.page.press("button", "Close").await?;

    // Killed behind the camera while it wrote: half a photo is none.
    behave(stage, json!({ "camera": { "writes": seen(stage, 5)?, "part": 0.5, "hangs": true } }))?;
    killed_behind_the_camera(stage, "Take a photo").await?;
    stage.page.go(&shell, SHELL).await?;
    stage.page.see("link", &format!("Enlarge photo 1 of {SHELL}")).await?;
    ensure(!stage.page.text().await?.contains("waits"), "Half a photo is offered.")?;

    // Killed after it: the photo is offered where the person comes in, and taken in from there.
    behave(stage, json!({ "camera": { "writes": seen(stage, 3)?, "hangs": true } }))?;
    killed_behind_the_camera(stage, "Take a photo").await?;
    let page = &stage.page;
    page.go("#/jobs", "Jobs").await?;
    page.read(&format!("A photo taken of {SHELL} waits.")).await?;
    page.client.execute(&axe_core()?, vec![]).await?;
    let found = violations(page, "a photo that waits").await?;
    ensure(found.is_empty(), found.join("\n"))?;
    page.press("button", &format!("Take it in: photo of {SHELL}")).await?;
    page.until(async || match page.text().await?.contains("waits") {
        true => fail("The photo is offered still."),
        false => Ok(()),
    })
    .await?;
    page.go(&shell, SHELL).await?;
    page.see("link", &format!("Enlarge photo 3 of {SHELL}")).await?;

    // Once more: offered at its part too, and thrown away with a second tap.
    behave(stage, json!({ "camera": { "writes": seen(stage, 4)?, "hangs": true } }))?;
    killed_behind_the_camera(stage, "Take a photo").await?;
    let page = &stage.page;
    page.go(&shell, SHELL).await?;
    page.read(&format!("A photo taken of {SHELL} waits.")).await?;
    page.press("button", &format!("Throw it away: photo of {SHELL}")).await?;
    page.press("button", &format!("Throw it away for good: photo of {SHELL}")).await?;
    page.until(async || match page.text().await?.contains("waits") {
        true => fail("What was thrown away is offered still."),
        false => Ok(()),
    })
    .await?;
    ensure(!page.has("link", &format!("Enlarge photo 4 of {SHELL}")).await?, "What was thrown away was taken in.")?;

    // No camera at all: the web view's own way is there.
    behave(stage, json!({ "camera": { "says": "no-camera" } }))?;
    page.press("button", "Take a photo").await?;
    page.read("No camera could be opened").await?;
    page.press("button", "Close").await?;
    page.choose_file("Take a photo", &stage.folders.file("other.jpg", &picture_of(6)?)?).await?;
    page.see("link", &format!("Enlarge photo 4 of {SHELL}")).await
}

/// One tap for each part; what was taken badly is taken again, and a kill in the middle costs nothing.
async fn in_turn(stage: &mut Stage) -> Outcome {
    stage.page.see("heading", "Plan").await?;
    let job = job_of(&stage.page).await?;
    stage.page.press("link", "Photos in turn").await?;
    stage.page.see("button", "Photograph …").await?;
    stage.page.go(&format!("#/job/{job}/camera/main-shell.2.upper"), SHELL).await?;
    behave(stage, json!({ "camera": { "writes": seen(stage, 2)? } }))?;
    stage.page.press("button", &format!("Photograph {SHELL}")).await?;
    stage.page.see("heading", "Main 3, upper shell").await?;
    behave(stage, json!({ "camera": { "writes": seen(stage, 3)? } }))?;
    stage.page.press("button", &format!("Take again: photo of {SHELL}")).await?;
    stage.page.read("The new photo stands in place of the one before.").await?;
    stage.page.saved().await?;
    stage.page.see("heading", "Main 3, upper shell").await?;

    // Killed behind the camera: it goes on where it was, with the photo offered.
    behave(stage, json!({ "camera": { "writes": seen(stage, 4)?, "hangs": true } }))?;
    killed_behind_the_camera(stage, "Photograph Main 3, upper shell").await?;
    stage.page.see("heading", "Main 4, upper shell").await?;
    stage.page.press("button", "Take it in: photo of Main 3, upper shell").await?;
    stage.page.see("button", "Take again: photo of Main 3, upper shell").await?;
    stage.page.press("link", "Skip main 4, upper shell").await?;
    stage.page.see("heading", "Main 5, upper shell").await?;

    // What is picked for the customer is not replaced.
    stage.page.press("link", "Tag it: Main 3, upper shell").await?;
    stage.page.press("link", "Enlarge photo 1 of Main 3, upper shell").await?;
    stage.page.press("button", "For the customer, remove").await?;
    stage.page.press("checkbox", "Show it to the customer").await?;
    stage.page.saved().await?;
    stage.page.press("link", "Back to the part").await?;
    behave(stage, json!({ "camera": { "writes": seen(stage, 5)? } }))?;
    stage.page.press("button", "Take again: photo of Main 3, upper shell").await?;
    stage.page.read("Both photos are kept: something is marked on the one before.").await?;
    stage.page.see("link", "Enlarge photo 2 of Main 3, upper shell").await?;
    stage.page.press("link", "Next photo: main 4, upper shell").await?;
    stage.page.see("button", "Photograph Main 4, upper shell").await?;

    stage.page.go(&format!("#/job/{job}/part/main-shell.2.upper"), SHELL).await?;
    stage.page.see("link", &format!("Enlarge photo 1 of {SHELL}")).await?;
    let is_twice = stage.page.has("link", &format!("Enlarge photo 2 of {SHELL}")).await?;
    ensure(!is_twice, "The photo that was taken again is kept twice.")
}

async fn shared(stage: &mut Stage) -> Outcome {
    refused_by_their_codes(&stage.page).await?;
    stage.page.sheet("Hand over").await?;
    behave(stage, json!({ "sheet": { "takes_millis": 300, "chosen": false } }))?;
    stage.page.press("button", "Share the picture").await?;
    stage.page.read("Not shared: nothing was chosen.").await?;
    behave(stage, json!({ "sheet": { "takes_millis": 300, "chosen": true } }))?;
    stage.page.press("button", "Share the picture").await?;
    stage.page.read("Handed over.").await?;
    let folder = stage.folders.device().join("shared");
    let is_picture = |name: &str| name.ends_with(".png");
    let names: Vec<String> =
        std::fs::read_dir(folder)?.filter_map(|file| file.ok()?.file_name().into_string().ok()).collect();
    ensure(names.iter().any(|name| is_picture(name)), format!("No picture came: {names:?}"))?;

    // Nothing to share with: saving and copying are left.
    behave(stage, json!({ "sheet": { "says": "no-share" } }))?;
    stage.page.press("button", "Share the picture").await?;
    stage.page.read("This device has nothing to share with").await?;
    stage.page.press("button", "Close").await?;
    ensure(!stage.page.has("button", "Share the picture").await?, "What fails is offered still.")?;
    stage.page.see("button", "Copy the message").await?;

    // The screen stays lit while it is measured, and no longer.
    let job = job_of(&stage.page).await?;
    stage.page.go(&format!("#/job/{job}/measure/main-journal.1/diameter"), "Main 1, journal").await?;
    lit(stage, "true").await?;
    stage.page.go("#/jobs", "Jobs").await?;
    lit(stage, "false").await
}

/// The cases that Rust is held by, asked by the page.
async fn refused_by_their_codes(page: &Page) -> Outcome {
    let all: Value = serde_json::from_str(include_str!("../../src-tauri/crates/phone/cases.json"))?;
    for case in all.get("requests").and_then(Value::as_array).into_iter().flatten() {
        let of = |what: &str| case.get(what).cloned().unwrap_or_default();
        let told = page.client.execute_async(ASK, vec![of("command"), of("arguments")]).await?;
        ensure(told == of("code"), format!("{}: {told}", of("because")))?;
    }
    Ok(())
}

const ASK: &str = "
    const [command, body, done] = arguments
    fetch(`/phone/${command}`, { method: 'POST', body: JSON.stringify(body), headers: { 'content-type': 'application/json' } })
      .then(async (answer) => done(answer.ok ? null : (await answer.json()).code), (failure) => done(String(failure)))";

/// What the phone does from now on.
fn behave(stage: &Stage, how: Value) -> Outcome {
    Ok(std::fs::write(stage.folders.device().join("behaves.json"), how.to_string())?)
}

/// What the camera sees; each is another picture.
fn seen(stage: &Stage, lines: u32) -> Outcome<String> {
    let name = format!("seen-{lines}.jpg");
    std::fs::write(stage.folders.device().join(&name), picture_of(lines)?)?;
    Ok(name)
}

async fn job_of(page: &Page) -> Outcome<String> {
    let address = page.address().await?;
    let job = address.split("#/job/").nth(1).and_then(|rest| rest.split('/').next());
    job.map(str::to_owned).ok_or_else(|| crate::failure::Failure(format!("{address} is of no job.")))
}

async fn open_shell(stage: &Stage) -> Outcome<String> {
    stage.page.see("heading", "Plan").await?;
    let shell = format!("#/job/{}/part/main-shell.2.upper", job_of(&stage.page).await?);
    stage.page.go(&shell, SHELL).await?;
    Ok(shell)
}

/// Opens the camera, and ends the program once the camera has written.
async fn killed_behind_the_camera(stage: &mut Stage, opens_it: &str) -> Outcome {
    stage.page.press("button", opens_it).await?;
    let shots = stage.folders.data().join("files/shots");
    stage
        .page
        .until(async || {
            let written = std::fs::read_dir(&shots)?
                .any(|file| file.is_ok_and(|file| file.metadata().is_ok_and(|of| of.len() > 0)));
            if written { Ok(()) } else { fail("The camera has written nothing.") }
        })
        .await?;
    stage.kill_and_restart().await
}

async fn lit(stage: &Stage, wanted: &str) -> Outcome {
    let file = stage.folders.device().join("lit");
    let told = stage.page.until(async || match std::fs::read_to_string(&file) {
        Ok(lit) if lit == wanted => Ok(()),
        other => fail(format!("The screen stays lit: {other:?}")),
    });
    told.await
}
