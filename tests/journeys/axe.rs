//! Every screen against axe-core, in both looks: nothing may be found at WCAG 2.2, levels A and AA.

use serde_json::Value;

use crate::failure::{Failure, Outcome, ensure};
use crate::page::Page;
use crate::stage::{Look, Stage, in_both_looks};
use crate::worn_engine;

in_both_looks!(worn_engine::enter, journey);

/// The job's screens: what follows the job in the address, and the heading to wait for.
pub(crate) const SCREENS: &[(&str, &str)] = &[
    ("intake", "Take in, step 1 of 3"),
    ("intake/engine", "Take in, step 2 of 3"),
    ("intake/past", "Take in, step 3 of 3"),
    ("marks", "Marks"),
    ("plan", "Plan"),
    ("part/main-shell.1.lower", "Main 1, lower shell"),
    ("part/tappet.2.intake.1", "Tappet 2, intake"),
    ("part/oil-pump", "Oil pump"),
    ("camera/main-shell.2.upper", "Main 2, upper shell"),
    ("measure/main-journal.1", "Main 1, journal"),
    ("measure/bore.2", "Bore 2"),
    ("causes", "Causes"),
    ("causes/dirt-in-oil", "Dirt in the oil"),
    ("part/main-shell.2.upper/look/back", "Main 2, upper shell"),
    ("decisions", "Decisions"),
    ("lists", "Lists"),
    ("lists/order", "To order"),
    ("costs", "Costs"),
    ("approval", "Approval"),
    ("labels", "Labels"),
    ("labels/oil-pump", "Labels"),
    ("hand-over", "Hand over"),
    ("history", "History"),
];

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Plan").await?;
    ensure(is_dark(page).await? == (stage.look == Look::Dark), "The page does not have the look that was asked for.")?;
    let axe = axe_core()?;
    page.client.execute(&axe, vec![]).await?;

    let address = page.address().await?;
    let job = address.trim_end_matches("/plan").to_owned();
    let mut found = Vec::new();
    for (screen, heading) in SCREENS {
        page.go(&format!("{job}/{screen}"), heading).await?;
        found.extend(violations(page, screen).await?);
        page.unfold_all().await?;
        found.extend(violations(page, &format!("{screen}, unfolded")).await?);
    }
    page.go(&format!("{job}/part/main-shell.1.lower"), "Main 1, lower shell").await?;
    page.press("button", "Scoring, grade 3").await?;
    page.press("button", "What to do…").await?;
    found.extend(violations(page, "a part with all unfolded").await?);
    page.press("link", "Enlarge photo 1 of …").await?;
    page.see("heading", "Photo 1 of …").await?;
    found.extend(violations(page, "an enlarged photo").await?);
    page.go(&format!("{job}/measure/main-journal.1"), "Main 1, journal").await?;
    page.press("button", "Set up: …").await?;
    page.see("button", "It is so: …").await?;
    found.extend(violations(page, "the pad with all unfolded").await?);
    for (screen, heading) in [
        ("#/jobs", "Jobs"),
        ("#/settings", "Settings"),
        ("#/prices", "Prices"),
        ("#/rules", "Rules"),
        ("#/backup", "Backup"),
    ] {
        page.go(screen, heading).await?;
        found.extend(violations(page, screen).await?);
    }
    ensure(found.is_empty(), found.join("\n"))?;

    // The check itself is worth nothing if it lets a picture without words pass.
    page.client.execute("document.body.append(new Image(20, 20))", vec![]).await?;
    ensure(!violations(page, "a spoilt page").await?.is_empty(), "axe finds nothing even on a spoilt page.")
}

pub(crate) fn axe_core() -> Outcome<String> {
    let path = wearbook_tests::checkout().join("node_modules/axe-core/axe.min.js");
    std::fs::read_to_string(&path).map_err(|error| Failure(format!("{}: {error}. Run `npm ci` first.", path.display())))
}

async fn is_dark(page: &Page) -> Outcome<bool> {
    let script = "return matchMedia('(prefers-color-scheme: dark)').matches";
    Ok(page.client.execute(script, vec![]).await?.as_bool() == Some(true))
}

/// What axe finds on the screen as it stands, one line each.
pub(crate) async fn violations(page: &Page, screen: &str) -> Outcome<Vec<String>> {
    let script = "const done = arguments[arguments.length - 1]
        const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
        axe.run(document, { runOnly: { type: 'tag', values: tags } }).then(
          ({ violations, passes }) => done({
            checked: passes.length,
            found: violations.flatMap(({ id, nodes }) =>
              nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 200)} ${failureSummary}`)),
          }),
          (failure) => done({ checked: 0, found: [String(failure)] }))";
    let answer = page.client.execute_async(script, vec![]).await?;
    let checked = answer.get("checked").and_then(Value::as_u64).unwrap_or(0);
    ensure(checked > 5, format!("axe checked next to nothing on “{screen}”: {answer}"))?;
    let found = answer.get("found").and_then(Value::as_array).cloned().unwrap_or_default();
    Ok(found.iter().filter_map(Value::as_str).map(|line| format!("{screen}: {line}")).collect())
}
