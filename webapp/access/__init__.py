"""Who may ask what: hosts, origins, and the headers that hold a page to its own."""
