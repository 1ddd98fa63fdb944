//! What the mechanic of the story drew over photos.

use wearbook_core::job::Markup;

/// What is drawn over the first photo of a part.
pub(super) fn drawings_on(part: &str) -> Vec<Markup> {
    match part {
        "rod-shell.2.upper" => vec![
            outline(
                &[(3400, 5300), (4300, 4900), (5600, 4950), (6700, 5250), (6300, 5900), (5000, 6150), (3900, 5950)],
                "Worn through to the copper",
            ),
            arrow((6900, 2300), (4950, 4150), "Grit pressed into the lining"),
        ],
        "main-shell.3.lower" => vec![outline(
            &[(3600, 4000), (4500, 3850), (5700, 4050), (5650, 5300), (5500, 6200), (4300, 6500), (3500, 5600)],
            "Copper over a third of the width",
        )],
        "piston.3" => vec![outline(
            &[
                (5400, 2600),
                (8100, 3000),
                (8400, 4600),
                (7800, 7000),
                (7500, 9000),
                (4500, 8500),
                (3900, 6200),
                (4200, 4000),
            ],
            "",
        )],
        _ => vec![],
    }
}

fn outline(points: &[(u16, u16)], note: &str) -> Markup {
    Markup::Outline { points: points.to_vec(), note: note.into() }
}

fn arrow(from: (u16, u16), to: (u16, u16), note: &str) -> Markup {
    Markup::Arrow { from, to, note: note.into() }
}
