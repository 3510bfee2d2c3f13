"""The whole job in other browsers than Chromium: Firefox ESR and WebKitGTK, each by its own driver."""
