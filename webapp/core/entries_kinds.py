"""The kinds of entries that this version reads, and what each must hold."""

# What a body must hold as text, by kind; all else in it is looked at by its kind, or left to newer versions.
TEXTS: dict[str, list[str]] = {
    "project": ["name", "unit", "graduation"],
    "settings": [],
    "reading": ["place", "text", "inches", "unit", "graduation"],
    "withdrawal": ["entry"],
    "note": ["entry", "text"],
    "sheet": ["tool", "called", "unit", "graduation", "engine", "digest"],
    "pick": ["entry"],
}
