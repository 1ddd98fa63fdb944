//! Times taps on a fully recorded V8 on a slow phone: until their own effect is painted, and until all that follows from
//! them is. `scripts/bench taps` runs it; as a test it is left alone.

use std::fmt::Write as _;

use serde_json::{Value, json};

use crate::failure::{Outcome, fail};
use crate::page::Page;
use crate::patience::until;
use crate::stage::{Look, Place, Stage, play_over};
use crate::throttle::throttle;
use crate::vee_8::enter_recorded;

/// So many times slower than the machine that tests.
const SLOW: u32 = 4;
const TIMING: &str = include_str!("tap_timing.js");
/// A page on which a tap has nothing to do but to be seen.
const EMPTY: &str = "data:text/html,<button onclick=\"this.setAttribute('aria-pressed',!(this.ariaPressed==='true'));\
    this.style.outline=this.ariaPressed==='true'?'3px solid':'none'\">Tap</button>";

#[test]
#[ignore = "a benchmark: scripts/bench taps"]
fn of_a_recorded_v8() -> Outcome {
    play_over(Place::Phone, Look::Light, enter_recorded, journey)
}

/// What one tap took, in milliseconds.
struct Tap {
    /// Until its own effect was painted.
    own: f64,
    /// Until all was painted that follows.
    all: f64,
    /// Of that, in the program behind the page.
    behind: f64,
    /// By how much things moved that nobody touched.
    shift: f64,
}

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Plan").await?;
    let job = page.address().await?.trim_end_matches("/plan").to_owned();
    let mut taps: Vec<(&str, Vec<Tap>)> = Vec::new();
    let mut note = |what: &'static str, tap: Tap| match taps.iter_mut().find(|(of, _)| *of == what) {
        Some((_, all)) => all.push(tap),
        None => taps.push((what, vec![tap])),
    };

    page.client.execute(TIMING, vec![]).await?;
    throttle(page, SLOW).await?;
    for n in 1..=8 {
        page.go(&format!("{job}/part/bore.{n}"), &format!("Bore {n}")).await?;
        // Each has two on record: one of the three is not among them.
        let mut tag = "Scoring";
        for other in ["Pitting", "Seizure marks"] {
            if page.has("button", other).await? {
                tag = other;
            }
        }
        note("a tag", timed(page, "button", tag).await?);
        note("its grade", timed(page, "button", "Grade 2: …").await?);
        note("its field", timed_at(page, ".zone-drawing button").await?);
        note("a tag taken off", timed(page, "button", &format!("Remove “{}”", tag.to_lowercase())).await?);
    }
    for n in 1..=5 {
        page.go(&format!("{job}/measure/main-journal.{n}"), &format!("Main {n}, journal…")).await?;
        for key in ["2", "9"] {
            note("a digit", timed(page, "button", key).await?);
        }
    }
    page.go(&format!("{job}/part/main-shell.1.upper"), "Main 1, upper shell").await?;
    for _ in 0..8 {
        note("on to the next part", timed_at(page, ".onward-step, .step-bar .primary").await?);
    }
    for _ in 0..2 {
        page.go(&format!("{job}/plan"), "Plan").await?;
        for (screen, heading) in [
            ("Causes", "Causes"),
            ("Decisions", "Decisions"),
            ("Lists", "Lists"),
            ("Costs", "Costs"),
            ("History", "History"),
            ("Plan", "Plan"),
        ] {
            if !page.has("link", screen).await? {
                note("the list of screens", timed(page, "button", "Screens").await?);
            }
            note("another screen", timed(page, "link", screen).await?);
            page.see("heading", heading).await?;
        }
    }
    page.go(&format!("{job}/lists/order"), "To order").await?;
    for _ in 0..8 {
        note("a step of an order line", timed_at(page, ".step[aria-pressed=false]").await?);
    }

    page.client.goto(EMPTY).await?;
    page.client.execute(TIMING, vec![]).await?;
    for _ in 0..20 {
        note("an empty page’s button", timed(page, "button", "Tap").await?);
    }
    println!("{}", told(&taps));
    Ok(())
}

async fn timed(page: &Page, role: &str, name: &str) -> Outcome<Tap> {
    page.press(role, name).await?;
    read(page, name).await
}

/// The same of the first that this selects.
async fn timed_at(page: &Page, selector: &str) -> Outcome<Tap> {
    let find = "const found = document.querySelector(arguments[0])
        found?.scrollIntoView({ block: 'center', behavior: 'instant' })
        return found";
    until(async || {
        let found = page.client.execute(find, vec![json!(selector)]).await?;
        if found.is_null() {
            return fail(format!("There is no {selector}."));
        }
        page.client.execute("await new Promise(requestAnimationFrame)", vec![]).await?;
        Ok(page.client.find(fantoccini::Locator::Css(selector)).await?.click().await?)
    })
    .await?;
    read(page, selector).await
}

async fn read(page: &Page, what: &str) -> Outcome<Tap> {
    page.until(async || {
        let told = page.client.execute("return tapTimed()", vec![]).await?;
        let ms: Vec<f64> = told.as_array().into_iter().flatten().filter_map(Value::as_f64).collect();
        match ms.as_slice() {
            // What this machine's processor does behind the page is not slowed down by the browser.
            &[own, all, behind, shift] => {
                Ok(Tap { own, all: all + behind * f64::from(SLOW - 1), behind: behind * f64::from(SLOW), shift })
            }
            _ => fail(format!("The tap on {what} has not settled.")),
        }
    })
    .await
}

fn told(taps: &[(&str, Vec<Tap>)]) -> String {
    let mut text = format!("Taps on a fully recorded V8, processor {SLOW} times slower, in milliseconds\n");
    let (empty, ours): (Vec<_>, Vec<_>) = taps.iter().partition(|(what, _)| what.starts_with("an empty"));
    for (what, taps) in taps {
        line(&mut text, what, taps.iter());
    }
    let all = || ours.iter().flat_map(|(_, taps)| taps);
    line(&mut text, "all but the empty page’s", all());
    let p95 = |taps: &mut dyn Iterator<Item = &Tap>| share(taps.map(|tap| tap.own).collect(), 0.95);
    let ratio = p95(&mut all()) / p95(&mut empty.iter().flat_map(|(_, taps)| taps));
    let _ = writeln!(text, "own effect, ours beside an empty page’s button, at the 95th percentile: ratio {ratio:.2}");
    text
}

fn line<'a>(text: &mut String, what: &str, taps: impl Iterator<Item = &'a Tap> + Clone) {
    let of = |value: fn(&Tap) -> f64, part: f64| share(taps.clone().map(value).collect(), part);
    let (n, shift) = (taps.clone().count(), of(|tap| tap.shift, 1.0));
    let _ = writeln!(
        text,
        "  {what} ({n}): own effect p50 {:.0}, p95 {:.0}, worst {:.0}; all that follows p50 {:.0}, p95 {:.0}, \
         of it behind the page {:.0}; shift at most {shift:.3}",
        of(|tap| tap.own, 0.5),
        of(|tap| tap.own, 0.95),
        of(|tap| tap.own, 1.0),
        of(|tap| tap.all, 0.5),
        of(|tap| tap.all, 0.95),
        of(|tap| tap.behind, 0.95),
    );
}

/// The value below which this part of them lies.
fn share(mut values: Vec<f64>, part: f64) -> f64 {
    values.sort_by(f64::total_cmp);
    let last = values.len().saturating_sub(1);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 0 and the number of taps")]
    let at = (part * last as f64).ceil() as usize;
    values.get(at.min(last)).copied().unwrap_or(f64::NAN)
}
