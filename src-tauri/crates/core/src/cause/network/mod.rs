//! The probability model: causes of the whole engine, what may be wrong at each place, observations with a grade, and
//! exact inference between them.
//!
//! - Each cause of the whole engine is there or not; each place has one state: nothing wrong, or exactly one of the
//!   things that can be wrong there. What hangs on a place (rods on a crankpin) has a state of its own.
//! - An observation's grade is the greatest that any present cause, the states of its place, or the leak (whatever is
//!   not in the catalogue) produces: noisy-MAX. Where the zones were marked, their pattern is that of the maker
//!   answerable.
//! - Places are independent once the shared causes are known. So the posterior is a sum over the subsets of shared
//!   causes, and for each subset a product over places of sums over states: no sampling, no approximation.
//!
//! What keeps it quick:
//!
//! - An observation is tabulated over its own makers only (`table.rs`).
//! - When an observation is left out, one subset can gain on another by no more than the observation's greatest
//!   likelihood is of its least, so it is known beforehand which subsets could come to be seen in any figure
//!   (`columns.rs`); the rest need not be walked through. The test `left_out.rs` holds that nothing is lost by it.
//! - Places unchanged since the last time are kept ([`KnownSites`]).
//! - What does not depend on each other is worked out side by side on rayon's pool, in a fixed order of sums: the
//!   figures are the same on one thread.
//!
//! Held by `core/tests/causes`: a reference computed elsewhere, a brute force of another shape and pgmpy (which
//! `scripts/setup` installs into `target/python`) on 200 random networks each, published patterns
//! (`tests/published-patterns`), and calibration on 5,000 in-line fours drawn from the model and looked at with gaps:
//!
//! ```text
//! stated      so      statements      looked at   the cause ranked first is so
//!   1.3 %    1.1 %   169266             0– 20 %   75.2 %  ##############################
//!  14.1 %   11.8 %     2613            20– 40 %   86.8 %  ###################################
//!  24.5 %   21.3 %     1102            40– 60 %   91.4 %  #####################################
//!  34.7 %   28.3 %      619            60– 80 %   94.3 %  ######################################
//!  44.7 %   43.1 %      471            80–100 %   95.1 %  ######################################
//!  54.8 %   48.4 %      364
//!  65.0 %   57.8 %      327           Brier score 0.0157
//!  75.4 %   72.2 %      309           expected calibration error 0.0035
//!  85.4 %   79.3 %      405
//!  99.0 %   98.5 %     4524
//! ```
//!
//! This shows that the arithmetic is right, not that the catalogue's figures are: those are judgement, each with its
//! source.

mod belief;
mod columns;
mod graph;
mod hypothesis;
mod known;
mod observation;
mod query;
mod seat;
mod site;
mod solution;
mod solve;
mod table;

pub use belief::Belief;
pub use graph::{MAX_SHARED, Network, Unsound};
pub use hypothesis::Hypothesis;
pub use known::KnownSites;
pub use observation::{GRADES, GradeChances, Maker, Observation, Observed};
pub use query::{Joint, Query};
pub use seat::{CauseSeat, PiecesAt};
pub use site::{Branch, Site};
pub use solution::Solution;
