"""What a rail after a trim says in words."""

ERRORS = {
    "no-tenon": "An edge shoulder of {edge} leaves no tenon on a rail {width} wide: read both again.",
    "no-bottom": "A mortise {depth} deep goes through a rail {width} wide: read both again.",
    "no-mortise": "A cut of {cut} leaves nothing of a mortise {depth} deep: read both again.",
    "no-rail": "A cut of {cut} leaves nothing of a rail {width} wide: read both again.",
    "no-room": "With {clearance} to spare, a mortise {left} deep takes no tenon: less clearance, or deeper mortises.",
}
EDGE_GONE = "none: the cut is {into} into the rail's tenon"
CAUTIONS = {
    "bottoms": "The tenon bottoms: it is {over} longer than the mortise is deep now, and holds the rail off its "
    "slats' shoulders. Before glue: the mortises {deepen} deeper, or that much off each tenon's end.",
    "tight": "The tenon goes in, but not with {clearance} to spare: glue has nowhere to go, and a chip left at the "
    "bottom holds the joint open. The mortises {deepen} deeper, or that much off each tenon's end.",
    "through": "The rail is {width} wide now: mortises for this tenon, with {clearance} to spare, would come out of "
    "its other edge. Take it off the tenons.",
    "edge": "The edge shoulder is {edge} now, under the {least} that must stay: it may no longer hide the end of the "
    "mortise in the post. If nothing is cut yet, leave the rail and take it off the slats.",
    "edge-gone": "The cut goes {into} into the rail's own tenon: there is no edge shoulder left, and the mortise in "
    "the post shows. If nothing is cut yet, leave the rail and take it off the slats.",
    "dry": "Put it together dry once more before glue, with every slat in its place: a tenon that bottoms is found "
    "there or never.",
}
NOTES = {
    "most": "Where the edge was tapered, say the most that came off: the mortise there is the shallowest.",
    "common": "The clearance at the bottom of a mortise, 1/16 in (1.5 mm) where nothing is said, is common practice.",
    "depth": "The mortise depth is as it was before this cut, from the edge that faces the opening.",
}
