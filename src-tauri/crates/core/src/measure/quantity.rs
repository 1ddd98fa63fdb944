//! What can be measured of each kind of part, or concluded from what was measured: one table.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::{Direction, Spot, Station};
use crate::engine::PartKind;
use crate::words::{Phrase, Terms};

/// A quantity of a part. Which part is meant, a quantity does not say: the *diameter* of a journal is outside, that of
/// a bore inside.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(transform = former_names, extend("x-by-kind-of-part" = by_kind())))]
#[serde(rename_all = "kebab-case")]
pub enum Quantity {
    /// Diameter of a journal, bore, piston skirt or tappet.
    Diameter,
    /// Greatest less smallest diameter at one station: the workshop's out-of-round, twice the radial deviation of an
    /// oval (ISO 12181-1 counts the radial one).
    OutOfRound,
    /// Difference of diameters along the part in one direction: the workshop's taper, on the diameter.
    Taper,
    /// Middle less the mean of both ends: above zero a barrel, below zero an hourglass.
    Barrel,
    /// How far a size has gone from new.
    Wear,
    /// Total indicator reading while the shaft turns.
    RunOut,
    /// Half the total indicator reading.
    Bend,
    /// Out of parallel the other way: twist of a rod.
    Twist,
    /// Depth of the worst scratch, square to the surface.
    ScratchDepth,
    /// Length of a journal along the shaft, of a pushrod, or of a bolt that carries no load.
    Length,
    /// Width of the thrust journal between its cheeks.
    ThrustWidth,
    /// Wall of a shell at its crown.
    Wall,
    /// Thickness of a thrust washer.
    Thickness,
    /// Oil or running clearance on the diameter.
    Clearance,
    /// Oil clearance read off a plastic strip.
    Strip,
    /// Bore of a bearing with its shells or bush fitted: that in which the journal runs.
    BearingBore,
    /// Position of a housing bore off the common line: gap under a straightedge, or offset by a bar.
    LineOffset,
    /// Greatest step in line between neighbours.
    LineAdjacent,
    /// Greatest difference in line over all.
    LineOverall,
    /// Widest gap under a straightedge along the deck of a block or on a diagonal of it.
    FlatnessAlong,
    /// Widest gap under a straightedge across the deck.
    FlatnessAcross,
    /// Play of a shaft along its axis.
    EndFloat,
    /// Play of a rod along its crankpin.
    SidePlay,
    /// Clearance of the gears of a pump to its cover, along their shafts.
    EndClearance,
    /// Clearance of the gears of a pump to its body, on the diameter.
    SideClearance,
    /// Play between the teeth of two gears.
    Backlash,
    /// Depth of the gears' bores in the body of a pump.
    Depth,
    /// How deep the gears of a pump have worn into its cover.
    CoverWear,
    /// Bore of a rod's big end, without shells.
    BigEndBore,
    /// Bore of a rod's small end or its bush.
    SmallEndBore,
    /// Bore of a piston for its pin.
    PinBore,
    /// Diameter of a piston pin.
    PinDiameter,
    /// Clearance of the pin in the rod's small end or in the piston.
    PinClearance,
    /// Clearance of a ring in its groove.
    GrooveClearance,
    /// Gap of a ring in its bore.
    RingGap,
    /// How much a gap has grown by the bore's wear: π times the wear.
    GapGrowth,
    /// Step at the top of a worn bore.
    Ridge,
    /// Height of a lobe over nose and base.
    LobeHeight,
    /// Diameter of a lobe's base circle: the lobe's width.
    BaseCircle,
    /// Height less base circle.
    Lift,
    /// Height lost from new.
    HeightLoss,
    /// Lift lost from new.
    LiftLoss,
    /// Greatest less smallest lift over the lobes of one port.
    LiftSpread,
    /// Bore in which a tappet slides, of the tappet: read for ever as the diameter of the [tappet bore](PartKind::TappetBore)
    /// that it is now ([`former`](super::former)). Once written `guide-bore`, which is the word for the bore of a valve guide.
    #[serde(alias = "guide-bore")]
    TappetBore,
    /// Run-outs of neighbouring mains taken together: their sum with high spots opposite, their difference on one side.
    AdjacentRunOut,
    /// Run-outs of neighbouring mains with high spots at right angles: their sum.
    AdjacentRunOutSquare,
    /// A quantity of the manual's own, by name.
    Other,
}

/// On which side of a limit a worn part lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sense {
    /// Wear makes it smaller: a limit is the least allowed.
    Least,
    /// Wear makes it larger: a limit is the most allowed.
    Most,
}

/// The places at which a quantity is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spots {
    /// One place.
    One,
    /// Front, middle and rear, in two directions; the middle may be left out (journals at two stations: common practice
    /// and TM 5-3805-262-34 p. 4-23).
    Journal,
    /// Top, middle and bottom of ring travel, in two directions (NAVEDTRA 14076 p. 3-5).
    Bore,
    /// Two directions.
    Across,
    /// Front, middle and rear.
    Along,
    /// Each ring; those that the engine lacks are left out.
    Rings,
}

/// How a quantity comes about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Comes {
    /// It is read off an instrument.
    Read,
    /// It follows from readings.
    Follows,
    /// It follows from readings, unless it is read directly: an indicator in V-blocks, a feeler gauge.
    Either,
}

/// A quantity as one kind of part has it.
#[derive(Debug, Clone, Copy)]
pub struct Has {
    /// The quantity.
    pub quantity: Quantity,
    /// Where it is read.
    pub spots: Spots,
    /// Which way it wears.
    pub sense: Sense,
    /// Read or concluded.
    pub comes: Comes,
}

use Comes::{Either, Follows, Read};
use Quantity::*;
use Sense::{Least, Most};

const fn has(quantity: Quantity, spots: Spots, sense: Sense, comes: Comes) -> Has {
    Has { quantity, spots, sense, comes }
}

const OTHER: Has = has(Other, Spots::One, Most, Read);

impl PartKind {
    /// What is measured of this kind, in the order of measuring, then what follows.
    pub fn quantities(self) -> &'static [Has] {
        match self {
            Self::MainJournal => {
                const {
                    &[
                        has(Diameter, Spots::Journal, Least, Read),
                        has(ScratchDepth, Spots::One, Most, Read),
                        has(RunOut, Spots::One, Most, Read),
                        has(Strip, Spots::Along, Most, Read),
                        has(BearingBore, Spots::Journal, Most, Read),
                        has(ThrustWidth, Spots::One, Most, Read),
                        has(Length, Spots::One, Most, Read),
                        has(OutOfRound, Spots::One, Most, Either),
                        has(Taper, Spots::One, Most, Either),
                        has(Barrel, Spots::One, Most, Follows),
                        has(Wear, Spots::One, Most, Follows),
                        has(Clearance, Spots::One, Most, Either),
                        OTHER,
                    ]
                }
            }
            Self::Crankpin => {
                const {
                    &[
                        has(Diameter, Spots::Journal, Least, Read),
                        has(ScratchDepth, Spots::One, Most, Read),
                        has(Strip, Spots::Along, Most, Read),
                        has(BearingBore, Spots::Journal, Most, Read),
                        has(Length, Spots::One, Most, Read),
                        has(OutOfRound, Spots::One, Most, Either),
                        has(Taper, Spots::One, Most, Either),
                        has(Barrel, Spots::One, Most, Follows),
                        has(Wear, Spots::One, Most, Follows),
                        has(Clearance, Spots::One, Most, Either),
                        OTHER,
                    ]
                }
            }
            Self::HousingBore => {
                const {
                    &[
                        has(Diameter, Spots::Journal, Most, Read),
                        has(LineOffset, Spots::Across, Most, Read),
                        has(OutOfRound, Spots::One, Most, Either),
                        has(Taper, Spots::One, Most, Either),
                        OTHER,
                    ]
                }
            }
            Self::MainShell | Self::RodShell => const { &[has(Wall, Spots::One, Least, Read), OTHER] },
            Self::ThrustFace => const { &[has(Thickness, Spots::One, Least, Read), OTHER] },
            Self::Rod => {
                const {
                    &[
                        has(BigEndBore, Spots::Across, Most, Read),
                        has(SmallEndBore, Spots::Across, Most, Read),
                        has(Bend, Spots::One, Most, Read),
                        has(Twist, Spots::One, Most, Read),
                        has(SidePlay, Spots::One, Most, Read),
                        has(Length, Spots::One, Most, Read),
                        has(Taper, Spots::One, Most, Either),
                        has(PinClearance, Spots::One, Most, Either),
                        has(OutOfRound, Spots::One, Most, Either),
                        OTHER,
                    ]
                }
            }
            Self::Piston => {
                const {
                    &[
                        has(Diameter, Spots::One, Least, Read),
                        has(GrooveClearance, Spots::Rings, Most, Read),
                        has(PinBore, Spots::Across, Most, Read),
                        has(PinDiameter, Spots::One, Least, Read),
                        has(PinClearance, Spots::One, Most, Either),
                        has(Wear, Spots::One, Most, Follows),
                        has(Clearance, Spots::One, Most, Either),
                        OTHER,
                    ]
                }
            }
            Self::Rings => {
                const { &[has(RingGap, Spots::Rings, Most, Read), has(GapGrowth, Spots::One, Most, Follows), OTHER] }
            }
            Self::Bore => {
                const {
                    &[
                        has(Diameter, Spots::Bore, Most, Read),
                        has(ScratchDepth, Spots::One, Most, Read),
                        has(Ridge, Spots::One, Most, Read),
                        has(OutOfRound, Spots::One, Most, Either),
                        has(Taper, Spots::One, Most, Either),
                        has(Wear, Spots::One, Most, Follows),
                        OTHER,
                    ]
                }
            }
            Self::Tappet => {
                const { &[has(Diameter, Spots::Across, Least, Read), has(Clearance, Spots::One, Most, Either), OTHER] }
            }
            Self::TappetBore => const { &[has(Diameter, Spots::Across, Most, Read), OTHER] },
            Self::Pushrod => {
                const { &[has(Bend, Spots::One, Most, Read), has(Length, Spots::One, Least, Read), OTHER] }
            }
            Self::MainCapBolts | Self::RodBolts | Self::HeadBolts => {
                const { &[has(Length, Spots::One, Most, Read), OTHER] }
            }
            Self::Lobe => {
                const {
                    &[
                        has(LobeHeight, Spots::One, Least, Read),
                        has(BaseCircle, Spots::One, Least, Read),
                        has(Lift, Spots::One, Least, Either),
                        has(HeightLoss, Spots::One, Most, Follows),
                        has(LiftLoss, Spots::One, Most, Either),
                        OTHER,
                    ]
                }
            }
            Self::CamJournal => {
                const {
                    &[
                        has(Diameter, Spots::Journal, Least, Read),
                        has(RunOut, Spots::One, Most, Read),
                        has(OutOfRound, Spots::One, Most, Either),
                        has(Taper, Spots::One, Most, Either),
                        has(Wear, Spots::One, Most, Follows),
                        has(Clearance, Spots::One, Most, Either),
                        OTHER,
                    ]
                }
            }
            Self::CamBearing => {
                const {
                    &[
                        has(Diameter, Spots::Journal, Most, Read),
                        has(OutOfRound, Spots::One, Most, Either),
                        has(Taper, Spots::One, Most, Either),
                        OTHER,
                    ]
                }
            }
            Self::Camshaft => {
                const {
                    &[
                        has(EndFloat, Spots::One, Most, Read),
                        has(RunOut, Spots::One, Most, Read),
                        has(Bend, Spots::One, Most, Either),
                        has(LiftSpread, Spots::One, Most, Follows),
                        OTHER,
                    ]
                }
            }
            Self::Crankshaft => {
                const {
                    &[
                        has(EndFloat, Spots::One, Most, Read),
                        has(RunOut, Spots::One, Most, Read),
                        has(Bend, Spots::One, Most, Either),
                        has(AdjacentRunOut, Spots::One, Most, Follows),
                        has(AdjacentRunOutSquare, Spots::One, Most, Follows),
                        OTHER,
                    ]
                }
            }
            Self::Block => {
                const {
                    &[
                        has(LineAdjacent, Spots::One, Most, Either),
                        has(LineOverall, Spots::One, Most, Either),
                        has(FlatnessAlong, Spots::One, Most, Read),
                        has(FlatnessAcross, Spots::One, Most, Read),
                        OTHER,
                    ]
                }
            }
            Self::PumpGears => {
                const {
                    &[
                        has(Diameter, Spots::One, Least, Read),
                        has(Length, Spots::One, Least, Read),
                        has(Backlash, Spots::One, Most, Read),
                        has(SideClearance, Spots::One, Most, Either),
                        has(EndClearance, Spots::One, Most, Either),
                        OTHER,
                    ]
                }
            }
            Self::PumpBody => {
                const { &[has(Diameter, Spots::One, Most, Read), has(Depth, Spots::One, Most, Read), OTHER] }
            }
            Self::PumpCover => const { &[has(CoverWear, Spots::One, Most, Read), OTHER] },
            Self::AuxiliaryDrive => const { &[has(EndFloat, Spots::One, Most, Read), OTHER] },
            Self::AuxiliaryShaft => {
                const { &[has(Diameter, Spots::Across, Least, Read), has(RunOut, Spots::One, Most, Read), OTHER] }
            }
            Self::AuxiliaryBushes => {
                const { &[has(Diameter, Spots::Across, Most, Read), has(Clearance, Spots::One, Most, Either), OTHER] }
            }
            Self::AuxiliaryGear => const { &[has(Backlash, Spots::One, Most, Read), OTHER] },
            Self::OilPump | Self::OilPickup | Self::TimingDrive | Self::CorePlugs => const { &[OTHER] },
            Self::AsReceived
            | Self::EngineOil
            | Self::OilFilter
            | Self::DrainPlug
            | Self::Coolant
            | Self::AirCleaner
            | Self::OilFiller
            | Self::Breather
            | Self::Sump => &[],
        }
    }

    /// A quantity as this kind has it.
    pub fn has(self, quantity: Quantity) -> Option<&'static Has> {
        self.quantities().iter().find(|has| has.quantity == quantity)
    }
}

/// Names that are read for ever and no longer written, for the published schema: it does not see what is only read.
#[cfg(feature = "schema")]
fn former_names(schema: &mut schemars::Schema) {
    let former = serde_json::json!({
        "description": "The former name of `tappet-bore`: still read, no longer written.",
        "type": "string", "const": "guide-bore", "deprecated": true,
    });
    if let Some(names) = schema.get_mut("oneOf").and_then(serde_json::Value::as_array_mut) {
        names.push(former);
    }
}

/// The table for the published schema: of each kind of part what is read, at which spots, and what follows.
#[cfg(feature = "schema")]
fn by_kind() -> serde_json::Value {
    let row = |has: &Has| {
        let how = match has.comes {
            Read => "read",
            Follows => "follows from readings",
            Either => "read, or follows from readings",
        };
        let wears = match has.sense {
            Least => "a limit is the least allowed",
            Most => "a limit is the most allowed",
        };
        serde_json::json!({ "quantity": has.quantity, "how": how, "limit": wears, "spots": has.spots.all() })
    };
    let kinds = PartKind::ALL.into_iter().map(|kind| {
        let rows: Vec<serde_json::Value> = kind.quantities().iter().map(row).collect();
        (kind.row().id.to_owned(), serde_json::Value::Array(rows))
    });
    serde_json::Value::Object(kinds.collect())
}

impl Has {
    /// Whether a person may enter it.
    pub fn is_read(&self) -> bool {
        self.comes != Follows
    }
}

impl Spots {
    /// Every place, in the order in which a hand walks over the part.
    pub fn all(self) -> Vec<Spot> {
        use Station::*;
        let grid = |stations: &[Station]| -> Vec<Spot> {
            let both = [Direction::A, Direction::B];
            stations.iter().flat_map(|s| both.map(|d| Spot::new(Some(*s), Some(d)))).collect()
        };
        let along = |stations: &[Station]| stations.iter().map(|s| Spot::new(Some(*s), None)).collect();
        match self {
            Self::One => vec![Spot::default()],
            Self::Journal => grid(&[Front, Middle, Rear]),
            Self::Bore => grid(&[Top, Middle, Bottom]),
            Self::Across => vec![Spot::new(None, Some(Direction::A)), Spot::new(None, Some(Direction::B))],
            Self::Along => along(&[Front, Middle, Rear]),
            Self::Rings => along(&[TopRing, SecondRing, ThirdRing, OilRing]),
        }
    }

    /// The places without which a set is not complete.
    pub fn needed(self) -> Vec<Spot> {
        let optional = |spot: &Spot| match self {
            Self::Journal => spot.station == Some(Station::Middle),
            Self::Along => spot.station != Some(Station::Middle),
            Self::Rings => spot.station == Some(Station::ThirdRing),
            Self::One | Self::Bore | Self::Across => false,
        };
        self.all().into_iter().filter(|spot| !optional(spot)).collect()
    }
}

impl Quantity {
    /// Every quantity.
    pub const ALL: [Self; 47] = [
        Diameter,
        OutOfRound,
        Taper,
        Barrel,
        Wear,
        RunOut,
        Bend,
        Twist,
        ScratchDepth,
        Length,
        ThrustWidth,
        Wall,
        Thickness,
        Clearance,
        Strip,
        BearingBore,
        LineOffset,
        LineAdjacent,
        LineOverall,
        FlatnessAlong,
        FlatnessAcross,
        EndFloat,
        SidePlay,
        EndClearance,
        SideClearance,
        Backlash,
        Depth,
        CoverWear,
        BigEndBore,
        SmallEndBore,
        PinBore,
        PinDiameter,
        PinClearance,
        GrooveClearance,
        RingGap,
        GapGrowth,
        Ridge,
        LobeHeight,
        BaseCircle,
        Lift,
        HeightLoss,
        LiftLoss,
        LiftSpread,
        TappetBore,
        AdjacentRunOut,
        AdjacentRunOutSquare,
        Other,
    ];

    /// In the shop's words, lower case.
    pub fn words(self, terms: Terms) -> Cow<'static, str> {
        let words = match self {
            Diameter => "diameter",
            OutOfRound => "out-of-round",
            Taper => "taper",
            Barrel => "barrel or hourglass",
            Wear => "wear",
            RunOut => "run-out (total indicator reading)",
            Bend => "bend",
            Twist => "twist",
            ScratchDepth => "depth of the worst scratch",
            Length => "length",
            ThrustWidth => "thrust width",
            Wall => "wall",
            Thickness => "thickness",
            Clearance => "clearance",
            Strip => "clearance by plastic strip",
            BearingBore => "bore of the fitted bearing",
            LineOffset => "offset from the line",
            LineAdjacent => "line, neighbour to neighbour",
            LineOverall => "line over all",
            FlatnessAlong => "flatness of the deck, along",
            FlatnessAcross => "flatness of the deck, across",
            EndFloat => "{end-float}",
            SidePlay => "side play",
            EndClearance => "end clearance",
            SideClearance => "side clearance",
            Backlash => "backlash",
            Depth => "depth",
            CoverWear => "wear of the face",
            BigEndBore => "big-end bore",
            SmallEndBore => "small-end bore",
            PinBore => "pin bore",
            PinDiameter => "pin diameter",
            PinClearance => "clearance of the pin",
            GrooveClearance => "groove clearance",
            RingGap => "ring gap",
            GapGrowth => "growth of the ring gap",
            Ridge => "ridge",
            LobeHeight => "height",
            BaseCircle => "base circle",
            Lift => "lift",
            HeightLoss => "loss of height",
            LiftLoss => "loss of lift",
            LiftSpread => "spread of lift",
            TappetBore => "bore for the {tappet}",
            AdjacentRunOut => "run-out of neighbouring mains",
            AdjacentRunOutSquare => "run-out of neighbouring mains at right angles",
            Other => "other",
        };
        Phrase(words).said(terms)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Reading;
    use crate::sheet::Line;
    use serde_json::json;

    #[test]
    fn every_quantity_belongs_to_some_part_and_none_twice_to_one() {
        for quantity in Quantity::ALL.into_iter().filter(|quantity| *quantity != TappetBore) {
            assert!(PartKind::ALL.iter().any(|kind| kind.has(quantity).is_some()), "{quantity:?} is of no part");
        }
        for kind in PartKind::ALL {
            let mut all: Vec<Quantity> = kind.quantities().iter().map(|has| has.quantity).collect();
            let before = all.len();
            all.sort_unstable();
            all.dedup();
            assert_eq!(all.len(), before, "{kind:?} has a quantity twice");
        }
    }

    #[test]
    fn a_journal_is_complete_at_two_stations_in_two_directions() {
        assert_eq!(Spots::Journal.needed().len(), 4);
        assert_eq!(Spots::Journal.all().len(), 6);
        assert_eq!(Spots::Bore.needed().len(), 6);
    }
    #[test]
    fn the_bore_of_a_tappet_is_read_under_its_former_name_in_readings_and_sheets() {
        let reading = json!({ "part": "tappet.1.intake.1", "quantity": "guide-bore", "value": "22.11 mm" });
        let reading: Reading = serde_json::from_value(reading).unwrap();
        let line = json!({ "of": { "kind": "tappet", "quantity": "guide-bore" }, "min": "22.10 mm" });
        let line: Line = serde_json::from_value(line).unwrap();
        for quantity in [reading.quantity, line.of.quantity] {
            assert_eq!(quantity, TappetBore);
            assert_eq!(serde_json::to_value(quantity).unwrap(), json!("tappet-bore"));
        }
    }
}
