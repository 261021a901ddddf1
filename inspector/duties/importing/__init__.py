"""How a list that somebody kept before is read into bookings: columns, cells, rows, what is asked, what is left."""
