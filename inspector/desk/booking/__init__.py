"""Where a piece begins: which kind it is."""
