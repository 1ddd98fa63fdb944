//! The check character of ISO/IEC 7064, MOD 37-2: a pure system, which notices every single wrong character and every
//! exchange of two neighbours. Its hybrid sister MOD 37,36 lets some exchanges pass.

/// The characters by their value; the last can only be a check character.
const CHARACTERS: &[u8; 37] = b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";

/// The character that goes behind a text of digits and capital letters; none if the text holds anything else.
pub(super) fn check_character(text: &str) -> Option<char> {
    let mut sum = 0;
    for character in text.bytes() {
        let value = CHARACTERS.iter().take(36).position(|known| *known == character)?;
        sum = (sum + value) * 2 % 37;
    }
    CHARACTERS.get((38 - sum) % 37).map(|character| char::from(*character))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_published_example_is_met() {
        // Guidelines for the Blood Transfusion Services in the UK, annexe 2: worked example of ISO 7064 MOD 37-2.
        assert_eq!(check_character("G123498654321"), Some('H'));
    }

    #[test]
    fn only_digits_and_capitals_are_summed() {
        for text in ["g1", "A*", "A 1", "é"] {
            assert_eq!(check_character(text), None, "{text}");
        }
    }
}
