"""The kinds of entries that this version reads, what each must hold, and where the fold shows it."""

# What a body must hold as text, by kind; all else in it is looked at by its kind, or left to newer versions.
TEXTS: dict[str, list[str]] = {
    "project": ["name", "unit", "graduation"],
    "settings": [],
    "reading": ["place", "text", "inches", "unit", "graduation"],
    "withdrawal": ["entry"],
    "note": ["entry", "text"],
    "sheet": ["tool", "called", "unit", "graduation", "engine", "digest"],
    "pick": ["entry"],
    "part": ["name"],
    "joint": ["number"],
    "round": ["called"],
    "condition": ["place", "quantity", "text", "value", "unit"],
    "cut": ["entry", "key"],
    "done": ["step"],
}

# The kinds that stand for themselves until something replaces them: the part of a summary that lists them, and what
# of a body is listed there. Readings are listed by place.
LISTED: dict[str, tuple[str, tuple[str, ...]]] = {
    "reading": ("places", ("place", "text", "inches", "unit", "graduation")),
    "sheet": ("sheets", ("tool", "called", "inputs", "unit", "graduation", "engine", "digest")),
    "part": ("parts", ("name", "count", "spare", "wood", "faces", "measures")),
    "joint": ("joints", ("number", "parts", "tenon", "pins")),
    "round": ("rounds", ("called", "places")),
    "condition": ("conditions", ("place", "quantity", "text", "value", "unit")),
    "cut": ("cuts", ("key",)),
    "done": ("done", ("step",)),
}
