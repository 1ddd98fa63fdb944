//! The table of cautions, the gravest first: what kills or blinds, what poisons or burns, what harms a part.
//!
//! A row names the kinds of part, tags and works at which it shows. A new kind of part is named in the rows that concern
//! it; those of [`ANY`] kind hold of it already.

use super::row::{ANY, Caution, Screen};
use crate::engine::PartKind::{
    AuxiliaryDrive, Block, Bore, CamBearing, Camshaft, Coolant, CorePlugs, Crankpin, Crankshaft, DrainPlug, EngineOil,
    HeadBolts, HousingBore, MainCapBolts, MainJournal, MainShell, OilFilter, OilPickup, OilPump, Piston, PumpBody,
    PumpCover, Pushrod, Rings, Rod, RodBolts, RodShell, Sump, Tappet, ThrustFace, TimingDrive,
};
use crate::wear::Tag;
use crate::work::Work;

/// Every caution.
pub const ALL: &[Caution] = &[
    Caution {
        id: "lifting",
        about: "Lifting",
        line: "A hoist and slings made for the load, attached before the last fastener comes out. Nobody under it or beside it.",
        source: "TM 5-3825-230-14&P para 4-16.",
        kinds: &[Crankshaft, Block],
        works: &[
            (Work::CrackTest, &[Crankshaft, Block]),
            (Work::Machine, &[Crankshaft, Block]),
            (Work::Balance, &[Crankshaft]),
        ],
        screens: &[Screen::Intake],
        ..NOWHERE
    },
    Caution {
        id: "stand",
        about: "Stand",
        line: "The load shifts as heavy parts come off: lock the stand, turn it slowly, and keep hands and feet clear.",
        source: "From memory.",
        kinds: &[Crankshaft],
        screens: &[Screen::Intake],
        ..NOWHERE
    },
    Caution {
        id: "air-in-cylinder",
        about: "Air in a cylinder",
        line: "Piston at top dead centre and crankshaft held before air goes in: it may spin.",
        source: "AC 43.13-1B para 8-14 (caution).",
        ..NOWHERE
    },
    Caution {
        id: "corrosive-bath",
        about: "Corrosive bath",
        line: "Water to drench eyes and body within ten seconds’ reach, and enough of it for fifteen minutes.",
        source: "29 CFR 1910.151(c); WAC 296-800-15030.",
        works: &[(Work::Clean, &[Block])],
        ..NOWHERE
    },
    Caution {
        id: "caustic-on-aluminium",
        about: "Caustic on aluminium",
        line: "Caustic eats aluminium and gives off hydrogen: light metal needs another bath, and no flame near.",
        source: "Common practice.",
        works: &[(Work::Clean, &[Block])],
        ..NOWHERE
    },
    Caution {
        id: "compressed-air",
        about: "Compressed air",
        line: "To clean, less than 30 psi (207 kPa), with a chip guard and goggles; never at people or clothes.",
        source: "29 CFR 1910.242(b); OSHA, letter of 14 January 1994; TM 5-3825-230-14&P.",
        works: &[(Work::Clean, &[Crankshaft, OilPump, OilPickup, Pushrod]), (Work::Rebuild, ANY)],
        ..NOWHERE
    },
    Caution {
        id: "struck-tools",
        about: "Struck tools",
        line: "Eye protection. A soft hammer for shafts and journals, which are hardened. No tool with a mushroomed or chipped head.",
        source: "CCOHS; TM 5-3805-248-23-2 (caution).",
        kinds: &[CorePlugs, CamBearing, Camshaft, TimingDrive],
        screens: &[Screen::Marks],
        ..NOWHERE
    },
    Caution {
        id: "valve-locks",
        about: "Valve locks",
        line: "Locks can fly when the stem is tapped: eye protection.",
        source: "TM 5-1940-322-24 WP 0160.",
        ..NOWHERE
    },
    Caution {
        id: "springs-and-clips",
        about: "Springs and clips",
        line: "Under load they fly: eye protection, and a hand or cloth over them as they come out.",
        source: "From memory.",
        kinds: &[Piston, Tappet],
        ..NOWHERE
    },
    Caution {
        id: "chilled-parts",
        about: "Chilled parts",
        line: "Never take a chilled sleeve or insert with bare hands.",
        source: "Common practice.",
        works: &[(Work::Sleeve, &[Bore])],
        ..NOWHERE
    },
    Caution {
        id: "hot-parts",
        about: "Hot parts",
        line: "Insulated gloves for what was heated, and a mark on it until it is cold.",
        source: "TM 5-3805-248-23-2; the mark from memory.",
        works: &[(Work::WeldUp, ANY)],
        ..NOWHERE
    },
    Caution {
        id: "heated-gear",
        about: "Heated gear",
        line: "Heat a gear for fitting to the manual’s temperature and no further; insulated gloves.",
        source: "TM 10-3930-653-14&P (180 °C); TM 5-3810-295-34 (400 °F).",
        works: &[(Work::Replace, &[TimingDrive, AuxiliaryDrive])],
        ..NOWHERE
    },
    Caution {
        id: "asbestos",
        about: "Old gaskets",
        line: "They may hold asbestos: no dry scraping, no brushing, no air. Wet them, wipe up, dispose as local rules say.",
        source: "29 CFR 1910.1001(f)(3) and App. F (brakes and clutches); of gaskets from memory.",
        kinds: &[Block],
        ..NOWHERE
    },
    Caution {
        id: "lead",
        about: "Lead",
        line: "Old linings and paint may hold lead: no dry sanding, no heat; wash hands before eating.",
        source: "29 CFR 1910.1025 App. B (50 µg/m³ over 8 h); what to do from memory.",
        kinds: &[MainShell, RodShell, CamBearing, ThrustFace],
        is_for_customer: true,
        ..NOWHERE
    },
    Caution {
        id: "burnt-seals",
        about: "Burnt rubber seals",
        line: "Burnt fluoro-rubber may leave acid: gloves, and wash it down. Never burn a seal off.",
        source: "HSE, motor vehicle repair (no case verified); common practice.",
        ..NOWHERE
    },
    Caution {
        id: "cadmium",
        about: "Cadmium plate",
        line: "Never grind, heat or weld plated bolts: dust and fume are poisonous.",
        source: "29 CFR 1910.1027 (5 µg/m³); what to do from memory.",
        kinds: &[MainCapBolts, RodBolts, HeadBolts],
        ..NOWHERE
    },
    Caution {
        id: "light-metal-chips",
        about: "Light-metal chips",
        line: "Fines of aluminium and magnesium burn: sweep them up dry, a class D extinguisher near, never water.",
        source: "29 CFR 1910.157(d)(6); no water: common practice.",
        works: &[(Work::Machine, &[Block, HousingBore])],
        ..NOWHERE
    },
    Caution {
        id: "solvents",
        about: "Solvents",
        line: "They burn and poison: fresh air, gloves and goggles, no flame or spark near.",
        source: "Army manuals on dry-cleaning solvent P-D-680 (flash point 38 °C, type II 59 °C).",
        works: &[(Work::Clean, ANY), (Work::Rebuild, ANY)],
        ..NOWHERE
    },
    Caution {
        id: "crack-test",
        about: "Crack test",
        line: "Never look into the lamp, nor use it with a broken filter. Dye and developer: fresh air, gloves, no flame.",
        source: "TM 1-1500-335-23 (lamp); dye and developer from memory.",
        works: &[(Work::CrackTest, ANY)],
        ..NOWHERE
    },
    Caution {
        id: "wet-polishing",
        about: "Wet polishing",
        line: "Diesel or solvent on the cloth burns: no flame, spark or cigarette near.",
        source: "TM 10-4320-307-24.",
        works: &[(Work::Polish, ANY)],
        ..NOWHERE
    },
    Caution {
        id: "oily-rags",
        about: "Oily rags",
        line: "They can take fire by themselves: into a closed metal can, emptied every day.",
        source: "29 CFR 1910.106(e)(9)(iii), OSHA, letter of 23 May 2000; 30 CFR 56.4104.",
        works: &[(Work::Polish, ANY)],
        ..NOWHERE
    },
    Caution {
        id: "hot-water",
        about: "Hot water, detergents",
        line: "They scald and strip the skin: gloves, goggles, and what the label says.",
        source: "TM 9-2320-366-34-4.",
        works: &[(Work::Hone, ANY), (Work::Clean, &[Rod, HousingBore])],
        ..NOWHERE
    },
    Caution {
        id: "coolant",
        about: "Coolant",
        line: "Poisonous: catch it all, out of reach of animals. Never open a hot system: it scalds.",
        source: "From memory.",
        kinds: &[CorePlugs, Coolant],
        ..NOWHERE
    },
    Caution {
        id: "used-oil",
        about: "Used oil",
        line: "It harms the skin and may cause skin cancer: gloves, no oily rags in pockets, no petrol or solvent on skin.",
        source: "HSE, skin at work: motor vehicle repair.",
        kinds: &[MainShell, RodShell, OilPump, OilPickup, EngineOil, OilFilter, DrainPlug, Sump],
        ..NOWHERE
    },
    Caution {
        id: "sharp-edges",
        about: "Sharp edges",
        line: "Broken rings and torn metal cut: gloves, and no piece left loose.",
        source: "From memory.",
        kinds: &[Rings, OilFilter],
        tags: &[(Tag::Cracks, ANY), (Tag::Spalling, ANY)],
        is_for_customer: true,
        ..NOWHERE
    },
    Caution {
        id: "worked-faces",
        about: "Worked faces",
        line: "No wire brush or abrasive on a machined or stressed face.",
        source: "TM 5-3825-230-14&P.",
        works: &[(Work::Clean, &[Camshaft, TimingDrive, AuxiliaryDrive, MainCapBolts, RodBolts, HeadBolts])],
        ..NOWHERE
    },
    Caution {
        id: "number-first",
        about: "Numbers first",
        line: "Number each cap, rod and follower to its place before it is loosened, where no face is machined.",
        source: "Common practice.",
        kinds: &[Tappet, Pushrod],
        screens: &[Screen::Marks],
        ..NOWHERE
    },
    Caution {
        id: "rod-bolts-covered",
        about: "Rod bolts",
        line: "Hose or tape over the bolts before the rod goes past the crankpin: a bare thread scores it.",
        source: "Common practice.",
        kinds: &[Rod, Crankpin, Piston],
        ..NOWHERE
    },
    Caution {
        id: "pried-faces",
        about: "Machined faces",
        line: "Never pry on a machined face: rock or tap the part loose with a soft hammer.",
        source: "Common practice.",
        kinds: &[HousingBore, PumpBody, PumpCover, HeadBolts],
        ..NOWHERE
    },
    Caution {
        id: "turned-by-hand",
        about: "Turn by hand",
        line: "Turn the shaft by hand after each cap that is tightened: what binds is found at that cap.",
        source: "Common practice.",
        kinds: &[MainJournal],
        works: &[(Work::Replace, &[MainShell, RodShell, CamBearing])],
        ..NOWHERE
    },
];

/// What a row does not say.
const NOWHERE: Caution = Caution {
    id: "",
    about: "",
    line: "",
    source: "",
    kinds: &[],
    tags: &[],
    works: &[],
    screens: &[],
    is_for_customer: false,
};
