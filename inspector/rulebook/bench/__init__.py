"""What the trainer's bench shows: topics as dials and named sums, each answered with its picture's figures and words."""
