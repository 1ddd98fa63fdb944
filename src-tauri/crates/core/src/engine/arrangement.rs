//! How an engine is laid out: what a person enters once, and the only source of positions.

use serde::{Deserialize, Serialize};

use super::Construction;
use crate::words::{Phrase, Terms};

/// How the cylinders stand to each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Layout {
    /// One row.
    Inline,
    /// Two banks at an angle on one crankshaft.
    Vee,
    /// Two banks opposite each other.
    Flat,
}

/// Where the camshaft runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Camshaft {
    /// One shaft in the block for the whole engine; pushrods reach up to the valves in the head.
    InBlock,
    /// One shaft in the block, below valves that stand beside the cylinders: no pushrods.
    InBlockSideValves,
    /// One shaft on each cylinder head.
    OverheadSingle,
    /// Two shafts on each cylinder head: one for intake, one for exhaust.
    OverheadTwin,
    /// Ported engine without valves.
    None,
}

/// The follower between cam and valve gear.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Tappets {
    /// Flat foot, solid body.
    FlatSolid,
    /// Flat foot with a hydraulic plunger.
    FlatHydraulic,
    /// Roller, solid body.
    RollerSolid,
    /// Roller with a hydraulic plunger.
    RollerHydraulic,
    /// The cam works on rockers directly.
    None,
}

impl Tappets {
    /// Whether the foot slides on the cam and so must be renewed with it.
    pub fn is_flat(self) -> bool {
        matches!(self, Self::FlatSolid | Self::FlatHydraulic)
    }

    /// Whether a plunger inside takes up the clearance with oil.
    pub fn is_hydraulic(self) -> bool {
        matches!(self, Self::FlatHydraulic | Self::RollerHydraulic)
    }

    /// Whether a roller runs on the cam.
    pub fn is_roller(self) -> bool {
        matches!(self, Self::RollerSolid | Self::RollerHydraulic)
    }
}

/// One end of the crankshaft.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum End {
    /// The end that [`FrontEnd`] names.
    Front,
    /// The other end.
    Rear,
}

/// Which end of the crankshaft this engine's manual calls the front.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum FrontEnd {
    /// The end away from the flywheel (common practice).
    AwayFromFlywheel,
    /// The flywheel end.
    Flywheel,
}

/// A bank of a V or flat engine, seen from the rear looking towards the front.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Bank {
    /// The left bank; also the only bank of an in-line engine.
    Left,
    /// The right bank.
    Right,
}

/// How the count passes over two banks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Banks {
    /// One bank to its end, then the other: 1 2 3 4 / 5 6 7 8.
    OneThenOther,
    /// From bank to bank: 1 3 5 7 / 2 4 6 8.
    Across,
}

/// How cylinders are numbered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Numbering {
    /// The end where cylinder 1 is.
    pub from: End,
    /// How the count passes over two banks; without effect in an in-line engine.
    pub banks: Banks,
    /// The bank of cylinder 1; without effect in an in-line engine.
    pub first_bank: Bank,
}

/// The layout of one engine. Mains and crankpins are counted from the front; cylinders as [`Numbering`] says.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Arrangement {
    /// How the cylinders stand.
    pub layout: Layout,
    /// Number of cylinders, 1 to 16.
    pub cylinders: u8,
    /// Number of main bearings, 2 to one more than there are crankpins (two more in a flat engine, some of which have
    /// an outrigger bearing).
    pub mains: u8,
    /// The main that takes the end thrust, counted from the front.
    pub thrust_main: u8,
    /// Rods side by side on one crankpin: 1, or 2 in V and flat engines.
    pub rods_per_crankpin: u8,
    /// Where the camshaft runs.
    pub camshaft: Camshaft,
    /// Bearings of each camshaft; 0 without a camshaft.
    pub cam_bearings: u8,
    /// The followers.
    pub tappets: Tappets,
    /// Valves per cylinder: 0, or 2 to 5.
    pub valves_per_cylinder: u8,
    /// How cylinders are numbered.
    pub numbering: Numbering,
    /// Which end is called the front.
    pub front: FrontEnd,
    /// The end of the crankshaft that the oil reaches first, from the pump or its gallery; none if that is not known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub oil_from: Option<End>,
    /// How it is made.
    #[serde(default, skip_serializing_if = "Construction::is_unknown")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Construction>"))]
    pub construction: Construction,
}

/// Why an arrangement can't be: which figure, what is wrong with it, what would be right.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{0}")]
pub struct Impossible(pub String);

/// Crankpins that one bay between two mains may hold; more would leave the shaft unsupported (our judgement: old
/// four-cylinder engines with two mains are the extreme).
const MAX_PINS_BETWEEN_MAINS: u8 = 4;

const WITHOUT_CAMSHAFT: Phrase = Phrase(
    "An engine without a camshaft has no valves, cam bearings or {tappets}: set them to none, or name the camshaft.",
);
const IN_THE_BLOCK: Phrase = Phrase("A camshaft in the block needs {tappets}: flat or roller, solid or hydraulic.");

impl Arrangement {
    /// Number of crankpins.
    pub fn crankpins(&self) -> u8 {
        self.cylinders / self.rods_per_crankpin.max(1)
    }

    /// Number of banks.
    pub fn banks(&self) -> u8 {
        if self.layout == Layout::Inline { 1 } else { 2 }
    }

    /// Whether the camshaft runs in the block, and the tappets with it.
    pub fn is_cam_in_block(&self) -> bool {
        matches!(self.camshaft, Camshaft::InBlock | Camshaft::InBlockSideValves)
    }

    /// Number of camshafts.
    pub fn camshafts(&self) -> u8 {
        match self.camshaft {
            Camshaft::InBlock | Camshaft::InBlockSideValves => 1,
            Camshaft::OverheadSingle => self.banks(),
            Camshaft::OverheadTwin => 2 * self.banks(),
            Camshaft::None => 0,
        }
    }

    /// In words: "V 8, 5 mains, thrust on main 3".
    pub fn summary(&self) -> String {
        let layout = match self.layout {
            Layout::Inline => "in-line",
            Layout::Vee => "V",
            Layout::Flat => "flat",
        };
        format!("{layout} {}, {} mains, thrust on main {}", self.cylinders, self.mains, self.thrust_main)
    }

    /// Refuses what can't be built, in the shop's words.
    ///
    /// # Errors
    /// [`Impossible`] for the first figure found wrong.
    pub fn check(&self, terms: Terms) -> Result<(), Impossible> {
        let no = |sentence: String| Err(Impossible(sentence));
        if !(1..=16).contains(&self.cylinders) {
            return no(format!("{} cylinders: an engine here has 1 to 16.", self.cylinders));
        }
        if self.layout != Layout::Inline && !self.cylinders.is_multiple_of(2) {
            return no(format!(
                "A V or flat engine with {} cylinders has unequal banks: the number must be even.",
                self.cylinders
            ));
        }
        match (self.layout, self.rods_per_crankpin) {
            (_, 1) | (Layout::Vee | Layout::Flat, 2) => {}
            (Layout::Inline, 2) => return no("Two rods on one crankpin: an in-line engine has one rod on each.".into()),
            (_, n) => return no(format!("{n} rods on one crankpin: it must be 1, or 2 in a V or flat engine.")),
        }
        let pins = self.crankpins();
        let most = pins + if self.layout == Layout::Flat { 2 } else { 1 };
        if self.mains < 2 || self.mains > most {
            return no(format!(
                "{} mains: a crankshaft with {pins} {} has 2 to {most}.",
                self.mains,
                if pins == 1 { "crankpin" } else { "crankpins" }
            ));
        }
        if pins.div_ceil(self.mains - 1) > MAX_PINS_BETWEEN_MAINS {
            return no(format!(
                "{} mains are too few for {pins} crankpins: no more than {MAX_PINS_BETWEEN_MAINS} crankpins can lie between two mains.",
                self.mains
            ));
        }
        if !(1..=self.mains).contains(&self.thrust_main) {
            return no(format!("Thrust on main {}: there are mains 1 to {}.", self.thrust_main, self.mains));
        }
        self.check_valve_gear(terms)
    }

    fn check_valve_gear(&self, terms: Terms) -> Result<(), Impossible> {
        let no = |sentence: String| Err(Impossible(sentence));
        if self.camshaft == Camshaft::None {
            if self.valves_per_cylinder != 0 || self.cam_bearings != 0 || self.tappets != Tappets::None {
                return no(WITHOUT_CAMSHAFT.said(terms).into());
            }
            return Ok(());
        }
        if !(2..=5).contains(&self.valves_per_cylinder) {
            return no(format!(
                "{} valves per cylinder: an engine with a camshaft has 2 to 5.",
                self.valves_per_cylinder
            ));
        }
        if !(2..=20).contains(&self.cam_bearings) {
            return no(format!("{} cam bearings: a camshaft runs in 2 to 20.", self.cam_bearings));
        }
        if self.is_cam_in_block() && self.tappets == Tappets::None {
            return no(IN_THE_BLOCK.said(terms).into());
        }
        Ok(())
    }

    /// An ordinary in-line engine: a main on each side of every crankpin, camshaft in the block, flat solid tappets,
    /// two valves per cylinder, counted from the front. A starting point for entry and for tests.
    pub fn inline(cylinders: u8) -> Self {
        let mains = cylinders.saturating_add(1);
        Self {
            layout: Layout::Inline,
            cylinders,
            mains,
            thrust_main: mains.div_ceil(2),
            rods_per_crankpin: 1,
            camshaft: Camshaft::InBlock,
            cam_bearings: mains.max(2),
            tappets: Tappets::FlatSolid,
            valves_per_cylinder: 2,
            numbering: Numbering { from: End::Front, banks: Banks::OneThenOther, first_bank: Bank::Left },
            front: FrontEnd::AwayFromFlywheel,
            oil_from: None,
            construction: Construction::default(),
        }
    }

    /// An ordinary V engine with two rods on each crankpin and hydraulic tappets.
    pub fn vee(cylinders: u8) -> Self {
        let mains = (cylinders / 2).saturating_add(1);
        Self {
            layout: Layout::Vee,
            mains,
            thrust_main: mains.div_ceil(2),
            rods_per_crankpin: 2,
            tappets: Tappets::FlatHydraulic,
            cam_bearings: mains.max(2),
            ..Self::inline(cylinders)
        }
    }

    /// An ordinary flat engine with a crankpin for each cylinder.
    pub fn flat(cylinders: u8) -> Self {
        let mains = (cylinders / 2).saturating_add(1);
        Self { layout: Layout::Flat, mains, thrust_main: mains, cam_bearings: mains.max(2), ..Self::inline(cylinders) }
    }
}

/// One of everything, for exhaustive tests.
#[cfg(test)]
pub(crate) fn examples() -> Vec<Arrangement> {
    let mut all: Vec<Arrangement> = (1..=16).map(Arrangement::inline).collect();
    all.extend((1..=8).map(|n| Arrangement::vee(2 * n)));
    all.extend((1..=8).map(|n| Arrangement::flat(2 * n)));
    all.push(Arrangement { rods_per_crankpin: 1, mains: 4, ..Arrangement::vee(6) });
    all.push(Arrangement { mains: 8, thrust_main: 8, ..Arrangement::flat(6) });
    all.push(Arrangement { mains: 2, thrust_main: 1, ..Arrangement::inline(4) });
    all.push(Arrangement {
        camshaft: Camshaft::OverheadTwin,
        valves_per_cylinder: 4,
        tappets: Tappets::None,
        ..Arrangement::vee(12)
    });
    all.push(Arrangement {
        camshaft: Camshaft::None,
        cam_bearings: 0,
        tappets: Tappets::None,
        valves_per_cylinder: 0,
        ..Arrangement::inline(3)
    });
    all.push(Arrangement { camshaft: Camshaft::InBlockSideValves, ..Arrangement::vee(8) });
    all.push(Arrangement { valves_per_cylinder: 5, camshaft: Camshaft::OverheadSingle, ..Arrangement::inline(5) });
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_example_can_exist() {
        for arrangement in examples() {
            assert_eq!(arrangement.check(Terms::default()), Ok(()), "{arrangement:?}");
        }
    }

    #[track_caller]
    fn refused(arrangement: Arrangement, because: &str) {
        let Err(Impossible(sentence)) = arrangement.check(Terms::default()) else {
            panic!("{arrangement:?} was accepted")
        };
        assert_eq!(sentence, because);
    }

    #[test]
    fn what_cannot_be_built_is_refused_with_the_reason() {
        let inline = Arrangement::inline;
        refused(inline(0), "0 cylinders: an engine here has 1 to 16.");
        refused(inline(17), "17 cylinders: an engine here has 1 to 16.");
        refused(
            Arrangement { cylinders: 7, ..Arrangement::vee(8) },
            "A V or flat engine with 7 cylinders has unequal banks: the number must be even.",
        );
        refused(
            Arrangement { rods_per_crankpin: 2, ..inline(4) },
            "Two rods on one crankpin: an in-line engine has one rod on each.",
        );
        refused(
            Arrangement { rods_per_crankpin: 0, ..inline(4) },
            "0 rods on one crankpin: it must be 1, or 2 in a V or flat engine.",
        );
        refused(Arrangement { mains: 6, ..inline(4) }, "6 mains: a crankshaft with 4 crankpins has 2 to 5.");
        refused(Arrangement { mains: 1, ..inline(1) }, "1 mains: a crankshaft with 1 crankpin has 2 to 2.");
        refused(
            Arrangement { mains: 2, ..inline(6) },
            "2 mains are too few for 6 crankpins: no more than 4 crankpins can lie between two mains.",
        );
        refused(Arrangement { thrust_main: 6, ..inline(4) }, "Thrust on main 6: there are mains 1 to 5.");
        refused(
            Arrangement { valves_per_cylinder: 1, ..inline(4) },
            "1 valves per cylinder: an engine with a camshaft has 2 to 5.",
        );
        refused(Arrangement { cam_bearings: 1, ..inline(4) }, "1 cam bearings: a camshaft runs in 2 to 20.");
        refused(
            Arrangement { tappets: Tappets::None, ..inline(4) },
            "A camshaft in the block needs tappets: flat or roller, solid or hydraulic.",
        );
    }

    #[test]
    fn an_unknown_field_is_refused_rather_than_lost() {
        let mut json = serde_json::to_value(Arrangement::inline(4)).unwrap();
        json["turbo"] = true.into();
        assert!(serde_json::from_value::<Arrangement>(json).is_err());
    }
}
