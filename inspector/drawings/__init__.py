"""Pictures as data: frozen shapes in millimetres, inks by role. The paper room prints them, the window paints them."""
