//! All that the typesetter can see: our templates, fonts, and what is handed in. No disk, no clock.

use std::collections::HashMap;
use std::sync::LazyLock;

use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Dict, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Feature, Library, LibraryExt, World};
use typst_kit::fonts::FontStore;

use wearbook_core::under_way::UnderWay;

use crate::fonts::EMBEDDED;

/// The templates by their names: one for each form in which content is set, and what they share.
static TEMPLATES: LazyLock<HashMap<FileId, Source>> = LazyLock::new(|| {
    let files = [
        ("base.typ", include_str!("template/base.typ")),
        ("sheet.typ", include_str!("template/sheet.typ")),
        ("blocks.typ", include_str!("template/blocks.typ")),
        ("customer.typ", include_str!("template/customer.typ")),
        (Form::Paper.file(), include_str!("template/paper.typ")),
        (Form::Picture.file(), include_str!("template/picture.typ")),
        (Form::Labels.file(), include_str!("template/labels.typ")),
    ];
    files.into_iter().filter_map(|(name, text)| Some((id(name)?, Source::new(id(name)?, text.into())))).collect()
});

/// How content is set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Form {
    /// On sheets of paper.
    Paper,
    /// The customer's page on one narrow sheet.
    Picture,
    /// On labels.
    Labels,
}

impl Form {
    fn file(self) -> &'static str {
        match self {
            Self::Paper => "paper.typ",
            Self::Picture => "picture.typ",
            Self::Labels => "labels.typ",
        }
    }
}

/// A file in the world that the typesetter sees.
fn id(name: &str) -> Option<FileId> {
    Some(RootedPath::new(VirtualRoot::Project, VirtualPath::new(name).ok()?).intern())
}

/// A world with nothing in it but the templates and the content of one paper.
pub(crate) struct PaperWorld<'a> {
    main: FileId,
    fonts: &'a FontStore,
    library: LazyHash<Library>,
    files: HashMap<FileId, Bytes>,
    way: &'a UnderWay,
}

impl<'a> PaperWorld<'a> {
    /// Lays out the inputs that the template reads as `sys.inputs`, and the fonts; the embedded ones if none are given.
    pub(crate) fn new(form: Form, inputs: Dict, fonts: Option<&'a FontStore>, way: &'a UnderWay) -> Self {
        // The summaries of tables are behind this feature.
        let features = [Feature::A11yExtras].into_iter().collect();
        let library = Library::builder().with_inputs(inputs).with_features(features).build();
        Self {
            main: id(form.file()).unwrap_or_else(|| Source::detached("").id()),
            fonts: fonts.unwrap_or(&EMBEDDED),
            library: LazyHash::new(library),
            files: HashMap::new(),
            way,
        }
    }

    /// Puts bytes into it under a name; not a file on any disk.
    pub(crate) fn put(&mut self, name: &str, bytes: Bytes) {
        if let Some(id) = id(name) {
            self.files.insert(id, bytes);
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
        self.main
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        TEMPLATES.get(&id).cloned().ok_or(FileError::AccessDenied)
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        // The typesetter can't be told to stop; it does when a picture fails.
        self.way.go_on().map_err(|_| FileError::AccessDenied)?;
        self.files.get(&id).cloned().ok_or(FileError::AccessDenied)
    }

    fn font(&self, index: usize) -> Option<Font> {
        self.fonts.font(index)
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}
