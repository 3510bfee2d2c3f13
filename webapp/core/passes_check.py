"""What cannot be passed so, refused at the last field concerned that says something of its own."""

from fractions import Fraction
from typing import NoReturn

from webapp.core.passes_divisions import count
from webapp.core.passes_said import Blank, Said, own_names
from webapp.core.passes_words import ERRORS, LABELS
from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.sums import amount, exactly
from webapp.core.tool import InputErrors, Values

MOST = 100  # passes
SHOWN = 5  # blanks in one sentence
PLANER = ("blanks", "target", "last", "setting", "faces", "square", "rough")
JOINTER = ("take",)


def check_machine(values: Values, how: Setting) -> None:
    """Refuse fields of the other machine, and a machine with nothing to do."""
    at_jointer = values["machine"] == "jointer"
    others, key = (PLANER, "planer-only") if at_jointer else (JOINTER, "jointer-only")
    said = own_names(values, how)
    errors = {name: sentence(ERRORS[key], {"label": LABELS[name]}) for name in others if name in said}
    wanted = "take" if at_jointer else "blanks"
    if wanted not in said:
        errors[wanted] = ERRORS[f"{wanted}-wanted"]
    if errors:
        raise InputErrors({name: errors[name] for name in LABELS if name in errors})


def refuse(field: str, key: str, parts: dict[str, str]) -> NoReturn:
    """Raise the error of the table at a field."""
    raise InputErrors({field: sentence(ERRORS[key], parts)})


def exact_amount(x: Fraction, how: Setting) -> str:
    """Return a bite or a division as it is said in a sentence: exact, since a mark would be too coarse."""
    return exactly(x, how) + (" mm" if how.metric else "")


def check_bites(said: Said, how: Setting) -> None:
    """Refuse a bite that the scale cannot take, and a last pass that is no lighter one."""
    if said.bite < said.scale:
        parts = {"bite": exact_amount(said.bite, how), "scale": exact_amount(said.scale, how)}
        refuse(said.last_of(["bite", "setting"]), "bite-fine", parts)
    if said.last is not None and said.last > said.bite:
        refuse("last", "last-heavy", {"last": exact_amount(said.last, how), "bite": exact_amount(said.bite, how)})


def check_target(said: Said, target: Fraction, how: Setting) -> None:
    """Refuse a target that blanks are under, and a scale with no mark to leave them at."""
    if target <= 0:
        name, thickness = said.thinnest
        parts = {"blank": name, "thickness": amount(thickness, how), "scale": exact_amount(said.scale, how)}
        refuse(said.last_of(["blanks", "setting", "rough"]), "too-thin", parts)
    check_under(said.blanks, target, "target", "under", how)
    check_under(cleaned(said), target, "rough", "under-cleaned", how)


def cleaned(said: Said) -> list[Blank]:
    """Return the blanks as they are once one face is jointed and the other clean."""
    return [(name, size - said.jointed - said.unclean) for name, size in said.blanks]


def check_rough(said: Said, how: Setting) -> None:
    """Refuse blanks of which jointing and cleaning leave nothing."""
    off = said.jointed + said.unclean
    gone = [f"{name} of {amount(size, how)}" for name, size in said.blanks if size <= off]
    if gone:
        refuse("rough", "none-left", {"blanks": listed(gone), "off": amount(off, how)})


def check_under(blanks: list[Blank], target: Fraction, field: str, key: str, how: Setting) -> None:
    """Refuse blanks that are under the target, by name, and by how much."""
    short = [f"{name} by {amount(target - size, how)}" for name, size in blanks if size < target]
    if short:
        most = min([size for name, size in blanks])
        refuse(field, key, {"target": amount(target, how), "blanks": listed(short), "most": amount(most, how)})


def listed(names: list[str]) -> str:
    """Return the first of many, and how many more there are."""
    more = len(names) - SHOWN
    return ", ".join(names[:SHOWN]) + (f" and {more} more" if more > 0 else "")


def check_most(said: Said, target: Fraction) -> None:
    """Refuse what nobody would plane: more passes than are worked."""
    passes = count(said, target)
    if passes > MOST:
        refuse(said.last_of(["blanks", "target", "bite", "setting"]), "too-many", many(passes))


def many(passes: int) -> dict[str, str]:
    """Return what is said of too many passes."""
    return {"passes": str(passes), "most": str(MOST)}
