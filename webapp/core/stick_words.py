"""What the story stick says in words."""

ERRORS = {
    "none": "Say at least one mark, a name and a place: shelf: 12 3/8",
    "same": "{names} stand on the same place, {place}: one of them is misread, or one is enough.",
    "off": "{marks} would be off a stick of {length}: a longer stick, or the mark was misread.",
}
ENDS = (("left", "the left end"), ("right", "the right end"))
NOTES = {
    "datum": "All places are from {end}. Mark every one from that end without moving the rule (J. E. Laughlin, "
    "Tool Processes in Woodworking; E. W. Foster, Elementary Woodworking).",
    "rod": "One stick for the whole job, full size, and every part marked from it (the joiner's rod: Cassell's "
    "Carpentry and Joinery).",
    "close": "{one} and {other} print as the same mark, {mark}: knife them {apart} apart, or take a finer graduation.",
}
