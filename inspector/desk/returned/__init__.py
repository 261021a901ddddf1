"""A trip sheet that came back on paper is typed in."""
