"""How many divisions of the scale come off, and how passes share them (rule 5)."""

from fractions import Fraction

from webapp.core.passes_said import Said


def target_of(said: Said) -> Fraction:
    """Return the target, or the highest mark of the scale that cleans the thinnest blank; it may be none at all."""
    if said.target is not None:
        return said.target
    clean = said.jointed + said.unclean if said.rough else 2 * said.scale
    return (said.thinnest[1] - clean) // said.scale * said.scale


def bite_divisions(said: Said) -> int:
    """Return the most divisions of the scale that a pass may take."""
    return said.bite // said.scale


def depth(said: Said, target: Fraction) -> tuple[int, int]:
    """Return the divisions that clean the rough face of every blank, and those that are left then."""
    thickest = said.thickest[1] - said.jointed
    whole = -((target - thickest) // said.scale)
    if not said.rough:
        return 0, whole
    left = (said.thinnest[1] - said.jointed - said.unclean - target) // said.scale
    return whole - left, left


def fewest(divisions: int, bite: int, alternate: bool) -> int:
    """Return the fewest passes that take so many divisions; an even number with both faces by turns, if it can be."""
    n = -(-divisions // bite)
    return min(n + 1 if alternate and n % 2 == 1 else n, divisions)


def shared(divisions: int, bite: int, alternate: bool) -> list[int]:
    """Share divisions between the fewest passes, the heavier first."""
    n = fewest(divisions, bite, alternate)
    if n == 0:
        return []
    q, m = divmod(divisions, n)
    return [q + 1 if i < m else q for i in range(n)]


def last_bites(said: Said, divisions: int) -> list[int]:
    """Return the lighter last passes, one a face; none where under one division would remain for the others."""
    if said.last is None:
        return []
    light = max(1, said.last // said.scale)
    bites = [light, light] if said.alternate else [light]
    return bites if divisions - sum(bites) >= 1 else []


def count(said: Said, target: Fraction) -> int:
    """Return how many passes it comes to, without making them."""
    bite = bite_divisions(said)
    cleaning, left = depth(said, target)
    last = last_bites(said, left)
    return fewest(cleaning, bite, False) + fewest(left - sum(last), bite, said.alternate) + len(last)
