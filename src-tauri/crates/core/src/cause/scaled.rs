//! Products of thousands of small probabilities without underflow, and the same on every machine: a number with an
//! exponent of its own, moved only by exact powers of two.

use std::f64::consts::{LOG2_E, SQRT_2};

/// A non-negative number `mantissa × 2^(512 × steps)`, the mantissa not above 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Scaled {
    mantissa: f64,
    steps: i32,
}

/// 2^512 and 2^-512, exactly.
const UP: f64 = f64::from_bits((1023 + 512) << 52);
const DOWN: f64 = f64::from_bits((1023 - 512) << 52);

impl Scaled {
    pub(super) const ONE: Self = Self { mantissa: 1.0, steps: 0 };

    /// Times a factor between 2^-510 and 2^510, or zero.
    pub(super) fn times(self, factor: f64) -> Self {
        Self { mantissa: self.mantissa * factor, steps: self.steps }.in_range()
    }

    /// Times another product.
    pub(super) fn product(self, other: Self) -> Self {
        Self { mantissa: self.mantissa * other.mantissa, steps: self.steps + other.steps }.in_range()
    }

    /// The same number with a mantissa above 2^-512 and not above 1.
    fn in_range(self) -> Self {
        match self.mantissa {
            small if small < DOWN && small != 0.0 => Self { mantissa: small * UP, steps: self.steps - 1 },
            large if large > 1.0 => Self { mantissa: large * DOWN, steps: self.steps + 1 },
            _ => self,
        }
    }

    /// Several numbers as ordinary ones, all divided by the same power of two so that the largest is in reach. What lies
    /// more than a step below the largest adds nothing to it and becomes zero.
    pub(super) fn aligned(numbers: &[Self]) -> Vec<f64> {
        let top = numbers.iter().filter(|number| number.mantissa != 0.0).map(|number| number.steps).max().unwrap_or(0);
        let align = |number: &Self| match top - number.steps {
            0 => number.mantissa,
            1 => number.mantissa * DOWN,
            _ => 0.0,
        };
        numbers.iter().map(align).collect()
    }
}

/// 2 to a negative power: of the next whole exponent, and nothing where that is out of reach.
pub(super) fn half_to_the(power: f64) -> f64 {
    let exponent = power.ceil().clamp(0.0, 1023.0) as u64;
    f64::from_bits((1023 - exponent) << 52)
}

/// The base-2 logarithm of a positive number to about ten decimals, from sums and products only, so that it is the same
/// on every machine. It is zero's that is endless, and what is no finite positive number comes back as it is.
pub(super) fn binary_log(x: f64) -> f64 {
    if x <= 0.0 || !x.is_finite() {
        return if x == 0.0 { f64::NEG_INFINITY } else { x };
    }
    // Too small for a full mantissa: 2^512 times as large it has one.
    let (normal, below) = if x < f64::MIN_POSITIVE { (x * UP, 512.0) } else { (x, 0.0) };
    let bits = normal.to_bits();
    let mut exponent = (bits >> 52) as f64 - 1023.0 - below;
    let mut mantissa = f64::from_bits(bits & ((1 << 52) - 1) | 1023 << 52);
    if mantissa > SQRT_2 {
        mantissa *= 0.5;
        exponent += 1.0;
    }
    // ln m = 2 artanh((m - 1) / (m + 1)), whose argument is now below 0.172: seven terms of its series are plenty.
    let z = (mantissa - 1.0) / (mantissa + 1.0);
    let square = z * z;
    let series = (0..7).rev().fold(0.0, |sum, n| sum * square + 1.0 / f64::from(2 * n + 1));
    exponent + 2.0 * LOG2_E * z * series
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ten_thousand_small_factors_do_not_vanish_and_can_be_taken_back() {
        let often = |factor: f64| (0..10_000).fold(Scaled::ONE, |product, _| product.times(factor));
        let product = often(0.125);
        assert_eq!((0..10_000).fold(product, |product, _| product.times(8.0)), Scaled::ONE.times(1.0));
        let aligned = Scaled::aligned(&[product, product.times(0.1)]);
        assert!(aligned[0] > 0.0);
        assert!((aligned[1] / aligned[0] - 0.1).abs() < 1e-12);
    }

    #[test]
    fn what_lies_far_below_the_largest_becomes_nothing() {
        let tiny = (0..600).fold(Scaled::ONE, |product, _| product.times(0.5));
        assert_eq!(Scaled::aligned(&[Scaled::ONE, tiny.product(tiny), tiny])[..2], [1.0, 0.0]);
        assert!(Scaled::aligned(&[tiny])[0] > 0.0);
    }

    #[test]
    fn halves_are_exact() {
        assert_eq!([0.0, 1.0, 1.5, 3.0].map(half_to_the), [1.0, 0.5, 0.25, 0.125]);
        assert_eq!([-4.0, 1022.0, 1022.1, 1e99].map(half_to_the), [1.0, f64::MIN_POSITIVE, 0.0, 0.0]);
    }

    #[test]
    fn the_logarithm_is_the_logarithm() {
        let small = [f64::MIN_POSITIVE, 1e-310, f64::from_bits(1), 1e-9, 0.1, 0.5, 0.7, 0.71];
        for x in small.into_iter().chain([1.0, 1.4, 1.42, 1.5, 2.0, 3.0, 10.0, 12345.6, f64::MAX]) {
            #[expect(clippy::disallowed_methods, reason = "a test may compare with the platform's own")]
            let expected = x.log2();
            assert!((binary_log(x) - expected).abs() < 1e-10 * expected.abs().max(1.0), "{x}");
        }
        assert_eq!(binary_log(8.0), 3.0);
        assert_eq!([0.0, f64::INFINITY].map(binary_log), [f64::NEG_INFINITY, f64::INFINITY]);
    }
}
