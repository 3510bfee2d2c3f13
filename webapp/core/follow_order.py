"""Sources before what stands on them, and what stands in a ring."""


def in_order(sources: dict[str, list[str]]) -> tuple[list[str], list[str]]:
    """Return the names, each behind all its sources, and which of them stand in a ring: these as if they had none.

    `sources` gives for each name what it stands on; what is no name itself makes no difference. Without recursion:
    a chain may be longer than a language's stack.
    """
    on = {name: list({source: True for source in found if source in sources}) for name, found in sources.items()}
    order = _settled(on)
    if len(order) == len(on):
        return order, []
    rings = [name for name in on if name in above(name, on)]
    return _settled({name: [] if name in rings else found for name, found in on.items()}), rings


def _settled(on: dict[str, list[str]]) -> list[str]:
    """Return what can be put behind its sources; the rest stands in a ring, or on one."""
    left = {name: len(found) for name, found in on.items()}
    behind = _behind(on)
    order = [name for name, count in left.items() if count == 0]
    at = 0
    while at < len(order):
        for other in behind.get(order[at], []):
            left[other] -= 1
            if left[other] == 0:
                order.append(other)
        at += 1
    return order


def _behind(on: dict[str, list[str]]) -> dict[str, list[str]]:
    behind: dict[str, list[str]] = {}
    for name, found in on.items():
        for source in found:
            behind.setdefault(source, []).append(name)
    return behind


def above(name: str, on: dict[str, list[str]]) -> dict[str, bool]:
    """Return everything that a name stands on, however far, itself too where it stands in a ring."""
    found: dict[str, bool] = {}
    ways = list(on.get(name, []))
    while ways:
        at = ways.pop()
        if at not in found:
            found[at] = True
            ways.extend(on.get(at, []))
    return found
