"""What a gauge stick says in words: its errors, and what stands under a sheet."""

ERRORS = {
    "nothing": "Say an opening on each line: back rail, left: 13 1/16.",
    "fits": "Fits stands alone; where it does not fit, say lacks 1/16 or loose 1/32.",
    "how-much": "Say how much: {word} 1/16 strong.",
    "rail": "Name the rail before the comma: back rail, left.",
    "end": "Name the end after the comma: back rail, left.",
    "twice": "This place stands on two lines; give each a name of its own.",
    "alone": "This rail stands once alone and once with an end; name the end on both: {rail}, left.",
    "keep": "Keep the largest or the smallest opening, or say the stick's length: 13 1/16.",
    "stick-wanted": "Say the stick's length here: of the openings, {name} was said against the stick.",
    "stick-short": "Of the openings, {name} lacks {lack}, and a stick of {stick} leaves nothing of it.",
}
KEPT = {"largest": "Gauge, the largest opening", "smallest": "Gauge, the smallest opening"}
STICK = "Gauge, the stick"
PLACES = {
    "fits": "fits",
    "tight": "fits; lacks {size} ({fine})",
    "slack": "fits; loose {size} ({fine})",
    "lacks": "lacks {size} ({fine}): {passes}",
    "loose": "loose by {size} ({fine}), no trimming mends it",
}
EDGE = "the edge that faces the opening"  # as the steps name it
STEPS = {
    "none": "nothing comes off",
    "parallel": "joint the edge that faces the opening, {cut}: {passes}",
    "taper": "on the edge that faces the opening strike a line, {line}, and plane to it",
    "both": "joint the edge that faces the opening, {cut}: {passes}; then strike a line, {line}, and plane to it",
}
FITS = "fits, {step}"
LOOSE = "{step}; loose by {size}, no trimming mends it"
CAUTIONS = {
    "over": "{place}: slats stand {size} ({fine}) over here.",
    "until": "{place}: slats stand {size} ({fine}) over here until the rail is cut.",
    "hair": "A slat a hair too long holds the rail off its shoulder, and every slat adds to it.",
    "apart": "The rails come out of the dry fit one by one: number each joint where it does not show, "
    "and write on each rail which edge comes down, before anything is jointed.",
}
NOTES = {
    "edge": "The edge that faces the opening is the lower edge of an upper rail, the upper edge of a lower one. "
    "A jointer takes the whole edge; a taper is planed to a struck line.",
    "shoulder": "{rail}: its edge shoulder there is {cut} less afterwards and must stay {least} or more: "
    "before, {before} or more.",
    "mortise": "{rail}: its slat mortises are {cut} shallower afterwards. For a tenon of {tenon} with {clear} to spare "
    "they must be {depth} deep or more before.",
    "depth": "{rail}: its slat mortises are {cut} shallower afterwards: no slat's tenon longer than what is left "
    "less {clear} to spare.",
    "longest": "With the rails cut as the steps say, a slat of {longest} goes in everywhere.",
    "largest": "With the largest opening kept nothing is loose: every other place is trimmed to it.",
    "bow": "Rails over 3 ft (900 mm) are read in three places: they bow.",
    "tapes": "At this length two tapes read from the hook may disagree by {one} mm in class I, {two} mm in class II, "
    "{three} mm in class III (directive 2014/32/EU, annex MI-008): one tape for the job, or a gauge stick.",
}
