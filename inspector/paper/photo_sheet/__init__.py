"""A photo or scan of a pen-ticked sheet, read: `opening` makes grey pictures of a file, `codes` finds the sheets in
one, `reading` straightens a page by its marks and reads its boxes. Places on the sheet are in millimetres from its
top left.
"""
