"""Compiles all Kotlin that goes into the Android program: ours, Tauri's and the plugins'. Runs the tests of ours."""

import json
import pathlib
import re
import shutil
import subprocess

import fetched
from shell import ANDROID, CACHE, IDENTIFIER, SHELL, TOP

STAND_INS = TOP / "scripts/projects/stand-ins"
WORK = CACHE / "kotlin"
# What must not compile, or nothing of all this is checked.
WRONG = {
    "a method that Android does not have": "activity.keepScreenBright(true)",
    "a number where a text is wanted": "Intent(1)",
    "perhaps nothing where something is wanted": "activity.intent.getStringExtra(Intent.EXTRA_TEXT).length",
    "a class that AndroidX does not have": "androidx.core.view.WindowInsetsCompat.Type.keyboards()",
}


def check():
    """Compiles everything; answers what was done. Raises what is wrong."""
    fetched.tool("java")
    sources = all_sources()
    generated = generate(sources["wry"], sources["tauri"])
    own = sources["ours"]
    shutil.rmtree(WORK / "classes", ignore_errors=True)
    everything = [STAND_INS, generated, *sources["libraries"], *own]
    said = compile_kotlin(everything, WORK / "classes")
    if said:
        raise AssertionError("Kotlin does not compile:\n" + said)
    files = sum(1 for folder in [*sources["libraries"], *own, generated] for _ in folder.rglob("*.kt"))
    done = [f"{files} Kotlin files compile: " + ", ".join(sorted(set(sources["names"])))]
    done.append(control())
    return [*done, *own_tests(sources["tests"])]


def all_sources():
    """Where the Kotlin of each package stands."""
    listed = subprocess.run(["cargo", "metadata", "--format-version=1", "--filter-platform=aarch64-linux-android",
                             "--locked"], cwd=TOP, capture_output=True, text=True)
    if listed.returncode:
        raise fetched.Missing("cargo metadata: " + next(iter(re.findall("error: (.*)", listed.stderr)), listed.stderr))
    found = {"libraries": [], "names": ["MainActivity"], "ours": [ANDROID / "app/src/main/java"], "tests": []}
    folders = {pathlib.Path(package["manifest_path"]).parent: package["name"]
               for package in json.loads(listed.stdout)["packages"]}
    for crate in (SHELL / "crates").iterdir():
        folders.setdefault(crate, crate.name)
    for folder, name in sorted(folders.items()):
        if name in ("wry", "tauri"):
            found[name] = folder
            found["names"].append(name)
        inside = folder / ("mobile/android" if name == "tauri" else "android")
        code = [inside / "src/main" / language for language in ("java", "kotlin")]
        code = [one for one in code if one.exists()]
        if not code:
            continue
        ours = SHELL in folder.parents
        found["ours" if ours else "libraries"] += code
        found["names"].append(name)
        tests = [inside / "src/test" / language for language in ("java", "kotlin")]
        found["tests"] += [one for one in tests if ours and one.exists()]
    return found


def generate(wry, tauri):
    """What the build writes into the project before Gradle sees it, and what Android's own tools make."""
    folder = WORK / "generated"
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    fill = {"package": IDENTIFIER, "package-unescaped": IDENTIFIER, "library": "wearbook_shell"}
    for file in [*(wry / "src/android/kotlin").glob("*.kt"), *(tauri / "mobile/android-codegen").glob("*.kt")]:
        text = re.sub(r"\{\{([\w-]+)\}\}", lambda name: fill.get(name.group(1), ""), file.read_text())
        (folder / file.name).write_text(text)
    for package in (IDENTIFIER, "app.tauri"):
        constants = f"package {package}\n\nobject BuildConfig {{\n  const val DEBUG = false\n}}\n"
        (folder / f"BuildConfig-{package}.kt").write_text(constants)
    (folder / "R.kt").write_text(resource_names(IDENTIFIER, ANDROID / "app/src/main/res"))
    for build in (SHELL / "crates").glob("*/android/build.gradle.kts"):
        package = re.search(r'namespace = "(.*)"', build.read_text()).group(1)
        (folder / f"R-{package}.kt").write_text(resource_names(package, build.parent / "src/main/res"))
    return folder


def resource_names(package, resources):
    """The class R of one part, read off its resources."""
    names = {}
    for file in resources.rglob("*.*"):
        folder = file.parent.name.partition("-")[0]
        if folder == "values":
            for kind, name in re.findall(r'<(color|string|bool|dimen) name="(\w+)"', file.read_text()):
                names.setdefault(kind, set()).add(name)
        else:
            names.setdefault(folder, set()).add(file.name.partition(".")[0])
    kinds = "".join(f"  object {kind} {{\n" + "".join(f"    const val {name} = 1\n" for name in sorted(of_it)) + "  }\n"
                    for kind, of_it in sorted(names.items()))
    return f"package {package}\n\nobject R {{\n{kinds}}}\n"


def compile_kotlin(sources, into, more_classes=()):
    """Runs the compiler; answers its errors, nothing when there are none."""
    jars, library = fetched.kotlin_jars()
    classes = [*fetched.class_path(), library, *more_classes]
    joined = lambda paths: ":".join(map(str, paths))
    done = subprocess.run(
        ["nice", "java", "-Xmx1500m", "-cp", joined(jars), "org.jetbrains.kotlin.cli.jvm.K2JVMCompiler", "-no-stdlib",
         "-no-reflect", "-nowarn", "-d", str(into), "-classpath", joined(classes), *map(str, sources)],
        text=True, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=900)
    return done.stdout if done.returncode else ""


def control():
    """Compiles what is wrong and looks whether each line was found."""
    file = WORK / "control/Wrong.kt"
    file.parent.mkdir(parents=True, exist_ok=True)
    head = "import android.app.Activity\nimport android.content.Intent\n\n"
    lines = (f"fun wrong{at}(activity: Activity) = {line}\n" for at, line in enumerate(WRONG.values()))
    file.write_text(head + "".join(lines))
    said = compile_kotlin([file], WORK / "control/classes", [WORK / "classes"])
    found = {int(line) for line in re.findall(r"Wrong\.kt:(\d+):\d+: error", said)}
    missed = [what for at, what in enumerate(WRONG) if at + 4 not in found]
    if missed:
        raise AssertionError("the compiler let pass " + ", ".join(missed))
    return f"{len(WRONG)} wrong uses are found: " + ", ".join(WRONG)


def own_tests(folders):
    """Compiles and runs the tests of our own Kotlin that needs no Android."""
    files = [file for folder in folders for file in folder.rglob("*Test.kt")]
    if not files:
        return []
    packages = map(fetched.debian, ("junit4", "libhamcrest-java"))
    jars = [jar for package in packages for jar in package.glob("usr/share/java/*.jar")]
    classes = WORK / "test-classes"
    shutil.rmtree(classes, ignore_errors=True)
    said = compile_kotlin(folders, classes, [WORK / "classes", *jars])
    if said:
        raise AssertionError("the Kotlin tests do not compile:\n" + said)
    names = [".".join([re.search(r"^package ([\w.]+)", file.read_text(), re.MULTILINE).group(1), file.stem])
             for file in files]
    path = ":".join(map(str, [classes, WORK / "classes", fetched.kotlin_jars()[1], *jars, *fetched.class_path()]))
    ran = subprocess.run(["java", "-cp", path, "org.junit.runner.JUnitCore", *names], cwd=TOP, text=True,
                         stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=300)
    if ran.returncode:
        raise AssertionError("the Kotlin tests fail:\n" + ran.stdout)
    return ["Kotlin tests: " + " ".join(line for line in ran.stdout.splitlines() if line.startswith("OK"))]
