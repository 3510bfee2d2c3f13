"""A tool for tests, with every kind of field that a page has; added as tests/added.py adds it: as one file."""

from fractions import Fraction

from webapp.core.mark import length
from webapp.core.reading import read
from webapp.core.setting import Setting
from webapp.core.tool import Field, InputErrors, Parts, Tool, Values


def read_keep(text: str, how: Setting) -> Fraction | None:
    """Read the word for the widest plank, or a length."""
    return None if text == "widest" else read(text, how, "positive")


def work(values: Values, how: Setting) -> Parts:
    """Return how wide the planks are together."""
    planks = values["planks"]
    narrow = [name for name, width in planks if width < values["least"]]
    if narrow:
        raise InputErrors({"planks": f"{narrow[0]}: This is under the least width."})
    total = sum([width for name, width in planks], Fraction(0))
    return {
        "answer": {"key": "together", "label": f"{len(planks)} planks together", "value": length(total, how)},
        "figures": [{"key": "least", "label": "Least width", "value": length(values["least"], how)}],
        "cautions": ["Plane no plank that is shorter than your machine takes."],
    }


TOOL = Tool(
    name="trial",
    title="Planks side by side",
    about="Adds the widths of planks.",
    fields=(
        Field("planks", "Planks", "lines", required=True, help="One width each."),
        Field("size", "Size of the top", "pair", help="As wide x as long."),
        Field("keep", "Keep", "length", choices=(("widest", "the widest"),), read=read_keep),
        Field("least", "Least width", "length", default=("1 in", "25 mm"), shop=True, help="What your planer takes."),
        Field("turn", "One turn of the wheel", "length", shop=True),
        Field("faces", "Faces", "choice", default=("both", "both"), choices=(("both", "both"), ("one", "one only"))),
    ),
    work=work,
    help=("Say each plank as it was measured.", "The order makes no difference."),
    example=(("planks", "left: 5 1/2\nright: 5 1/4 strong"), ("size", "30 x 60")),
    cautions=("Plane no plank that is shorter than your machine takes.",),
)
