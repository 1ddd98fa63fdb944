//! The JSON types written down: TypeScript declarations for the page, JSON schemas for what is published.

use std::collections::BTreeMap;

use ts_rs::{Config, TS, TypeVisitor};
use wearbook_store::JobFile;

use crate::{Error, action, phone};

/// `ui/types/api.d.ts`: every type that crosses the border, and the actions by name.
pub fn declarations() -> String {
    // All numbers that cross the border fit a JavaScript number: times in milliseconds, counts, sizes.
    let config = Config::new().with_large_int("number");
    let mut types = Types { config: &config, found: BTreeMap::new() };
    types.visit::<Error>();
    // Named by a type that is written out by hand, so that nothing else leads to it.
    types.visit::<action::catalogue::ZoneEntry>();
    // What the device is asked, and what it answers.
    types.visit::<phone::TakePhoto>();
    types.visit::<phone::Photographed>();
    types.visit::<phone::Share>();
    types.visit::<phone::Shared>();
    types.visit::<phone::KeepAwake>();
    types.visit::<phone::Can>();
    let mut actions = String::new();
    macro_rules! declare {
        ($($name:ident),* $(,)?) => {$(
            <action::$name::Arguments as TS>::visit_dependencies(&mut types);
            types.visit::<action::$name::Reply>();
            let arguments = <action::$name::Arguments as TS>::inline(&config);
            let reply = <action::$name::Reply as TS>::name(&config);
            let name = stringify!($name);
            actions.push_str(&format!("  {name}: {{ arguments: {arguments}; reply: {reply} }};\n"));
        )*};
    }
    actions!(declare);
    let mut text = String::from(HEAD);
    for declaration in types.found.values() {
        text.push_str(declaration);
    }
    text.push_str("\n/** Every action: what it takes and what it answers. */\nexport interface Actions {\n");
    text.push_str(&actions);
    text.push_str("}\n");
    text
}

/// `formats/job.schema.json`: the form of `job.json` in a `.wearbook` archive.
pub fn job_schema() -> String {
    let mut schema =
        schemars::generate::SchemaSettings::draft2020_12().into_generator().into_root_schema_for::<JobFile>();
    schema.insert("title".into(), "A Wearbook job, as job.json in a .wearbook archive".into());
    let mut text = serde_json::to_string_pretty(&schema).unwrap_or_default();
    text.push('\n');
    text
}

/// The form of what `assess --json` prints.
pub fn assessment_schema() -> String {
    let settings = schemars::generate::SchemaSettings::draft2020_12().for_serialize();
    let mut schema = settings.into_generator().into_root_schema_for::<wearbook_core::assess::Assessment>();
    schema.insert("title".into(), "What follows from a job, as assess --json prints it".into());
    let mut text = serde_json::to_string_pretty(&schema).unwrap_or_default();
    text.push('\n');
    text
}

const HEAD: &str = "\
// The JSON types of the actions. Generated from Rust: change them there, then run
//     UPDATE=1 cargo test -p wearbook-app --features schema
";

/// Collects a type and all that it is made of.
struct Types<'a> {
    config: &'a Config,
    found: BTreeMap<String, String>,
}

impl TypeVisitor for Types<'_> {
    fn visit<T: TS + 'static + ?Sized>(&mut self) {
        // A type without a path of its own (a number, a list) is written where it is used.
        if T::output_path().is_some() {
            let name = T::ident(self.config);
            if self.found.contains_key(&name) {
                return;
            }
            let docs = T::docs().unwrap_or_default();
            self.found.insert(name, tidy(&format!("\n{docs}export {}", T::decl(self.config))));
        }
        T::visit_dependencies(self);
        T::visit_generics(self);
    }
}

/// Lays a declaration out for reading: comments of one line on one line, what stands inside a type indented.
fn tidy(declaration: &str) -> String {
    let mut text = String::new();
    let mut inside = false;
    for line in declaration.replace("/**\n * ", "/** ").replace("\n */", " */").lines() {
        text.push_str(if inside && !line.is_empty() { "  " } else { "" });
        text.push_str(line.trim_end());
        text.push('\n');
        inside |= line.starts_with("export ");
    }
    text
}

/// Bytes are a blob to the page.
impl TS for crate::File {
    type WithoutGenerics = Self;
    type OptionInnerType = Self;

    fn name(_: &Config) -> String {
        "Blob".into()
    }

    fn inline(config: &Config) -> String {
        Self::name(config)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::path::Path;

    /// Compares a committed file with what would be generated now; `UPDATE=1` rewrites it.
    #[track_caller]
    fn fresh(path: &str, generated: &str) {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(path);
        if std::env::var_os("UPDATE").is_some() {
            std::fs::create_dir_all(path.parent().unwrap()).unwrap();
            std::fs::write(&path, generated).unwrap();
        }
        let committed = std::fs::read_to_string(&path).unwrap_or_default();
        assert!(committed == generated, "{} is not fresh: run this test with UPDATE=1", path.display());
    }

    #[test]
    fn type_declarations_are_fresh() {
        fresh("../../../ui/types/api.d.ts", &declarations());
    }

    #[test]
    fn the_published_schema_of_job_json_is_fresh() {
        fresh("formats/job.schema.json", &job_schema());
    }

    #[test]
    fn what_follows_from_a_job_has_the_form_that_is_told() {
        let schema: serde_json::Value = serde_json::from_str(&assessment_schema()).unwrap();
        let told = schema["properties"].as_object().unwrap().keys();
        let assessment = serde_json::to_value(wearbook_core::assess::assess(&Default::default())).unwrap();
        assert!(told.eq(assessment.as_object().unwrap().keys()), "{assessment:#}\nis not of the form\n{schema:#}");
    }
}
