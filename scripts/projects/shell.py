"""What the shell's configuration says, and where its two phone projects stand."""

import json
import pathlib
import re

TOP = pathlib.Path(__file__).resolve().parents[2]
SHELL = TOP / "src-tauri"
ANDROID = SHELL / "gen/android"
APPLE = SHELL / "gen/apple"
CACHE = TOP / "target/phones"

CONFIG = json.loads((SHELL / "tauri.conf.json").read_text())
IDENTIFIER = CONFIG["identifier"]
# As Tauri's tool makes it from the shell's package.
NAME = re.search(r'^name = "(.*)"', (SHELL / "Cargo.toml").read_text(), re.MULTILINE).group(1)
ANDROID_SIGNATURES = 34
