"""The sums: SI floats in, SI floats out, a formula a function, its source in the docstring. No gear, no clock."""
