//! The first job by the keyboard alone: no pointer ever touches the page.

use fantoccini::key::Key;

use crate::failure::{Outcome, ensure};
use crate::page::Page;
use crate::stage::{Stage, on_both};
use crate::worn_engine::picture;

on_both!(journey);

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Jobs").await?;
    enter(page, "button", "New job").await?;
    page.see("heading", "Take in, step 1 of 3").await?;
    page.tab_to("textbox", "Customer").await?;
    type_in(page, "B. Lindqvist").await?;
    page.key(Key::Enter.into()).await?;
    has_keyboard(page, "Telephone").await?;
    enter(page, "link", "Go on to the engine").await?;
    page.see("heading", "Take in, step 2 of 3").await?;
    enter(page, "button", "In-line 4").await?;
    has_keyboard(page, "Cylinders and mains In-line 4, 5 mains, thrust on main 3").await?;
    enter(page, "button", "Save and go on").await?;
    page.see("heading", "Take in, step 3 of 3").await?;
    choose(page, "Has it stood unused for a season or longer?", "No").await?;
    page.saved().await?;
    enter(page, "link", "Go on to the plan").await?;
    page.see("heading", "Plan").await?;

    enter(page, "link", "Main 1, upper shell, not looked at").await?;
    page.see("heading", "Main 1, upper shell").await?;
    // The system's own file dialog is beyond any page; the button that opens it must have the keyboard.
    page.tab_to("file", "Choose photos").await?;
    let photo = stage.folders.file("shell.jpg", &picture()?)?;
    page.choose_file("Choose photos", &photo).await?;
    page.see("link", "Enlarge photo 1 of Main 1, upper shell").await?;
    space(page, "button", "Scoring").await?;
    space(page, "button", "Grade 2: …").await?;
    page.see("button", "Scoring, grade 2").await?;
    space(page, "button", "Rear edge, crown").await?;
    space(page, "button", "Pitting").await?;
    has_keyboard(page, "Pitting").await?;
    space(page, "button", "Scoring, grade 2").await?;
    has_keyboard(page, "Scoring, grade 2").await?;
    enter(page, "link", "Next: …").await?;
    page.see("heading", "Main 2, upper shell").await?;
    space(page, "button", "Looked at and clean").await?;
    page.saved().await?;
    space(page, "button", "Undo").await?;
    page.read("not looked at").await?;
    page.saved().await?;
    has_keyboard(page, "Undo").await?;

    sheet(page, "Causes").await?;
    enter(page, "link", "Next look: …").await?;
    page.see("heading", "Look here").await?;
    enter(page, "link", "Causes").await?;
    page.see("heading", "Causes").await?;
    sheet(page, "Decisions").await?;
    enter(page, "button", "To the foot of the screen").await?;
    let focus = page.focus().await?;
    ensure(["Jobs", "Screens"].contains(&focus.name.as_str()), format!("The foot begins with “{}”.", focus.name))?;
    follow_single_keys(page).await?;
    sheet(page, "Hand over").await?;
    enter(page, "button", "Save the report (PDF)").await?;
    let report = stage.saved_document(".pdf").await?;
    ensure(report.starts_with(b"%PDF"), "The saved report is no PDF.")
}

/// Single keys lead on while no field has the keyboard, until they are switched off.
async fn follow_single_keys(page: &Page) -> Outcome {
    page.key('l').await?;
    page.see("heading", "Lists").await?;
    page.key('?').await?;
    page.see("heading", "Keys").await?;
    let lists = page.address().await?;
    enter(page, "link", "Switch them off in the settings").await?;
    page.see("heading", "Settings").await?;
    space(page, "checkbox", "Single keys lead through the page…").await?;
    page.saved().await?;
    page.go(&lists, "Lists").await?;
    page.key('d').await?;
    ensure(page.address().await? == lists, "A key works that was switched off.")
}

/// Drawing the page anew must not take the keyboard away from where it was.
async fn has_keyboard(page: &Page, name: &str) -> Outcome {
    let focus = page.focus().await?;
    ensure(focus.name == name, format!("Not “{name}” has the keyboard, but the {} “{}”.", focus.role, focus.name))
}

pub(crate) async fn enter(page: &Page, role: &str, name: &str) -> Outcome {
    page.tab_to(role, name).await?;
    page.key(Key::Enter.into()).await
}

pub(crate) async fn space(page: &Page, role: &str, name: &str) -> Outcome {
    page.tab_to(role, name).await?;
    page.key(' ').await
}

async fn type_in(page: &Page, text: &str) -> Outcome {
    for letter in text.chars() {
        page.key(letter).await?;
    }
    Ok(())
}

/// One Tab reaches a group of choices; arrows go through it.
async fn choose(page: &Page, group: &str, name: &str) -> Outcome {
    const MOST: usize = 20;
    page.tab_to_group(group).await?;
    for _ in 0..MOST {
        if page.focus().await?.name == name {
            return page.key(' ').await;
        }
        page.key(Key::Down.into()).await?;
    }
    ensure(false, format!("The arrows never reached “{name}” in “{group}”."))
}

async fn sheet(page: &Page, name: &str) -> Outcome {
    if !page.has("link", name).await? {
        enter(page, "button", "Screens").await?;
    }
    enter(page, "link", name).await?;
    page.see("heading", name).await
}
