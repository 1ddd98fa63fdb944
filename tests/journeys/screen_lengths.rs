//! No screen of a worked engine is longer, at first sight on a small phone, than a thumb likes to scroll.

use crate::failure::{Outcome, ensure};
use crate::stage::{Look, Place, Stage, play_over};
use crate::worn_engine;

#[test]
fn on_a_phone() -> Outcome {
    play_over(Place::Phone, Look::Light, worn_engine::enter, journey)
}

/// Each screen, its heading, and how many times the room between head and foot it may be long.
const SCREENS: &[(&str, &str, f64)] = &[
    ("intake", "Take in, step 1 of 3", 1.5),
    ("intake/engine", "Take in, step 2 of 3", 1.5),
    ("intake/past", "Take in, step 3 of 3", 1.5),
    ("marks", "Marks", 4.0),
    // A drawing of every part, each as large as a thumb.
    ("plan", "Plan", 6.0),
    ("part/main-shell.1.lower", "Main 1, lower shell", 4.0),
    ("sheet", "Spec sheet", 4.0),
    ("sizing", "Sizes", 4.0),
    ("causes", "Causes", 4.0),
    ("decisions", "Decisions", 4.0),
    ("lists/order", "To order", 4.0),
    ("lists/machine-shop", "For the machine shop", 4.0),
    ("costs", "Costs", 4.0),
    ("approval", "Approval", 4.0),
    ("labels", "Labels", 2.0),
    ("hand-over", "Hand over", 4.0),
    ("history", "History", 4.0),
];

const LENGTH: &str = "const screen = document.querySelector('.screen-main')
    return screen.scrollHeight / screen.clientHeight";

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Plan").await?;
    let job = page.address().await?.trim_end_matches("/plan").to_owned();
    let mut long = Vec::new();
    for (screen, heading, most) in SCREENS {
        page.go(&format!("{job}/{screen}"), heading).await?;
        let length = page.client.execute(LENGTH, vec![]).await?.as_f64().unwrap_or(f64::INFINITY);
        println!("{screen}: {length:.1}");
        if length > *most {
            long.push(format!("{screen} is {length:.1} screens long: {most} at most."));
        }
    }
    ensure(long.is_empty(), long.join("\n"))
}
