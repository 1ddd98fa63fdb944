//! A chapter of a paper: nothing is headed that is not there.

use super::paper::Block;

/// The blocks under their heading; nothing if there are none.
pub(super) fn chapter(heading: &str, body: impl IntoIterator<Item = Block>) -> Vec<Block> {
    let mut body = body.into_iter().peekable();
    let heading = body.peek().is_some().then(|| Block::heading(heading));
    heading.into_iter().chain(body).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_empty_has_no_heading() {
        assert_eq!(chapter("Lists", []), []);
        assert_eq!(chapter("Lists", [Block::BarKey]), [Block::heading("Lists"), Block::BarKey]);
    }
}
