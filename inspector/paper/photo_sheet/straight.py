"""A page straightened and its light evened, so that a place on the sheet is a dot of the picture."""

from io import BytesIO

from msgspec import Struct
from PIL import Image, ImageFilter, ImageMath

from inspector.gear.sheet_layout import Spot
from inspector.paper.photo_sheet.projection import Projection

DOTS_PER_MM = 6
WHITE = 220  # of the evened page; what is lighter than the paper around it still finds room above
_PATCH_MM = 7  # of dark that is no shadow: wider than a box filled in fully
_SMOOTH_DOTS = 0.7


class StraightPage(Struct, frozen=True):
    """The page as it was seen, and evened: paper is WHITE in light and shadow, ink as dark against it as it was."""

    seen: Image.Image
    even: Image.Image

    def cut_out(self, spot: Spot, around_mm: float) -> bytes:
        """What was seen at a spot and so far around it, as PNG."""
        png = BytesIO()
        self.seen.crop(dots(spot, around_mm)).save(png, "PNG", compress_level=3)
        return png.getvalue()


def dots(spot: Spot, around_mm: float = 0.0) -> tuple[int, int, int, int]:
    """Left, top, right and bottom of a spot on the straightened page, so much wider on each side."""
    left, top = spot.left_mm - around_mm, spot.top_mm - around_mm
    right, bottom = spot.left_mm + spot.width_mm + around_mm, spot.top_mm + spot.height_mm + around_mm
    return round(left * DOTS_PER_MM), round(top * DOTS_PER_MM), round(right * DOTS_PER_MM), round(bottom * DOTS_PER_MM)


def straightened(photo: Image.Image, projection: Projection, width_mm: float, height_mm: float) -> StraightPage:
    """The page cut out of a grey photo. What lies beyond the photo is white."""
    a, b, c, d, e, f, g, h, _ = projection.factors
    scale = 1 / DOTS_PER_MM
    factors = (a * scale, b * scale, c, d * scale, e * scale, f, g * scale, h * scale)
    size = round(width_mm * DOTS_PER_MM), round(height_mm * DOTS_PER_MM)
    seen = photo.transform(size, Image.Transform.PERSPECTIVE, factors, Image.Resampling.BILINEAR, fillcolor=255)
    return StraightPage(seen, _evened(seen))


def paper_light(page: Image.Image) -> Image.Image:
    """How light the paper is, a dot for each millimetre: print and ink closed over, edges of shadows kept."""
    small = page.reduce(DOTS_PER_MM)
    closed = small.filter(ImageFilter.MaxFilter(_PATCH_MM)).filter(ImageFilter.MinFilter(_PATCH_MM))
    return closed.filter(ImageFilter.BoxBlur(1))


def _evened(page: Image.Image) -> Image.Image:
    light = paper_light(page).resize(page.size, Image.Resampling.BICUBIC).point([max(value, 1) for value in range(256)])
    smooth = page.filter(ImageFilter.GaussianBlur(_SMOOTH_DOTS))
    even: Image.Image = ImageMath.lambda_eval(
        lambda given: given["convert"](given["min"](given["page"] * WHITE / given["light"], 255), "L"),
        page=smooth,
        light=light,
    )
    return even
