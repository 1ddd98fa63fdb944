//! The page as a person meets it: they press, fill in, choose, look.

use std::path::Path;
use std::time::Duration;

use fantoccini::Client;
use fantoccini::actions::{InputSource, KeyAction, KeyActions, MOUSE_BUTTON_LEFT, MouseActions, PointerAction};
use fantoccini::elements::{Element, ElementRef};
use fantoccini::key::Key;
use serde_json::{Value, json};

use crate::failure::{Outcome, ensure, fail};
use crate::patience::until;

const ACCESSIBLE: &str = include_str!("accessible.js");
/// The key under which WebDriver names an element.
const ELEMENT: &str = "element-6066-11e4-a52e-4f735466cecf";

/// An open page.
pub(crate) struct Page {
    pub(crate) client: Client,
}

/// What has the keyboard.
#[derive(Debug, PartialEq)]
pub(crate) struct Focus {
    pub(crate) role: String,
    pub(crate) name: String,
    pub(crate) group: String,
}

impl Page {
    /// Presses a thing of a role and name; a name may end in “…”.
    pub(crate) async fn press(&self, role: &str, name: &str) -> Outcome {
        self.press_in("", role, name).await
    }

    /// The same inside a group, where names repeat.
    pub(crate) async fn press_in(&self, group: &str, role: &str, name: &str) -> Outcome {
        // Drawn anew between finding and pressing, or covered while it moves: it is looked for again.
        self.until(async || Ok(self.find(group, role, name).await?.click().await?)).await
    }

    /// Types into a field in place of what is there.
    pub(crate) async fn fill(&self, name: &str, text: &str) -> Outcome {
        let element = self.wait_for("", "textbox", name).await?;
        element.clear().await?;
        element.send_keys(text).await?;
        Ok(())
    }

    /// Chooses from a list.
    pub(crate) async fn select(&self, name: &str, option: &str) -> Outcome {
        let element = self.wait_for("", "combobox", name).await?;
        element.select_by_label(option).await?;
        Ok(())
    }

    /// Hands a file to a file button.
    pub(crate) async fn choose_file(&self, name: &str, file: &Path) -> Outcome {
        self.choose_files(name, &[file]).await
    }

    /// Hands files to a file button.
    pub(crate) async fn choose_files(&self, name: &str, files: &[&Path]) -> Outcome {
        let script = format!("{ACCESSIBLE}; return find('file', arguments[0])");
        let button = self.until(async || match self.element(&script, vec![json!(name)]).await? {
            Some(button) => Ok(button),
            None => fail(format!("There is no file button “{name}”.")),
        });
        let names: Vec<_> = files.iter().map(|file| file.to_string_lossy()).collect();
        Ok(button.await?.send_keys(&names.join("\n")).await?)
    }

    /// Waits until a thing is there.
    pub(crate) async fn see(&self, role: &str, name: &str) -> Outcome {
        self.wait_for("", role, name).await.map(drop)
    }

    /// Waits until the page shows a text.
    pub(crate) async fn read(&self, wanted: &str) -> Outcome {
        self.until(async || ensure(self.text().await?.contains(wanted), format!("The page does not show “{wanted}”.")))
            .await
    }

    /// Waits until everything entered is kept: the title block says so once nothing typed or tapped is on its way.
    pub(crate) async fn saved(&self) -> Outcome {
        let script = "return document.querySelector('.title-state')?.innerText";
        self.until(async || {
            let said = self.client.execute(script, vec![]).await?;
            ensure(said == "Saved", format!("The page does not say that all is saved, but {said}."))
        })
        .await
    }

    /// Waits until something is so on the page. A failure tells what the page shows.
    pub(crate) async fn until<T>(&self, asked: impl AsyncFn() -> Outcome<T>) -> Outcome<T> {
        match until(asked).await {
            Err(why) => fail(format!("{}\n{}", why.0, self.text().await?)),
            found => found,
        }
    }

    /// All text that the page shows, for a failure's sentence.
    pub(crate) async fn text(&self) -> Outcome<String> {
        let text = self.client.execute("return document.body.innerText", vec![]).await?;
        Ok(text.as_str().unwrap_or_default().to_owned())
    }

    /// The value of a field.
    pub(crate) async fn value(&self, name: &str) -> Outcome<String> {
        let element = self.wait_for("", "textbox", name).await?;
        Ok(element.prop("value").await?.unwrap_or_default())
    }

    /// An attribute of a thing.
    pub(crate) async fn attribute(&self, role: &str, name: &str, attribute: &str) -> Outcome<Option<String>> {
        Ok(self.wait_for("", role, name).await?.attr(attribute).await?)
    }

    /// Where the page is: the address after the `#`.
    pub(crate) async fn address(&self) -> Outcome<String> {
        let hash = self.client.execute("return location.hash", vec![]).await?;
        Ok(hash.as_str().unwrap_or_default().to_owned())
    }

    /// Goes to an address after the `#`, and waits until a screen of that heading stands there.
    pub(crate) async fn go(&self, address: &str, heading: &str) -> Outcome {
        self.client.execute("location.hash = arguments[0]", vec![json!(address)]).await?;
        self.see("heading", heading).await
    }

    /// Opens a sheet of the job through its title block. Where there is little room the list must be unfolded first. A
    /// sheet of several steps says in its heading which it is.
    pub(crate) async fn sheet(&self, name: &str) -> Outcome {
        if !self.has("link", name).await? {
            self.press("button", "Screens").await?;
        }
        self.press("link", name).await?;
        self.see("heading", &format!("{name}…")).await
    }

    /// Unfolds what stands under a heading, if it is folded.
    pub(crate) async fn unfold(&self, name: &str) -> Outcome {
        let script = "const details = arguments[0].closest('details')
            if (!details.open) arguments[0].click()
            return details.open";
        self.until(async || {
            let summary = serde_json::to_value(self.find("", "button", name).await?)?;
            let is_open = self.client.execute(script, vec![summary]).await?;
            ensure(is_open == true, format!("“{name}” stays folded."))
        })
        .await
    }

    /// Unfolds every group of the screen; forms stay folded.
    pub(crate) async fn unfold_all(&self) -> Outcome {
        let script = "const folded = [...document.querySelectorAll('.folded:not([open]) > summary')]
            folded.forEach((summary) => summary.click())
            return folded.length";
        self.until(async || {
            let folded = self.client.execute(script, vec![]).await?;
            ensure(folded == 0, format!("{folded} groups were folded."))
        })
        .await
    }

    /// Presses a key once.
    pub(crate) async fn key(&self, key: char) -> Outcome {
        let stroke =
            KeyActions::new("keyboard".into()).then(KeyAction::Down { value: key }).then(KeyAction::Up { value: key });
        Ok(self.client.perform_actions(stroke).await?)
    }

    /// Types a text as fast as the browser takes it, in one go; a line's end is the Enter key.
    pub(crate) async fn type_out(&self, text: &str) -> Outcome {
        let mut strokes = KeyActions::new("keyboard".into());
        for letter in text.chars() {
            let value = if letter == '\n' { Key::Enter.into() } else { letter };
            strokes = strokes.then(KeyAction::Down { value }).then(KeyAction::Up { value });
        }
        Ok(self.client.perform_actions(strokes).await?)
    }

    /// Draws a line over a thing with the mouse, from its middle to the right and up.
    pub(crate) async fn draw_over(&self, role: &str, name: &str) -> Outcome {
        let element = self.wait_for("", role, name).await?;
        let duration = Some(Duration::from_millis(40));
        let to = |x: f64, y: f64| PointerAction::MoveToElement { element: element.clone(), duration, x, y };
        let strokes = MouseActions::new("mouse".into())
            .then(to(0.0, 0.0))
            .then(PointerAction::Down { button: MOUSE_BUTTON_LEFT })
            .then(to(20.0, -10.0))
            .then(to(40.0, 10.0))
            .then(to(60.0, -20.0))
            .then(PointerAction::Up { button: MOUSE_BUTTON_LEFT });
        Ok(self.client.perform_actions(strokes).await?)
    }

    /// How many times the thumb scrolls before it reaches a thing; none if there is no such thing.
    pub(crate) async fn scrolls_to(&self, group: &str, role: &str, name: &str) -> Outcome<Option<u64>> {
        let script = format!("{ACCESSIBLE}; return scrollsTo(...arguments)");
        Ok(self.client.execute(&script, vec![json!(role), json!(name), json!(group)]).await?.as_u64())
    }

    /// What has the keyboard now.
    pub(crate) async fn focus(&self) -> Outcome<Focus> {
        let found = self.client.execute(&format!("{ACCESSIBLE}; return focused()"), vec![]).await?;
        let word = |key: &str| found.get(key).and_then(Value::as_str).unwrap_or_default().to_owned();
        Ok(Focus { role: word("role"), name: word("name"), group: word("group") })
    }

    /// Walks with the Tab key until a thing has the keyboard.
    pub(crate) async fn tab_to(&self, role: &str, name: &str) -> Outcome {
        self.tab_until(&format!("{role} “{name}”"), |focus| focus.role == role && is_named(&focus.name, name)).await
    }

    /// Walks with the Tab key until something inside a group has the keyboard.
    pub(crate) async fn tab_to_group(&self, group: &str) -> Outcome {
        self.tab_until(&format!("group “{group}”"), |focus| focus.group == group).await
    }

    /// Whether a thing is there now.
    pub(crate) async fn has(&self, role: &str, name: &str) -> Outcome<bool> {
        Ok(self.look_for("", role, name).await?.is_some())
    }

    async fn tab_until(&self, wanted: &str, is_reached: impl Fn(&Focus) -> bool) -> Outcome {
        const MOST: usize = 400;
        for _ in 0..MOST {
            if is_reached(&self.focus().await?) {
                return Ok(());
            }
            self.key(Key::Tab.into()).await?;
        }
        fail(format!("{MOST} steps of the Tab key never reached the {wanted}.\n{}", self.text().await?))
    }

    async fn wait_for(&self, group: &str, role: &str, name: &str) -> Outcome<Element> {
        self.until(async || self.find(group, role, name).await).await
    }

    async fn find(&self, group: &str, role: &str, name: &str) -> Outcome<Element> {
        let place = if group.is_empty() { String::new() } else { format!(" in “{group}”") };
        match self.look_for(group, role, name).await? {
            Some(element) => Ok(element),
            None => fail(format!("There is no {role} “{name}”{place}.")),
        }
    }

    async fn look_for(&self, group: &str, role: &str, name: &str) -> Outcome<Option<Element>> {
        let script = format!("{ACCESSIBLE}; return toTouch(...arguments)");
        self.element(&script, vec![json!(role), json!(name), json!(group)]).await
    }

    async fn element(&self, script: &str, arguments: Vec<Value>) -> Outcome<Option<Element>> {
        let found = self.client.execute(script, arguments).await?;
        let id = found.get(ELEMENT).and_then(Value::as_str);
        Ok(id.map(|id| Element::from_element_id(self.client.clone(), ElementRef::from(id.to_owned()))))
    }
}

fn is_named(name: &str, wanted: &str) -> bool {
    match wanted.strip_suffix('…') {
        Some(start) => name.starts_with(start),
        None => name == wanted,
    }
}
