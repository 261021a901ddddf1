"""The book: everything that is kept, how it is kept from change, and the lists read from it."""
