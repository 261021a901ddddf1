"""What the trainer's bench shows: topics as dials and named sums, each answered with figures and words."""
