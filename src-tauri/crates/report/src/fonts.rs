//! The letters: embedded fonts for what most papers need, fonts of the system where a name is written in letters that
//! those lack. The system's fonts are read only then, one after the other, and no longer than letters are missing.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use typst::text::{FontInfo, FontStyle, is_default_ignorable};
use typst_kit::fonts::{FontPath, FontStore, embedded};

/// The face in which text is set.
pub(crate) const TEXT_FACE: &str = "Libertinus Serif";

/// The embedded fonts alone.
pub(crate) static EMBEDDED: LazyLock<FontStore> = LazyLock::new(with_embedded);

/// Where systems keep their fonts. The first three belong to Android and iOS.
const FOLDERS: [&str; 10] = [
    "/system/fonts",
    "/product/fonts",
    "/System/Library/Fonts",
    "/Library/Fonts",
    "/usr/share/fonts",
    "/usr/local/share/fonts",
    "/run/host/fonts",
    "/run/current-system/sw/share/X11/fonts",
    "C:\\Windows\\Fonts",
    "/var/lib/snapd/desktop/fonts",
];
/// Folders within folders that are looked into.
const DEEPEST: usize = 5;
/// The largest font file read, in bytes: those for all of Chinese, Japanese and Korean have some 20 MB.
const MOST_BYTES: u64 = 64 << 20;
/// Words in the names of files that are better tried last.
const LAST: [&str; 8] = ["bold", "italic", "oblique", "light", "thin", "mono", "unifont", "lastresort"];

/// What a paper needs besides the embedded fonts.
#[derive(Default)]
pub(crate) struct Found {
    /// All fonts to set it with; none if the embedded ones do.
    pub(crate) store: Option<FontStore>,
    /// Letters that no font has.
    pub(crate) missing: BTreeSet<char>,
}

/// Finds fonts for a text.
pub(crate) fn fonts_for(text: &str) -> Found {
    fonts_among(text, FOLDERS.iter().map(Path::new))
}

fn fonts_among<'a>(text: &str, folders: impl Iterator<Item = &'a Path>) -> Found {
    let mut wanted: BTreeSet<char> = text.chars().filter(|letter| !invisible(*letter) && !has_face(*letter)).collect();
    if wanted.is_empty() {
        return Found::default();
    }
    // Letters for private use mean something else in every font.
    let private: BTreeSet<char> = wanted.iter().copied().filter(|letter| is_private(*letter)).collect();
    wanted.retain(|letter| !private.contains(letter));
    let mut store = with_embedded();
    for file in files(folders) {
        if wanted.is_empty() {
            break;
        }
        for (index, info) in infos(&file) {
            let before = wanted.len();
            wanted.retain(|letter| !info.coverage.contains(u32::from(*letter)));
            if wanted.len() < before {
                store.push((FontPath { path: file.clone(), index }, info));
            }
        }
    }
    // Better a letter out of a typewriter's face than none.
    wanted.retain(|letter| !covered(*letter));
    Found { store: Some(store), missing: wanted.into_iter().chain(private).collect() }
}

fn with_embedded() -> FontStore {
    let mut fonts = FontStore::new();
    fonts.extend(embedded());
    fonts
}

fn invisible(letter: char) -> bool {
    letter.is_whitespace() || letter.is_control() || is_default_ignorable(letter)
}

fn is_private(letter: char) -> bool {
    matches!(letter, '\u{e000}'..='\u{f8ff}' | '\u{f0000}'..='\u{10ffff}')
}

/// Whether the face of the text has a letter.
fn has_face(letter: char) -> bool {
    let book = EMBEDDED.book();
    let mut faces = book.select_family(&TEXT_FACE.to_lowercase()).filter_map(|index| book.info(index));
    faces.any(|info| info.coverage.contains(u32::from(letter)))
}

/// Whether any embedded font has a letter.
fn covered(letter: char) -> bool {
    let book = EMBEDDED.book();
    (0..).map_while(|index| book.info(index)).any(|info| info.coverage.contains(u32::from(letter)))
}

/// The font files of some folders, always in the same order, upright ones of usual weight first.
fn files<'a>(folders: impl Iterator<Item = &'a Path>) -> Vec<PathBuf> {
    let mut found = Vec::new();
    folders.for_each(|folder| gather(folder, DEEPEST, &mut found));
    found.sort_by_cached_key(|path| {
        let name = path.file_name().map(|name| name.to_string_lossy().to_lowercase()).unwrap_or_default();
        (LAST.iter().any(|word| name.contains(word)), path.clone())
    });
    found
}

fn gather(folder: &Path, deep: usize, found: &mut Vec<PathBuf>) {
    let entries = fs::read_dir(folder).into_iter().flatten().flatten();
    for entry in entries {
        let (path, Ok(about)) = (entry.path(), entry.metadata()) else { continue };
        if about.is_dir() && deep > 0 {
            gather(&path, deep - 1, found);
        } else if is_font(&path) && about.len() <= MOST_BYTES {
            found.push(path);
        }
    }
}

fn is_font(path: &Path) -> bool {
    let ending = path.extension().map(|ending| ending.to_string_lossy().to_lowercase());
    ending.is_some_and(|ending| ["ttf", "otf", "ttc", "otc"].contains(&ending.as_str()))
}

/// The upright faces of usual weight in a file; none if it can't be read.
fn infos(file: &Path) -> Vec<(u32, FontInfo)> {
    let Ok(bytes) = fs::read(file) else { return vec![] };
    let usual = |info: &FontInfo| {
        let weight = info.variant.weight.to_number();
        info.variant.style == FontStyle::Normal && (300..=500).contains(&weight) && !info.is_last_resort()
    };
    (0..).zip(FontInfo::iter(&bytes)).filter(|(_, info)| usual(info)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn usual_papers_cost_no_search() {
        let found = fonts_for("Zündkerze, Ελληνικά, кириллица, עברית, 0.25 mm, “ł” – é…\u{2068}\u{200b}");
        assert!(found.store.is_none() && found.missing.is_empty());
    }

    #[test]
    fn what_no_font_has_is_named() {
        let nowhere = Path::new("no such folder");
        let found = fonts_among("a 曲 \u{e123} 轴", [nowhere].into_iter());
        assert_eq!(found.missing.iter().collect::<String>(), "曲轴\u{e123}");
    }

    #[test]
    fn broken_files_are_passed_over() {
        let folder = std::env::temp_dir().join(format!("wearbook-fonts-{}", std::process::id()));
        fs::create_dir_all(folder.join("deeper")).unwrap();
        for (name, bytes) in [("a.ttf", &b""[..]), ("b.otf", b"OTTO not a font"), ("deeper/c.ttc", b"ttcf\0\0")] {
            fs::write(folder.join(name), bytes).unwrap();
        }
        let found = fonts_among("曲", [folder.as_path()].into_iter());
        fs::remove_dir_all(&folder).unwrap();
        assert_eq!(found.missing.len(), 1);
    }
}
