"""Android's published signatures as a jar of class files, against which Kotlin is compiled.

The signature file lists every public class with its members, one a line, and no code. Each class becomes a class file
that says exactly that: names, types, generics, constants and which values may be null. Nothing in it can run.
"""

import re
import struct
import zipfile

PRIMITIVES = {
    "void": "V", "boolean": "Z", "byte": "B", "char": "C", "short": "S", "int": "I", "long": "J", "float": "F",
    "double": "D",
}
FLAGS = {"public": 1, "private": 2, "protected": 4, "static": 8, "final": 16, "abstract": 0x400}
WORDS = set(FLAGS) | {"default", "synchronized", "native", "transient", "volatile", "sealed", "strictfp"}
SUPER, VARARGS, INTERFACE, ANNOTATION, ENUM = 0x20, 0x80, 0x200, 0x2000, 0x4000
# The machine's own Java has these.
OF_JAVA = ("java.", "javax.", "org.w3c.", "org.xml.")
ANNOTATED = re.compile(r"@(?!interface\b)([\w.]+)")


def write_jar(text, path):
    """Writes all classes of a signature file; answers how many there are."""
    classes = read(text)
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as jar:
        for declared in classes.values():
            jar.writestr(declared.internal + ".class", ClassFile(declared, classes).bytes())
    return len(classes)


class Declared:
    """A class as the signature file declares it."""

    def __init__(self, package, header):
        self.words, _, rest = leading_words(header)
        self.kind, rest = rest.split(" ", 1)
        self.name = re.match(r"[\w.]+", rest).group()
        self.generics, rest = angle(rest[len(self.name):])
        self.parents, self.interfaces = [], []
        into = self.parents
        for word in split(rest, " "):
            if word in ("extends", "implements"):
                into = self.interfaces if word == "implements" or self.kind == "interface" else self.parents
            else:
                into.append(word)
        self.package = package
        self.internal = package.replace(".", "/") + "/" + self.name.replace(".", "$")
        self.members = []

    @property
    def outer(self):
        return self.internal.rpartition("$")[0]


def read(text):
    """All classes of a signature file by their internal names."""
    classes, package, here = {}, "", None
    for line in text.splitlines():
        if line.startswith("package "):
            package = without_annotations(line)[0].split()[1]
        elif line.startswith("    ") and here:
            here.members.append(line.strip())
        elif line.startswith("  ") and line.rstrip().endswith("{"):
            declared = Declared(package, without_annotations(line)[0].rstrip("{ ").strip())
            wanted = not (package + ".").startswith(OF_JAVA)
            here = classes.setdefault(declared.internal, declared) if wanted else None
    # Where a class only does what its parent asks for, the file is silent: all that hold other views lay them out.
    for declared in classes.values():
        holds_views = declared.parents == ["android.view.ViewGroup"] and "abstract" not in declared.words
        if holds_views and not any(" onLayout(" in member for member in declared.members):
            declared.members.append("method protected void onLayout(boolean, int, int, int, int);")
    return classes


def without_annotations(text):
    """A declaration without annotations, and the short names of those at its head."""
    bare, names, at, in_text = "", [], 0, False
    while at < len(text):
        in_text ^= text[at] == '"' and text[at - 1] != "\\"
        found = None if in_text else ANNOTATED.match(text, at)
        if not found:
            bare += text[at]
            at += 1
            continue
        names.append(found.group(1).rpartition(".")[2])
        at = found.end()
        if text[at:at + 1] == "(":
            at = closing(text, at) + 1
        while text[at:at + 1] == " ":
            at += 1
    return bare.strip(), names


def closing(text, start):
    """Where the bracket that opens at `start` closes."""
    depth, in_text = 0, False
    for at in range(start, len(text)):
        in_text ^= text[at] == '"' and text[at - 1] != "\\"
        if not in_text:
            depth += (text[at] in "<({") - (text[at] in ">)}")
        if depth == 0:
            return at
    raise ValueError(text)


def split(text, at):
    """The parts between separators that stand outside all brackets."""
    parts, depth, part = [], 0, ""
    for sign in text:
        depth += (sign in "<(") - (sign in ">)")
        if depth == 0 and sign in (at, ","):
            parts.append(part.strip())
            part = ""
        else:
            part += sign
    return [part for part in [*parts, part.strip()] if part]


def angle(text):
    """What stands in angle brackets at the head of a text, and the rest."""
    text = text.strip()
    if not text.startswith("<"):
        return "", text
    end = closing(text, 0)
    return text[1:end], text[end + 1:].strip()


def leading_words(text):
    """The modifiers at the head of a declaration, the annotations between them, and the rest."""
    words, names = [], []
    while True:
        text = text.strip()
        if text.startswith("@") and not text.startswith("@interface"):
            head = ANNOTATED.match(text)
            names.append(head.group(1).rpartition(".")[2])
            end = closing(text, head.end()) + 1 if text[head.end():head.end() + 1] == "(" else head.end()
            text = text[end:]
            continue
        word, _, rest = text.partition(" ")
        if word not in WORDS:
            return words, names, text
        words.append(word)
        text = rest


class Types:
    """Type names as the signature file writes them, as the virtual machine does."""

    def __init__(self, classes, variables):
        self.classes, self.variables, self.nested = classes, dict(variables), set()

    def declare(self, generics):
        """Takes in type variables; answers their part of a generic signature."""
        parts = [part.partition(" extends ") for part in split(generics, ",")]
        for name, _, bound in parts:
            self.variables[name.strip()] = (bound or "Object").split(" & ")[0]
        whole = "".join(f"{name.strip()}:" + ":".join(self.bound(one) for one in (bound or "Object").split(" & "))
                        for name, _, bound in parts)
        return f"<{whole}>" if whole else ""

    def bound(self, name):
        known = self.classes.get(self.internal(without_generics(name)))
        return (":" if known and known.kind == "interface" else "") + self.generic(name)

    def internal(self, name):
        if "." not in name:
            return "java/lang/" + name
        parts = name.split(".")
        first = next((at for at, part in enumerate(parts) if part[:1].isupper()), len(parts) - 1)
        whole = "/".join(parts[:first + 1]) + "".join("$" + part for part in parts[first + 1:])
        if "$" in whole:
            self.nested.add(whole)
        return whole

    def plain(self, name):
        """The descriptor, in which a type variable is its bound."""
        name = name.strip()
        if name.endswith(("...", "[]")):
            return "[" + self.plain(name[:-3] if name.endswith("...") else name[:-2])
        name = without_generics(name)
        if name in PRIMITIVES:
            return PRIMITIVES[name]
        return self.plain(self.variables[name]) if name in self.variables else f"L{self.internal(name)};"

    def generic(self, name):
        """The generic signature."""
        name = name.strip()
        if name.endswith(("...", "[]")):
            return "[" + self.generic(name[:-3] if name.endswith("...") else name[:-2])
        if name.startswith("?"):
            for word, sign in (("extends", "+"), ("super", "-")):
                if name[1:].strip().startswith(word):
                    return sign + self.generic(name[1:].strip()[len(word):])
            return "*"
        if name in PRIMITIVES:
            return PRIMITIVES[name]
        if name in self.variables:
            return f"T{name};"
        at = name.find("<")
        if at < 0:
            return f"L{self.internal(name)};"
        inner, rest = angle(name[at:])
        whole = f"L{self.internal(name[:at])}<{''.join(map(self.generic, split(inner, ',')))}>"
        return whole + (f"{self.generic('.'.join(['x', rest[1:]]))[3:]}" if rest.startswith(".") else ";")


def without_generics(name):
    bare, depth = "", 0
    for sign in name:
        depth += sign == "<"
        bare += sign if depth == 0 else ""
        depth -= sign == ">"
    return bare.strip()


class ClassFile:
    """Lays out one class: constants first, so they are gathered while the rest is written."""

    def __init__(self, declared, classes):
        self.declared, self.classes, self.pool, self.indices = declared, classes, [], {}
        self.is_interface = declared.kind in ("interface", "@interface")
        variables, holder = {}, declared
        while holder:
            types = Types(classes, {})
            types.declare(holder.generics)
            variables = {**types.variables, **variables}
            # A static class does not see the variables of the one around it.
            holder = None if "static" in holder.words else classes.get(holder.outer)
        self.types = Types(classes, variables)

    def constant(self, tag, body):
        key = (tag, body)
        if key not in self.indices:
            self.pool.append(bytes([tag]) + body)
            self.indices[key] = len(self.pool)
            if tag in (5, 6):
                # Long constants take two places.
                self.pool.append(b"")
        return self.indices[key]

    def text(self, value):
        raw = value.encode("utf-8", "surrogatepass").replace(b"\0", b"\xc0\x80")
        return self.constant(1, struct.pack(">H", len(raw)) + raw)

    def named(self, internal):
        return self.constant(7, struct.pack(">H", self.text(internal)))

    def attribute(self, name, body):
        return struct.pack(">HI", self.text(name), len(body)) + body

    def nullness(self, names):
        """The annotation that says whether a value may be null, if there is one."""
        return [f"Landroid/annotation/{name};" for name in names if name in ("NonNull", "Nullable")][:1]

    def annotations(self, types):
        return struct.pack(">H", len(types)) + b"".join(struct.pack(">HH", self.text(one), 0) for one in types)

    def bytes(self):
        declared, types = self.declared, self.types
        own_generics = types.declare(declared.generics)
        root = {"enum": "Enum<%s>" % (declared.package + "." + declared.name)}.get(declared.kind, "Object")
        parent = (declared.parents or [root])[0]
        interfaces = [*declared.interfaces, *(["java.lang.annotation.Annotation"] * (declared.kind == "@interface"))]
        fields, methods = [], []
        for line in declared.members:
            kind, rest = line.split(" ", 1)
            if kind in ("field", "enum_constant"):
                fields.append(self.field(kind, rest))
            elif kind in ("method", "ctor"):
                methods.append(self.method(kind, rest))
        signature = own_generics + types.generic(parent) + "".join(map(types.generic, interfaces))
        head = struct.pack(">HHH", self.class_flags(False), self.named(declared.internal),
                           self.named(types.internal(without_generics(parent))))
        head += listed([struct.pack(">H", self.named(types.internal(without_generics(one)))) for one in interfaces])
        attributes = [self.attribute("Signature", struct.pack(">H", self.text(signature)))]
        inner = self.inner_classes()
        if inner:
            attributes.append(self.attribute("InnerClasses", listed(inner)))
        body = head + listed(fields) + listed(methods) + listed(attributes)
        return struct.pack(">IHHH", 0xCAFEBABE, 0, 52, len(self.pool) + 1) + b"".join(self.pool) + body

    def class_flags(self, nested, of=None):
        of = of or self.declared
        flags = sum(FLAGS.get(word, 0) for word in set(of.words))
        interface = INTERFACE | FLAGS["abstract"]
        flags |= {"interface": interface, "@interface": interface | ANNOTATION, "enum": ENUM}.get(of.kind, 0)
        if not nested:
            flags = flags & ~(2 | 4 | 8) | (1 if flags & 5 else 0) | (0 if flags & INTERFACE else SUPER)
        return flags

    def inner_classes(self):
        names = {name for name in self.classes if name.rpartition("$")[0] == self.declared.internal}
        names |= {name for name in self.types.nested if name in self.classes}
        here = self.declared.internal
        while "$" in here:
            names.add(here)
            here = here.rpartition("$")[0]
        return [struct.pack(">HHHH", self.named(name), self.named(name.rpartition("$")[0]),
                            self.text(name.rpartition("$")[2]), self.class_flags(True, self.classes[name]))
                for name in sorted(names) if name in self.classes]

    def field(self, kind, rest):
        rest = rest.split("; //")[0].rstrip(";")
        words, names, body = leading_words(rest)
        declaration, _, value = body.partition(" = ")
        declaration, more = without_annotations(declaration)
        of_type, _, name = declaration.rpartition(" ")
        flags = sum(FLAGS.get(word, 0) for word in set(words)) | (ENUM if kind == "enum_constant" else 0)
        plain = self.types.plain(of_type)
        attributes = [self.attribute("Signature", struct.pack(">H", self.text(self.types.generic(of_type))))]
        constant = self.value(plain, value.strip())
        if constant:
            attributes.append(self.attribute("ConstantValue", struct.pack(">H", constant)))
        attributes.append(self.attribute("RuntimeInvisibleAnnotations", self.annotations(self.nullness(names + more))))
        return struct.pack(">HHH", flags, self.text(name), self.text(plain)) + listed(attributes)

    def value(self, plain, text):
        if plain == "Ljava/lang/String;" and text.startswith('"'):
            return self.constant(8, struct.pack(">H", self.text(text[1:-1].encode().decode("unicode_escape"))))
        if plain == "Z" and text in ("true", "false"):
            return self.constant(3, struct.pack(">i", text == "true"))
        if plain in "BCSI" and re.fullmatch(r"-?\d+", text):
            return self.constant(3, struct.pack(">i", int(text)))
        if plain == "J" and re.fullmatch(r"-?\d+L?", text):
            return self.constant(5, struct.pack(">q", int(text.rstrip("L"))))
        return None

    def method(self, kind, rest):
        words, names, body = leading_words(rest.rstrip(";"))
        types, outer_variables = self.types, dict(self.types.variables)
        generics, body = angle(body)
        own = types.declare(generics)
        more_words, more, body = leading_words(body)
        start = body.index("(")
        end = closing(body, start)
        head, more_still = without_annotations(body[:start])
        result, _, name = head.rpartition(" ") if kind == "method" else ("void", "", "<init>")
        parameters, nullness = [], []
        for part in split(body[start + 1:end], ","):
            bare, of_it = without_annotations(part)
            # A parameter may have a name after its type.
            pieces = split(bare, " ")
            if len(pieces) == 2 and pieces[1].isidentifier() and not bare.startswith("?"):
                bare = pieces[0]
            parameters.append(bare)
            nullness.append(self.nullness(of_it))
        around = []
        if kind == "ctor" and self.declared.outer in self.classes and "static" not in self.declared.words:
            around = [f"L{self.declared.outer};"]
        words = set(words + more_words)
        flags = sum(FLAGS.get(word, 0) for word in words)
        if self.is_interface and not words & {"static", "default"}:
            flags |= 0x400
        if parameters and parameters[-1].endswith("..."):
            flags |= VARARGS
        plain = "(" + "".join(around + [types.plain(one) for one in parameters]) + ")" + types.plain(result)
        generic = own + "(" + "".join(map(types.generic, parameters)) + ")" + types.generic(result)
        attributes = [self.attribute("Signature", struct.pack(">H", self.text(generic)))]
        attributes.append(self.attribute("RuntimeInvisibleAnnotations",
                                         self.annotations(self.nullness(names + more + more_still))))
        attributes.append(self.attribute("RuntimeInvisibleParameterAnnotations", bytes([len(nullness)]) +
                                         b"".join(map(self.annotations, nullness))))
        if " default " in body[end:]:
            # What it is matters to nobody here, only that it need not be given.
            attributes.append(self.attribute("AnnotationDefault", b"s" + struct.pack(">H", self.text(""))))
        types.variables = outer_variables
        return struct.pack(">HHH", flags, self.text(name), self.text(plain)) + listed(attributes)


def listed(parts):
    return struct.pack(">H", len(parts)) + b"".join(parts)
