//! All that the typesetter can see: one template, fonts, and what is handed in. No disk, no clock.

use std::collections::HashMap;
use std::sync::LazyLock;

use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Dict, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Feature, Library, LibraryExt, World};
use typst_kit::fonts::FontStore;

use crate::fonts::EMBEDDED;

static TEMPLATE: LazyLock<Source> = LazyLock::new(|| Source::detached(include_str!("template.typ")));

/// A world with nothing in it but the template and the content of one paper.
pub(crate) struct PaperWorld<'a> {
    fonts: &'a FontStore,
    library: LazyHash<Library>,
    files: HashMap<FileId, Bytes>,
}

impl<'a> PaperWorld<'a> {
    /// Lays out the inputs that the template reads as `sys.inputs`, and the fonts; the embedded ones if none are given.
    pub(crate) fn new(inputs: Dict, fonts: Option<&'a FontStore>) -> Self {
        // The summaries of tables are behind this feature.
        let features = [Feature::A11yExtras].into_iter().collect();
        let library = Library::builder().with_inputs(inputs).with_features(features).build();
        Self { fonts: fonts.unwrap_or(&EMBEDDED), library: LazyHash::new(library), files: HashMap::new() }
    }

    /// Puts bytes into it under a name; not a file on any disk.
    pub(crate) fn put(&mut self, name: &str, bytes: Bytes) {
        if let Ok(path) = VirtualPath::new(name) {
            self.files.insert(RootedPath::new(VirtualRoot::Project, path).intern(), bytes);
        }
    }
}

impl World for PaperWorld<'_> {
    fn library(&self) -> &LazyHash<Library> {
        &self.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        self.fonts.book()
    }

    fn main(&self) -> FileId {
        TEMPLATE.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        if id == TEMPLATE.id() { Ok(TEMPLATE.clone()) } else { Err(FileError::AccessDenied) }
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        self.files.get(&id).cloned().ok_or(FileError::AccessDenied)
    }

    fn font(&self, index: usize) -> Option<Font> {
        self.fonts.font(index)
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}
