"""The demo's four pictures: invented lighthouses, drawn here, of which one alone could be printed as it is."""

import io

from PIL import Image, ImageCms, ImageDraw

WRAP = (2126, 945)  # 180 × 80 mm at 300 dots per inch
SKY, SEA, ROCK, TOWER, BAND, LAMP = "#dfe9ec", "#47707d", "#4d4842", "#fbf7ee", "#b5472f", "#f2c14e"


def drawings() -> dict[str, bytes]:
    """Return the pictures by file name: sharp, too small, of another shape, and see-through."""
    return {
        "artwork/harbour-light.png": _packed(_lighthouse(WRAP, SKY)),
        "artwork/headland-light.png": _packed(_lighthouse((1500, 1500), SKY)),
        "artwork/island-light.png": _packed(_lighthouse((709, 315), SKY)),
        "artwork/night-light.png": _packed(_lighthouse(WRAP, None)),
    }


def _lighthouse(size: tuple[int, int], sky: str | None) -> Image.Image:
    """Return a banded tower on a rock in the sea; without a sky, what is behind shows through."""
    width, height = size
    image = Image.new("RGBA" if sky is None else "RGB", size, sky or (0, 0, 0, 0))
    draw = ImageDraw.Draw(image)
    middle, unit = width / 2, height / 20
    draw.rectangle((0, 15 * unit, width, height), fill=SEA)
    draw.polygon([(middle + at * unit, row * unit) for at, row in ((-6, 16), (-3, 14), (3, 14), (6, 16))], fill=ROCK)
    for band in range(5):
        top, low = 5 + 1.8 * band, 5 + 1.8 * (band + 1)
        sides = [(-1 - top / 20, top), (1 + top / 20, top), (1 + low / 20, low), (-1 - low / 20, low)]
        fill = TOWER if band % 2 else BAND
        draw.polygon([(middle + at * unit, row * unit) for at, row in sides], fill=fill)
    draw.rectangle((middle - unit, 3.2 * unit, middle + unit, 5 * unit), fill=LAMP)
    draw.polygon(
        [(middle - 1.6 * unit, 3.2 * unit), (middle, 1.8 * unit), (middle + 1.6 * unit, 3.2 * unit)], fill=ROCK
    )
    return image


def _packed(image: Image.Image) -> bytes:
    """Return a picture as a PNG that says 300 dots per inch of itself, whatever its size is."""
    packed = io.BytesIO()
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    profile = profile[:24] + bytes(12) + profile[36:]  # the profile's own date would make each run another
    image.save(packed, "PNG", dpi=(300, 300), icc_profile=profile)
    return packed.getvalue()
