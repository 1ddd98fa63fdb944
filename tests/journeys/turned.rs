//! On a small phone turned on its side, and with letters twice as large, every screen can be used: nothing is wider
//! than the screen, the bars are in sight and leave it room, and what is pressed is as large as a thumb.

use serde_json::{Value, json};
use wearbook_app::Wearbook;

use crate::axe::SCREENS;
use crate::failure::{Outcome, ensure, fail};
use crate::page::Page;
use crate::stage::{Look, Place, Stage, play_over};
use crate::worn_engine::{self, act};

const FAULTS: &str = include_str!("turned.js");

#[test]
fn on_its_side() -> Outcome {
    play_over(Place::PhoneOnItsSide, Look::Light, worn_engine::enter, journey)
}

#[test]
fn upright_with_large_letters() -> Outcome {
    play_over(Place::Phone, Look::Dark, with_large_letters, journey)
}

#[test]
fn on_its_side_with_large_letters() -> Outcome {
    play_over(Place::PhoneOnItsSide, Look::Light, with_large_letters, journey)
}

fn with_large_letters(book: &Wearbook) -> Outcome {
    worn_engine::enter(book)?;
    let mut settings = act(book, "settings_get", json!({}), None)?;
    let Some(size) = settings.get_mut("text_size") else {
        return fail("The settings have no text size.");
    };
    *size = json!(200);
    act(book, "settings_set", json!({ "settings": settings }), None)?;
    Ok(())
}

/// Those of a job that the check of accessibility does not go to.
const FURTHER: &[(&str, &str)] = &[
    ("sheet", "Spec sheet"),
    ("sheet/head", "Manual and unit"),
    ("sheet/new", "New line"),
    ("sheet/mains", "Undersizes of the mains"),
    ("sizing", "Sizes"),
    ("lists/machine-shop", "For the machine shop"),
    ("marks/main-cap.2", "Marks"),
];

/// Those of the shop.
const OF_THE_SHOP: &[(&str, &str)] = &[
    ("#/jobs", "Jobs"),
    ("#/settings", "Settings"),
    ("#/prices", "Prices"),
    ("#/instruments", "Instruments"),
    ("#/instruments/new", "New instrument"),
    ("#/backup", "Backup"),
    ("#/rules", "Rules"),
    ("#/label", "Find by its label"),
];

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Plan").await?;
    let job = page.address().await?.trim_end_matches("/plan").to_owned();
    let mut found = Vec::new();
    for (screen, heading) in SCREENS.iter().chain(FURTHER) {
        page.go(&format!("{job}/{screen}"), heading).await?;
        found.extend(faults(page, screen).await?);
        page.unfold_all().await?;
        found.extend(faults(page, &format!("{screen}, unfolded")).await?);
    }
    for (screen, heading) in OF_THE_SHOP {
        page.go(screen, heading).await?;
        found.extend(faults(page, screen).await?);
    }
    page.go(&format!("{job}/part/main-shell.1.lower"), "Main 1, lower shell").await?;
    page.press("button", "Scoring, grade 3").await?;
    page.see("button", "Grade 3: …").await?;
    found.extend(faults(page, "an open tag").await?);
    page.press("link", "Enlarge photo 1 of …").await?;
    page.see("heading", "Photo 1 of …").await?;
    found.extend(faults(page, "an enlarged photo").await?);
    page.press("button", "Draw on it").await?;
    page.see("button", "Save the drawing").await?;
    found.extend(faults(page, "a photo that is drawn on").await?);
    ensure(found.is_empty(), found.join("\n"))?;

    // The check itself is worth nothing if it lets a line that is too wide pass.
    let spoil = "document.querySelector('.screen-main').insertAdjacentHTML('beforeend', '<hr>')
        document.querySelector('.screen-main > hr').style.width = '2000px'";
    page.client.execute(spoil, vec![]).await?;
    ensure(!faults(page, "a spoilt page").await?.is_empty(), "Nothing is found even on a spoilt page.")
}

/// What is wrong with the screen as it stands, one line each.
async fn faults(page: &Page, screen: &str) -> Outcome<Vec<String>> {
    // The page settles how it shares out the room in the frame after it was drawn.
    let script = format!(
        "{FAULTS}
        const done = arguments[arguments.length - 1]
        const soon = (frames) => frames > 0 ? requestAnimationFrame(() => soon(frames - 1)) : done(faults())
        document.fonts.ready.then(() => soon(4))"
    );
    let answer = page.client.execute_async(&script, vec![]).await?;
    let Some(found) = answer.as_array() else {
        return fail(format!("“{screen}” was not checked: {answer}"));
    };
    Ok(found.iter().filter_map(Value::as_str).map(|line| format!("{screen}: {line}")).collect())
}
