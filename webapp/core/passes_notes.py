"""What is said under a planer's sheet: cautions and notes."""

from webapp.core.jointing import HEAVIEST
from webapp.core.passes_check import exact_amount, listed
from webapp.core.passes_divisions import bite_divisions
from webapp.core.passes_plan import Given, Plan, faces_of
from webapp.core.passes_said import Said
from webapp.core.passes_steps import called
from webapp.core.passes_words import CAUTIONS, HEAVY, LEAST, NO_MARK, NOTES, OTHER_SYSTEM, THIN
from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.sums import amount
from webapp.core.tool import Values


def cautions(said: Said, made: Plan, values: Values, how: Setting) -> list[str]:
    """Return what does not suit this machine, then what always stands beside its settings."""
    least = {"length": amount(values["least_length"], how), "thickness": amount(values["least_thickness"], how)}
    thin = {**least, "target": amount(made.target, how)}
    found = [sentence(THIN, thin)] if made.target < values["least_thickness"] else []
    return [*found, *scale_cautions(said, made, how), CAUTIONS[0], sentence(LEAST, least), *CAUTIONS[1:]]


def scale_cautions(said: Said, made: Plan, how: Setting) -> list[str]:
    """Return what is odd about the bite, the target or the scale."""
    found = [sentence(HEAVY, {"bite": amount(said.bite, how)})] if said.bite > HEAVIEST else []
    scale = exact_amount(said.scale, how)
    if made.target % said.scale != 0:
        found.append(sentence(NO_MARK, {"target": exact_amount(made.target, how), "scale": scale}))
    # A millimetre is so many parts of an inch that no scale in inches has its denominator.
    metric = said.scale.denominator % how.factors["mm"].denominator == 0
    if metric != how.metric:
        words = {"scale": "millimetres" if metric else "inches", "sheet": "inches" if metric else "millimetres"}
        found.append(sentence(OTHER_SYSTEM, words))
    return found


def notes(said: Said, made: Plan, how: Setting) -> list[str]:
    """Return how it is done, how the target came, and which faces give nothing."""
    if not made.passes:
        return [*target_notes(said), NOTES["nothing"]]
    return [
        NOTES["all-four" if said.square else "end-alike"],
        *([NOTES["rough"]] if made.clean else []),
        *target_notes(said),
        *face_notes(said, made),
        *bite_notes(said, made, how),
    ]


def target_notes(said: Said) -> list[str]:
    """Return where a target that was left out came from."""
    if said.target is not None:
        return []
    return [sentence(NOTES["target-rough" if said.rough else "target-found"], {"blank": called(said.thinnest[0])})]


def face_notes(said: Said, made: Plan) -> list[str]:
    """Return which blanks are not touched, and which give up wood from one face alone."""
    thinner = [called(name) for name, size in made.sized if size <= made.target]
    untouched = [sentence(NOTES["untouched"], {"blanks": listed(thinner)})] if thinner else []
    return [*uneven_notes(said, made), *untouched]


def uneven_notes(said: Said, made: Plan) -> list[str]:
    """Return how the faces of the blanks differ in what they give, where they give by turns."""
    if not said.alternate:
        return []
    if made.divisions == 1 and not said.rough:
        return [NOTES["one-gave"]]
    found = [NOTES["odd"]] if len(made.plain) % 2 == 1 else []
    sided = [called(blank[0]) for blank, gives in zip(made.sized, made.gives, strict=True) if one_sided(said, gives)]
    return [*found, sentence(NOTES["one-sided"], {"blanks": listed(sided)})] if sided else found


def one_sided(said: Said, gives: Given) -> bool:
    """Return whether one face of a blank gives up wood and the other none."""
    first, second = faces_of(said)
    return (gives.faces[first] == 0) != (gives.faces[second] == 0)


def bite_notes(said: Said, made: Plan, how: Setting) -> list[str]:
    """Return where bites are other than they were said."""
    found = []
    bite = bite_divisions(said) * said.scale
    if bite != said.bite:
        found.append(sentence(NOTES["bite-less"], {"bite": exact_amount(bite, how)}))
    return [*found, *last_notes(said, made, how)]


def last_notes(said: Said, made: Plan, how: Setting) -> list[str]:
    """Return what became of the lighter last pass."""
    if said.last is None:
        return []
    if not made.last:
        return [NOTES["last-out"]]
    light = made.last[0] * said.scale
    if light == said.last:
        return []
    return [sentence(NOTES["last-less" if light < said.last else "last-more"], {"last": exact_amount(light, how)})]
