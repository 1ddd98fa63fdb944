//! The lists that can't be made from the one list of actions agree with it.

use std::collections::BTreeSet;

use serde_json::Value;
use wearbook_app::ACTIONS;
use wearbook_app::phone::COMMANDS;

// The shell's few commands of its own; the build script reads the same file.
include!("../../src-tauri/src/shell_commands.rs");

#[test]
fn the_window_is_granted_every_command_by_name_and_nothing_else() {
    let text = std::fs::read_to_string(wearbook_tests::checkout().join("src-tauri/capabilities/main.json")).unwrap();
    let capability: Value = serde_json::from_str(&text).unwrap();
    let granted: BTreeSet<&str> =
        capability["permissions"].as_array().unwrap().iter().map(|p| p.as_str().unwrap()).collect();
    let commands = ACTIONS.iter().chain(SHELL_COMMANDS).map(|name| allow("", name));
    let wanted: Vec<String> = commands.chain(COMMANDS.iter().map(|name| allow("wearbook-phone:", name))).collect();
    assert_eq!(granted, wanted.iter().map(String::as_str).collect());
    assert_eq!(capability["windows"], serde_json::json!(["main"]));
    assert!(capability.get("remote").is_none(), "no page from elsewhere may call anything");
}

fn allow(plugin: &str, command: &str) -> String {
    format!("{plugin}allow-{}", command.replace('_', "-"))
}

#[test]
fn the_plugin_grants_its_commands_by_name_and_nothing_else() {
    let file = wearbook_tests::checkout().join("src-tauri/crates/phone/permissions/default.toml");
    let text = std::fs::read_to_string(file).unwrap();
    let line = text.lines().find(|line| line.starts_with("permissions = ")).unwrap();
    let granted: BTreeSet<&str> = line.split('"').skip(1).step_by(2).collect();
    let wanted: Vec<String> = COMMANDS.iter().map(|name| allow("", name)).collect();
    assert_eq!(granted, wanted.iter().map(String::as_str).collect());
    assert_eq!(text.matches("permissions").count(), 1, "one list is all there is: {text}");
}

#[test]
fn the_configuration_names_that_capability_alone() {
    let config = wearbook_tests::shell_config().unwrap();
    assert_eq!(config["app"]["security"]["capabilities"], serde_json::json!(["main"]));
    assert_eq!(config["app"]["withGlobalTauri"], false);
}

#[test]
fn the_page_calls_actions_that_exist_and_uses_all_of_them() {
    let text = std::fs::read_to_string(wearbook_tests::checkout().join("ui/backend.js")).unwrap();
    let is_called = |word: &&str| looks_like_an_action(word) || COMMANDS.contains(word);
    let called: BTreeSet<&str> = text.split('\'').filter(is_called).collect();
    let known: BTreeSet<&str> = ACTIONS.iter().chain(SHELL_COMMANDS).chain(COMMANDS).copied().collect();
    let unknown: Vec<_> = called.difference(&known).collect();
    assert!(unknown.is_empty(), "backend.js calls {unknown:?}, which do not exist");
    // Pictures come by their own scheme.
    let unused: Vec<_> = known.difference(&called).filter(|name| **name != "photo_get").collect();
    assert!(unused.is_empty(), "nothing on the page uses {unused:?}");
}

/// `job_open` and the like, between quotes; `catalogue` is the one action of a single word.
fn looks_like_an_action(word: &str) -> bool {
    word == "catalogue" || (word.contains('_') && word.bytes().all(|b| b.is_ascii_lowercase() || b == b'_'))
}

#[test]
fn the_policy_lets_in_nothing_from_outside() {
    let policy = wearbook_tests::content_security_policy().unwrap();
    assert!(policy.contains("default-src 'none'"), "{policy}");
    for loose in ["unsafe", "*", "data:", "https://"] {
        assert!(!policy.contains(loose), "the policy allows {loose}: {policy}");
    }
}
