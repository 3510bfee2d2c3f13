#!/usr/bin/python3
"""A window of 360 x 740 with WebKitGTK in it, which keeps what it is given in the folder PHONE.

The driver starts it, by the system's own Python. WebKitGTK's own MiniBrowser would do, but it forgets everything at
its end when it is driven, so no phone could be started again.
"""

import os
from pathlib import Path

import gi

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")
from gi.repository import Gtk, WebKit2  # noqa: E402  (the versions come first)

FOLDER = Path(os.environ["PHONE"])


def window(_session: WebKit2.AutomationSession, context: WebKit2.WebContext) -> WebKit2.WebView:
    """Return the view that the driver drives."""
    view = WebKit2.WebView(web_context=context, is_controlled_by_automation=True)
    frame = Gtk.Window(decorated=False, default_width=360, default_height=740)
    frame.add(view)
    frame.show_all()
    return view


def begin(context: WebKit2.WebContext, session: WebKit2.AutomationSession) -> None:
    """Say who this is, and give the driver its window."""
    told = WebKit2.ApplicationInfo.new()
    told.set_name("phone")
    session.set_application_info(told)
    session.connect("create-web-view", window, context)


def main() -> None:
    """Run until it is killed."""
    manager = WebKit2.WebsiteDataManager(
        base_data_directory=str(FOLDER / "data"), base_cache_directory=str(FOLDER / "cache")
    )
    context = WebKit2.WebContext(website_data_manager=manager)
    context.set_automation_allowed(True)
    context.connect("automation-started", begin)
    Gtk.main()


main()
