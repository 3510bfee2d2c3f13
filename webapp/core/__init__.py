"""The trade's calculations, the fold and the views: pure, in the subset that the phone runs too."""
