"""The iOS project: its property lists and project file can be read, and say what the configuration says."""

import json
import plistlib
import re

import fetched
from shell import APPLE, CONFIG, IDENTIFIER, NAME, SHELL

INFO = APPLE / f"{NAME}_iOS/Info.plist"
# What xcodegen writes into every program.
OF_XCODEGEN = {
    "CFBundleDevelopmentRegion": "$(DEVELOPMENT_LANGUAGE)",
    "CFBundleExecutable": "$(EXECUTABLE_NAME)",
    "CFBundleIdentifier": "$(PRODUCT_BUNDLE_IDENTIFIER)",
    "CFBundleInfoDictionaryVersion": "6.0",
    "CFBundleName": "$(PRODUCT_NAME)",
    "CFBundlePackageType": "APPL",
}


def check():
    """Reads everything; answers what was done."""
    kinds = ("plist", "xcprivacy", "entitlements")
    lists = [SHELL / "Info.ios.plist", *(file for kind in kinds for file in APPLE.rglob(f"*.{kind}"))]
    for file in lists:
        read(file)
    for file in APPLE.rglob("*.json"):
        folder = json.loads(file.read_text())
        for picture in folder.get("images", []):
            expect((file.parent / picture["filename"]).exists(), f"{file}: {picture['filename']} is missing")
    project = fetched.yaml().safe_load((APPLE / "project.yml").read_text())
    target = project["targets"][f"{NAME}_iOS"]
    minimum = CONFIG["bundle"]["iOS"]["minimumSystemVersion"]
    expect(str(project["options"]["deploymentTarget"]["iOS"]) == minimum, f"project.yml is not for iOS {minimum}")
    base = project["settingGroups"]["app"]["base"]
    wanted = {"PRODUCT_NAME": CONFIG["productName"], "PRODUCT_BUNDLE_IDENTIFIER": IDENTIFIER}
    expect(base == wanted, f"the program is {base}")
    properties = target["info"]["properties"]
    made_by_the_build = {"Externals", "assets"}
    for source in target["sources"]:
        path = source["path"]
        expect(path in made_by_the_build or (APPLE / path).exists(), f"project.yml names {path}, which is not there")
    expect(read(INFO) == info(properties),
           "Info.plist is not what project.yml, Info.ios.plist and the file types make; "
           "write it with scripts/projects/write-info")
    expect(not list(APPLE.glob("*.xcodeproj")), "the Xcode project is made by xcodegen and not kept")
    sources = len(target["sources"])
    return [f"{len(lists)} property lists, {sources} sources and Info.plist of the iOS project are sound"]


def expect(holds, otherwise):
    if not holds:
        raise AssertionError(otherwise)


def read(file):
    """A property list. What Python's reader forgives, Apple's does not: a key twice, or a comment with two dashes."""
    text = file.read_text()
    for comment in re.findall(r"<!--(.*?)-->", text, re.DOTALL):
        expect("--" not in comment, f"{file}: two dashes in a comment")
    found = plistlib.loads(text.encode(), dict_type=OnceOnly)
    return json.loads(json.dumps(found))


class OnceOnly(dict):
    """A dictionary that refuses a key that it has."""

    def __setitem__(self, key, value):
        expect(key not in self, f"a property list has {key} twice")
        super().__setitem__(key, value)


def info(properties):
    """Info.plist as xcodegen and Tauri's tool make it: of the project's properties, ours, and the file types."""
    associations = CONFIG["bundle"]["fileAssociations"]
    types = [{
        "CFBundleTypeExtensions": one["ext"],
        "LSItemContentTypes": [one["exportedType"]["identifier"]],
        "CFBundleTypeName": one["name"],
        "CFBundleTypeRole": one["role"],
        "LSHandlerRank": one["rank"],
    } for one in associations]
    exported = [{
        "UTTypeIdentifier": one["exportedType"]["identifier"],
        "UTTypeDescription": one["description"],
        "UTTypeConformsTo": one["exportedType"]["conformsTo"],
        "UTTypeTagSpecification": {"public.filename-extension": one["ext"], "public.mime-type": one["mimeType"]},
    } for one in associations]
    return {**OF_XCODEGEN, **properties, **read(SHELL / "Info.ios.plist"), "UTExportedTypeDeclarations": exported,
            "CFBundleDocumentTypes": types}


def write_info():
    """Writes Info.plist and the empty list of entitlements, which xcodegen and the tool write anew on a Mac."""
    project = fetched.yaml().safe_load((APPLE / "project.yml").read_text())
    INFO.parent.mkdir(exist_ok=True)
    INFO.write_bytes(plistlib.dumps(info(project["targets"][f"{NAME}_iOS"]["info"]["properties"]), sort_keys=False))
    (INFO.parent / f"{NAME}_iOS.entitlements").write_bytes(plistlib.dumps({}))
