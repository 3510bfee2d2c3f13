"""The screens: Flask blueprints and Flask-WTF forms."""
