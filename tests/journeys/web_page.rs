//! The customer's page as one web page: opened from the file alone it fits a narrow screen, axe finds nothing in either look,
//! it runs no script and asks nothing of the network.

use serde_json::Value;

use crate::axe::{axe_core, violations};
use crate::failure::{Failure, Outcome, ensure};
use crate::page::Page;
use crate::stage::{Stage, in_both_looks};
use crate::worn_engine;

in_both_looks!(worn_engine::enter, journey);

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Plan").await?;
    page.sheet("Hand over").await?;
    page.press("button", "Save it as a web page").await?;
    let saved = stage.saved_document("your-engine.html").await?;
    ensure(saved.len() < 2_000_000, format!("{} bytes are too many for a message.", saved.len()))?;
    let file = stage.folders.file("your-engine.html", &saved)?;
    stage.open_outside(&file).await?;
    let page = &stage.page;

    ensure(asked(page).await?.is_empty(), format!("It asks for {:?}.", asked(page).await?))?;
    let told = |script: &str| {
        let script = format!("return {script}");
        async move { Ok::<Value, Failure>(page.client.execute(&script, vec![]).await?) }
    };
    ensure(
        told("document.title.startsWith('Your engine') && innerWidth === 360").await? == true,
        "It is another page.",
    )?;
    ensure(told("document.scripts.length").await? == 0, "It holds a script.")?;
    let width = "document.documentElement.scrollWidth <= innerWidth";
    ensure(told(width).await? == true, "It is wider than the screen.")?;
    page.read("What has to be done").await?;

    page.client.execute(&axe_core()?, vec![]).await?;
    let found = violations(page, "the web page").await?;
    ensure(found.is_empty(), found.join("\n"))
}

/// What it has asked of anybody: pictures inside it count as nothing.
async fn asked(page: &Page) -> Outcome<Vec<String>> {
    let script = "return performance.getEntriesByType('resource').map(({ name }) => name)
        .filter((name) => !name.startsWith('data:'))";
    let names = page.client.execute(script, vec![]).await?;
    Ok(names.as_array().into_iter().flatten().map(ToString::to_string).collect())
}
