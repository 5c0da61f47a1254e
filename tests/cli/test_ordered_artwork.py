"""What an order still lacks of the artwork that it names."""

import pytest
from order_folder import DAY, QUOTES, lay_out
from PIL import Image
from process import scorecard


def order(folder):
    return scorecard("order", "fern", *DAY, cwd=folder).out


@pytest.mark.parametrize(
    ("pixels", "told"),
    [
        ((1063, 472), "a sharp file in place of night-light.pdf"),
        ((2126, 2126), "a file of the print's shape in place of night-light.pdf"),
    ],
)
def test_artwork_that_does_not_print_as_ordered_is_missing(tmp_path, pixels, told):
    lay_out(tmp_path)
    Image.new("1", pixels).save(tmp_path / "night-light.pdf", "PNG")

    assert f"Not complete: 1 thing still missing:\n  – {told} (file of each" in order(tmp_path)


def test_a_file_that_is_not_there_is_missing(tmp_path):
    (lay_out(tmp_path) / "night-light.pdf").unlink()

    assert "– the file night-light.pdf: there is none of this name" in order(tmp_path)


def test_a_damaged_file_is_missing_and_one_of_another_kind_is_not(tmp_path):
    lay_out(tmp_path)
    whole = (tmp_path / "night-light.pdf").read_bytes()
    (tmp_path / "night-light.pdf").write_bytes(whole[:60])
    assert "a file that can be read in place of night-light.pdf" in order(tmp_path)

    (tmp_path / "night-light.pdf").write_text("<svg/>", "utf-8")
    assert "Complete: nothing is missing." in order(tmp_path)


def test_a_term_for_ships_is_not_settled_where_the_order_goes_by_road(tmp_path):
    quote = [*QUOTES[1]]
    quote[9], quote[10] = "FOB", "Porto"
    told = " ".join(order(lay_out(tmp_path, Quotes=[QUOTES[0], quote])).split())

    assert "a delivery term for any way, such as FCA: FOB is for ships alone, and this goes by road (Delivery" in told
