"""What machine passes say in words: labels, errors, and the cautions and notes under a sheet."""

LABELS = {
    "machine": "Machine",
    "blanks": "Blanks",
    "target": "Target",
    "take": "Comes off",
    "bite": "Bite",
    "last": "Last pass",
    "setting": "Scale",
    "faces": "Faces",
    "square": "Runs",
    "rough": "Rough stock",
    "least_length": "Least length",
    "least_thickness": "Least thickness",
    "turn": "Hand wheel, one turn",
}
MACHINES = (("planer", "planer, set by thickness"), ("jointer", "jointer, run to a line"))
FACES = (("alternate", "the faces by turns"), ("one", "one face alone"))
SQUARE = (("no", "thickness alone"), ("yes", "thickness and width at every setting"))
ERRORS = {
    "blanks-wanted": "Say the blanks, a name and a thickness on each line; or choose the jointer.",
    "take-wanted": "Say how much comes off at the jointer; or choose the planer.",
    "jointer-only": "{label}: this is the jointer's alone; leave it out, or choose the jointer.",
    "planer-only": "{label}: this is the planer's alone; leave it out, or choose the planer.",
    "rough-two": "Two lengths stand here: what came off the jointed face, and what cleans the other: 1/16 in; 1/16 in.",
    "bite-fine": "A bite of {bite} is under one division of the scale, {scale}: a bite of {scale} or more can be set.",
    "last-heavy": "A last pass of {last} is heavier than the bite of {bite}: say {bite} or less.",
    "under": "Under the target of {target}: {blanks}. A target of at most {most} does.",
    "under-cleaned": "Once jointed and cleaned, under the target of {target}: {blanks}. "
    "A target of at most {most} does.",
    "none-left": "Jointing and cleaning take {off}, and leave nothing of {blanks}.",
    "too-thin": "No mark of the scale, {scale}, is left that cleans {blank}, {thickness} thick: "
    "say a target, or a finer scale.",
    "too-many": "This comes to {passes} passes, and at most {most} are worked: "
    "take a heavier bite, or saw it nearer first.",
}
EYES = (
    "Eyes and ears covered; stand to one side, and never reach in while the knives turn: let them stop before the "
    "chips are cleared (common practice)."
)
CAUTIONS = (
    "The machine's own manual and local rules come first. " + EYES,
    "Snipe: keep a blank level as it goes in and as it comes out, or leave some length at both ends to cut off. "
    "Slats are planed in long lengths and cut short after (common practice).",
    "Push blocks or a second blank move the end of a blank, never a hand (common practice).",
)
LEAST = (
    "Nothing shorter than {length} or thinner than {thickness} goes through the planer: your shop's own least. No law "
    "sets one; a planer wants its rollers' spacing and 2 in more (from memory)."
)
THIN = "The target of {target} is under your least thickness of {thickness}: keep it out of the planer."
HEAVY = "A bite of {bite} is over 1/16 in (1.5 mm), the heaviest cut that school rules allow at the jointer."
NO_MARK = (
    "The target of {target} is no mark of the scale, {scale}: the settings fall between marks. "
    "Set them by a caliper on a test piece."
)
OTHER_SYSTEM = "The scale is in {scale}, and this sheet in {sheet}: choose {scale} and the settings are its marks."
NOTES = {
    "end-alike": "Every setting runs all the blanks it touches before it moves, so that they end alike "
    "(common practice).",
    "all-four": "At every setting all of them run face then edge before it moves. The larger of thickness and width "
    "is what counts as a blank's size (common practice).",
    "target-found": "The target is the highest mark of the scale that leaves {blank}, the thinnest, a division "
    "for each face.",
    "target-rough": "The target is the highest mark of the scale that is left once {blank}, the thinnest, is clean.",
    "nothing": "Every blank is at the target: nothing is to come off.",
    "one-gave": "One division alone comes off, so only one face gave.",
    "odd": "The number of passes is odd, since no pass takes under a division: one face gives a division more.",
    "one-sided": "Only one face gives up wood here: {blanks}. A light last pass, or a lower target, takes from both.",
    "untouched": "At the target as they are, and not touched: {blanks}.",
    "bite-less": "The bite is taken as {bite}, whole divisions of the scale.",
    "last-less": "The last pass is taken as {last}, whole divisions of the scale.",
    "last-more": "The last pass takes {last}, one division: the scale has nothing finer.",
    "last-out": "The lighter last pass is left out: under one division would remain for the passes before it.",
    "rough": "The planer copies the face that lies down: the jointed face lies down until the rough one is clean.",
    "once": "The depth of cut is set once; the line says when to stop.",
}
