"""The append-only store: tables, the one door for entries, sync and backup."""
