//! What every cause's file needs.

pub(super) use super::cause::{Cause, RENEW_CAMSHAFT, any, todo};
pub(super) use super::sign::Severity::{Middling, Severe, Slight};
pub(super) use super::sign::{ALL_OVER, CARRIED_UNDER_LOAD, Fault, Mirror, Side, Sign, UNDER_LOAD};
pub(super) use crate::cause::pattern::Pattern;
pub(super) use crate::cause::place::PlaceKind;
pub(super) use crate::engine::PartKind::*;
pub(super) use crate::engine::Tappets;
pub(super) use crate::job::HistoryFact;
pub(super) use crate::wear::Tag;
