"""The stages that a piece goes through, in order, and which of them the work has come to."""

from dataclasses import dataclass

from webapp.core.piece import Piece
from webapp.core.piece_slats import SLATS


@dataclass(frozen=True)
class Stage:
    """One stage: its key, which tools name, and how it is called."""

    key: str
    title: str

    @property
    def step(self) -> str:
        """Return the step that is kept as done."""
        return f"stage {self.key}"


STAGES = (
    Stage("stock", "Stock"),
    Stage("rough-milling", "Rough milling"),
    Stage("rest", "Rest"),
    Stage("finish-milling", "Finish milling"),
    Stage("layout", "Layout of the posts"),
    Stage("mortises", "Mortises"),
    Stage("tenons", "Tenons"),
    Stage("slat-mortises", "Slat mortises"),
    Stage("dry-fit", "Dry fit"),
    Stage("trim", "Trim"),
    Stage("slats", "Slats"),
    Stage("ease", "Ease and sand"),
    Stage("glue-up", "Glue-up"),
    Stage("finish", "Finish"),
)
KEYS = [stage.key for stage in STAGES]


def begun(here: Piece) -> bool:
    """Say whether anything tells how far the work is: parts, or what was done."""
    return bool(here.parts or here.joints or here.done or here.rounds or here.cuts)


def reached(here: Piece) -> int:
    """Return the number of the stage that is to be done next; their count where all are done.

    The first that is not done after the last that is: who works at the trim is through with the stock, ticked or
    not. What is cut, a round that was begun, and a gauge stick's sheet say as much.
    """
    ticked = [i for i, stage in enumerate(STAGES) if stage.step in here.done]
    seen = [KEYS.index(key) for key in _seen(here)]
    at = max([0] + [i + 1 for i in ticked] + seen)
    while at < len(STAGES) and STAGES[at].step in here.done:
        at += 1
    return at


def _seen(here: Piece) -> list[str]:
    """Return the stages that the work has come to without a tick."""
    tools = {sheet["entry"]: sheet["tool"] for sheet in here.sheets if sheet["tool"] in here.tools}
    names = [_stage_of(here, tools[each["of"]], each["key"]) for each in here.cuts if each["of"] in tools]
    rounds = ["dry-fit"] if here.rounds else []
    gauges = ["trim"] if any(sheet["tool"] == "gauge" for sheet in here.sheets) else []
    return [name for name in names if name in KEYS] + rounds + gauges


def _stage_of(here: Piece, tool: str, key: str) -> str:
    """Return the stage at which a line of a tool's sheet is cut: a gauge sheet's slats have one of their own."""
    return "slats" if tool == "gauge" and key in SLATS else here.tools[tool].stage


def passed(here: Piece) -> list[Stage]:
    """Return the stages before the one that is reached that nobody ticked."""
    return [stage for stage in STAGES[: reached(here)] if stage.step not in here.done]
