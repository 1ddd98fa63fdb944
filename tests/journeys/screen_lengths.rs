//! No screen is longer, at first sight on a small phone, than a thumb likes to scroll, and none shows what is meant for the
//! program: of a worked engine, of a V8 with everything on record, and of one that nobody has looked at.

use serde_json::Value;

use crate::failure::{Outcome, ensure};
use crate::page::Page;
use crate::stage::{Look, Place, Stage, play_over};
use crate::{vee_8, worn_engine};

#[test]
fn of_a_worked_engine() -> Outcome {
    play_over(Place::Phone, Look::Light, worn_engine::enter, journey)
}

#[test]
fn of_a_recorded_vee_8() -> Outcome {
    play_over(Place::Phone, Look::Light, vee_8::enter_recorded, journey)
}

#[test]
fn of_an_untouched_vee_8() -> Outcome {
    play_over(Place::Phone, Look::Light, vee_8::enter_untouched, journey)
}

/// How many times the room between head and foot a screen may be long.
const MOST: f64 = 4.0;
/// Forms that are all in sight.
const FORM: f64 = 1.5;

/// The screens of a job, each with its heading and how long it may be.
const SCREENS: &[(&str, &str, f64)] = &[
    ("intake", "Take in, step 1 of 3", FORM),
    ("intake/engine", "Take in, step 2 of 3", FORM),
    ("intake/past", "Take in, step 3 of 3", FORM),
    ("marks", "Marks", MOST),
    ("plan", "Plan", MOST),
    ("part/main-shell.1.lower", "Main 1, lower shell", MOST),
    ("part/tappet.2.intake.1", "Tappet 2, intake", MOST),
    ("part/bore.1", "Bore 1", MOST),
    ("part/crankshaft", "Crankshaft", MOST),
    ("part/oil-filter", "Oil filter", MOST),
    ("camera/main-shell.2.upper", "Main 2, upper shell", FORM),
    ("measure/main-journal.1", "Main 1, journal", MOST),
    ("measure/bore.1", "Bore 1", MOST),
    ("measure/piston.1", "Piston 1", MOST),
    ("sheet", "Spec sheet", MOST),
    ("sheet/head", "Manual and unit", MOST),
    ("sizing", "Sizes", MOST),
    ("decisions", "Decisions", MOST),
    ("lists", "Lists", MOST),
    ("lists/look-again", "Look at or measure", MOST),
    ("lists/order", "To order", MOST),
    ("lists/machine-shop", "For the machine shop", MOST),
    ("lists/rebuild-here", "Work done here", MOST),
    ("lists/clean", "Clean", MOST),
    ("lists/put-right", "Put right before assembly", MOST),
    ("costs", "Costs", MOST),
    ("approval", "Approval", MOST),
    ("labels", "Labels", MOST),
    ("hand-over", "Hand over", MOST),
    ("history", "History", MOST),
    ("causes", "Causes", MOST),
];

/// The screens of the shop.
const SHOP: &[(&str, &str)] = &[
    ("#/jobs", "Jobs"),
    ("#/instruments", "Instruments"),
    ("#/prices", "Prices"),
    ("#/rules", "Rules"),
    ("#/label", "Find by its label"),
    ("#/backup", "Backup"),
    ("#/settings", "Settings"),
];

const LENGTH: &str = "const screen = document.querySelector('.screen-main')
    return screen.scrollHeight / screen.clientHeight";

/// What a page shows when a word is missing, or is one that asks for more.
const CODE: &str = "return document.body.innerText.match(/=>|undefined|null|NaN|\\[object/)?.[0] ?? null";

/// Where each cause is told, and what it is called.
const CAUSES: &str = "return [...document.querySelectorAll('.screen-main a.row')]
    .filter((row) => row.hash.includes('/causes/'))
    .map((row) => [row.hash, row.querySelector('.row-name').textContent.trim()])";

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Plan").await?;
    let job = page.address().await?.trim_end_matches("/plan").to_owned();
    let mut long = Vec::new();
    for (screen, heading, most) in SCREENS {
        page.go(&format!("{job}/{screen}"), heading).await?;
        measure(page, screen, *most, &mut long).await?;
    }
    // The list of causes is the last of them. Each is told at length on a screen of its own.
    page.unfold_all().await?;
    let causes = page.client.execute(CAUSES, vec![]).await?;
    let word = |cause: &Value, at: usize| cause.get(at).and_then(Value::as_str).unwrap_or_default().to_owned();
    for cause in causes.as_array().into_iter().flatten() {
        page.go(&word(cause, 0), &word(cause, 1)).await?;
        measure(page, &word(cause, 1), MOST, &mut long).await?;
    }
    for (screen, heading) in SHOP {
        page.go(screen, heading).await?;
        measure(page, screen, MOST, &mut long).await?;
    }
    ensure(long.is_empty(), long.join("\n"))
}

async fn measure(page: &Page, screen: &str, most: f64, long: &mut Vec<String>) -> Outcome {
    let length = page.client.execute(LENGTH, vec![]).await?.as_f64().unwrap_or(f64::INFINITY);
    println!("{screen}: {length:.1}");
    let code = page.client.execute(CODE, vec![]).await?;
    ensure(code.is_null(), format!("{screen} shows what is meant for the program: {code}"))?;
    if length > most {
        long.push(format!("{screen} is {length:.2} screens long: {most} at most."));
    }
    Ok(())
}
