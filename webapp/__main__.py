"""`python -m webapp` is the command `shoulderline`."""

from webapp.cli import main

main()
