"""Which other browsers the tests are to run in: those that SHOULDERLINE_BROWSERS names, and no others."""

import shutil
from collections.abc import Callable, Mapping
from pathlib import Path

NAME = "SHOULDERLINE_BROWSERS"
BINDINGS = Path("/usr/lib/python3/dist-packages/gi")
"""Where Debian keeps what the window for WebKit is written with; it belongs to the system's own Python."""

NEEDS: dict[str, dict[str, Callable[[], bool]]] = {  # Debian's packages, and whether each is there
    "firefox": {"firefox-esr": lambda: shutil.which("firefox-esr") is not None},
    "webkit": {
        "webkit2gtk-driver": lambda: shutil.which("WebKitWebDriver") is not None,
        "gir1.2-webkit2-4.1": lambda: any(Path("/usr/lib").glob("*/girepository-1.0/WebKit2-4.1.typelib")),
        "python3-gi": BINDINGS.exists,
        "xvfb": lambda: shutil.which("Xvfb") is not None,
    },
}


def asked(environment: Mapping[str, str]) -> list[str]:
    """Return the browsers that are asked for, "firefox,webkit" in any order; raise ValueError for any other name."""
    words = [word.strip() for word in environment.get(NAME, "").split(",")]
    names = [word for word in dict.fromkeys(words) if word]
    unknown = [name for name in names if name not in NEEDS]
    if unknown:
        raise ValueError(f"{NAME} names {', '.join(unknown)}: it takes {' and '.join(NEEDS)}, with a comma between")
    return names


def lacking(name: str, environment: Mapping[str, str]) -> str:
    """Say why a browser is not run; nothing where it can be."""
    if name not in asked(environment):
        return f"{NAME} does not name {name}"
    absent = [package for package, there in NEEDS[name].items() if not there()]
    return f"{name} needs Debian's {', '.join(absent)}" if absent else ""
