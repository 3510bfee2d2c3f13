"""The answer and the figures at the planer: the passes, and what each face of each blank gives up."""

from webapp.core.mark import length
from webapp.core.passes_plan import Plan, faces_of
from webapp.core.passes_said import Said
from webapp.core.passes_steps import called, scaled
from webapp.core.setting import Setting
from webapp.core.sheet import Part, figure
from webapp.core.sums import in_words


def answer(said: Said, made: Plan, how: Setting) -> Part:
    """Return how many passes there are, cleaning and light ones with them."""
    return figure("passes", answer_label(said, made, how), len(made.passes))


def answer_label(said: Said, made: Plan, how: Setting) -> str:
    """Return what the passes come to, and what is not plain about them."""
    words = [f"Passes to {scaled(made.target, said, how)}"]
    if said.square:
        words.append("each face then edge")
    if made.clean:
        words.append(f"{in_words(len(made.clean))} of them to clean")
    if made.last:
        words.append(f"{in_words(len(made.last))} light at the end")
    return ", ".join(words)


def figures(said: Said, made: Plan, how: Setting) -> list[Part]:
    """Return the target where it was left out, where the planer starts, the runs, and what each face gives up."""
    return [
        *target_figures(said, made, how),
        *start_figures(said, made, how),
        *[part for number in range(len(made.sized)) for part in face_figures(said, made, number, how)],
    ]


def target_figures(said: Said, made: Plan, how: Setting) -> list[Part]:
    """Return the target that was found."""
    if said.target is not None:
        return []
    return [figure("target", "Target, the most that cleans them all", length(made.target, how, said.scale))]


def start_figures(said: Said, made: Plan, how: Setting) -> list[Part]:
    """Return where the scale stands before the first pass, and how often wood goes through in all."""
    if not made.passes:
        return []
    runs = sum([len([1 for name, size in made.sized if size > at.setting]) for at in made.passes])
    start = made.target + made.divisions * said.scale
    return [
        figure("start", "Scale before the first pass", length(start, how, said.scale)),
        figure("runs", "Times through the planer, all blanks", runs * 2 if said.square else runs),
    ]


def face_figures(said: Said, made: Plan, number: int, how: Setting) -> list[Part]:
    """Return what each face of one blank gives up."""
    name = made.sized[number][0]
    gives = made.gives[number].faces
    first, second = faces_of(said)
    faces = [first, second] if said.alternate or said.rough else [first]
    edge = " and edge" if said.square else ""
    return [
        figure(
            f"blank-{number + 1}-{face}",
            f"{called(name)}, {face} face{edge} gives up",
            length(gives[face], how, said.scale),
        )
        for face in faces
    ]
