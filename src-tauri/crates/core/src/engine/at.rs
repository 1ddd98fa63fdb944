//! Positions: where in the engine a part sits.

use serde::{Deserialize, Serialize};

use super::End;

/// The upper or lower of two halves. Of a main bearing the lower half lies in the cap; of a rod the upper half lies in
/// the rod and the lower in the cap, as with the engine upright (common practice, also for V and flat engines).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Half {
    /// In the block, or in the rod.
    Upper,
    /// In the cap.
    Lower,
}

/// Which way a valve lets the charge flow.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Port {
    /// Into the cylinder.
    Intake,
    /// Out of the cylinder.
    Exhaust,
}

/// Where in the engine a part sits. All numbers count from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum At {
    /// The engine has one of it.
    Engine,
    /// At a main bearing.
    Main(u8),
    /// One half of a main bearing.
    MainHalf(u8, Half),
    /// One side of the thrust main.
    ThrustSide(End),
    /// On a crankpin.
    Crankpin(u8),
    /// In a cylinder.
    Cylinder(u8),
    /// One half of the big-end bearing of a cylinder's rod.
    CylinderHalf(u8, Half),
    /// At a valve: cylinder, port, and which of several valves of that port.
    Valve(u8, Port, u8),
    /// A whole camshaft.
    Camshaft(u8),
    /// A bearing of a camshaft: shaft, bearing.
    CamBearing(u8, u8),
}

impl At {
    /// The half, where there are two.
    pub fn half(self) -> Option<Half> {
        match self {
            Self::MainHalf(_, half) | Self::CylinderHalf(_, half) => Some(half),
            _ => None,
        }
    }

    /// Which way its valve lets the charge flow.
    pub fn port(self) -> Option<Port> {
        match self {
            Self::Valve(_, port, _) => Some(port),
            _ => None,
        }
    }

    /// The main bearing it belongs to.
    pub fn main(self) -> Option<u8> {
        match self {
            Self::Main(n) | Self::MainHalf(n, _) => Some(n),
            _ => None,
        }
    }

    /// The cylinder it belongs to.
    pub fn cylinder(self) -> Option<u8> {
        match self {
            Self::Cylinder(n) | Self::CylinderHalf(n, _) | Self::Valve(n, _, _) => Some(n),
            _ => None,
        }
    }
}
