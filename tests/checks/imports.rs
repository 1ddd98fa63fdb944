//! Every module and style that the page imports exists, in the case that is written, and no modules import each other in
//! a circle. A missing one would be answered by the shell with the start page, and the browser would only say that HTML
//! is no module.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Component, Path, PathBuf};

/// Each module of the page with those that it imports.
pub(crate) type Modules = BTreeMap<PathBuf, Vec<PathBuf>>;

#[test]
fn every_import_of_the_page_exists() {
    let seen = modules();
    assert!(seen.len() > 20, "only {} modules were found: is this the page?", seen.len());
}

#[test]
fn no_modules_of_the_page_import_each_other_in_a_circle() {
    let circle = circle(&modules());
    assert!(circle.is_none(), "a circle: {}", circle.unwrap_or_default());
}

/// What the page loads, from its entry on.
fn modules() -> Modules {
    let ui = wearbook_tests::checkout().join("ui");
    let mut waiting = vec![PathBuf::from("main.js")];
    let mut seen = Modules::new();
    while let Some(module) = waiting.pop() {
        if seen.contains_key(&module) {
            continue;
        }
        let text =
            std::fs::read_to_string(ui.join(&module)).unwrap_or_else(|error| panic!("{}: {error}", module.display()));
        let targets: Vec<PathBuf> = imports(&text)
            .map(|import| {
                assert!(import.starts_with('.'), "{} imports “{import}”, which no browser can find", module.display());
                resolved(&module, import)
            })
            .collect();
        for target in &targets {
            let is_there = exists_as_written(&ui, target);
            assert!(is_there, "{} imports {}, which is missing", module.display(), target.display());
        }
        waiting.extend(targets.iter().cloned());
        seen.insert(module, targets);
    }
    seen
}

/// A way from a module back to itself, file by file; none if there is no such way.
pub(crate) fn circle(modules: &Modules) -> Option<String> {
    let mut done = BTreeSet::new();
    modules.keys().find_map(|module| way_back(modules, module, &mut Vec::new(), &mut done))
}

fn way_back<'a>(
    modules: &'a Modules,
    module: &'a Path,
    way: &mut Vec<&'a Path>,
    done: &mut BTreeSet<&'a Path>,
) -> Option<String> {
    if let Some(start) = way.iter().position(|earlier| *earlier == module) {
        let steps = way[start..].iter().chain([&module]).map(|step| step.display().to_string());
        return Some(steps.collect::<Vec<_>>().join(" imports "));
    }
    if done.contains(module) {
        return None;
    }
    way.push(module);
    let found = modules.get(module).into_iter().flatten().find_map(|target| way_back(modules, target, way, done));
    way.pop();
    done.insert(module);
    found
}

#[test]
fn a_circle_is_named_file_by_file() {
    let modules = |lines: &[(&str, &[&str])]| -> Modules {
        lines.iter().map(|(module, targets)| (module.into(), targets.iter().map(PathBuf::from).collect())).collect()
    };
    let tree = modules(&[("a.js", &["b.js", "c.js"]), ("b.js", &["c.js"]), ("c.js", &[])]);
    assert_eq!(circle(&tree), None, "two ways to one module are no circle");
    let ring = modules(&[("a.js", &["b.js"]), ("b.js", &["c.js"]), ("c.js", &["b.js"])]);
    assert_eq!(circle(&ring).as_deref(), Some("b.js imports c.js imports b.js"));
    assert_eq!(circle(&modules(&[("a.js", &["a.js"])])).as_deref(), Some("a.js imports a.js"));
}

#[test]
fn every_style_of_the_page_exists_and_is_named() {
    let ui = wearbook_tests::checkout().join("ui");
    let style = std::fs::read_to_string(ui.join("style.css")).unwrap();
    let named: BTreeSet<PathBuf> =
        style.split("@import \"").skip(1).filter_map(|rest| rest.split('"').next()).map(PathBuf::from).collect();
    for name in &named {
        assert!(exists_as_written(&ui, name), "style.css names {}, which is missing", name.display());
    }
    // What lies in no layer would win over all that do; typefaces win over nothing.
    let order = style.split("@layer ").nth(1).and_then(|rest| rest.split(';').next()).unwrap();
    let layers: Vec<&str> = order.split(", ").collect();
    for line in style.lines().filter(|line| line.starts_with("@import") && !line.contains("fonts.css")) {
        let layer = line.split("layer(").nth(1).and_then(|rest| rest.strip_suffix(");"));
        assert!(layer.is_some_and(|layer| layers.contains(&layer)), "{line} names no layer of {order}");
    }
    let is_style = |file: &Path| file.extension().is_some_and(|extension| extension == "css");
    let there =
        crate::repository_files().into_iter().filter_map(|file| file.strip_prefix("ui").ok().map(PathBuf::from));
    for file in there.filter(|file| is_style(file) && file != Path::new("style.css")) {
        assert!(named.contains(&file), "nothing on the page asks for {}", file.display());
    }
}

#[test]
fn every_file_that_the_start_page_names_exists() {
    let ui = wearbook_tests::checkout().join("ui");
    let page = std::fs::read_to_string(ui.join("index.html")).unwrap();
    let named: Vec<&str> = ["href=\"", "src=\""]
        .iter()
        .flat_map(|start| page.split(start).skip(1))
        .filter_map(|rest| rest.split('"').next())
        .collect();
    assert!(named.iter().any(|name| name.ends_with("main.js")), "the start page does not load the page");
    for name in named.iter().filter(|name| !name.starts_with("data:") && !name.starts_with('#')) {
        assert!(exists_as_written(&ui, Path::new(name)), "index.html names {name}, which is missing");
    }
}

/// The modules that a text imports or exports from; types in comments are not imports.
fn imports(text: &str) -> impl Iterator<Item = &str> {
    text.lines().filter_map(|line| {
        let line = line.trim_start();
        let is_statement = line.starts_with("import ")
            || line.starts_with("import\"")
            || line.starts_with("export ")
            || line.starts_with('}');
        let quoted = if line.starts_with("import '") || line.starts_with("import \"") {
            line.get(7..)?
        } else {
            is_statement.then(|| line.split_once(" from ")).flatten()?.1
        };
        let quote = quoted.chars().next().filter(|c| *c == '\'' || *c == '"')?;
        quoted[1..].split(quote).next()
    })
}

fn resolved(module: &Path, import: &str) -> PathBuf {
    let mut path = module.parent().unwrap().to_path_buf();
    for part in Path::new(import).components() {
        match part {
            Component::ParentDir => assert!(path.pop(), "{import} leads out of the page"),
            Component::Normal(name) => path.push(name),
            _ => {}
        }
    }
    path
}

/// Compares names in each folder, because some systems find files of another case.
fn exists_as_written(ui: &Path, file: &Path) -> bool {
    let mut folder = ui.to_path_buf();
    file.components().all(|name| {
        let is_there = std::fs::read_dir(&folder)
            .into_iter()
            .flatten()
            .flatten()
            .any(|entry| entry.file_name() == name.as_os_str());
        folder.push(name);
        is_there
    })
}

#[test]
fn imports_are_told_from_other_lines() {
    let text = "import { a } from './a.js'\nimport './b.js'\n} from \"../c.js\"\n// from './d.js'\nexport * from './e.js'\n/** @import { T } from './t.d.ts' */";
    assert_eq!(imports(text).collect::<Vec<_>>(), ["./a.js", "./b.js", "../c.js", "./e.js"]);
}
