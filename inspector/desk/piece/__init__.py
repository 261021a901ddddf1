"""The parts of a piece's record that do more than stand there: pictures to walk through, its life, its files."""
