//! All that the typesetter can see: one template, the embedded fonts, and what is handed in. No file, no clock.

use std::sync::LazyLock;

use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Dict, Duration};
use typst::syntax::{FileId, Source};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Feature, Library, LibraryExt, World};
use typst_kit::fonts::{FontStore, embedded};

static TEMPLATE: LazyLock<Source> = LazyLock::new(|| Source::detached(include_str!("template.typ")));

static FONTS: LazyLock<FontStore> = LazyLock::new(|| {
    let mut fonts = FontStore::new();
    fonts.extend(embedded());
    fonts
});

/// A world with nothing in it but the template and the content of one paper.
pub(crate) struct Desk {
    library: LazyHash<Library>,
}

impl Desk {
    /// Lays out the inputs that the template reads as `sys.inputs`.
    pub(crate) fn new(inputs: Dict) -> Self {
        // The summaries of tables are behind this feature.
        let features = [Feature::A11yExtras].into_iter().collect();
        let library = Library::builder().with_inputs(inputs).with_features(features).build();
        Self { library: LazyHash::new(library) }
    }
}

impl World for Desk {
    fn library(&self) -> &LazyHash<Library> {
        &self.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        FONTS.book()
    }

    fn main(&self) -> FileId {
        TEMPLATE.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        if id == TEMPLATE.id() { Ok(TEMPLATE.clone()) } else { Err(FileError::AccessDenied) }
    }

    fn file(&self, _: FileId) -> FileResult<Bytes> {
        Err(FileError::AccessDenied)
    }

    fn font(&self, index: usize) -> Option<Font> {
        FONTS.font(index)
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}
