"""Renders both projects anew, as Tauri's tool makes them, and compares them with what is committed.

What we changed on purpose stands in `ours.json`, each file with its reason and with a checksum of what the template
made of it: should a later version of the tool make something else there, it is seen, looked at and taken over by hand.
"""

import hashlib
import json
import os
import pathlib
import shutil
import subprocess

import fetched
import template
from shell import ANDROID, APPLE, CACHE, CONFIG, IDENTIFIER, NAME, TOP

OURS = pathlib.Path(__file__).parent / "ours.json"
NDK = "29.0.13846066"


def check():
    """Compares both; what can't be rendered is skipped by itself."""
    ours = json.loads(OURS.read_text())
    done, missing = [], []
    for name, folder, render in (("Android", ANDROID, android), ("iOS", APPLE, apple)):
        try:
            rendered = render()
        except fetched.Missing as error:
            missing.append(f"{name}: {error}")
            continue
        differences = compare(rendered, folder, ours[name])
        if differences:
            raise AssertionError(f"the {name} project:\n" + "\n".join(differences))
        kept = len(rendered) - len(ours[name]["changed"]) - len(ours[name]["left out"])
        done.append(f"The {name} project rendered anew: {kept} files as they are, "
                    f"{len(ours[name]['changed'])} changed, "
                    f"{len(ours[name]['left out'])} left out, {len(ours[name]['added'])} of our own")
    if missing and not done:
        raise fetched.Missing("; ".join(missing))
    return done + [f"skipped: anew: {line}" for line in missing]


def compare(rendered, folder, ours):
    """Sentences on every file that is neither as rendered nor told of as ours."""
    listed = subprocess.run(["git", "ls-files", "--cached", "--others", "--exclude-standard", "-z", "."], cwd=folder,
                            capture_output=True, text=True, check=True).stdout
    committed = {name for name in listed.split("\0") if name and (folder / name).exists()}
    changed, added, left_out = ours["changed"], ours["added"], ours["left out"]
    said = [f"{name} is neither of the template nor told of as ours" for name in committed - set(rendered) - set(added)]
    said += [f"{name} is told of as ours and is not there" for name in set(added) - committed]
    for name, content in rendered.items():
        if name in left_out:
            said += [f"{name} was left out and is there"] * (name in committed)
        elif name not in committed:
            said.append(f"{name} is missing")
        elif name in changed:
            made = checksum(content)
            if made != changed[name]["template"]:
                said.append(f"{name}: the template makes something else now ({made}); look, and take over what is new")
        elif (folder / name).read_bytes() != content:
            said.append(f"{name} differs from the template and is not told of as ours")
    said += [f"{name} is told of as changed or left out, and the template makes no such file"
             for name in (set(changed) | set(left_out)) - set(rendered)]
    return sorted(said)


def checksum(content):
    return hashlib.sha256(content).hexdigest()[:16]


def android():
    """What `tauri android init` makes of a copy of this checkout without its Android project."""
    fetched.tool("npx")
    copy = CACHE / "anew"
    shutil.rmtree(copy, ignore_errors=True)
    copied = subprocess.run(["git", "ls-files", "-z", "Cargo.*", "package*.json", "src-tauri", "tests"], cwd=TOP,
                            capture_output=True, text=True, check=True).stdout
    for name in filter(None, copied.split("\0")):
        if not name.startswith("src-tauri/gen/") and (TOP / name).exists() and not name.endswith((".json.gz", ".jpg")):
            (copy / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copy2(TOP / name, copy / name)
    (copy / "node_modules").symlink_to((TOP / "node_modules").resolve())
    # The tool asks for the kits and looks no further than this.
    kit = copy / "kits/ndk" / NDK
    kit.mkdir(parents=True)
    (kit / "source.properties").write_text(f"Pkg.Revision = {NDK}\n")
    environment = {**os.environ, "ANDROID_HOME": str(copy / "kits"), "NDK_HOME": str(kit)}
    # Through npm, for that is how the project is told to call the tool again.
    fetched.run("npx", "--no-install", "tauri", "android", "init", "--ci", "--skip-targets-install",
                said_as="tauri android init", cwd=copy, env=environment)
    made = copy / "src-tauri/gen/android"
    return {str(file.relative_to(made)): file.read_bytes() for file in made.rglob("*") if file.is_file()}


def apple():
    """What `tauri ios init` makes on a Mac before it calls xcodegen: the template in the tool's sources, filled in."""
    source = fetched.tauri_cli() / "templates/mobile/ios"
    # Not ours, so that a checksum is not another with every release; that ours stands there is held by tests/checks.
    version = "0.0.0"
    values = {
        "app": {"name": NAME, "stylized-name": CONFIG["productName"], "identifier": IDENTIFIER, "asset-dir": "assets"},
        "apple": {"ios-version": CONFIG["bundle"]["iOS"]["minimumSystemVersion"], "macos-version": "11.0",
                  "bundle-version": version, "bundle-version-short": version, "plist-pairs": []},
        "file-groups": ["../../src"], "lib-output-file-name": "libapp.a", "ios-valid-archs": ["arm64"],
        "tauri-binary": "npm", "tauri-binary-args-str": "run -- tauri ios xcode-script",
    }
    made = {}
    for file in source.rglob("*"):
        name = str(file.relative_to(source)).replace("{{app.name}}", NAME)
        # xcodegen makes the Xcode project; it is not committed.
        if file.is_file() and ".xcodeproj/" not in name:
            content = file.read_bytes()
            made[name] = content if file.suffix == ".png" else template.render(content.decode(), values).encode()
    return made


def as_committed():
    """The lists of ours.json as they would follow from what is committed, with the reasons that are already told."""
    known = json.loads(OURS.read_text()) if OURS.exists() else {}
    told = {}
    for name, folder, render in (("Android", ANDROID, android), ("iOS", APPLE, apple)):
        rendered, before = render(), known.get(name, {})
        listed = subprocess.run(["git", "ls-files", "--cached", "--others", "--exclude-standard", "."], cwd=folder,
                                capture_output=True, text=True, check=True).stdout.split("\n")
        committed = {one for one in listed if one and (folder / one).exists()}
        reasons = {one: told_of["why"] for one, told_of in before.get("changed", {}).items()}
        changed = {one: {"template": checksum(rendered[one]), "why": reasons.get(one, "")}
                   for one in sorted(committed & set(rendered)) if (folder / one).read_bytes() != rendered[one]}
        lists = {"changed": changed}
        for title, names in (("left out", set(rendered) - committed), ("added", committed - set(rendered))):
            lists[title] = {one: before.get(title, {}).get(one, "") for one in sorted(names)}
        told[name] = lists
    return told
