"""What is said where slats are cut and the opening moved."""

ERRORS = {
    "no-tenon": "Slats of {overall} over all with {shoulder} between the shoulders have no tenons: read both again.",
}
LABELS = {
    "uncut": "Tenon at each end, now",
    "recut": "Each end cut again, farther in by",
    "fits": "Nothing to cut again",
    "short": "No cut mends it",
}
SHORT = {
    "loose": "new slats; these are loose by {short} between the shoulders",
    "no-tenon": "new slats; these are {short} shorter than the opening",
    "none-left": "new slats; these are as long as the opening, and no tenon is left",
}
DEEP = "deep enough, with {left} to spare"
STEPS = {
    "set": "Set the stop for the tenon's length, from the slat's end",
    "set-again": "Set the stop for the tenons as they are cut, then move it away from the blade by",
    "one": "Cut both ends of one slat; between the shoulders it is to read",
    "all": "When that one goes in, all the others from the same stop, both ends",
    "every": "every shoulder all round, and the cheeks as far",
    "deepen": "Deepen every slat mortise before the dry fit, by",
}
CAUTIONS = {
    "saw": "At the saw: eyes and ears covered, guard on; no rip fence together with the mitre gauge, but a stop that "
    "ends before the blade (common practice); let the blade stop before the stop is moved or a piece is taken off. "
    "The machine's manual and local rules come first.",
    "stop": "A stop works from the slat's end: a slat that is longer over all than the others comes out as much longer "
    "between its shoulders. Read all of them over all first.",
    "deepen": "The mortises are {deepen} too shallow for the new tenon: deepen them to {needs}, and look what stays of "
    "the rail behind them; or take {deepen} off each tenon's end.",
    "loose": "A slat that is short between the shoulders leaves a gap at one rail or both, or pulls the frame out of "
    "shape when it is clamped shut.",
}
NOTES = {
    "cheeks": "The cheeks are cut that much longer too, at the height that the blade had before: the tenon keeps its "
    "thickness.",
    "half": "One stop moves both shoulders, so half of what is over comes off at each end.",
    "week": "Read the opening and cut the slats in one week: both move with the weather.",
    "clearance": "{clearance} stays between a tenon's end and the bottom of its mortise (1/16 in, 1.5 mm where nothing "
    "is said: common practice).",
    "every": "Read every opening before one is taken for all: the gauge stick says which rail is trimmed instead.",
    "no-plan": "Say the tenon as planned, and the length of the new slats comes with it.",
}
