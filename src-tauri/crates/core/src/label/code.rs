//! The code as text, and how it is read back from a camera or a hand.

use std::fmt;
use std::str::FromStr;

use super::check_character::check_character;
use super::part_number;
use crate::engine::Part;

/// The text begins with it: a code of ours, in the one form that there is so far.
const FORM: char = 'W';
/// Five bits each: digits and letters without I, L, O and U, which a hand takes for something else.
const ALPHABET: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";
/// Characters of a whole code: the form, eight of the job, four of the part, the check character. Version 1 of the symbol of
/// ISO/IEC 18004 holds up to sixteen at its second highest level of error correction.
const LENGTH: usize = 14;

/// How a job's name begins: its first forty bits. Among a thousand jobs two begin alike with a chance of one in two million.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct JobStart(u64);

impl JobStart {
    const BITS: u32 = 40;

    /// Of the 128 bits of a job's name.
    pub fn of(name: u128) -> Self {
        Self((name >> (u128::BITS - Self::BITS)) as u64)
    }
}

/// Ten hexadecimal digits in lower case, as a job's name is written.
impl fmt::Display for JobStart {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:010x}", self.0)
    }
}

/// What the code on a label holds.
///
/// ```text
/// W | job: 40 bits | part: 16 bits | spare: 4 bits | check character
/// ```
///
/// The check character of ISO/IEC 7064 MOD 37-2 may be one that the alphabet lacks. So there are sixteen ways to write the
/// same code, of which the first that ends in a character of the alphabet is the one: at most five of them don't.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Code {
    job: JobStart,
    part: Part,
    number: u16,
}

impl Code {
    /// The code for a part of a job; none for a part that no engine can have.
    pub fn new(job: JobStart, part: Part) -> Option<Self> {
        Some(Self { job, part, number: part_number::of(part)? })
    }

    /// How the job's name begins.
    pub fn job(&self) -> JobStart {
        self.job
    }

    /// The part.
    pub fn part(&self) -> Part {
        self.part
    }

    /// As it stands on the label to be typed, in groups: all labels of a job begin with the same two.
    pub fn in_groups(&self) -> String {
        let text: Vec<char> = self.to_string().chars().collect();
        let group = |from: usize, to: usize| text.iter().skip(from).take(to - from).collect::<String>();
        [group(0, 5), group(5, 9), group(9, LENGTH)].join(" ")
    }
}

/// Fourteen characters: what the symbol holds.
impl fmt::Display for Code {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let ways = (0..16).map(|spare| {
            let bits = self.job.0 << 20 | u64::from(self.number) << 4 | spare;
            let characters = (0..12).rev().map(|place| character((bits >> (5 * place) & 0x1f) as usize));
            let text: String = [FORM].into_iter().chain(characters).collect();
            let check = check_character(&text).unwrap_or('*');
            (text, check)
        });
        let (text, check) = ways.into_iter().find(|(_, check)| value(*check).is_some()).ok_or(fmt::Error)?;
        write!(f, "{text}{check}")
    }
}

fn character(value: usize) -> char {
    ALPHABET.get(value).map_or('0', |character| char::from(*character))
}

fn value(character: char) -> Option<u64> {
    ALPHABET.iter().position(|known| char::from(*known) == character).map(|place| place as u64)
}

/// Text that is no code.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum NotACode {
    /// Something else.
    #[error("This is no code of a label made here: such a code has 14 letters and digits and begins with W.")]
    Foreign,
    /// Too short or too long.
    #[error("A code has 14 letters and digits, and these are {0}: type it as it stands on the label.")]
    Length(usize),
    /// The check character does not fit.
    #[error("A character is wrong, or two are exchanged: compare what was typed with the label.")]
    WrongCheck,
    /// Rightly written, and nothing that this version knows.
    #[error("This label was printed by a newer version of this program: install the newer version here too.")]
    Newer,
}

impl FromStr for Code {
    type Err = NotACode;

    /// Reads a code as a camera gives it or as a hand types it: small letters, spaces and dashes make no difference, nor do
    /// O for 0, I or L for 1 and U for V.
    fn from_str(typed: &str) -> Result<Self, NotACode> {
        let text: String = typed.chars().filter(|c| !is_between(*c)).map(as_meant).collect();
        let bits = text.chars().map(value).collect::<Option<Vec<u64>>>().ok_or(NotACode::Foreign)?;
        if !text.starts_with(FORM) {
            return Err(NotACode::Foreign);
        }
        if bits.len() != LENGTH {
            return Err(NotACode::Length(bits.len()));
        }
        let check = text.chars().next_back();
        let body: String = text.chars().take(LENGTH - 1).collect();
        if check_character(&body) != check {
            return Err(NotACode::WrongCheck);
        }
        let bits = bits.iter().skip(1).take(12).fold(0, |bits, value| bits << 5 | value);
        let part = part_number::part((bits >> 4) as u16).ok_or(NotACode::Newer)?;
        let code = Self::new(JobStart(bits >> 20), part).ok_or(NotACode::Newer)?;
        // Written in another of the sixteen ways: not by us.
        if code.to_string() == text { Ok(code) } else { Err(NotACode::WrongCheck) }
    }
}

fn is_between(character: char) -> bool {
    character.is_whitespace() || matches!(character, '-' | '\u{2010}'..='\u{2015}' | '\u{2212}')
}

fn as_meant(character: char) -> char {
    match character.to_ascii_uppercase() {
        'O' => '0',
        'I' | 'L' => '1',
        'U' => 'V',
        other => other,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::{Arrangement, Engine, every_arrangement};
    use proptest::prelude::*;

    fn code(job: u128, part: &str) -> Code {
        Code::new(JobStart::of(job), part.parse().unwrap()).unwrap()
    }

    const JOB: u128 = 0x0123_4567_89ab_cdef_0123_4567_89ab_cdef;

    #[test]
    fn what_hangs_on_engines_is_read_for_ever() {
        for (text, part) in KEPT {
            assert_eq!(code(JOB, part).to_string(), *text, "{part} is written otherwise than it was");
            assert_eq!(text.parse(), Ok(code(JOB, part)));
        }
    }

    /// Never changed, only added to.
    const KEPT: &[(&str, &str)] = &[
        ("W04HMASW908R0X", "main-shell.3.upper"),
        ("W04HMASW90CGGD", "main-shell.18.lower"),
        ("W04HMASW90R80V", "housing-bore.1"),
        ("W04HMASW9100G9", "thrust-face.rear"),
        ("W04HMASW91C0HM", "rod-shell.16.lower"),
        ("W04HMASW91GG0Y", "crankpin.2"),
        ("W04HMASW92S0GS", "tappet.4.intake.1"),
        ("W04HMASW93K50E", "lobe.12.exhaust.2"),
        ("W04HMASW94520J", "cam-bearing.4.20"),
        ("W04HMASW948G0D", "camshaft.2"),
        ("W04HMASW94R01Y", "oil-pump"),
        ("W04HMASW98800D", "head-bolts"),
        ("W04HMASW9AG00S", "sump"),
    ];

    #[test]
    fn every_part_of_every_engine_comes_back() {
        for arrangement in every_arrangement() {
            let engine = Engine::new(arrangement).unwrap();
            for part in engine.parts().iter().chain(engine.outside()) {
                let code = Code::new(JobStart::of(JOB), *part).unwrap();
                let text = code.to_string();
                assert!(text.len() == LENGTH && text.bytes().all(|b| ALPHABET.contains(&b)), "{text}");
                assert_eq!(text.parse(), Ok(code), "{part}");
            }
        }
    }

    #[test]
    fn it_is_forgiven_how_a_hand_types() {
        let code = code(0x0842_1084_2108_4210_8421_0842_1084_2108, "main-shell.1.upper");
        let text = code.to_string();
        assert!(text.contains('1'), "{text}");
        let typed = [
            code.in_groups(),
            text.to_lowercase(),
            text.replace('1', "I").replace('0', "O"),
            text.replace('1', "l").replace('0', "o").replace('V', "u"),
            format!("  {}\n", code.in_groups().replace(' ', "\u{2013}")),
        ];
        for typed in typed {
            assert_eq!(typed.parse(), Ok(code), "{typed}");
        }
    }

    #[track_caller]
    fn refused(typed: &str, because: NotACode) {
        assert_eq!(typed.parse::<Code>(), Err(because), "{typed}");
    }

    #[test]
    fn what_is_no_code_is_told_apart() {
        let text = code(JOB, "piston.2").to_string();
        refused("", NotACode::Foreign);
        refused("https://example.org", NotACode::Foreign);
        refused("éééééééééééééé", NotACode::Foreign);
        refused(&text.replacen('W', "X", 1), NotACode::Foreign);
        refused(text.split_at(13).0, NotACode::Length(13));
        refused(&text.repeat(1000), NotACode::Length(14_000));
        refused(&format!("{text}0"), NotACode::Length(15));
    }

    #[test]
    fn a_kind_that_is_not_known_yet_is_of_a_newer_version() {
        let newer = Code { number: 127 << 9, ..code(JOB, "piston.2") };
        refused(&newer.to_string(), NotACode::Newer);
    }

    fn some_code() -> impl Strategy<Value = Code> {
        let parts = Engine::new(Arrangement::vee(12)).unwrap().parts().to_vec();
        (any::<u128>(), proptest::sample::select(parts))
            .prop_map(|(job, part)| Code::new(JobStart::of(job), part).unwrap())
    }

    proptest! {
        #[test]
        fn every_job_comes_back(code in some_code()) {
            prop_assert_eq!(code.to_string().parse(), Ok(code));
            prop_assert_eq!(code.in_groups().parse(), Ok(code));
        }

        #[test]
        fn every_wrong_character_is_noticed(code in some_code()) {
            let text = code.to_string().into_bytes();
            for place in 0..LENGTH {
                for wrong in ALPHABET.iter().filter(|wrong| **wrong != text[place]) {
                    let mut typed = text.clone();
                    typed[place] = *wrong;
                    prop_assert!(String::from_utf8(typed).unwrap().parse::<Code>().is_err());
                }
            }
        }

        #[test]
        fn every_exchange_of_neighbours_is_noticed(code in some_code()) {
            let text = code.to_string().into_bytes();
            for place in 1..LENGTH {
                let mut typed = text.clone();
                typed.swap(place - 1, place);
                let typed = String::from_utf8(typed).unwrap();
                prop_assert!(typed == code.to_string() || typed.parse::<Code>().is_err());
            }
        }

        #[test]
        fn no_text_makes_it_fall(typed in ".{0,40}") {
            let _ = typed.parse::<Code>();
        }
    }
}
