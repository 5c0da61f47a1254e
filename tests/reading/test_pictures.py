"""What artwork files hold, and what is said of those that hold nothing.

How formats keep their dots per inch: PNG counts per metre (300 is kept as 11811; the PNG specification); a JPEG unit of
0 and a TIFF without a resolution tag say nothing [memory; tried with Pillow].
"""

import io
import struct
import zlib

import pytest
from PIL import Image, ImageCms, ImageDraw
from pypdf import PdfReader, PdfWriter
from pypdf.generic import DecodedStreamObject, NameObject, RectangleObject

from scorecard.artwork import Picture
from scorecard.reading import pictures
from scorecard.reading.pictures import read_picture

SIZE = (120, 80)


def saved(path, image=None, **options):
    (image or Image.new("RGB", SIZE, "navy")).save(path, **options)
    return path


def read(path, image=None, **options):
    return read_picture(saved(path, image, **options))


def code_of(path, content):
    path.write_bytes(content)
    found = read_picture(path)
    return (found.code, found.place.file) if not isinstance(found, Picture) else None


@pytest.mark.parametrize(("ending", "kind"), [("png", "PNG"), ("jpg", "JPEG"), ("tif", "TIFF"), ("pdf", "PDF")])
def test_each_kind_is_read_whatever_its_ending(tmp_path, ending, kind):
    path = saved(tmp_path / f"a.{ending}").rename(tmp_path / "artwork.bin")

    assert kind == read_picture(path).kind


def test_pixels_are_counted_across_and_down(tmp_path):
    made = read(tmp_path / "a.png")

    assert SIZE == (made.width_px, made.height_px)


def test_a_png_of_300_dots_per_inch_is_kept_per_metre(tmp_path):
    made = read(tmp_path / "a.png", dpi=(300, 300))

    assert (299.9994, 299.9994) == made.tagged_dpi


def phys(count, unit):
    """A PNG whose density is count per unit: 1 for a metre, 0 for a proportion only."""
    plain = io.BytesIO()
    Image.new("RGB", SIZE).save(plain, "PNG")
    body = b"pHYs" + struct.pack(">IIB", count, count, unit)
    chunk = struct.pack(">I", 9) + body + struct.pack(">I", zlib.crc32(body))
    return plain.getvalue()[:33] + chunk + plain.getvalue()[33:]


@pytest.mark.parametrize(("count", "unit", "dpi"), [(11811, 1, 299.9994), (23622, 1, 599.9988), (2835, 1, 72.009)])
def test_counts_per_metre_are_read_back_as_dots_per_inch(tmp_path, count, unit, dpi):
    (tmp_path / "a.png").write_bytes(phys(count, unit))

    assert dpi == pytest.approx(read_picture(tmp_path / "a.png").tagged_dpi[0])


def test_a_png_that_gives_a_proportion_only_says_nothing(tmp_path):
    (tmp_path / "a.png").write_bytes(phys(11811, 0))

    assert read_picture(tmp_path / "a.png").tagged_dpi is None


@pytest.mark.parametrize("ending", ["png", "jpg", "tif"])
def test_a_file_without_a_tag_says_nothing(tmp_path, ending):
    assert read(tmp_path / f"a.{ending}").tagged_dpi is None


@pytest.mark.parametrize("ending", ["jpg", "tif"])
def test_a_tag_in_inches_is_read(tmp_path, ending):
    assert 72 == pytest.approx(read(tmp_path / f"a.{ending}", dpi=(72, 72)).tagged_dpi[0])


@pytest.mark.parametrize("ending", ["jpg", "tif"])
def test_four_inks_stay_four_inks(tmp_path, ending):
    assert "CMYK" == read(tmp_path / f"a.{ending}", Image.new("CMYK", SIZE)).mode


def test_a_profile_is_named(tmp_path):
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()

    assert "sRGB built-in" == read(tmp_path / "a.png", icc_profile=profile).profile


def test_a_camera_turned_on_its_side_swaps_the_sides(tmp_path):
    exif = Image.Exif()
    exif[0x0112] = 6
    made = read(tmp_path / "a.jpg", exif=exif)

    assert SIZE[::-1] == (made.width_px, made.height_px)


def test_see_through_pixels_are_counted(tmp_path):
    image = Image.new("RGBA", (10, 10), (0, 0, 0, 255))
    image.paste((0, 0, 0, 0), (0, 0, 10, 3))

    assert 0.3 == read(tmp_path / "a.png", image).see_through


def test_an_opaque_picture_with_room_for_holes_has_none(tmp_path):
    assert 0.0 == read(tmp_path / "a.png", Image.new("RGBA", SIZE, (1, 2, 3, 255))).see_through


def flat(smooth=1):
    """Three flat colours, drawn larger and made smaller so that edges blend."""
    image = Image.new("RGB", (400 * smooth, 300 * smooth), "white")
    draw = ImageDraw.Draw(image)
    draw.ellipse((20 * smooth, 20 * smooth, 180 * smooth, 180 * smooth), fill="navy")
    draw.polygon([(200 * smooth, 280 * smooth), (380 * smooth, 280 * smooth), (290 * smooth, 40 * smooth)], fill="red")
    return image.resize((400, 300), Image.Resampling.LANCZOS) if smooth > 1 else image


@pytest.mark.parametrize("smooth", [1, 4])
def test_flat_colours_are_counted_without_their_blended_edges(tmp_path, smooth):
    assert 3 == read(tmp_path / "a.png", flat(smooth)).flat_colours


def test_a_gradient_is_no_flat_design(tmp_path):
    gradient = Image.linear_gradient("L").convert("RGB")

    assert read(tmp_path / "a.png", gradient).flat_colours is None


def test_noise_is_no_flat_design(tmp_path):
    assert read(tmp_path / "a.png", Image.effect_noise((300, 300), 90)).flat_colours is None


def pdf(path, **boxes):
    """A page of 288 × 192 points with one picture over all of it, 1200 × 800 pixels."""
    plain = io.BytesIO()
    Image.new("RGB", (1200, 800), "teal").save(plain, "PDF", resolution=300)
    writer = PdfWriter(clone_from=PdfReader(plain))
    for name, box in boxes.items():
        writer.pages[0][NameObject(f"/{name}")] = RectangleObject(box)
    writer.write(path)
    return path


def test_a_page_without_boxes_is_its_own_trim(tmp_path):
    sheet = read_picture(pdf(tmp_path / "a.pdf")).sheet

    assert (101.6, 67.733, 0.0) == (*(round(side, 3) for side in sheet.trim_mm), sheet.bleed_mm)


def test_the_trim_and_the_bleed_box_are_read(tmp_path):
    edge = 72 / 25.4 * 3
    sheet = read_picture(pdf(tmp_path / "a.pdf", TrimBox=(edge, edge, 288 - edge, 192 - edge))).sheet

    assert (95.6, 61.733, 3.0) == (*(round(side, 3) for side in sheet.trim_mm), round(sheet.bleed_mm, 3))


def test_a_placed_picture_has_the_dots_per_inch_of_its_size_on_the_page(tmp_path):
    (placed,) = read_picture(pdf(tmp_path / "a.pdf")).sheet.placed

    assert 300 == pytest.approx(placed.dpi)


def drawn(path, instructions):
    """A page with these instructions to draw."""
    writer = PdfWriter()
    page = writer.add_blank_page(288, 192)
    if instructions:
        stream = DecodedStreamObject()
        stream.set_data(instructions)
        page[NameObject("/Contents")] = writer._add_object(stream)
    writer.write(path)
    return read_picture(path).sheet


def test_a_page_of_shapes_alone_has_no_pictures_and_is_not_empty(tmp_path):
    sheet = drawn(tmp_path / "a.pdf", b"0 0 100 100 re f")

    assert ((), 0, False) == (sheet.placed, sheet.unmeasured, sheet.is_empty)


@pytest.mark.parametrize("instructions", [b"", b" \n"])
def test_a_page_on_which_nothing_is_drawn_is_empty(tmp_path, instructions):
    assert drawn(tmp_path / "a.pdf", instructions).is_empty


def test_a_page_with_a_picture_is_not_empty(tmp_path):
    assert not read_picture(pdf(tmp_path / "a.pdf")).sheet.is_empty


def test_a_locked_pdf_is_told_so(tmp_path):
    writer = PdfWriter(clone_from=PdfReader(pdf(tmp_path / "a.pdf")))
    writer.encrypt("secret", algorithm="RC4-128")
    writer.write(tmp_path / "b.pdf")

    assert "locked-file" == read_picture(tmp_path / "b.pdf").code


@pytest.mark.parametrize(
    ("content", "code"),
    [
        (b"", "not-a-picture"),
        (b"this is a text", "not-a-picture"),
        (b"%PDF-1.7\nnothing more", "damaged-picture"),
        (b"\x89PNG\r\n\x1a\n", "not-a-picture"),
        (b"GIF89a" + bytes(30), "not-a-picture"),
    ],
)
def test_what_is_no_picture_is_told_with_its_name(tmp_path, content, code):
    assert (code, "a.png") == code_of(tmp_path / "a.png", content)


@pytest.mark.parametrize("ending", ["png", "jpg", "tif", "pdf"])
@pytest.mark.parametrize("part", [0.3, 0.6, 0.9])
def test_half_a_file_is_told_or_read_but_never_fails(tmp_path, ending, part):
    whole = saved(tmp_path / f"a.{ending}", Image.effect_noise((200, 200), 80)).read_bytes()
    found = code_of(tmp_path / f"a.{ending}", whole[: int(len(whole) * part)])

    assert found in {("damaged-picture", f"a.{ending}"), ("not-a-picture", f"a.{ending}")}


def test_a_picture_of_too_many_pixels_is_refused(tmp_path, monkeypatch):
    monkeypatch.setattr(Image, "MAX_IMAGE_PIXELS", 1000)

    assert "too-large" == read(tmp_path / "a.png").code


def test_a_picture_above_what_is_looked_at_keeps_its_size(tmp_path, monkeypatch):
    monkeypatch.setattr(pictures, "MOST_LOOKED_AT", 10)
    made = read(tmp_path / "a.png")

    assert (SIZE, None, None) == ((made.width_px, made.height_px), made.see_through, made.flat_colours)


def test_a_folder_and_a_file_that_is_not_there_are_told(tmp_path):
    assert ["not-a-picture", "unreadable-file"] == [
        read_picture(path).code for path in (tmp_path, tmp_path / "none.png")
    ]
