"""The words of the register: frozen shapes that every room shares. No I/O, no clock."""
