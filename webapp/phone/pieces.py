"""The translated core in pieces: each function, class or constant by itself, in one scope with all others.

So a layer of the bundle takes what it needs and nothing else, and no name is handed from module to module. A name at
the top of a module stays where no other module has it, and says its module else; variables get the shortest names.
"""

from collections import Counter
from collections.abc import Container, Iterable, Iterator
from dataclasses import dataclass
from itertools import count, product
from string import ascii_lowercase

from webapp.phone.declared import Declared
from webapp.phone.subset import RESERVED

Key = tuple[str, str]  # a module of the core, and a name at its top


@dataclass(frozen=True)
class Piece:
    """What one statement at the top of a module became: its name among all pieces, its text, what it needs."""

    key: Key
    called: str
    text: str
    needs: frozenset[Key]


def called(modules: Iterable[Declared]) -> dict[Key, str]:
    """Return what each name at the top of a module, but for types, is called among all of them."""
    keys = [(module.name, name) for module in modules for name in sorted(values(module))]
    often = Counter(name for _, name in keys)
    plain = {name for name, number in often.items() if number == 1} - RESERVED
    return {(module, name): name if name in plain else f"{name}${module}" for module, name in keys}


def values(module: Declared) -> set[str]:
    """Return the names at the top of a module that are something at run time."""
    return {*module.functions, *module.classes, *module.constants}


def short_names(taken: Container[str]) -> Iterator[str]:
    """Give names without end, the shortest first."""
    for length in count(1):
        for letters in product(ascii_lowercase, repeat=length):
            name = "".join(letters)
            if name not in taken and name not in RESERVED:
                yield name
