"""What can be kept: each kind with the address that its forms are sent to, and which forms each screen has."""

WAYS = {
    "reading": "readings",
    "settings": "settings",
    "like": "likes",
    "note": "notes",
    "withdrawal": "withdrawals",
    "pick": "picks",
    "sheet": "sheets",
    "part": "parts",
    "joint": "joints",
    "round": "rounds",
    "condition": "conditions",
    "cut": "cuts",
    "done": "done",
    "again": "again",
}
KINDS = {way: kind for kind, way in WAYS.items()}

UNDO = "undo"  # a form beside another one of its kind: it takes back what a button names
FORMS = {
    "project": (
        "reading",
        "settings",
        "like",
        "round",
        "condition",
        "part",
        "joint",
        "done",
        "cut",
        "again",
        "withdrawal",
        "pick",
    ),
    "reading": ("pick", "note", "withdrawal"),
    "sheet": ("pick", "again", "cut", "withdrawal", UNDO),
    "part": ("pick", "part", "withdrawal"),
    "glue": ("done", "withdrawal"),
    "round": ("reading", "round", "withdrawal", "pick"),
    "tool": ("sheet",),
    "home": ("project",),
}


def kind_of(form: str) -> str:
    """Return the kind that a form keeps."""
    return "withdrawal" if form == UNDO else form
