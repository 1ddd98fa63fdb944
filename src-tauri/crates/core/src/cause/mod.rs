//! Why it happened: hidden causes, seen wear, a probability model computed exactly, explained in words.

pub mod catalogue;
mod diagnose;
mod explain;
mod explained;
mod faults;
mod gather;
mod local;
mod made;
mod missed;
mod model;
mod naming;
mod natural;
pub mod network;
mod next_look;
mod past;
mod pattern;
mod place;
mod report;
mod scaled;
mod strength;
mod told;
mod topic;
mod unexplained;
mod verdict;

pub use diagnose::{diagnose, diagnose_with, network_of, probabilities, probabilities_named};
pub use made::Made;
pub use missed::{EVEN_CALLED_CLEAN, EVEN_LEFT_OUT, MISSED_BESIDE_OTHER, MISSED_BY_MEASURING, MISSED_ON_CLEAN};
pub use model::{Model, PlaceStates, SiteStates, State};
pub use naming::Naming;
pub use next_look::NextLook;
pub use pattern::Pattern;
pub use place::{Place, PlaceKind};
pub use report::{CauseReport, CauseView, Evidence, PlaceView, Unexplained};
pub use strength::Strength;
pub use verdict::Verdict;
