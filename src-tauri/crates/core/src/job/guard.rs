//! What no entry may be, whatever it says: asked of everything that comes in, before it is read and without its job.

use serde_json::Value;

use super::Refused;
use super::refused::MAX_TEXT;

/// Most values of one entry, those that hold others counted too: a signature has 60 000.
const MOST_VALUES: usize = 100_000;
/// How deep values may stand in one another: a proposal has eight.
const DEEPEST: usize = 24;

/// Refuses an entry that is longer, deeper or more than any: a text of more characters than any field takes, more values
/// than a signature has. Works through it once.
///
/// # Errors
/// [`Refused`] with a sentence.
pub fn guard(change: &Value) -> Result<(), Refused> {
    look_into(change, &mut 0, DEEPEST)
}

fn look_into(value: &Value, seen: &mut usize, depth: usize) -> Result<(), Refused> {
    *seen += 1;
    if *seen > MOST_VALUES {
        return Err(Refused(format!("An entry of more than {MOST_VALUES} values.")));
    }
    if depth == 0 {
        return Err(Refused(format!("An entry deeper than {DEEPEST} levels.")));
    }
    match value {
        Value::String(text) => short(text),
        Value::Array(list) => list.iter().try_for_each(|value| look_into(value, seen, depth - 1)),
        Value::Object(map) => map.iter().try_for_each(|(name, value)| {
            short(name)?;
            look_into(value, seen, depth - 1)
        }),
        Value::Null | Value::Bool(_) | Value::Number(_) => Ok(()),
    }
}

/// A text has as many bytes as characters, or more: only a long one is counted.
fn short(text: &str) -> Result<(), Refused> {
    if text.len() > MAX_TEXT && text.chars().nth(MAX_TEXT).is_some() {
        return Err(Refused(format!("A text of more than {MAX_TEXT} characters.")));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[track_caller]
    fn check(value: Value, refused: Option<&str>) {
        assert_eq!(guard(&value).err().map(|refused| refused.0).as_deref(), refused);
    }

    #[test]
    fn what_is_longer_deeper_or_more_than_any_entry_is_refused() {
        check(json!({ "text": "ü".repeat(10_000) }), None);
        check(json!({ "text": "ü".repeat(10_001) }), Some("A text of more than 10000 characters."));
        check(json!({ "x".repeat(10_001): 1 }), Some("A text of more than 10000 characters."));
        check(json!({ "signature": [vec![[1, 2]; 20_000]] }), None);
        check(json!(vec![0; 100_000]), Some("An entry of more than 100000 values."));
        let nested = |depth: usize| (1..depth).fold(json!(1), |inner, _| json!([inner]));
        check(nested(24), None);
        check(nested(25), Some("An entry deeper than 24 levels."));
    }
}
