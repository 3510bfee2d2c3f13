"""Sentences that stand once: a template and what is said in it this time."""


def sentence(template: str, parts: dict[str, str]) -> str:
    """Return the template with each {name} replaced by its part; a part is put in as it is."""
    pieces = template.split("{")
    return pieces[0] + "".join([filled(piece, parts) for piece in pieces[1:]])


def filled(piece: str, parts: dict[str, str]) -> str:
    """Return one piece, `name} and what follows`, with the name's part put in."""
    end = piece.find("}")
    return parts[piece[:end]] + piece[end + 1 :]
