//! Products of thousands of small probabilities without underflow, and the same on every machine: a number with an
//! exponent of its own, moved only by exact powers of two.

/// A non-negative number `mantissa × 2^(512 × steps)`.
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

    /// Times a factor between 0 and 1.
    pub(super) fn times(self, factor: f64) -> Self {
        let mantissa = self.mantissa * factor;
        if mantissa != 0.0 && mantissa < DOWN {
            return Self { mantissa: mantissa * UP, steps: self.steps - 1 };
        }
        Self { mantissa, steps: self.steps }
    }

    /// Times a factor, `count` times over. Plain repetition: the counts are numbers of parts.
    pub(super) fn times_often(self, factor: f64, count: u32) -> Self {
        (0..count).fold(self, |product, _| product.times(factor))
    }

    /// Times another product of chances.
    pub(super) fn product(self, other: Self) -> Self {
        let mantissa = self.mantissa * other.mantissa;
        let steps = self.steps + other.steps;
        if mantissa != 0.0 && mantissa < DOWN {
            return Self { mantissa: mantissa * UP, steps: steps - 1 };
        }
        Self { mantissa, steps }
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

/// The base-2 logarithm of a positive number to about six decimals, by squaring: only products and exact halvings, so
/// the same on every machine.
pub(super) fn binary_log(x: f64) -> f64 {
    if x <= 0.0 || !x.is_finite() {
        return if x == 0.0 { f64::NEG_INFINITY } else { x };
    }
    let mut mantissa = x;
    let mut result = 0.0;
    while mantissa >= 2.0 {
        mantissa *= 0.5;
        result += 1.0;
    }
    while mantissa < 1.0 {
        mantissa *= 2.0;
        result -= 1.0;
    }
    let mut place = 0.5;
    for _ in 0..20 {
        mantissa *= mantissa;
        if mantissa >= 2.0 {
            mantissa *= 0.5;
            result += place;
        }
        place *= 0.5;
    }
    result
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ten_thousand_small_factors_do_not_vanish() {
        let product = Scaled::ONE.times_often(0.001, 10_000);
        let aligned = Scaled::aligned(&[product, product.times(0.1)]);
        assert!(aligned[0] > 0.0);
        assert!((aligned[1] / aligned[0] - 0.1).abs() < 1e-12);
    }

    #[test]
    fn what_lies_far_below_the_largest_becomes_nothing() {
        let tiny = Scaled::ONE.times_often(0.5, 600);
        assert_eq!(Scaled::aligned(&[Scaled::ONE, tiny.product(tiny), tiny])[..2], [1.0, 0.0]);
        assert!(Scaled::aligned(&[tiny])[0] > 0.0);
    }

    #[test]
    fn the_logarithm_is_the_logarithm() {
        for x in [1e-9_f64, 0.1, 0.5, 1.0, 1.5, 2.0, 3.0, 10.0, 12345.6] {
            #[expect(clippy::disallowed_methods, reason = "a test may compare with the platform's own")]
            let expected = x.log2();
            assert!((binary_log(x) - expected).abs() < 2e-6, "{x}");
        }
    }
}
