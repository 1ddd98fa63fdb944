//! Why a change can't be appended, and the caps on what one entry may hold.

/// Why a change can't be appended: which value, what is wrong, what would be right.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{0}")]
pub struct Refused(pub String);

/// Longest text of one entry, in characters: several pages, far more than anyone types at a bench.
pub(super) const MAX_TEXT: usize = 10_000;
/// Longest mark on a cap, in characters.
pub(super) const MAX_MARK: usize = 20;
/// Longest name, source or date of an instrument or sheet, in characters.
pub(super) const MAX_NAME: usize = 200;
/// Most parts that one item of a list can name: more than any engine has of one kind.
pub(super) const MAX_PARTS_OF_ITEM: usize = 1_000;
/// Most photos of one part.
pub(super) const MAX_PHOTOS_PER_PART: usize = 100;

pub(super) fn check_length(what: &str, text: &str, most: usize) -> Result<(), Refused> {
    let length = text.chars().count();
    if length > most {
        return Err(Refused(format!("{what} has {length} characters: {most} at most.")));
    }
    Ok(())
}

/// Refuses what would be more than a job can hold.
pub(super) fn check_room(what: &str, with_it: usize, most: usize) -> Result<(), Refused> {
    if with_it > most {
        return Err(Refused(format!("This job has {most} {what}, the most that one can hold.")));
    }
    Ok(())
}

pub(super) fn no_arrangement() -> Refused {
    Refused("The engine has no arrangement yet: enter its layout first.".into())
}
