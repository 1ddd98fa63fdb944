//! Where on a part: the fields of its drawing that can be marked with one tap.

use serde::{Deserialize, Serialize};

/// A field of a part's surface. Front, rear, left and right are those of the engine, seen from the rear looking to the
/// front.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
#[allow(missing_docs, reason = "each name is read off the drawing; label() gives the words")]
pub enum Zone {
    // Shell: three bands across the width, three fields around the half circle, and the back.
    FrontLeft,
    FrontCrown,
    FrontRight,
    MiddleLeft,
    MiddleCrown,
    MiddleRight,
    RearLeft,
    RearCrown,
    RearRight,
    Back,
    // Thrust face.
    FaceUpper,
    FaceLower,
    // Journal.
    JournalFront,
    JournalMiddle,
    JournalRear,
    Fillet,
    OilHole,
    // Lobe.
    Nose,
    Flanks,
    BaseCircle,
    LobeFrontEdge,
    LobeRearEdge,
    // Tappet.
    FootCentre,
    FootRing,
    FootEdge,
    Body,
    Plunger,
    // Piston.
    Crown,
    RingLands,
    ThrustSkirt,
    OppositeSkirt,
    PinBosses,
    // Bore: three levels, four sides.
    TopThrust,
    TopOpposite,
    TopFront,
    TopRear,
    MiddleThrust,
    MiddleOpposite,
    MiddleFront,
    MiddleRear,
    BottomThrust,
    BottomOpposite,
    BottomFront,
    BottomRear,
}

/// Which drawing a part kind has.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum ZoneMap {
    /// Nine fields of the running face and the back.
    Shell,
    /// Upper and lower half of the face.
    ThrustFace,
    /// Three bands, the fillets, around the oil hole.
    Journal,
    /// Nose, flanks, base circle and both edges.
    Lobe,
    /// The foot in three rings, the body, the plunger.
    Tappet,
    /// Crown, lands, both skirts, pin bosses.
    Piston,
    /// Three levels, four sides.
    Bore,
    /// No zones.
    None,
}

impl ZoneMap {
    /// The zones of this drawing.
    pub fn zones(self) -> &'static [Zone] {
        use Zone::*;
        match self {
            Self::Shell => &[
                FrontLeft,
                FrontCrown,
                FrontRight,
                MiddleLeft,
                MiddleCrown,
                MiddleRight,
                RearLeft,
                RearCrown,
                RearRight,
                Back,
            ],
            Self::ThrustFace => &[FaceUpper, FaceLower],
            Self::Journal => &[JournalFront, JournalMiddle, JournalRear, Fillet, OilHole],
            Self::Lobe => &[Nose, Flanks, BaseCircle, LobeFrontEdge, LobeRearEdge],
            Self::Tappet => &[FootCentre, FootRing, FootEdge, Body, Plunger],
            Self::Piston => &[Crown, RingLands, ThrustSkirt, OppositeSkirt, PinBosses],
            Self::Bore => &[
                TopThrust,
                TopOpposite,
                TopFront,
                TopRear,
                MiddleThrust,
                MiddleOpposite,
                MiddleFront,
                MiddleRear,
                BottomThrust,
                BottomOpposite,
                BottomFront,
                BottomRear,
            ],
            Self::None => &[],
        }
    }
}

impl Zone {
    /// In words that fit into a sentence: "front edge, crown".
    pub fn label(self) -> &'static str {
        use Zone::*;
        match self {
            FrontLeft => "front edge, left parting line",
            FrontCrown => "front edge, crown",
            FrontRight => "front edge, right parting line",
            MiddleLeft => "middle, left parting line",
            MiddleCrown => "middle, crown",
            MiddleRight => "middle, right parting line",
            RearLeft => "rear edge, left parting line",
            RearCrown => "rear edge, crown",
            RearRight => "rear edge, right parting line",
            Back => "back",
            FaceUpper => "upper half",
            FaceLower => "lower half",
            JournalFront => "front band",
            JournalMiddle => "middle band",
            JournalRear => "rear band",
            Fillet => "fillet",
            OilHole => "around the oil hole",
            Nose => "nose",
            Flanks => "flanks",
            BaseCircle => "base circle",
            LobeFrontEdge => "front edge",
            LobeRearEdge => "rear edge",
            FootCentre => "centre of the foot",
            FootRing => "contact ring of the foot",
            FootEdge => "edge of the foot",
            Body => "body",
            Plunger => "plunger",
            Crown => "crown",
            RingLands => "ring lands",
            ThrustSkirt => "skirt, thrust side",
            OppositeSkirt => "skirt, opposite side",
            PinBosses => "pin bosses",
            TopThrust => "top, thrust side",
            TopOpposite => "top, opposite side",
            TopFront => "top, front side",
            TopRear => "top, rear side",
            MiddleThrust => "middle, thrust side",
            MiddleOpposite => "middle, opposite side",
            MiddleFront => "middle, front side",
            MiddleRear => "middle, rear side",
            BottomThrust => "bottom, thrust side",
            BottomOpposite => "bottom, opposite side",
            BottomFront => "bottom, front side",
            BottomRear => "bottom, rear side",
        }
    }

    /// Row and column in words, where the fields of a drawing form a table: the inside of a shell, a bore.
    pub fn in_table(self) -> Option<(&'static str, &'static str)> {
        use Zone::*;
        let row = match self {
            FrontLeft | FrontCrown | FrontRight => "front edge",
            MiddleLeft | MiddleCrown | MiddleRight | MiddleThrust | MiddleOpposite | MiddleFront | MiddleRear => {
                "middle"
            }
            RearLeft | RearCrown | RearRight => "rear edge",
            TopThrust | TopOpposite | TopFront | TopRear => "top",
            BottomThrust | BottomOpposite | BottomFront | BottomRear => "bottom",
            _ => return None,
        };
        let column = match self {
            FrontLeft | MiddleLeft | RearLeft => "left parting line",
            FrontCrown | MiddleCrown | RearCrown => "crown",
            FrontRight | MiddleRight | RearRight => "right parting line",
            TopThrust | MiddleThrust | BottomThrust => "thrust side",
            TopOpposite | MiddleOpposite | BottomOpposite => "opposite side",
            TopFront | MiddleFront | BottomFront => "front side",
            TopRear | MiddleRear | BottomRear => "rear side",
            _ => return None,
        };
        Some((row, column))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_field_of_a_table_is_named_by_its_row_and_column() {
        for map in [ZoneMap::Shell, ZoneMap::Bore] {
            let in_table = map.zones().iter().filter_map(|zone| Some((zone.label(), zone.in_table()?)));
            let mut fields = 0;
            for (label, (row, column)) in in_table {
                assert_eq!(label, format!("{row}, {column}"));
                fields += 1;
            }
            assert!(fields >= 9, "{map:?} is a table");
        }
        assert_eq!(Zone::ThrustSkirt.in_table(), None);
    }
}
