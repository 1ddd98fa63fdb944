//! The two phone projects say what the configuration says: files of other tools, which nothing else holds together.

use std::collections::BTreeSet;

use serde_json::Value;

use crate::repository_files;

/// Files of the phone projects and what they must agree with.
#[derive(Debug, Clone)]
struct Projects {
    config: Value,
    cargo: String,
    packages: String,
    manifest: String,
    gradle: String,
    strings: String,
    paper: String,
    paper_by_night: String,
    project: String,
    info: String,
    catalogue: String,
    tokens: String,
    workflow: String,
    plugin_manifests: Vec<String>,
}

const ANDROID: &str = "src-tauri/gen/android/app/";
const APPLE: &str = "src-tauri/gen/apple/";

impl Projects {
    fn read() -> Self {
        let of = |name: &str| {
            std::fs::read_to_string(wearbook_tests::checkout().join(name)).unwrap_or_else(|e| panic!("{name}: {e}"))
        };
        let android = |name: &str| of(&format!("{ANDROID}{name}"));
        let apple = |name: &str| of(&format!("{APPLE}{name}"));
        let manifests = repository_files().into_iter().filter(|file| file.ends_with("src/main/AndroidManifest.xml"));
        let of_plugins = manifests.filter(|file| !file.starts_with(ANDROID));
        Self {
            config: wearbook_tests::shell_config().unwrap(),
            cargo: of("Cargo.toml"),
            packages: of("package.json"),
            manifest: android("src/main/AndroidManifest.xml"),
            gradle: android("build.gradle.kts"),
            strings: android("src/main/res/values/strings.xml"),
            paper: android("src/main/res/values/colors.xml"),
            paper_by_night: android("src/main/res/values-night/colors.xml"),
            project: apple("project.yml"),
            info: apple("wearbook_iOS/Info.plist"),
            catalogue: apple("Assets.xcassets/PaperEdge.colorset/Contents.json"),
            tokens: of("ui/style/tokens.css"),
            workflow: of(".github/workflows/phones.yml"),
            plugin_manifests: of_plugins.map(|file| of(&file.to_string_lossy())).collect(),
        }
    }

    /// A sentence for each thing that is said differently in two places.
    fn disagreements(&self) -> Vec<String> {
        let mut said = Vec::new();
        let mut expect = |place: &str, text: &str, wanted: String| {
            if !text.contains(&wanted) {
                said.push(format!("{place} lacks {wanted}"));
            }
        };
        let setting = |path: &str| self.config.pointer(path).and_then(Value::as_str).unwrap_or_default().to_owned();
        let (identifier, version, name) = (setting("/identifier"), setting("/version"), setting("/productName"));

        expect(
            "Cargo.toml",
            between(&self.cargo, "[workspace.package]", "[workspace.dep"),
            format!("version = \"{version}\""),
        );
        expect("package.json", &self.packages, "\"tauri\": \"tauri\"".into());

        expect("build.gradle.kts", &self.gradle, format!("applicationId = \"{identifier}\""));
        expect("build.gradle.kts", &self.gradle, format!("namespace = \"{identifier}\""));
        let lowest = self.config.pointer("/bundle/android/minSdkVersion").and_then(Value::as_u64).unwrap_or_default();
        expect("build.gradle.kts", &self.gradle, format!("minSdk = {lowest}\n"));
        expect("strings.xml", &self.strings, format!("<string name=\"app_name\">\"{name}\"</string>"));
        // The web view asks for the provider by this name.
        expect("AndroidManifest.xml", &self.manifest, "android:authorities=\"${applicationId}.fileprovider\"".into());
        let kit = between(&self.gradle, "ndkVersion = \"", "\"");
        expect("phones.yml", &self.workflow, format!("NDK: {kit}\n"));

        let oldest = setting("/bundle/iOS/minimumSystemVersion");
        expect("project.yml", &self.project, format!("    iOS: {oldest}\n"));
        expect("project.yml", &self.project, format!("PRODUCT_BUNDLE_IDENTIFIER: {identifier}\n"));
        expect("project.yml", &self.project, format!("PRODUCT_NAME: {name}\n"));
        for (key, quote) in [("CFBundleShortVersionString", ""), ("CFBundleVersion", "\"")] {
            expect("project.yml", &self.project, format!("{key}: {quote}{version}{quote}\n"));
            expect("Info.plist", &self.info, format!("<key>{key}</key>\n\t<string>{version}</string>"));
        }

        let associations = self.config.pointer("/bundle/fileAssociations").and_then(Value::as_array);
        for association in associations.into_iter().flatten() {
            let said_of = |path: &str| association.pointer(path).and_then(Value::as_str).unwrap_or_default();
            let (extension, kind) = (said_of("/ext/0"), said_of("/mimeType"));
            expect("AndroidManifest.xml", &self.manifest, format!("android:pathPattern=\".*\\\\.{extension}\""));
            expect("AndroidManifest.xml", &self.manifest, format!("android:mimeType=\"{kind}\""));
            for text in
                [extension, kind, said_of("/exportedType/identifier"), said_of("/name"), said_of("/description")]
            {
                expect("Info.plist", &self.info, format!("<string>{text}</string>"));
            }
        }

        let edge = between(&self.tokens, "--paper-edge: var(--light, ", ";");
        let by_day = edge.split(')').next().unwrap_or_default();
        let by_night = between(edge, "var(--dark, ", ")");
        expect("values/colors.xml", &self.paper, format!("<color name=\"paper_edge\">{by_day}</color>"));
        expect(
            "values-night/colors.xml",
            &self.paper_by_night,
            format!("<color name=\"paper_edge\">{by_night}</color>"),
        );
        for colour in [by_day, by_night] {
            let parts = ["red", "green", "blue"].iter().zip([1, 3, 5]);
            let parts = parts.map(|(part, at)| {
                let value = colour.get(at..at + 2).unwrap_or_default().to_uppercase();
                format!("\"{part}\" : \"0x{value}\"")
            });
            expect("PaperEdge", &self.catalogue, parts.collect::<Vec<_>>().join(", "));
        }

        said.extend(self.what_others_may_touch());
        said
    }

    /// The manifests of all parts are merged into one: what they lend out must not meet there.
    fn what_others_may_touch(&self) -> Vec<String> {
        let mut said = Vec::new();
        let mut seen = BTreeSet::new();
        for manifest in self.plugin_manifests.iter().chain([&self.manifest]) {
            for authority in values(manifest, "android:authorities=\"") {
                if !authority.starts_with("${applicationId}.") {
                    said.push(format!("the provider {authority} would meet that of another program"));
                }
                if !seen.insert(authority.to_owned()) {
                    said.push(format!("two providers are called {authority}"));
                }
            }
        }
        let open: Vec<&String> =
            self.plugin_manifests.iter().filter(|text| text.contains("android:exported=\"true\"")).collect();
        if !open.is_empty() || self.manifest.matches("android:exported=\"true\"").count() != 1 {
            said.push("more than the one window may be called by other programs".into());
        }
        for permission in ["CAMERA", "INTERNET"] {
            if self.manifest.contains(&format!("android.permission.{permission}")) {
                said.push(format!("the manifest asks for {permission}, which it says it does not need"));
            }
        }
        if self.manifest.contains("screenOrientation") {
            said.push("the orientation is locked".into());
        }
        said
    }
}

fn between<'a>(text: &'a str, start: &str, end: &str) -> &'a str {
    let rest = text.split_once(start).map_or("", |(_, rest)| rest);
    rest.split_once(end).map_or(rest, |(inside, _)| inside)
}

fn values<'a>(text: &'a str, start: &'a str) -> impl Iterator<Item = &'a str> {
    text.split(start).skip(1).filter_map(|rest| rest.split('"').next())
}

#[test]
fn the_phone_projects_say_what_the_configuration_says() {
    let said = Projects::read().disagreements();
    assert!(said.is_empty(), "{}", said.join("\n"));
}

/// One side is changed, and the other side's file is named.
#[track_caller]
fn check(change: impl FnOnce(&mut Projects), wanted: &str) {
    let mut projects = Projects::read();
    change(&mut projects);
    let said = projects.disagreements();
    assert!(said.iter().any(|sentence| sentence.contains(wanted)), "nothing is said of {wanted}: {said:?}");
}

fn replace(text: &mut String, from: &str, to: &str) {
    assert!(text.contains(from), "there is no {from}");
    *text = text.replace(from, to);
}

#[test]
fn what_is_changed_on_one_side_alone_is_noticed() {
    check(|p| p.config["identifier"] = "app.other".into(), "applicationId");
    check(|p| p.config["identifier"] = "app.other".into(), "PRODUCT_BUNDLE_IDENTIFIER");
    check(|p| p.config["version"] = "9.9.9".into(), "Cargo.toml");
    check(|p| p.config["version"] = "9.9.9".into(), "CFBundleVersion");
    check(|p| p.config["productName"] = "Other".into(), "app_name");
    check(|p| p.config["bundle"]["android"]["minSdkVersion"] = 24.into(), "minSdk");
    check(|p| p.config["bundle"]["iOS"]["minimumSystemVersion"] = "15.0".into(), "project.yml");
    check(|p| p.config["bundle"]["fileAssociations"][0]["ext"][0] = "other".into(), "pathPattern");
    check(|p| p.config["bundle"]["fileAssociations"][0]["mimeType"] = "a/b".into(), "Info.plist");
    check(|p| replace(&mut p.manifest, ".fileprovider", ".files"), "fileprovider");
    check(|p| replace(&mut p.gradle, "ndkVersion = \"29", "ndkVersion = \"28"), "phones.yml");
    check(|p| replace(&mut p.tokens, "#ece7da", "#ffffff"), "values/colors.xml");
    check(|p| replace(&mut p.tokens, "#0a2143", "#000000"), "PaperEdge");
    check(|p| replace(&mut p.packages, "\"tauri\": \"tauri\"", "\"tauri\": \"\""), "package.json");
}

#[test]
fn what_a_part_lends_out_is_noticed_where_it_meets_another() {
    let provider = |attributes: &str| format!("<provider {attributes} />");
    check(|p| p.plugin_manifests.push(provider("android:authorities=\"files\"")), "would meet");
    let taken = provider("android:authorities=\"${applicationId}.fileprovider\"");
    check(|p| p.plugin_manifests.push(taken), "two providers");
    check(|p| p.plugin_manifests.push(provider("android:exported=\"true\"")), "more than the one window");
    check(|p| p.manifest.push_str("android.permission.CAMERA"), "CAMERA");
    check(|p| p.manifest.push_str("android:screenOrientation"), "orientation");
}
