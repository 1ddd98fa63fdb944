//! In the window, commands travel by the `ipc:` scheme. If the policy blocked it Tauri would go over to a slow way
//! without a word on the screen, and every photo would pass through JSON.

use crate::failure::{Outcome, ensure};
use crate::stage::{Look, Place, Stage, play_over};
use crate::worn_engine;

#[test]
fn commands_and_pictures_travel_by_their_schemes() -> Outcome {
    play_over(Place::Window, Look::Light, worn_engine::enter, journey)
}

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Plan").await?;
    // The first commands have been answered by now, so a failure of the scheme would have shown.
    page.client.execute(COUNT_FETCHES, vec![]).await?;
    page.go("#/settings", "Settings").await?;
    page.go("#/jobs", "Jobs").await?;
    page.read("A. Harrow").await?;
    let fetched = page.client.execute("return window.fetchedByIpc", vec![]).await?;
    ensure(fetched.as_u64().is_some_and(|n| n > 0), "Commands no longer travel by the ipc: scheme.")?;

    let refused = page.client.execute_async(CALL_A_PLUGIN, vec![]).await?;
    ensure(
        refused.as_str().is_some_and(|answer| answer.contains("not allowed")),
        format!("The page could call a plugin: {refused}"),
    )
}

const COUNT_FETCHES: &str = "
    const fetch = window.fetch
    window.fetchedByIpc = 0
    window.fetch = (address, ...rest) => {
      if (/^(ipc:|https?:..ipc.localhost)/.test(String(address))) window.fetchedByIpc += 1
      return fetch(address, ...rest)
    }";

const CALL_A_PLUGIN: &str = "
    const done = arguments[arguments.length - 1]
    window.__TAURI_INTERNALS__.invoke('plugin:fs|read_file', { path: '/etc/hostname' })
      .then(() => done('it answered'), (failure) => done(String(failure)))";
