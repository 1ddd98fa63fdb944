//! The code of a label.

use super::svg::Svg;
use crate::symbol::{MODULE_MM, QUIET_ZONE, Symbol};

/// The symbol with its quiet zone, in its size on paper.
pub(crate) fn code(symbol: &Symbol) -> String {
    let mut svg = Svg::default();
    let mut bars = Vec::new();
    for y in 0..symbol.side() {
        let mut x = 0;
        while x < symbol.side() {
            let run = (x..symbol.side()).take_while(|x| symbol.is_dark(*x, y)).count();
            if run > 0 {
                bars.push(bar(x, y, run));
            }
            x += run.max(1);
        }
    }
    svg.solid(&bars);
    let side = (symbol.side() + 2 * QUIET_ZONE) as f64;
    svg.finish((side, side), MODULE_MM)
}

/// A run of dark modules as an outline, in modules from the corner of the quiet zone.
fn bar(x: usize, y: usize, run: usize) -> Vec<(f64, f64)> {
    let [left, top, right, bottom] = [x, y, x + run, y + 1].map(|at| (at + QUIET_ZONE) as f64);
    vec![(left, top), (right, top), (right, bottom), (left, bottom)]
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_core::label::{Code, JobStart};

    #[test]
    fn every_dark_module_is_inked_and_no_other() {
        let code_of_part = Code::new(JobStart::of(5 << 100), "piston.2".parse().unwrap()).unwrap();
        let symbol = Symbol::of(&code_of_part).unwrap();
        let drawn = code(&symbol);
        let bars = drawn.matches('Z').count();
        let begins = |x: usize, y: usize| symbol.is_dark(x, y) && !(x > 0 && symbol.is_dark(x - 1, y));
        let runs: usize = (0..21).map(|y| (0..21).filter(|x| begins(*x, y)).count()).sum();
        assert_eq!(bars, runs);
        assert!(drawn.contains(r#"viewBox="0 0 29.00 29.00""#) && drawn.contains(r#"width="22.10mm""#), "{drawn}");
        assert!(drawn.contains("M4.00 4.00L11.00 4.00L11.00 5.00L4.00 5.00Z"), "the upper edge of a finder pattern");
    }
}
