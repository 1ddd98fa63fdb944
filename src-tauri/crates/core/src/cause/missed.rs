//! How often somebody who looked or measured has passed over what is there.

/// Chance that somebody who calls a part clean or evenly worn has passed over whatever damage is there: a hasty look misses all
/// alike (our judgement).
pub const MISSED_ON_CLEAN: f64 = 0.05;
/// Chance that somebody who tags damage leaves out whatever else is there beside it (our judgement).
pub const MISSED_BESIDE_OTHER: f64 = 0.30;
/// Chance that somebody who tags damage does not bother to call the rest of the part evenly worn (our judgement).
pub const EVEN_LEFT_OUT: f64 = 0.80;
/// Chance that somebody calls an evenly worn part clean: that is an answer about damage rather than about the working
/// pattern (our judgement).
pub const EVEN_CALLED_CLEAN: f64 = 0.60;
/// Chance that a size which measured within its limit is beyond it somewhere else on the part (our judgement).
pub const MISSED_BY_MEASURING: f64 = 0.05;

/// The chance with which somebody who called a part sound, or who noted other damage on it, has passed over damage that is there,
/// or even wear.
pub(super) fn missed(sound: bool, is_damage: bool) -> f64 {
    match (sound, is_damage) {
        (true, false) => EVEN_CALLED_CLEAN,
        (true, true) => MISSED_ON_CLEAN,
        (false, false) => EVEN_LEFT_OUT,
        (false, true) => MISSED_BESIDE_OTHER,
    }
}
