//! The look and the text size that the shop chooses hold over those of the device, from the next start on too.

use crate::failure::{Outcome, ensure};
use crate::page::Page;
use crate::stage::{Stage, on_both};

on_both!(journey);

/// The ground of the page by night and by day, as a browser tells it.
const DARK: &str = "rgb(10, 33, 67)";
const LIGHT: &str = "rgb(236, 231, 218)";

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.go("#/settings", "Settings").await?;
    let (_, usual) = seen(page).await?;
    page.press_in("Text size", "radio", "150 %").await?;
    page.saved().await?;
    // Elsewhere and back: what the page says of saving is then said of the next choice.
    page.go("#/jobs", "Jobs").await?;
    page.go("#/settings", "Settings").await?;
    page.press_in("Look", "radio", "Dark").await?;
    page.saved().await?;
    is_seen(page, DARK, usual * 1.5).await?;

    stage.kill_and_restart().await?;
    let page = &stage.page;
    page.see("heading", "Settings").await?;
    is_seen(page, DARK, usual * 1.5).await?;
    page.press_in("Text size", "radio", "100 %").await?;
    page.press_in("Look", "radio", "Light").await?;
    page.saved().await?;
    is_seen(page, LIGHT, usual).await
}

async fn is_seen(page: &Page, ground: &str, size: f64) -> Outcome {
    let found = seen(page).await?;
    let is_so = found.0 == ground && (found.1 - size).abs() < 0.1;
    ensure(is_so, format!("The page is {} with text of {} pixels.", found.0, found.1))
}

/// The colour of the ground, and the size of the text in pixels.
async fn seen(page: &Page) -> Outcome<(String, f64)> {
    let script = "const style = (element) => getComputedStyle(element)
        return [style(document.body).backgroundColor, parseFloat(style(document.documentElement).fontSize)]";
    let found = page.client.execute(script, vec![]).await?;
    let ground = found.get(0).and_then(serde_json::Value::as_str).unwrap_or_default().to_owned();
    Ok((ground, found.get(1).and_then(serde_json::Value::as_f64).unwrap_or_default()))
}
