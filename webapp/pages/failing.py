"""What a request hears that cannot be answered: plain words, in JSON where JSON was asked for."""

from flask import Flask, Response, jsonify, make_response, render_template, request
from werkzeug.exceptions import HTTPException

WORDS = {
    400: "That could not be read.",
    403: "That is not for this page to ask.",
    404: "There is nothing at this address.",
    405: "That cannot be done at this address.",
    413: "That is too much at once: at most 1 MiB.",
    500: "Something in Shoulderline itself failed. What was kept before is kept; what you just sent may not be.",
}


def register(app: Flask) -> None:
    """Answer every refusal in plain words."""
    app.register_error_handler(HTTPException, say)


def say(error: HTTPException) -> Response:
    """Say what went wrong; a sentence of the program's own goes before the usual one."""
    status = error.code or 500
    given = error.description or ""
    own = given if given and given != type(error).description else ""
    words = own if own and status != 500 else WORDS.get(status, error.name)
    if request.path.endswith(".json") or request.path == "/sync":
        return make_response(jsonify({"errors": {"": words}}), status)
    return make_response(render_template("failing.html", words=words), status)
