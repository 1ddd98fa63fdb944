//! From a name and JSON to the action's function and back.

use serde::de::DeserializeOwned;
use serde_json::Value;

use crate::answer::Reply;
use crate::{Answer, Error, Wearbook, action};

/// The largest arguments, as JSON text: a batch of long remarks fits many times.
const MAX_ARGUMENTS: usize = 4 * 1024 * 1024;

macro_rules! dispatch {
    ($($name:ident),* $(,)?) => {
        /// The names of all actions.
        pub const ACTIONS: &[&str] = &[$(stringify!($name)),*];

        pub(crate) fn act(
            book: &Wearbook,
            name: &str,
            arguments: Value,
            bytes: Option<Vec<u8>>,
        ) -> Result<Answer, Error> {
            let answer = match name {
                $(stringify!($name) => action::$name::act.serve(book, arguments, bytes),)*
                _ => Err(unknown(name)),
            };
            if answer.as_ref().is_err_and(|error| error.code == "store-damaged") {
                // That it was met is what the person hears, not that it could not be noted.
                let _ = book.store.note_damage();
            }
            answer
        }
    };
}
actions!(dispatch);

/// An action's function, with or without bytes coming in. `Shape` only tells the two apart.
trait Serve<Shape> {
    fn serve(self, book: &Wearbook, arguments: Value, bytes: Option<Vec<u8>>) -> Result<Answer, Error>;
}

impl<F, A, R> Serve<(A, R)> for F
where
    F: FnOnce(&Wearbook, A) -> Result<R, Error>,
    A: DeserializeOwned,
    R: Reply,
{
    fn serve(self, book: &Wearbook, arguments: Value, bytes: Option<Vec<u8>>) -> Result<Answer, Error> {
        if bytes.is_some() {
            return Err(Error::new("bytes-unexpected", "This action takes no file: send its arguments alone."));
        }
        self(book, read(arguments)?)?.into_answer()
    }
}

impl<F, A, R> Serve<(A, Vec<u8>, R)> for F
where
    F: FnOnce(&Wearbook, A, Vec<u8>) -> Result<R, Error>,
    A: DeserializeOwned,
    R: Reply,
{
    fn serve(self, book: &Wearbook, arguments: Value, bytes: Option<Vec<u8>>) -> Result<Answer, Error> {
        let bytes = bytes.ok_or_else(|| Error::new("bytes-missing", "This action takes a file, and none came."))?;
        self(book, read(arguments)?, bytes)?.into_answer()
    }
}

pub(crate) fn read<A: DeserializeOwned>(arguments: Value) -> Result<A, Error> {
    if larger_than(&arguments, MAX_ARGUMENTS) {
        let most = MAX_ARGUMENTS / (1024 * 1024);
        return Err(Error::new("arguments-too-large", format!("The entry is too long: {most} MB at most.")));
    }
    serde_json::from_value(arguments).map_err(|error| {
        let why = error.to_string();
        // What a length refuses with is a sentence for the person already.
        let is_sentence = why.ends_with('.');
        Error::new("arguments-refused", if is_sentence { why } else { format!("The request can’t be read: {why}.") })
    })
}

/// Whether a value's JSON would be longer than this; counts without writing it out.
fn larger_than(value: &Value, most: usize) -> bool {
    struct Counter {
        left: usize,
    }
    impl std::io::Write for Counter {
        fn write(&mut self, text: &[u8]) -> std::io::Result<usize> {
            self.left = self.left.checked_sub(text.len()).ok_or(std::io::ErrorKind::FileTooLarge)?;
            Ok(text.len())
        }
        fn flush(&mut self) -> std::io::Result<()> {
            Ok(())
        }
    }
    serde_json::to_writer(Counter { left: most }, value).is_err()
}

fn unknown(name: &str) -> Error {
    let shown: String = name.chars().take(60).collect();
    Error::new("no-such-action", format!("There is no action “{shown}”: there are {}.", ACTIONS.join(", ")))
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;
    use crate::action::instrument_keep::Arguments;

    #[track_caller]
    fn refused(resolution: &str, because: &str) {
        let instrument = json!({"id": "a", "name": "a", "kind": "other", "resolution": resolution, "uncertainty": 1});
        assert_eq!(read::<Arguments>(json!({ "instrument": instrument })).unwrap_err().message, because);
    }

    #[test]
    fn a_sentence_from_below_is_shown_as_it_is() {
        refused("5 furlongs", "“5 furlongs” has an unknown unit: use mm, µm, in or thou.");
        refused("1 mm", "The request can’t be read: invalid type: integer `1`, expected a string.");
    }
}
