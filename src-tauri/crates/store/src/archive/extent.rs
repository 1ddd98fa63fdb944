//! How much an entry is, known from its text before anything is made of it.

/// How much a JSON text holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) struct Extent {
    /// Bytes, without the blanks between what it says.
    pub(crate) bytes: usize,
    /// Values, those that hold others counted too.
    pub(crate) values: usize,
}

impl Extent {
    /// Of a text that is JSON. Works through it once, and takes no memory.
    pub(crate) fn of(json: &str) -> Self {
        let (mut extent, mut in_text, mut is_escaped) = (Self { bytes: 0, values: 1 }, false, false);
        for byte in json.bytes() {
            if in_text {
                in_text = is_escaped || byte != b'"';
                is_escaped = !is_escaped && byte == b'\\';
                extent.bytes += 1;
                continue;
            }
            match byte {
                b' ' | b'\n' | b'\r' | b'\t' => continue,
                b'"' => in_text = true,
                // Each of these is followed by one value more, but for a list or a map that is empty.
                b',' | b'[' | b'{' => extent.values += 1,
                _ => {}
            }
            extent.bytes += 1;
        }
        extent
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(json: &str, values: usize) {
        let value: serde_json::Value = serde_json::from_str(json).unwrap();
        let extent = Extent { bytes: value.to_string().len(), values };
        assert_eq!(Extent::of(json), extent, "{json}");
        assert_eq!(Extent::of(&serde_json::to_string_pretty(&value).unwrap()), extent, "{json}");
    }

    #[test]
    fn blanks_do_not_count() {
        check("5", 1);
        check("[1, 2]", 3);
        check(r#"{"a": [1, {"b": "x, [y] \" z\\"}], "c": null}"#, 6);
    }
}
