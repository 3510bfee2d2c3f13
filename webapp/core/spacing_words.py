"""What a spacing says in words: its errors, and the cautions and notes that stand under a sheet."""

ERRORS = {
    "margin-unasked": "A margin goes only with a margin at both ends: choose that for the ends, "
    "or leave the margin out.",
    "slat-or-count": "Say a slat width, or how many slats there are, beside the clear span.",
    "gap-alone": "A gap alone does not settle the slats: say a slat width or a count too.",
    "margin-wanted": "Say the margin; or say slat, count and gap, and the margin comes from them.",
    "margins-fill": "Two margins of {margin} take {both}, and the clear span is {span}: "
    "a margin under {under} leaves room.",
    "one-slat": "A count of one with {ends} leaves no gap to share: say two slats or more, or other ends.",
    "too-many": "The nearest count is beyond 1,000 slats, the most that are worked: say a count, or a wider slat.",
    "slats-over": "The wood of {slats} of {widths} comes to {wood} in {room}: {over} too much. {remedy}",
    "slats-fill": "The wood of {slats} of {widths} fills {room} and leaves no gap. {remedy}",
    "gaps-over": "With a count of {count}, the air of {gaps} of {gap} comes to {air} in {room}: {over} too much. "
    "A gap under {under} leaves wood.",
    "gaps-fill": "With a count of {count}, the air of {gaps} of {gap} fills {room} and leaves no wood. "
    "A gap under {under} does.",
    "margins-over": "{slats} of {widths} and {gaps} of {gap} come to {come} in {room}: {over} too much. "
    "A gap of at most {true} would go in.",
    "too-much": "{slats} of {widths} and {gaps} of {gap} come to {come} in {room}: {over} too much. "
    "With that slat and count the gap is {true}.",
    "too-little": "{slats} of {widths} and {gaps} of {gap} come to {come} in {room}: {over} too little. "
    "With that slat and count the gap is {true}.",
    "shoulder-wide": "Two edge shoulders of {shoulder} leave no tenon on a slat of {width}: "
    "an edge shoulder under {under} does.",
}
REMEDIES = {
    "fewer": "At most {most} would go in.",
    "narrower": "Slats under {under} would go in.",
    "narrower-in-turn": "Widths that come to less would go in.",
}
ROOMS = {"span": "the clear span of {room}", "margins": "the {room} between the margins"}
ENDS = (
    ("gap", "a gap at both ends"),
    ("slat", "slats against the ends"),
    ("half", "half a gap at both ends"),
    ("margin", "a margin at both ends"),
)
CAUTIONS = (
    "Slats of a cot, a bunk bed or a guard have legal gaps of their own, and those come first: in a full-size "
    "cot no gap may be over 60 mm anywhere (16 CFR 1508.4, as carried into 16 CFR 1219).",
    "Cutting a spacer block: eyes and ears covered, guard on; no rip fence together with the mitre gauge, "
    "but a stop that ends before the blade (common practice); hold a short piece by something longer, and let "
    "the blade stop. The machine's manual and local rules come first.",
)
NO_COT = "The widest gap here is {gap}, over 60 mm: not for a cot."
NOTES = {
    "datum-span": "All places are from the start of the clear span. Mark every one from that end without moving "
    "the rule (J. E. Laughlin, Tool Processes in Woodworking; E. W. Foster, Elementary Woodworking).",
    "datum-rail": "All places are from the rail's own end, {offset} before the clear span. Mark every one from "
    "that end without moving the rule (J. E. Laughlin, Tool Processes in Woodworking; E. W. Foster, "
    "Elementary Woodworking).",
    "nearest-gap": "Of all counts, {count} brings the gap nearest to the {gap} that was said.",
    "nearest-slat": "Of all counts, {count} brings the gap nearest to the slats' own width.",
    "nearest-mean": "Of all counts, {count} brings the gap nearest to the slats' mean width, {mean}.",
    "over": "Slats and gaps as said come to {over} over the room; the gap here is the true one.",
    "short": "Slats and gaps as said come to {over} short of the room; the gap here is the true one.",
    "lopsided": "The widths do not read the same from both ends with this count.",
    "unused": "Of the widths said, the last {unused} are not used with this count.",
    "unused-one": "Of the widths said, the last one is not used with this count.",
    "stepped": "A spacer block of {block} stepped from one end leaves the last slat {off} {past} its mark; "
    "stepped from the middle both ways, about half of that. The slats' own error in width adds to it.",
    "block": "A spacer block of {block} is the gap itself. The slats' own error in width still adds up "
    "when it is stepped.",
}
EVEN = "the same from both ends"
LOPSIDED = "lopsided"
