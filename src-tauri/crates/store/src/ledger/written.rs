//! An edit as it is kept: the one place that says what no entry may be, whether it is entered here or comes in a file. So an
//! archive never holds what another device refuses.

use wearbook_core::job::{EditId, PhotoId, RecordedChange, Refused, guard};

use super::canonical;
use crate::StoreError;
use crate::archive::{Extent, MAX_EDIT_MILLIS, MAX_ENTRY_BYTES, MAX_UNKNOWN_BYTES};

/// An edit as it stands in the database and in archives.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Written {
    pub(crate) id: EditId,
    /// JSON without blanks; the same content is the same text.
    pub(crate) change: String,
    /// The photo that it brings into the job.
    pub(crate) photo: Option<PhotoId>,
    /// How many values it has, where only a newer version knows it.
    pub(crate) unknown_values: usize,
}

impl Written {
    /// Writes an edit, if it is one that may be kept.
    pub(crate) fn new(id: EditId, change: &RecordedChange) -> Result<Self, Refused> {
        if id.millis() > MAX_EDIT_MILLIS {
            return Err(Refused(
                "It is dated after the year 4000: the clock of the device that wrote it was wrong, or the file was altered."
                    .into(),
            ));
        }
        let change = canonical(change);
        let most = match change.as_ref() {
            RecordedChange::Known(_) => MAX_ENTRY_BYTES,
            RecordedChange::Unknown(_) => MAX_UNKNOWN_BYTES,
        };
        // Nothing in a change can fail to become JSON: its maps have text for keys.
        let text = serde_json::to_string(&change).map_err(|error| Refused(error.to_string()))?;
        if text.len() > most {
            return Err(too_long(most));
        }
        match change.as_ref() {
            RecordedChange::Known(known) => {
                guard(&serde_json::to_value(known).map_err(|error| Refused(error.to_string()))?)?;
                Ok(Self { id, change: text, photo: known.photo().cloned(), unknown_values: 0 })
            }
            RecordedChange::Unknown(_) => {
                let unknown_values = Extent::of(&text).values;
                Ok(Self { id, change: text, photo: None, unknown_values })
            }
        }
    }

    /// Whether what is kept under its id has the same content, in whatever form it was written.
    pub(crate) fn is_the_same_as(&self, kept: &str) -> Result<bool, StoreError> {
        if self.change == kept {
            return Ok(true);
        }
        let read = |text: &str| serde_json::from_str::<RecordedChange>(text).map_err(|_| StoreError::Damaged);
        Ok(canonical(&read(&self.change)?) == canonical(&read(kept)?))
    }
}

/// Of an entry that has more bytes than any.
pub(crate) fn too_long(most: usize) -> Refused {
    Refused(format!("It has more than {} kB, which no entry has.", most / 1024))
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_core::job::DeviceId;

    #[test]
    fn the_same_content_is_the_same_in_another_form() {
        let id = EditId::next(None, 1, DeviceId(1));
        let of = |text: &str| Written::new(id, &serde_json::from_str(text).unwrap()).unwrap();
        let tidy = of(r#"{"do":"later","a":{"x":1,"y":[0.5]}}"#);
        assert_eq!(tidy, of(r#"{ "a": {"y": [5e-1], "x": 1}, "do": "later" }"#));
        assert!(tidy.is_the_same_as(r#"{"do": "later", "a": {"y": [0.5], "x": 1}}"#).unwrap());
        assert!(!tidy.is_the_same_as(r#"{"do": "later", "a": {"y": [0.25], "x": 1}}"#).unwrap());
        assert_eq!(tidy.is_the_same_as("{").unwrap_err().code(), "store-damaged");
    }
}
