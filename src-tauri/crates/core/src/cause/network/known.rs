//! Places worked out, kept for the next time.

use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

use super::site::{Site, SiteTables};

/// Places worked out earlier. Nothing depends on it but the time that it takes.
#[derive(Debug, Default)]
pub struct KnownSites {
    pub(super) sites: Vec<Known>,
}

/// A place worked out, and what changes when pieces of evidence are left out.
#[derive(Debug)]
pub(super) struct Known {
    pub(super) site: Site,
    pub(super) tables: SiteTables,
    /// What is done under the lock never waits for the pool of threads, or two of its threads could wait for each
    /// other.
    left_out: Mutex<BTreeMap<Vec<usize>, LeftOut>>,
}

/// What changes at a place when pieces of evidence are left out.
#[derive(Debug)]
struct LeftOut {
    /// By how many doublings one weight can gain on another at the most.
    growth: f64,
    /// How many times likelier everything else is, for every subset; not a number where nobody has asked.
    ratio: Vec<f64>,
}

impl Known {
    pub(super) fn new(site: &Site) -> Self {
        Self { site: site.clone(), tables: SiteTables::new(site), left_out: Mutex::default() }
    }

    /// By how many doublings one weight can gain on another, at the most, when pieces of evidence are left out.
    pub(super) fn growth(&self, out: &[usize]) -> f64 {
        self.left_out(out, |left_out| left_out.growth)
    }

    fn left_out<T>(&self, out: &[usize], ask: impl FnOnce(&mut LeftOut) -> T) -> T {
        // What a thread that broke off has left is whole: a figure is put in only once it is there.
        let mut known = self.left_out.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(left_out) = known.get_mut(out) {
            return ask(left_out);
        }
        let growth = self.tables.growth(&self.site, &|observation| out.contains(&observation.piece));
        let left_out = LeftOut { growth, ratio: vec![f64::NAN; self.tables.size()] };
        ask(known.entry(out.to_vec()).or_insert(left_out))
    }

    /// Multiplies into a row what the likelihood of the place changes when pieces of evidence are left out, for some of
    /// the place's own subsets.
    pub(super) fn times_ratio(&self, out: &[usize], own: &[u16], row: &mut [f64]) {
        self.left_out(out, |left_out| {
            let ratio = &mut left_out.ratio;
            let unknown = |column: &&u16| ratio.get(usize::from(**column)).is_some_and(|x| x.is_nan());
            let missing: Vec<u16> = own.iter().filter(unknown).copied().collect();
            if !missing.is_empty() {
                let asked = self.tables.ratio(&self.site, &|observation| out.contains(&observation.piece), &missing);
                for (column, asked) in missing.iter().zip(asked) {
                    ratio.get_mut(usize::from(*column)).into_iter().for_each(|x| *x = asked);
                }
            }
            for column in own.iter().map(|column| usize::from(*column)) {
                if let (Some(x), Some(ratio)) = (row.get_mut(column), ratio.get(column)) {
                    *x *= ratio;
                }
            }
        });
    }
}
