//! Every module that the page imports exists, in the case that is written. A missing one would be answered by the shell
//! with the start page, and the browser would only say that HTML is no module.

use std::collections::BTreeSet;
use std::path::{Component, Path, PathBuf};

#[test]
fn every_import_of_the_page_exists() {
    let ui = wearbook_tests::checkout().join("ui");
    let mut waiting = vec![PathBuf::from("main.js")];
    let mut seen = BTreeSet::new();
    while let Some(module) = waiting.pop() {
        if !seen.insert(module.clone()) {
            continue;
        }
        let text =
            std::fs::read_to_string(ui.join(&module)).unwrap_or_else(|error| panic!("{}: {error}", module.display()));
        for import in imports(&text) {
            assert!(import.starts_with('.'), "{} imports “{import}”, which no browser can find", module.display());
            let target = resolved(&module, import);
            assert!(
                exists_as_written(&ui, &target),
                "{} imports {}, which is missing",
                module.display(),
                target.display()
            );
            waiting.push(target);
        }
    }
    assert!(seen.len() > 20, "only {} modules were found: is this the page?", seen.len());
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
