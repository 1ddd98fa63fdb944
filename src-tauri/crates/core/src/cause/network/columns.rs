//! Which subsets of the shared causes matter, so that what is asked often need not walk through all of them.
//!
//! Leaving an observation out makes a subset weigh more, by the inverse of the observation's likelihood. So one subset
//! can gain on another by no more than the observation's greatest likelihood is of its least, and it is known
//! beforehand how light a subset must be never to be seen in any sum: the short way gives the same figures as the long
//! one.

use std::cmp::Reverse;

use crate::cause::scaled::half_to_the;

/// A sum over the subsets that matter is wrong by less than one part in 2^30.
const EXACT: f64 = 30.0;

/// Subsets in the order in which they matter.
#[derive(Debug)]
pub(super) struct Columns {
    order: Vec<u16>,
    /// What is lost by taking only so many of them, as a share of whichever sum loses most.
    lost: Vec<f64>,
}

impl Columns {
    /// Of subsets that matter as much as they are here said to: by their largest share in any sum that is asked for.
    pub(super) fn new(shares: &[f64]) -> Self {
        let mut ranked: Vec<(u16, f64)> =
            (0..=u16::MAX).zip(shares.iter().copied()).filter(|(_, x)| *x > 0.0).collect();
        // Positive numbers are ordered as their bits are.
        ranked.sort_unstable_by_key(|(subset, share)| (Reverse(share.to_bits()), *subset));
        let mut lost = vec![0.0; ranked.len() + 1];
        for (n, (_, share)) in ranked.iter().enumerate().rev() {
            let beyond = lost.get(n + 1).copied().unwrap_or(0.0);
            if let Some(lost) = lost.get_mut(n) {
                *lost = beyond + share;
            }
        }
        Self { order: ranked.into_iter().map(|(subset, _)| subset).collect(), lost }
    }

    /// Of subsets of which each sum has a row of its own, as far as the sum is not nothing.
    pub(super) fn of_rows(rows: &[Vec<f64>]) -> Self {
        let mut shares = vec![0.0_f64; rows.first().map_or(0, Vec::len)];
        for row in rows {
            let sum: f64 = row.iter().sum();
            if sum > 0.0 {
                shares.iter_mut().zip(row).for_each(|(share, x)| *share = share.max(x / sum));
            }
        }
        Self::new(&shares)
    }

    /// Enough subsets where one may gain on another by up to `growth` doublings.
    pub(super) fn enough(&self, growth: f64) -> &[u16] {
        let allowed = half_to_the(growth + EXACT);
        let enough = self.lost.partition_point(|lost| *lost > allowed);
        self.order.get(..enough).unwrap_or(&self.order)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn enough_is_what_can_be_seen() {
        let half = |n: f64| half_to_the(n);
        let columns = Columns::new(&[half(40.0), 1.0, 0.0, half(20.0), half(120.0)]);
        assert_eq!(columns.enough(0.0), [1, 3]);
        assert_eq!(columns.enough(20.0), [1, 3, 0]);
        assert_eq!(columns.enough(100.0), [1, 3, 0, 4]);
        assert_eq!(columns.enough(1e9), [1, 3, 0, 4], "what weighs nothing never matters");
    }

    #[test]
    fn what_matters_to_any_sum_matters() {
        let columns = Columns::of_rows(&[vec![1.0, half_to_the(99.0), 0.0], vec![0.0, half_to_the(99.0), 0.0]]);
        assert_eq!(columns.enough(0.0), [0, 1]);
    }
}
