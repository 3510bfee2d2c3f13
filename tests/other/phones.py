"""Other browsers as phones: started with all that they kept, closed, and killed. Each has a folder of its own."""

import json
import os
import signal
import socket
import subprocess
import time
from collections.abc import Mapping
from pathlib import Path

from tests.other.window import Window
from tests.other.wire import PATIENCE, Marionette, Spoken, Wire

WIDTH, HEIGHT = 360, 740
FRAME = 86  # pixels of Firefox's own bars

PREFERENCES: Mapping[str, bool | int | str] = {
    "marionette.port": 0,  # any that is free; it is written into the profile
    "dom.w3c_touch_events.enabled": 1,
    "ui.useOverlayScrollbars": 1,  # as on a phone
    "toolkit.legacyUserProfileCustomizations.stylesheets": True,
    "browser.aboutwelcome.enabled": False,
    "browser.shell.checkDefaultBrowser": False,
    "browser.startup.page": 0,
    "browser.safebrowsing.update.enabled": False,
    "datareporting.policy.dataSubmissionEnabled": False,
    "extensions.getAddons.cache.enabled": False,
    "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False,
    "services.settings.server": "data:,",  # asks nobody
}
NARROW = ":root, body, #browser { min-width: 0 !important; }"  # its own window is never under 450 pixels otherwise


def waited(path: Path, process: "subprocess.Popen[bytes]") -> str:
    """Return what a program writes into a file, once it is there."""
    ends = time.monotonic() + PATIENCE
    while time.monotonic() < ends and process.poll() is None:
        if path.exists() and path.read_text():
            return path.read_text()
        time.sleep(0.05)
    raise AssertionError(f"{process.args!r} wrote no {path.name}, and ended with {process.poll()}")


def end(process: "subprocess.Popen[bytes] | None") -> None:
    """Kill a program and all that it started, which the kernel knows as one group."""
    if process is None or process.poll() is not None:
        return
    os.killpg(process.pid, signal.SIGKILL)
    process.wait(PATIENCE)


class Firefox:
    """Firefox, headless, with its own bars outside the 360 x 740."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.process: subprocess.Popen[bytes] | None = None
        self.wire: Wire | None = None

    def start(self, *, dark: bool = False) -> Window:
        (self.folder / "chrome").mkdir(parents=True, exist_ok=True)
        (self.folder / "chrome" / "userChrome.css").write_text(NARROW)
        said = {**PREFERENCES, "layout.css.prefers-color-scheme.content-override": 0 if dark else 1}
        lines = [f"user_pref({json.dumps(name)}, {json.dumps(value)});\n" for name, value in said.items()]
        (self.folder / "user.js").write_text("".join(lines))
        port = self.folder / "MarionetteActivePort"
        port.unlink(missing_ok=True)
        command = ["firefox-esr", "--headless", "--marionette", "--no-remote", "--profile", str(self.folder)]
        with (self.folder / "said.txt").open("ab") as log:
            self.process = subprocess.Popen(command, stdout=log, stderr=log, start_new_session=True)
        self.wire = Marionette(int(waited(port, self.process)))
        self.wire.tell("NewSession")
        self.wire.tell("SetWindowRect", width=WIDTH, height=HEIGHT + FRAME)
        return Window(self.wire, "touch")

    def kill(self) -> None:
        """SIGKILL, with no word to it."""
        end(self.process)
        if self.wire:
            self.wire.close()


class WebKit:
    """WebKitGTK in a window of ours (tests/other/webkit_window.py) on a screen that nobody sees.

    Its own small browser keeps nothing when it is driven.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.screen: subprocess.Popen[bytes] | None = None
        self.driver: subprocess.Popen[bytes] | None = None

    def start(self, *, dark: bool = False) -> Window:
        self.folder.mkdir(exist_ok=True)
        port = free_port()
        more = {
            "DISPLAY": self._display(),
            "GTK_THEME": "Adwaita:dark" if dark else "Adwaita",
            "HOME": str(self.folder),
            "NO_AT_BRIDGE": "1",
            "PHONE": str(self.folder),
            "XDG_RUNTIME_DIR": str(self.folder),
        }
        with (self.folder / "said.txt").open("ab") as log:
            command = ["WebKitWebDriver", f"--port={port}"]
            self.driver = subprocess.Popen(
                command, env=os.environ | more, stdout=log, stderr=log, start_new_session=True
            )
        listens(port)
        wire = Spoken(port)
        program = {"binary": str(Path(__file__).with_name("webkit_window.py")), "args": []}
        wire.tell("NewSession", capabilities={"alwaysMatch": {"webkitgtk:browserOptions": program}})
        return Window(wire, "mouse")

    def _display(self) -> str:
        """Start a screen, and return its name."""
        reading, writing = os.pipe()
        command = ["Xvfb", "-displayfd", str(writing), "-screen", "0", "800x800x24", "-nolisten", "tcp"]
        with (self.folder / "said.txt").open("ab") as log:
            self.screen = subprocess.Popen(command, pass_fds=[writing], stdout=log, stderr=log, start_new_session=True)
        os.close(writing)
        with os.fdopen(reading) as said:
            return f":{said.readline().strip()}"

    def kill(self) -> None:
        """SIGKILL, with no word to it."""
        end(self.driver)
        end(self.screen)


def free_port() -> int:
    """Return a port that nobody has."""
    with socket.socket() as asking:
        asking.bind(("127.0.0.1", 0))
        return int(asking.getsockname()[1])


def listens(port: int) -> None:
    """Wait until a port takes a connection."""
    ends = time.monotonic() + PATIENCE
    while time.monotonic() < ends:
        with socket.socket() as asking:
            if asking.connect_ex(("127.0.0.1", port)) == 0:
                return
        time.sleep(0.05)
    raise AssertionError(f"nothing listens at {port}")


PHONES: Mapping[str, type[Firefox | WebKit]] = {"firefox": Firefox, "webkit": WebKit}
