//! The work that a kind of part may need, and what the trade calls it there.

use super::PartKind;
use crate::work::Work;

impl PartKind {
    /// The work that may be done to it and has a price.
    pub fn works(self) -> Vec<Work> {
        let of_outcomes = self.row().outcomes.iter().filter_map(|outcome| Work::of(*outcome));
        let further: &[Work] = match self {
            Self::Bore => &[Work::Sleeve, Work::Hone, Work::Fit],
            Self::TappetBore => &[Work::Bush],
            Self::CamBearing => &[Work::Fit],
            Self::Piston => &[Work::Weigh, Work::Measure],
            Self::Rod => &[Work::CrackTest, Work::Bush, Work::Fit, Work::Weigh],
            Self::Camshaft => &[Work::WeldUp, Work::CrackTest],
            Self::Crankshaft => &[Work::CrackTest, Work::Balance],
            Self::Block => &[Work::CrackTest, Work::Fit],
            _ => &[],
        };
        let mut all: Vec<Work> = of_outcomes.chain(further.iter().copied()).collect();
        // Light damage of a bore is honed out.
        all.retain(|work| (self, *work) != (Self::Bore, Work::Clean));
        all.sort_unstable();
        all
    }

    /// A work on it in words, lower case: "grind", "hot wash".
    pub fn work_words(self, work: Work) -> &'static str {
        match (self, work) {
            (Self::MainJournal | Self::Crankpin | Self::CamJournal, Work::Machine) => "grind",
            (Self::Bore, Work::Machine) => "bore and hone",
            (Self::Bore, Work::Fit) => "fit liners or barrels",
            (Self::HousingBore, Work::Machine) => "line-bore",
            (Self::TappetBore, Work::Machine) => "ream",
            (Self::CamBearing, Work::Machine) => "bush the seats",
            (Self::Rod, Work::Machine) => "resize",
            (Self::Rod, Work::Bush) => "bush the small end",
            (Self::Rod, Work::Fit) => "fit new bolts",
            (Self::Lobe | Self::Camshaft, Work::Machine) => "regrind",
            (Self::Crankshaft, Work::Machine) => "straighten or dress",
            (Self::PumpBody | Self::PumpCover, Work::Machine) => "face flat",
            (Self::Block, Work::Machine) => "dress or face",
            (Self::Block, Work::CrackTest) => "test under pressure and for cracks",
            (Self::Block, Work::Clean) => "hot wash",
            (Self::Block, Work::Fit) => "fit the plugs",
            (Self::Piston, Work::Measure) => "measure the protrusion",
            (Self::Crankshaft, Work::Clean) => "flush the oil galleries",
            _ => work.words(),
        }
    }
}
