"""What the square says in words."""

ERRORS = {
    "too-long": "A diagonal of {diagonal} is as long as two sides together, {both}: read it again.",
    "too-short": "A diagonal of {diagonal} does not span these sides: it would be over {least}. Read it again.",
}
WAYS = {
    "rising": "the rising diagonal, bottom left to top right",
    "falling": "the falling diagonal, top left to bottom right",
}
CAUTIONS = {
    "sides-again": "Read the sides again: square, they would have diagonals of {true}, and these two come to {goal}. "
    "One of the readings is off.",
    "clamp": "Clamp a little at a time and look at the joints: a frame pulled square by force goes back when the "
    "clamps come off (common practice).",
}
NOTES = {
    "two-sides": "Equal diagonals prove nothing if opposite sides differ: read all four sides to be sure.",
    "sides-differ": "Opposite sides differ, {which} by {most}: the diagonals alone do not prove square. "
    "The means of the sides were taken.",
    "one-tape": "Read both diagonals with the same tape, from the same side of the frame.",
}
PAIRS = ("bottom and top", "right and left")
