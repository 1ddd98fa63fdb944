//! The usual cautions. They stand on the screen where the risk is, and in the report.

/// What anyone who strips, cleans or lifts must know, each a sentence or two with its source.
pub const CAUTIONS: [Caution; 8] = [
    Caution {
        about: "Whose word counts",
        text: "The engine’s own manual governs every limit and procedure. Local rules and licensed practice come first. This program advises; the mechanic decides.",
        source: "Common practice.",
    },
    Caution {
        about: "Lifting",
        text: "Lift with a hoist and slings made for the load, attached before the last fastener comes out. Nobody stands under or beside a hanging load.",
        source: "TM 5-3825-230-14&P para 4-16.",
    },
    Caution {
        about: "Struck tools",
        text: "Wear eye protection. Never strike hardened steel with a hammer: camshafts, crankshafts and journals are hardened, so use a soft hammer. Put away tools with mushroomed or chipped heads.",
        source: "CCOHS; TM 5-3805-248-23-2.",
    },
    Caution {
        about: "Compressed air",
        text: "For cleaning use less than 30 psi (207 kPa), only with chip guarding and eye protection, and never on people or clothes.",
        source: "29 CFR 1910.242(b); TM 5-3825-230-14&P.",
    },
    Caution {
        about: "Solvents",
        text: "Cleaning solvents burn and are poisonous: fresh air, gloves, goggles, no flame or spark near. Hot caustic washes attack aluminium.",
        source: "Army manuals on dry-cleaning solvent; caustic on aluminium from memory.",
    },
    Caution {
        about: "Used oil",
        text: "Used oil harms the skin and may cause skin cancer: wear gloves, keep oily rags out of pockets, never wash hands in petrol or solvent.",
        source: "HSE, skin at work, motor vehicle repair.",
    },
    Caution {
        about: "Old gaskets and linings",
        text: "Old gaskets and clutch linings may hold asbestos: don’t scrape or blow them dry; wet them, and follow local rules for disposal.",
        source: "29 CFR 1910.1001 (clutches and brakes); the same care for old gaskets from memory.",
    },
    Caution {
        about: "Hot parts",
        text: "Parts from an oven or a hot wash burn: insulated gloves, and say so to whoever stands near.",
        source: "TM 5-3805-248-23-2.",
    },
];

/// One caution.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Caution {
    /// What it is about, in a word or two.
    pub about: &'static str,
    /// What to do and what not.
    pub text: &'static str,
    /// Where it comes from.
    pub source: &'static str,
}
