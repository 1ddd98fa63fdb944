"""Renders the templates of Tauri's tool as far as they go: values, functions of one value, `if` and `each`.

On a Mac the tool does it itself, with a full Handlebars; elsewhere it makes no iOS project at all.
"""

import re

TAG = re.compile(r"\{\{(~?)\s*(.*?)\s*(~?)\}\}", re.DOTALL)
FUNCTIONS = {
    "join": lambda value: ", ".join(value or []),
    "prefix-path": lambda value: "../../" + value,
    "shell-escape": lambda value: value,
}


def render(text, values):
    """The template with everything filled in."""
    root = {"parts": []}
    stack, at = [root], 0
    trims_next = False
    for tag in TAG.finditer(text):
        before = text[at:tag.start()]
        if trims_next:
            before = before.lstrip()
        if tag.group(1):
            before = before.rstrip()
        at, trims_next = tag.end(), bool(tag.group(3))
        word = tag.group(2)
        # A block's tag that has a line to itself takes the line away with it.
        if word[0] in "#/" and not tag.group(1) and not tag.group(3):
            line_start, after = text[text.rfind("\n", 0, tag.start()) + 1:tag.start()], re.match(r"[ \t]*\n", text[at:])
            if not line_start.strip() and after:
                before, at = before[:len(before) - len(line_start)], at + after.end()
        stack[-1]["parts"].append(before)
        if word.startswith("#"):
            kind, path = word[1:].split(None, 1)
            stack.append({"kind": kind, "path": path, "parts": []})
            stack[-2]["parts"].append(stack[-1])
        elif word.startswith("/"):
            stack.pop()
        else:
            stack[-1]["parts"].append({"value": word})
    rest = text[at:]
    stack[-1]["parts"].append(rest.lstrip() if trims_next else rest)
    return fill(root["parts"], [values])


def fill(parts, scopes):
    filled = ""
    for part in parts:
        if isinstance(part, str):
            filled += part
        elif "value" in part:
            function, _, path = part["value"].rpartition(" ")
            found = look_up(path, scopes)
            filled += FUNCTIONS[function.strip()](found) if function else str("" if found is None else found)
        elif part["kind"] == "if":
            filled += fill(part["parts"], scopes) if look_up(part["path"], scopes) else ""
        else:
            filled += "".join(fill(part["parts"], [*scopes, one]) for one in look_up(part["path"], scopes) or [])
    return filled


def look_up(path, scopes):
    """`this` is what an `each` is at; else the nearest scope that has the name."""
    if path == "this":
        return scopes[-1]
    names = path.removeprefix("this.").split(".")
    for scope in reversed(scopes):
        if isinstance(scope, dict) and names[0] in scope:
            for name in names:
                scope = scope.get(name) if isinstance(scope, dict) else None
            return scope
    return None
