//! Writes contact sheets of every subject, kind and grade as PNG files: `draw_sheet FOLDER [NAME]`.
//!
//! With a name, only the sheets whose file name contains it are drawn.

use image::{ImageError, RgbImage, imageops};
use std::path::{Path, PathBuf};
use wearbook_demo::picture::{
    Across, Around, BoreZone, Half, JournalZone, Kind, LobeZone, PistonZone, ShellZone, Subject, TappetZone, Wear, draw,
};

/// The size of one picture on a sheet.
const THUMB: (u32, u32) = (480, 360);

fn main() -> Result<(), ImageError> {
    let mut arguments = std::env::args_os().skip(1);
    let folder = PathBuf::from(arguments.next().unwrap_or_else(|| "sheets".into()));
    let wanted = arguments.next().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    std::fs::create_dir_all(&folder).map_err(ImageError::IoError)?;
    let crown = ShellZone { across: Across::Middle, around: Around::Crown };
    let front = ShellZone { across: Across::Front, around: Around::Crown };
    let shell = |half, back, zone| move |kind, grade| Subject::Shell { half, back, wear: tag(kind, grade, zone) };
    use Kind::*;
    let shell_kinds =
        [Scoring, EmbeddedDebris, Pitting, HotSpot, CopperShowing, Wiping, FatigueCracks, Corrosion, Even];
    let back_kinds = [BrightBack, HotSpot, Rust, Scoring];
    let foot_kinds = [Pitting, Scoring, Spalling, Dished, Scuffing, HotSpot, Rust, Even];
    let lobe_kinds = [WornNose, Pitting, Spalling, Scoring, Scuffing, Rust, HotSpot, Even];
    let journal_kinds = [Scoring, HotSpot, Rust, Pitting, Corrosion, Scuffing, Even];
    let slide_kinds = [Scoring, Scuffing, HotSpot, Corrosion, Rust, Even];
    let sheet = Sheets { folder, wanted };
    sheet.write("lower", &shell_kinds, shell(Half::Lower, false, crown))?;
    sheet.write("upper", &shell_kinds, shell(Half::Upper, false, front))?;
    sheet.write("back", &back_kinds, shell(Half::Lower, true, crown))?;
    sheet.write("tappet", &foot_kinds, |k, g| Subject::Tappet { wear: tag(k, g, TappetZone::Whole) })?;
    sheet.write("lobe", &lobe_kinds, |k, g| Subject::Lobe { wear: tag(k, g, LobeZone::Nose) })?;
    sheet.write("journal", &journal_kinds, |k, g| Subject::Journal { wear: tag(k, g, JournalZone::Middle) })?;
    sheet.write("piston", &slide_kinds, |k, g| Subject::Piston { wear: tag(k, g, PistonZone::Skirt) })?;
    sheet.write("bore", &slide_kinds, |k, g| Subject::Bore { wear: tag(k, g, BoreZone::Top) })
}

fn tag<Z>(kind: Kind, grade: u8, zone: Z) -> Vec<Wear<Z>> {
    if grade == 0 { Vec::new() } else { vec![Wear { kind, grade, zone }] }
}

struct Sheets {
    folder: PathBuf,
    wanted: String,
}

impl Sheets {
    /// One sheet per three kinds: a row per kind, a column per grade from 1 to 4.
    fn write(&self, name: &str, kinds: &[Kind], subject: impl Fn(Kind, u8) -> Subject) -> Result<(), ImageError> {
        for (page, kinds) in kinds.chunks(3).enumerate() {
            let file = format!("{name}-{}.png", page + 1);
            if !file.contains(&self.wanted) {
                continue;
            }
            let mut sheet = RgbImage::new(THUMB.0 * 4, THUMB.1 * kinds.len() as u32);
            for (row, kind) in kinds.iter().enumerate() {
                for grade in 1..=4u8 {
                    let seed = (page * 100 + row * 10) as u64 + u64::from(grade);
                    let picture = draw(&subject(*kind, grade), seed);
                    let thumb = imageops::thumbnail(&picture, THUMB.0, THUMB.1);
                    let (x, y) = (u32::from(grade - 1) * THUMB.0, row as u32 * THUMB.1);
                    imageops::replace(&mut sheet, &thumb, i64::from(x), i64::from(y));
                }
            }
            save(&sheet, &self.folder.join(&file))?;
        }
        Ok(())
    }
}

fn save(sheet: &RgbImage, path: &Path) -> Result<(), ImageError> {
    sheet.save(path)?;
    println!("{}", path.display());
    Ok(())
}
