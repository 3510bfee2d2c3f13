"""The command line: serve, work, backup, restore."""

import sys
from pathlib import Path

import click

from webapp import __version__
from webapp.core.sheet import to_json
from webapp.core.working import unknown_fields, work
from webapp.say import sheet_text
from webapp.store import StoreError, restore
from webapp.store.folder import data_folder
from webapp.tools import TOOLS
from webapp.units import FACTORS

PORT = 8470

folder_option = click.option(
    "--data", type=click.Path(path_type=Path, file_okay=False), help="The folder that holds the data."
)


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__)
def main() -> None:
    """Exact lengths and marks for joined furniture."""


@main.command()
@click.option("--demo", is_flag=True, help="Fill a project to look at: a slatted headboard in ash.")
@click.option("--port", default=PORT, show_default=True, help="The port on 127.0.0.1; 0 takes a free one.")
@folder_option
def serve(*, demo: bool, port: int, data: Path | None) -> None:
    """Serve this machine, and print the address."""
    from webapp.serving import ServeError, run  # the other commands need no server

    try:
        run(data_folder(data), port, demo=demo)
    except (ServeError, StoreError) as e:
        raise click.ClickException(str(e)) from e


@main.command("work")
@click.argument("tool")
@click.argument("fields", nargs=-1, metavar="FIELD=VALUE …")
@click.option("--json", "as_json", is_flag=True, help="Answer in JSON.")
def work_command(*, tool: str, fields: tuple[str, ...], as_json: bool) -> None:
    """Work a tool: shoulderline work spacing span='58 3/8' slat='2 3/4' count=9."""
    if tool not in TOOLS:
        raise click.ClickException(f"There is no tool {tool}; there are: {', '.join(TOOLS)}.")
    outcome = worked(tool, fields)
    if "errors" in outcome:
        click.echo(to_json(outcome) if as_json else error_lines(outcome["errors"]), err=True)
        sys.exit(2)
    click.echo(to_json(outcome["sheet"]) if as_json else sheet_text(outcome["sheet"]))


def worked(tool: str, fields: tuple[str, ...]) -> dict[str, dict[str, str]]:
    """Work what was typed as FIELD=VALUE; a word without its sign is an error at its name."""
    parted = [field.partition("=") for field in fields]
    bare = {name: "Write it as FIELD=VALUE." for name, sign, _ in parted if not sign}
    typed = {name: text for name, _, text in parted}
    errors = bare or unknown_fields(TOOLS[tool], typed)
    outcome: dict[str, dict[str, str]] = {"errors": errors} if errors else work(TOOLS[tool], typed, FACTORS)
    return outcome


def error_lines(errors: dict[str, str]) -> str:
    """Write errors as lines of `field: text`."""
    return "\n".join(f"{field}: {text}" for field, text in errors.items())


@main.command()
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@folder_option
def backup(*, file: Path, data: Path | None) -> None:
    """Copy the database to FILE, also while serving."""
    from webapp.store import Store

    try:
        with Store(data_folder(data)) as store:
            store.backup(file)
    except StoreError as e:
        raise click.ClickException(str(e)) from e
    click.echo(f"Kept in {file}.")


@main.command("restore")
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False, exists=True))
@folder_option
def restore_command(*, file: Path, data: Path | None) -> None:
    """Put a backup in the place of the database; phones then send again what it lacks."""
    try:
        restore(file, data_folder(data))
    except StoreError as e:
        raise click.ClickException(str(e)) from e
    click.echo("Restored.")
