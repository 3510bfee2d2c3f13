"""Where the tests' browser is: Playwright's own where it can be had, else the system's Chromium; and its tools."""

import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import BrowserType, sync_playwright

NAMES = ("chromium", "chromium-browser", "google-chrome")
QUIET = (
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
)
# What the browser shall leave. The word is heard once, the last time it is said, so Playwright's own list is in it: no
# question to any network, http stays http, what a page paints is there at once.
LEFT = (
    "AimEnabled",
    "AvoidCorsURLLoaderRestartOnRedirect",
    "AvoidUnnecessaryBeforeUnloadCheckSync",
    "DestroyProfileOnBrowserClose",
    "HttpsFirstBalancedModeAutoEnable",
    "HttpsUpgrades",
    "LensOverlay",
    "MediaRouter",
    "NetworkTimeServiceQuerying",
    "OptimizationHints",
    "PaintHolding",
    "PreconnectToSearch",
    "ThirdPartyStoragePartitioning",
    # Each window makes the address bar's list ready, which nobody sees: as much work as a page of the program.
    "WebUIOmniboxAimPopup",
    "WebUIOmniboxFullPopup",
    "WebUIOmniboxPopup",
)
UNASKED = {"DEBIAN_FRONTEND": "noninteractive"}


def flags() -> list[str]:
    """Return the words a headless Chromium is started with; root has no sandbox of its own."""
    sandbox = ["--no-sandbox"] if hasattr(os, "geteuid") and os.geteuid() == 0 else []
    return [*QUIET, f"--disable-features={','.join(LEFT)}", *sandbox]


def executable(chromium: BrowserType) -> str | None:
    """Return the path of a Chromium, or None where there is none."""
    own = chromium.executable_path
    return own if Path(own).exists() else next((path for name in NAMES if (path := shutil.which(name))), None)


def found() -> bool:
    """Say whether there is a Chromium."""
    with sync_playwright() as playwright:
        return executable(playwright.chromium) is not None


def install() -> None:
    """Make sure that a Chromium is here, and what puts a certificate into its store, by whichever way works."""
    if not found():
        subprocess.run([sys.executable, "-m", "playwright", "install", "chromium"], check=False)
    lacking = [package for package, there in PACKAGES.items() if not there()]
    if lacking and shutil.which("apt-get"):
        subprocess.run(["apt-get", "update"], check=False)
        subprocess.run(["apt-get", "install", "-y", *lacking], check=False, env=os.environ | UNASKED)
    lacking = [package for package, there in PACKAGES.items() if not there()]
    if lacking:
        sys.exit(
            f"The tests need {', '.join(lacking)}: install that with the system's package manager, then run this again."
        )


PACKAGES: dict[str, Callable[[], bool]] = {  # Debian's names
    "chromium": found,
    "libnss3-tools": lambda: shutil.which("certutil") is not None,
    "openssl": lambda: shutil.which("openssl") is not None,
}
