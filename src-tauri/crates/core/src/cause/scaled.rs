//! Products of thousands of small probabilities without underflow, and the same on every machine: a number with an
//! exponent of its own, moved only by exact powers of two.

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
        for x in [1e-9_f64, 0.1, 0.5, 1.0, 1.5, 2.0, 3.0, 10.0, 12345.6] {
            #[expect(clippy::disallowed_methods, reason = "a test may compare with the platform's own")]
            let expected = x.log2();
            assert!((binary_log(x) - expected).abs() < 2e-6, "{x}");
        }
    }
}
