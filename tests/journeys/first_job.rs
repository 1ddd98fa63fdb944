//! The first job: taken in, photographed, tagged, explained, decided, handed over; with a kill in the middle.

use std::process::Command;

use crate::failure::{Outcome, ensure};
use crate::page::Page;
use crate::stage::{Stage, on_both};
use crate::worn_engine::picture;

on_both!(journey);

async fn journey(stage: &mut Stage) -> Outcome {
    take_in(&stage.page).await?;

    let photo = stage.folders.file("shell.jpg", &picture()?)?;
    let page = &stage.page;
    page.press("link", "Main 1, upper shell, not looked at").await?;
    page.see("heading", "Main 1, upper shell").await?;
    page.choose_file("Choose photos", &photo).await?;
    page.see("link", "Enlarge photo 1 of Main 1, upper shell").await?;
    page.press("button", "Scoring").await?;
    page.press("button", "Grade 3: …").await?;
    page.press("button", "Front edge, crown").await?;
    page.see("button", "Scoring, grade 3").await?;
    page.saved().await?;

    // Undoing takes back the field and nothing else; doing again brings it back.
    ensure(pressed(page, "Front edge, crown").await?, "The field is not marked.")?;
    page.press("button", "Undo").await?;
    page.see("button", "Scoring, grade 3").await?;
    wait_until_pressed(page, "Front edge, crown", false).await?;
    page.press("button", "Redo").await?;
    wait_until_pressed(page, "Front edge, crown", true).await?;
    page.saved().await?;

    let address = page.address().await?;
    stage.kill_and_restart().await?;
    let page = &stage.page;
    page.see("heading", "Main 1, upper shell").await?;
    ensure(page.address().await? == address, "The screen after the restart is not the one before it.")?;
    page.see("button", "Scoring, grade 3").await?;
    page.see("link", "Enlarge photo 1 of Main 1, upper shell").await?;
    shows_its_pictures(page).await?;

    page.press("link", "Next: …").await?;
    page.see("heading", "Main 2, upper shell").await?;
    page.press("button", "Looked at and clean").await?;
    wait_until_pressed(page, "Looked at and clean", true).await?;
    for (part, name) in [("main-shell.2.lower", "Main 2, lower shell"), ("rod-shell.1.upper", "Rod 1, upper shell")] {
        open_part(page, part, name).await?;
        page.press("button", "Embedded debris").await?;
        page.press("button", "Grade 3: …").await?;
        page.see("button", "Embedded debris, grade 3").await?;
    }

    follow_the_evidence(page).await?;

    decide_otherwise(page).await?;
    page.sheet("Decisions").await?;
    page.unfold("Replace …").await?;
    page.press("link", "Tappet 1, intake…").await?;
    page.see("heading", "Replace: 1 part").await?;
    page.read("Too far gone to dress.").await?;

    page.sheet("Hand over").await?;
    page.press_in("How much of it", "radio", "Full").await?;
    page.press("button", "Save the report (PDF)").await?;
    let report = stage.saved_document(".pdf").await?;
    holds(stage, &report, &["A. Harrow", "Main 1, upper shell", "Too far gone to dress."])
}

/// From the list of jobs to the plan of an engine.
pub(crate) async fn take_in(page: &Page) -> Outcome {
    page.see("heading", "Jobs").await?;
    page.press("button", "New job").await?;
    page.see("heading", "Take in, step 1 of 3").await?;
    page.fill("Customer", "A. Harrow").await?;
    page.fill("Machine", "Dredger winch").await?;
    page.press("link", "Go on to the engine").await?;
    page.see("heading", "Take in, step 2 of 3").await?;
    page.press_in("Start from a usual form", "button", "In-line 4").await?;
    page.press("button", "Save and go on").await?;
    page.see("heading", "Take in, step 3 of 3").await?;
    page.press("link", "Go on to the plan").await?;
    page.see("heading", "Plan").await
}

/// From the list of causes into one, from a part that speaks for it on the plan to the part itself, and to the next look.
async fn follow_the_evidence(page: &Page) -> Outcome {
    page.sheet("Causes").await?;
    // Its sentence may take more lines than were kept for it.
    page.see("link", "Next look: …").await?;
    page.press("link", "Dirt in the oil…").await?;
    page.see("heading", "Dirt in the oil").await?;
    page.read("For it").await?;
    page.press("link", "Main 2, lower shell, speaks for it, …").await?;
    page.see("heading", "Main 2, lower shell").await?;
    page.see("button", "Embedded debris, grade 3").await?;
    page.press("link", "Back to the cause: dirt in the oil").await?;
    page.see("heading", "Dirt in the oil").await?;

    page.press("link", "All causes").await?;
    page.see("heading", "Causes").await?;
    page.press("link", "Next look: …").await?;
    page.see("heading", "Look here").await?;
    page.press("button", "Looked at and clean").await?;
    page.see("heading", "Answered…").await
}

pub(crate) async fn open_part(page: &Page, part: &str, name: &str) -> Outcome {
    let here = page.address().await?;
    let job = here.split("/part/").next().unwrap_or_default();
    page.go(&format!("{job}/part/{part}"), name).await
}

async fn decide_otherwise(page: &Page) -> Outcome {
    page.sheet("Plan").await?;
    page.press("link", "Tappet 1, intake, not looked at").await?;
    page.see("heading", "Tappet 1, intake").await?;
    page.press("button", "What to do…").await?;
    page.press_in("Instead", "radio", "Replace").await?;
    page.fill("Reason", "Too far gone to dress.").await?;
    page.press("button", "Save this decision").await?;
    page.read("You decided: replace.").await
}

async fn pressed(page: &Page, button: &str) -> Outcome<bool> {
    Ok(page.attribute("button", button, "aria-pressed").await?.as_deref() == Some("true"))
}

async fn wait_until_pressed(page: &Page, button: &str, wanted: bool) -> Outcome {
    let state = if wanted { "pressed" } else { "unpressed" };
    page.until(async || ensure(pressed(page, button).await? == wanted, format!("“{button}” did not become {state}.")))
        .await
}

/// Every picture on the page has arrived and could be read.
async fn shows_its_pictures(page: &Page) -> Outcome {
    let script = "const images = [...document.images]
        return images.length > 0 && images.every((image) => image.complete && image.naturalWidth > 0)";
    page.until(async || {
        let shown = page.client.execute(script, vec![]).await?;
        ensure(shown == true, "A picture of the part is not shown.")
    })
    .await
}

/// The saved report can be read by other programs and says what was entered.
pub(crate) fn holds(stage: &Stage, report: &[u8], wanted: &[&str]) -> Outcome {
    let file = stage.folders.file("report.pdf", report)?;
    let checked = Command::new("qpdf").arg("--check").arg(&file).output()?;
    ensure(checked.status.success(), format!("qpdf: {}", String::from_utf8_lossy(&checked.stdout)))?;
    let read = Command::new("pdftotext").arg("-layout").arg(&file).arg("-").output()?;
    // Lines break where the column ends, so only the words and their order count.
    let text = String::from_utf8_lossy(&read.stdout).split_whitespace().collect::<Vec<_>>().join(" ");
    wanted.iter().try_for_each(|words| ensure(text.contains(words), format!("The report lacks “{words}”:\n{text}")))
}
