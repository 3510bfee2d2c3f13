"""The command line: serve, work, backup, restore, move, arrive, devices."""

import sys
from pathlib import Path
from typing import Any

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


def origin_of_front(_context: click.Context, _option: click.Parameter, text: str | None) -> str | None:
    """Take an https host, or say what is wrong with it."""
    from webapp.access.front import FrontError, checked

    try:
        return None if text is None else checked(text)
    except FrontError as e:
        raise click.BadParameter(str(e)) from e


def own_address(_context: click.Context, _option: click.Parameter, texts: tuple[str, ...]) -> tuple[str, ...]:
    """Take addresses of private networks, or this machine's own."""
    from webapp.access.patience import local

    for text in texts:
        try:
            fine = local(text)
        except ValueError:
            fine = False
        if not fine:
            raise click.BadParameter(f"{text} is no address of a private network, such as 192.168.1.20.")
    return texts


@main.command()
@click.option("--demo", is_flag=True, help="Fill a project to look at: a slatted headboard in ash.")
@click.option("--port", default=PORT, show_default=True, help="The port on 127.0.0.1; 0 takes a free one.")
@click.option("--shop", is_flag=True, help="Serve the shop's phones as well, by https, on its private network.")
@click.option("--shop-port", type=int, help="The port for the phones; decided once.  [default: 8443]")
@click.option("--setup-port", default=8480, show_default=True, help="The port of the page that sets a phone up.")
@click.option("--by-number", metavar="ADDRESS", default="", help="Phones use this address, not a name; decided once.")
@click.option("--address", "only", multiple=True, callback=own_address, help="Serve phones at this address alone.")
@click.option(
    "--behind",
    metavar="https://HOST",
    envvar="SHOULDERLINE_BEHIND",
    callback=origin_of_front,
    help="Serve phones under an https host that passes requests on, and believe what it says of them.",
)
@click.option("--behind-port", default=8490, show_default=True, help="The port on 127.0.0.1 for that host.")
@click.option("--withdraw-worker", is_flag=True, help="Take a broken version off the phones; what they keep stays.")
@folder_option
def serve(*, demo: bool, port: int, data: Path | None, shop: bool, behind: str | None, **more: Any) -> None:
    """Serve this machine, and print the address."""
    from webapp.access.authority import AuthorityError
    from webapp.serving import Asked, Front, ServeError, run  # the other commands need no server

    asked = Asked(more["shop_port"], more["setup_port"], more["by_number"], more["only"]) if shop else None
    front = Front(behind, more["behind_port"]) if behind else None
    try:
        run(data_folder(data), port, demo=demo, asked=asked, behind=front, withdrawn=more["withdraw_worker"])
    except (ServeError, StoreError, AuthorityError) as e:
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


@main.command("move")
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@folder_option
def move_command(*, file: Path, data: Path | None) -> None:
    """Move everything into FILE, for another computer; this one then serves it no more."""
    from webapp.access.moving import move

    try:
        move(data_folder(data), file)
    except StoreError as e:
        raise click.ClickException(str(e)) from e
    click.echo(f"Moved into {file}. It holds keys: carry it by hand, and delete it when it has arrived.")
    click.echo("On the other computer: shoulderline arrive FILE")


@main.command("arrive")
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False, exists=True))
@click.option("--replace", is_flag=True, help="Put what is there aside.")
@folder_option
def arrive_command(*, file: Path, data: Path | None, replace: bool) -> None:
    """Take in what another computer moved into FILE; the phones notice nothing."""
    from webapp.access.moving import arrive

    try:
        arrive(file, data_folder(data), replace=replace)
    except StoreError as e:
        raise click.ClickException(str(e)) from e
    click.echo("Arrived. Start it as before: shoulderline serve --shop")


@main.command("devices")
@click.option("--revoke", metavar="NAME-or-ID", help="Let a phone in no more, from its next request on.")
@click.option("--code", is_flag=True, help="Make a pairing code for one phone, also while serving.")
@folder_option
def devices_command(*, revoke: str | None, code: bool, data: Path | None) -> None:
    """List the phones that are paired, make a code for another, or revoke one."""
    from webapp.access import said
    from webapp.access.log import Log
    from webapp.store import Store

    folder = data_folder(data)
    try:
        with Store(folder) as store:
            if revoke is not None:
                click.echo(said.revoked(store, revoke, Log(folder)))
            else:
                click.echo(said.coded(store, Log(folder)) if code else said.listed(store))
    except StoreError as e:
        raise click.ClickException(str(e)) from e
