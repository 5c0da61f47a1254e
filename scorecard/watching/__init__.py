"""Watching a folder: when a file was saved, one watch at a time, and a page in the browser that follows."""
