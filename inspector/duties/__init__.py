"""What the officer does, a deed a module. Read the file names as the chapters of a manual."""
