"""What parts from over-all sizes say in words."""

ERRORS = {
    "posts-fill": "Posts of {posts} take {both}, and {overall} over all leaves nothing between them: "
    "more than {both} does.",
    "through": "Say the tenon's length, or how far it comes through and stands proud; not both.",
}
CAUTIONS = {
    "finished": "Read the posts as they finished, after the last pass, where the rail enters: "
    "two posts 1/32 in (0.8 mm) off their drawing put the rail 1/16 in (1.6 mm) off.",
    "wall": "Behind a mortise {clear} deeper than a tenon of {tenon}, a post of {post} keeps {wall} once the bit's "
    "lead of {lead} is off: {least} or more should stay (common practice).",
    "breaks": "A mortise {clear} deeper than a tenon of {tenon}, with the bit's lead of {lead}, comes out of a post of "
    "{post} on the far side.",
}
NOTES = {
    "finished": "The posts are taken as they finished, not as they were to be: two pieces of 1-3/4 in glued up and "
    "planed 1/32 in a face finish at 3-7/16 in.",
    "same": "The second post is taken to be like the first.",
    "set": "Rails between posts alike have one and the same length between the shoulders: cut them as a set.",
    "middle": "Lay the shoulders out from the middle of the rail, so that what it is off in length falls in the "
    "tenons (Mission Furniture: How to Make It, part 1).",
    "proud": "A tenon of {tenon} comes through a post of {post} and stands {proud} proud.",
    "flush": "A tenon of {tenon} comes through a post of {post}, flush with its face.",
    "no-tenon": "Say the tenon's length, and the rail's length over all comes with it.",
}
