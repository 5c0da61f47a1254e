"""Every hostile and broken file, from all shelves."""

from hostile import csvs, sheets, tomls, typed, zips

FILES = tuple(
    file
    for shelf in (zips.shelf, zips.csv_shelf, sheets.shelf, typed.shelf, csvs.shelf, tomls.shelf)
    for file in shelf.files
)
