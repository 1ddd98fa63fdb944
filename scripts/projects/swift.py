"""Type-checks the Swift of our plugins with the real compiler, against stand-ins for what only Apple has.

The compiler is Debian's, unpacked and started with its own system libraries, so nothing is installed and no right is
needed. Of Tauri's library those files are read that a plugin calls; what binds Swift to Objective-C is taken off first,
for only Apple's compiler knows it.
"""

import os
import pathlib
import re
import shutil
import subprocess

import fetched
import kotlin
from shell import CACHE, SHELL, TOP

STAND_INS = TOP / "scripts/projects/stand-ins/swift"
WORK = CACHE / "swift"
OF_TAURI = ("Invoke", "Channel", "JSTypes", "JsonValue", "Plugin/Plugin")
# The compiler drags in the tools of a whole machine to build with; only reading is asked of it.
NOT_NEEDED = re.compile(r"^(gcc-\d|cpp|binutils|perl|python3)")
WRONG = {
    "a method that a call does not have": "invoke.answer()",
    "a number where a text is wanted": "invoke.reject(1)",
    "perhaps nothing where something is wanted": "manager.viewController.present(UIViewController(), animated: true)",
}


def check():
    """Checks every plugin; answers what was done."""
    packages = sorted((SHELL / "crates").glob("*/ios/Package.swift"))
    if not packages:
        return ["There is no Swift of ours."]
    compiler = compiler_command()
    shutil.rmtree(WORK, ignore_errors=True)
    (WORK / "modules").mkdir(parents=True)
    api = kotlin.all_sources()["tauri"] / "mobile/ios-api/Sources/Tauri"
    module(compiler, "UIKit", (STAND_INS / "UIKit").glob("*.swift"))
    module(compiler, "WebKit", (STAND_INS / "WebKit").glob("*.swift"))
    module(compiler, "Tauri", [*(STAND_INS / "Tauri").glob("*.swift"), *(api / f"{name}.swift" for name in OF_TAURI)])
    done = []
    for package in packages:
        waiting = {folder.name: list(folder.rglob("*.swift")) for folder in (package.parent / "Sources").iterdir()}
        while waiting:
            # Those first that need none of the others.
            name = next(name for name, files in waiting.items()
                        if not any(re.search(rf"^import {other}$", file.read_text(), re.MULTILINE)
                                   for file in files for other in set(waiting) - {name}))
            files = waiting.pop(name)
            module(compiler, name, files)
            done.append(f"{name} ({len(files)})")
    return ["Swift is sound: " + ", ".join(done), control(compiler)]


def compiler_command():
    """How the compiler is started, with the libraries of its own system."""
    root = fetched.FETCHED / "swift"
    if not root.exists():
        archives = CACHE / "archives/swift"
        archives.mkdir(parents=True, exist_ok=True)
        empty = CACHE / "archives/nothing-installed"
        empty.write_text("")
        planned = fetched.run("apt-get", "--option", f"Dir::State::status={empty}", "--print-uris", "--yes",
                              "--no-install-recommends", "install", "swiftlang", "libc6-dev",
                              said_as="Swift from Debian", env=fetched.apt())
        names = [name for name in re.findall(r"^'\S+' ([^_]+)_", planned, re.MULTILINE) if not NOT_NEEDED.match(name)]
        fetched.run("apt-get", "download", *names, said_as="Swift from Debian", cwd=archives, env=fetched.apt())
        new = root.with_suffix(".new")
        shutil.rmtree(new, ignore_errors=True)
        for archive in sorted(archives.glob("*.deb")):
            fetched.run("dpkg-deb", "-x", str(archive), str(new), said_as=archive.name)
        new.rename(root)
        shutil.rmtree(archives)
    loader = next(root.rglob("ld-linux-*.so.*"))
    home = root / "usr/libexec/swift"
    libraries = [home / "lib", home / "lib/swift/linux", home / "lib/swift/host", loader.parent]
    return ["nice", str(loader), "--library-path", ":".join(map(str, libraries)), "--argv0", "swift-frontend",
            str(home / "bin/swift-frontend"), "-frontend", "-sdk", str(root), "-resource-dir", str(home / "lib/swift"),
            "-module-cache-path", str(CACHE / "swift-modules"), "-I", str(WORK / "modules"), "-suppress-warnings"]


def compiled(compiler, name, files):
    """Compiles one module; answers the compiler's code and what it said."""
    folder = WORK / name
    folder.mkdir(parents=True, exist_ok=True)
    plain = []
    for file in files:
        text = re.sub(r"@objc(\([^)]*\))?[ \n]|@_cdecl\([^)]*\)", "", pathlib.Path(file).read_text())
        text = re.sub(r"^import os(\.log)?$", "", text, flags=re.MULTILINE)
        plain.append(folder / pathlib.Path(file).name)
        plain[-1].write_text(text)
    ran = subprocess.run([*compiler, "-emit-module", "-emit-module-path", str(WORK / f"modules/{name}.swiftmodule"),
                          "-module-name", name, *map(str, plain)], text=True, stdout=subprocess.PIPE,
                         stderr=subprocess.STDOUT, timeout=600, cwd=WORK, env={**os.environ, "LC_ALL": "C"})
    return ran.returncode, ran.stdout


def module(compiler, name, files):
    code, said = compiled(compiler, name, files)
    if code:
        raise AssertionError(f"{name} does not compile:\n{said}")


def control(compiler):
    """Compiles what is wrong and looks whether each line was found."""
    file = WORK / "Wrong.swift"
    lines = "".join(f"  func wrong{at}(_ invoke: Invoke) {{ {line} }}\n" for at, line in enumerate(WRONG.values()))
    file.write_text(f"import Tauri\nimport UIKit\nclass Wrong: Plugin {{\n{lines}}}\n")
    _, said = compiled(compiler, "Wrong", [file])
    found = {int(line) for line in re.findall(r"Wrong\.swift:(\d+):\d+: error", said)}
    missed = [what for at, what in enumerate(WRONG) if at + 4 not in found]
    if missed:
        raise AssertionError("the compiler let pass " + ", ".join(missed) + "\n" + said)
    return f"{len(WRONG)} wrong uses are found: " + ", ".join(WRONG)
