"""Reading the files of a sourcing folder: the criteria file and the makers, checked as a whole."""
