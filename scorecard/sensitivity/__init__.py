"""How firm the choice stands: pure array functions that know makers and criteria by their positions alone."""
