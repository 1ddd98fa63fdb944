//! The published form of a job takes what is written today and what was written before.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::fs;
use std::io::Cursor;
use std::path::Path;

use serde_json::{Value, json};
use wearbook_core::job::{Edit, RecordedChange};

const PUBLISHED: &str = include_str!("../formats/job.schema.json");

fn fits(change: &Value) -> Result<(), String> {
    let root: Value = serde_json::from_str(PUBLISHED).unwrap();
    check(&root, &root["$defs"]["Change"], change)
}

/// Every entry of every kept archive: as it was written, and as it is written now. One of a newer version is left out: the
/// form takes it whatever it holds.
#[test]
fn the_published_form_takes_what_was_written_and_what_is_written() {
    let mut seen = 0;
    for edit in kept() {
        let read: Edit = serde_json::from_value(edit.clone()).unwrap();
        if matches!(read.change, RecordedChange::Unknown(_)) {
            continue;
        }
        for change in [&edit["change"], &json!(read.change)] {
            fits(change).unwrap_or_else(|why| panic!("{change}: {why}"));
        }
        seen += 1;
    }
    assert!(seen > 0, "nothing is kept");
}

#[test]
fn both_forms_of_an_item_are_published_and_no_other() {
    let tick = |item: Value| fits(&json!({ "do": "tick", "item": item, "tick": { "done": 1 } }));
    let key = json!({ "of": "order", "kind": "main-shell" });
    assert_eq!(tick(json!("order main-shell 0.010 in undersize")), Ok(()));
    assert_eq!(tick(json!({ "key": key })), Ok(()));
    assert_eq!(tick(json!({ "key": key, "words": "Main bearing shells", "size": 254_000, "quantity": 5 })), Ok(()));
    for wrong in [json!(17), json!({}), json!({ "key": { "of": "order" } }), json!({ "key": key, "colour": "red" })] {
        assert!(tick(wrong.clone()).is_err(), "{wrong}");
    }
}

/// The entries of all kept archives.
fn kept() -> Vec<Value> {
    let top = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../tests/kept");
    let folders = fs::read_dir(top).unwrap().map(|entry| entry.unwrap().path().join("archives"));
    let archives = folders.filter(|folder| folder.is_dir()).flat_map(|folder| fs::read_dir(folder).unwrap());
    archives
        .flat_map(|archive| {
            let bytes = fs::read(archive.unwrap().path()).unwrap();
            let mut zip = zip::ZipArchive::new(Cursor::new(bytes)).unwrap();
            let file: Value = serde_json::from_reader(zip.by_name("job.json").unwrap()).unwrap();
            file["edits"].as_array().unwrap().clone()
        })
        .collect()
}

/// Holds a value to a schema: the keywords that our schemas use (JSON Schema, draft 2020-12). What only explains, and the
/// patterns of texts, are passed over; a keyword that is not known here fails.
fn check(root: &Value, schema: &Value, value: &Value) -> Result<(), String> {
    let Some(keywords) = schema.as_object() else {
        return if schema == &json!(false) { Err(format!("{value}: nothing may stand here")) } else { Ok(()) };
    };
    for (keyword, wanted) in keywords {
        check_keyword(root, keywords, (keyword, wanted), value)?;
    }
    Ok(())
}

fn check_keyword(
    root: &Value,
    keywords: &serde_json::Map<String, Value>,
    (keyword, wanted): (&str, &Value),
    value: &Value,
) -> Result<(), String> {
    let all = || wanted.as_array().unwrap();
    let fitting = || all().iter().filter(|schema| check(root, schema, value).is_ok()).count();
    let holds = |holds: bool| if holds { Ok(()) } else { Err(format!("{value}: {keyword} {wanted}")) };
    let number = || value.as_f64().map(|value| (value, wanted.as_f64().unwrap()));
    let length = || value.as_array().map(|values| (values.len() as u64, wanted.as_u64().unwrap()));
    match keyword {
        "$ref" => check(root, root.pointer(wanted.as_str().unwrap().trim_start_matches('#')).unwrap(), value),
        "anyOf" => holds(fitting() > 0),
        "oneOf" => holds(fitting() == 1),
        "const" => holds(value == wanted),
        "enum" => holds(all().contains(value)),
        "type" => holds(match wanted {
            Value::Array(types) => types.iter().any(|wanted| is_of_type(value, wanted)),
            one => is_of_type(value, one),
        }),
        "minimum" => holds(number().is_none_or(|(value, least)| value >= least)),
        "maximum" => holds(number().is_none_or(|(value, most)| value <= most)),
        "minItems" => holds(length().is_none_or(|(length, least)| length >= least)),
        "maxItems" => holds(length().is_none_or(|(length, most)| length <= most)),
        "uniqueItems" => holds(value.as_array().is_none_or(|all| (1..all.len()).all(|n| !all[..n].contains(&all[n])))),
        "required" => holds(
            value.as_object().is_none_or(|fields| all().iter().all(|name| fields.contains_key(name.as_str().unwrap()))),
        ),
        "properties" => {
            let fields = value.as_object().into_iter().flatten();
            let mut known = fields.filter_map(|(name, field)| Some((wanted.get(name)?, field)));
            known.try_for_each(|(schema, field)| check(root, schema, field))
        }
        "additionalProperties" => {
            let named = |name: &str| keywords.get("properties").is_some_and(|named| named.get(name).is_some());
            let mut others = value.as_object().into_iter().flatten().filter(|(name, _)| !named(name));
            others.try_for_each(|(_, field)| check(root, wanted, field))
        }
        "prefixItems" => {
            let mut pairs = value.as_array().into_iter().flatten().zip(all());
            pairs.try_for_each(|(value, schema)| check(root, schema, value))
        }
        "items" => {
            let before = keywords.get("prefixItems").and_then(Value::as_array).map_or(0, Vec::len);
            let mut rest = value.as_array().into_iter().flatten().skip(before);
            rest.try_for_each(|value| check(root, wanted, value))
        }
        "$schema" | "$defs" | "title" | "description" | "default" | "deprecated" | "examples" | "format"
        | "pattern" | "x-by-kind-of-part" => Ok(()),
        _ => panic!("a keyword that this check does not know: {keyword}"),
    }
}

fn is_of_type(value: &Value, wanted: &Value) -> bool {
    match wanted.as_str().unwrap() {
        "object" => value.is_object(),
        "array" => value.is_array(),
        "string" => value.is_string(),
        "boolean" => value.is_boolean(),
        "null" => value.is_null(),
        "integer" => value.is_i64() || value.is_u64(),
        "number" => value.is_number(),
        other => panic!("no type: {other}"),
    }
}
