"""A file that somebody sent, as grey pictures to look for sheets in: a photo is one, a scan has a picture a page."""

from PIL import Image

from inspector.language import tr
from inspector.paper.pages import page_count, scanned_pages
from inspector.paper.photo import check_size, grey_picture, is_pdf
from inspector.refused import Refused

Photo = Image.Image  # grey and upright
LONGEST_SIDE_PX = 2800  # nine dots to the millimetre where one sheet fills the picture, six for two side by side
MOST_PAGES = 40
_SCAN_DPI = 200


def open_photo(data: bytes) -> tuple[Image.Image, ...]:
    """The pictures in a JPEG, PNG or PDF, in grey and upright. Refuses what is empty, too large, broken or of another
    form, and tells how to send it instead."""
    check_size(data)
    if not is_pdf(data):
        return (grey_picture(data, LONGEST_SIDE_PX),)
    try:
        count = page_count(data)
        if count <= MOST_PAGES:
            return scanned_pages(data, _SCAN_DPI, LONGEST_SIDE_PX)
    except Refused as refused:
        raise Refused(tr("file"), refused.why, tr("Scan it again, or take a photo of each page.")) from refused
    why = tr("It has {count} pages; at most {most} are read at once.", count=count, most=MOST_PAGES)
    raise Refused(tr("file"), why, tr("Send only the pages that were filled in."))
