"""Parts from over-all sizes: what is clear between two posts, and the rail that goes in."""

from fractions import Fraction

from webapp.core.overall_bay import Bay, bay
from webapp.core.overall_sheet import sheet_parts
from webapp.core.overall_words import CAUTIONS, ERRORS
from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.sums import amount
from webapp.core.tool import Field, InputErrors, Parts, Tool, Values


def work(values: Values, how: Setting) -> Parts:
    """Return the parts of the sheet; raise InputErrors for posts that leave nothing between, or tenons said twice."""
    alike = "other_post" not in values
    post: Fraction = values["post"]
    other: Fraction = post if alike else values["other_post"]
    made = bay(values["overall"], (post, other), values.get("tenon"), values.get("proud"))
    errors = {**posts_error(made, alike, how), **through_error(values)}
    if errors:
        raise InputErrors(errors)
    return sheet_parts(made, alike, how)


def posts_error(made: Bay, alike: bool, how: Setting) -> dict[str, str]:
    """Return the error of posts that fill what is over all, at the last of them that was said."""
    if made.clear > 0:
        return {}
    one, other = made.first.post, made.second.post
    parts = {
        "posts": f"{amount(one, how)} and {amount(other, how)}",
        "both": amount(one + other, how),
        "overall": amount(made.overall, how),
    }
    return {"post" if alike else "other_post": sentence(ERRORS["posts-fill"], parts)}


def through_error(values: Values) -> dict[str, str]:
    """Return the error of a tenon whose length was said in two ways."""
    return {"proud": ERRORS["through"]} if "tenon" in values and "proud" in values else {}


TOOL = Tool(
    name="overall",
    title="Parts from over-all sizes",
    about="Takes the posts off what is over all, and gives the rail between them, shoulder to shoulder and over all.",
    fields=(
        Field("overall", "Over all", "length", required=True, help="From outside to outside of the posts."),
        Field("post", "Post", "length", required=True, help="As it finished, in the rail's direction."),
        Field("other_post", "Other post", "length", help="Where it differs; left out, it is like the first."),
        Field("tenon", "Tenon length", "length", help="At each end of the rail."),
        Field(
            "proud",
            "Through, proud by",
            "length",
            sign="zero",
            help="In place of the tenon length, where it comes through: 1/4; 0 where it is flush.",
        ),
    ),
    work=work,
    help=(
        "Say the size that the piece is to have over all, and the posts as they stand on the bench now, planed and "
        "done. What is left between them is the rail from shoulder to shoulder; with the tenons it is the rail to cut.",
        "Where the posts came out thinner than drawn, the rail gets longer and the piece keeps its size.",
    ),
    example=(("overall", "72"), ("post", "3 7/16"), ("tenon", "2 1/2")),
    cautions=(CAUTIONS["finished"],),
)
