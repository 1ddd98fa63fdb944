//! The ladder of the core: a module imports from those below it and from none above, and no files import each other in a
//! circle. Tests may reach anywhere.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use syn::visit::{Visit, visit_item_mod, visit_path};
use syn::{Attribute, Item, ItemMod, ItemUse, UseTree, Visibility};

use crate::imports::circle;

/// From the lowest rung up.
const LADDER: &[&str] = &[
    "date",
    "under_way",
    "words",
    "wear",
    "work",
    "engine",
    "label",
    "caution",
    "measure",
    "money",
    "sheet",
    "job",
    "figure",
    "sizing",
    "cause",
    "decide",
    "operation",
    "view",
    "list",
    "cost",
    "assess",
    "waiting",
    "document",
];

/// A module by its path from the top of the crate, which is empty.
type Module = Vec<String>;

#[test]
fn no_module_of_the_core_imports_one_above_it() {
    let core = Core::read();
    let upward: Vec<String> = core.upward(LADDER);
    assert!(upward.is_empty(), "{}", upward.join("\n"));
}

#[test]
fn no_files_of_the_core_import_each_other_in_a_circle() {
    let core = Core::read();
    let file = |module: &Module| core.files[module].0.clone();
    let imports = core.imports.iter().map(|(module, targets)| (file(module), targets.iter().map(file).collect()));
    let circle = circle(&imports.collect());
    assert!(circle.is_none(), "a circle: {}", circle.unwrap_or_default());
}

#[test]
fn an_import_upwards_is_named() {
    let core = Core::of([
        ("lib.rs", "pub mod low;\npub mod high;\n"),
        ("high/mod.rs", "mod part;\npub use part::Part;\n"),
        ("high/part.rs", "use crate::low::Stone;\npub struct Part(Stone);\n"),
        (
            "low.rs",
            "use crate::high::Part;\npub struct Stone;\n#[cfg(test)]\nmod tests {\n    use crate::high::Other;\n}\n",
        ),
    ]);
    assert_eq!(core.upward(&["low", "high"]), ["low.rs imports high/part.rs: “high” stands above “low”"]);
    assert_eq!(core.upward(&["high", "low"]), ["high/part.rs imports low.rs: “low” stands above “high”"]);
    let unknown =
        ["high/part.rs imports low.rs: “high” has no rung", "low.rs imports high/part.rs: “high” has no rung"];
    assert_eq!(core.upward(&["low"]), unknown);
}

/// The files of a crate with what each imports.
struct Core {
    files: BTreeMap<Module, (PathBuf, syn::File)>,
    imports: BTreeMap<Module, BTreeSet<Module>>,
}

impl Core {
    fn read() -> Self {
        let folder = Path::new("src-tauri/crates/core/src");
        let sources: Vec<(PathBuf, String)> = crate::repository_files()
            .into_iter()
            .filter_map(|file| Some((file.strip_prefix(folder).ok()?.to_path_buf(), file.clone())))
            .filter(|(name, _)| name.extension().is_some_and(|extension| extension == "rs"))
            .filter_map(|(name, file)| {
                Some((name, std::fs::read_to_string(wearbook_tests::checkout().join(file)).ok()?))
            })
            .collect();
        assert!(sources.len() > 100, "only {} files were found: is this the core?", sources.len());
        Self::of(sources)
    }

    fn of<P: Into<PathBuf>, S: AsRef<str>>(sources: impl IntoIterator<Item = (P, S)>) -> Self {
        let parsed = sources.into_iter().map(|(file, text)| {
            let file: PathBuf = file.into();
            let parsed = syn::parse_file(text.as_ref()).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
            (module_of(&file), (file, parsed))
        });
        let mut files: BTreeMap<Module, (PathBuf, syn::File)> = parsed.collect();
        let for_tests: Vec<Module> =
            files.iter().flat_map(|(module, (_, file))| modules_for_tests(module, file)).collect();
        files.retain(|module, _| !for_tests.contains(module));
        let names = Names::of(&files);
        let imports = files.iter().map(|(module, (_, file))| (module.clone(), names.imports(module, file))).collect();
        Self { files, imports }
    }

    /// Every import from a module that does not stand below, in a sentence.
    fn upward(&self, ladder: &[&str]) -> Vec<String> {
        let rung = |module: &Module| ladder.iter().position(|name| module.first().is_some_and(|first| first == name));
        let edges = self.imports.iter().flat_map(|(from, targets)| targets.iter().map(move |to| (from, to)));
        let between = edges.filter(|(from, to)| from.first() != to.first() && !from.is_empty());
        between
            .filter_map(|(from, to)| {
                let name = |module: &Module| module.first().cloned().unwrap_or_default();
                let why = match (rung(from), rung(to)) {
                    (None, _) => format!("“{}” has no rung", name(from)),
                    (_, None) => format!("“{}” has no rung", name(to)),
                    (Some(own), Some(other)) if other > own => {
                        format!("“{}” stands above “{}”", name(to), name(from))
                    }
                    _ => return None,
                };
                Some(format!("{} imports {}: {why}", self.files[from].0.display(), self.files[to].0.display()))
            })
            .collect()
    }
}

/// `job/tick.rs` is `job::tick`, `job/mod.rs` is `job`, `lib.rs` is the top.
fn module_of(file: &Path) -> Module {
    let mut names: Module = file.with_extension("").iter().map(|name| name.to_string_lossy().into_owned()).collect();
    if names.last().is_some_and(|last| last == "mod" || last == "lib") {
        names.pop();
    }
    names
}

fn is_for_tests(attributes: &[Attribute]) -> bool {
    let is_test = |attribute: &Attribute| {
        attribute.path().is_ident("cfg") && attribute.parse_args::<syn::Path>().is_ok_and(|path| path.is_ident("test"))
    };
    attributes.iter().any(is_test)
}

/// Modules in files of their own that are there for tests only.
fn modules_for_tests(module: &Module, file: &syn::File) -> Vec<Module> {
    let own = file.items.iter().filter_map(|item| match item {
        Item::Mod(own) if own.content.is_none() && is_for_tests(&own.attrs) => Some(own.ident.to_string()),
        _ => None,
    });
    own.map(|name| module.iter().cloned().chain([name]).collect()).collect()
}

/// Which modules there are, and what each passes on from others.
struct Names {
    modules: BTreeSet<Module>,
    passed_on: BTreeMap<(Module, String), Vec<String>>,
}

impl Names {
    fn of(files: &BTreeMap<Module, (PathBuf, syn::File)>) -> Self {
        let mut passed_on = BTreeMap::new();
        for (module, (_, file)) in files {
            for item in &file.items {
                if let Item::Use(ItemUse { vis, tree, .. }) = item
                    && !matches!(vis, Visibility::Inherited)
                {
                    for path in paths(tree) {
                        let name = path.last().cloned().unwrap_or_default();
                        passed_on.insert((module.clone(), name), path);
                    }
                }
            }
        }
        Self { modules: files.keys().cloned().collect(), passed_on }
    }

    fn imports(&self, module: &Module, file: &syn::File) -> BTreeSet<Module> {
        let mut said = Said::default();
        said.visit_file(file);
        said.0.iter().filter_map(|path| self.resolve(module, path)).filter(|target| target != module).collect()
    }

    /// The file in which the thing at the end of a path stands; none if it is of another crate.
    fn resolve(&self, module: &Module, path: &[String]) -> Option<Module> {
        let first = path.first()?;
        let (mut at, mut rest): (Module, &[String]) = match first.as_str() {
            "crate" => (vec![], path.get(1..)?),
            "self" => (module.clone(), path.get(1..)?),
            "super" => {
                let ups = path.iter().take_while(|name| *name == "super").count();
                (module.get(..module.len().checked_sub(ups)?)?.to_vec(), path.get(ups..)?)
            }
            _ => (module.clone(), path),
        };
        let from_here = at == *module;
        while let Some((name, after)) = rest.split_first() {
            let deeper: Module = at.iter().cloned().chain([name.clone()]).collect();
            if !self.modules.contains(&deeper) {
                break;
            }
            (at, rest) = (deeper, after);
        }
        match rest.first().and_then(|name| self.passed_on.get(&(at.clone(), name.clone()))) {
            Some(onward) if onward.first().is_some_and(|first| *first != path[0] || onward.len() != path.len()) => {
                self.resolve(&at, onward)
            }
            // A bare name that is no module and is passed on from nowhere stands in the file itself or in another crate.
            _ if from_here && at == *module => None,
            _ => Some(at),
        }
    }
}

/// All paths that a file says, tests left out.
#[derive(Default)]
struct Said(Vec<Vec<String>>);

impl<'ast> Visit<'ast> for Said {
    fn visit_item_mod(&mut self, item: &'ast ItemMod) {
        if !is_for_tests(&item.attrs) {
            visit_item_mod(self, item);
        }
    }

    fn visit_item_use(&mut self, item: &'ast ItemUse) {
        // What is passed on is not used: where it is, its name is said.
        if matches!(item.vis, Visibility::Inherited) {
            self.0.extend(paths(&item.tree));
        }
    }

    fn visit_path(&mut self, path: &'ast syn::Path) {
        self.0.push(path.segments.iter().map(|segment| segment.ident.to_string()).collect());
        visit_path(self, path);
    }

    fn visit_visibility(&mut self, _: &'ast Visibility) {}

    fn visit_attribute(&mut self, _: &'ast Attribute) {}
}

fn paths(tree: &UseTree) -> Vec<Vec<String>> {
    match tree {
        UseTree::Path(path) => {
            let deeper = paths(&path.tree).into_iter();
            deeper.map(|rest| std::iter::once(path.ident.to_string()).chain(rest).collect()).collect()
        }
        UseTree::Name(name) => vec![vec![name.ident.to_string()]],
        UseTree::Rename(name) => vec![vec![name.ident.to_string()]],
        UseTree::Glob(_) => vec![vec![]],
        UseTree::Group(group) => group.items.iter().flat_map(paths).collect(),
    }
}
