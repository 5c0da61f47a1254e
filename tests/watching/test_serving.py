"""The server: on the loopback address alone, two addresses, GET, under its own name, and nothing else."""

import json
import socket
from http.client import HTTPConnection

import pytest

from scorecard.watching.serving import Served


@pytest.fixture
def served():
    made = Served()
    made.show("<p>Ž</p>", 3, "Follows.")
    yield made
    made.close()


def port_of(served):
    return int(served.address.rpartition(":")[2].strip("/"))


def ask(served, path="/", method="GET", **headers):
    connection = HTTPConnection("127.0.0.1", port_of(served), timeout=10)
    connection.request(method, path, headers=headers)
    answer = connection.getresponse()
    found = answer.status, answer.read().decode(), answer.headers
    connection.close()
    return found


def test_the_page_is_served(served):
    status, text, headers = ask(served)

    assert (200, "<p>Ž</p>", "text/html; charset=utf-8") == (status, text, headers["Content-Type"])


def test_what_is_new_is_served(served):
    assert {"version": 3, "words": "Follows."} == json.loads(ask(served, "/state")[1])


def test_a_new_page_takes_the_place_of_the_old_one(served):
    served.show("<p>new</p>", 4, "Follows.")

    assert ("<p>new</p>", 4) == (ask(served)[1], json.loads(ask(served, "/state")[1])["version"])


@pytest.mark.parametrize("name", ["localhost", "127.0.0.1"])
def test_its_own_names_are_answered(served, name):
    assert 200 == ask(served, Host=f"{name}:{port_of(served)}")[0]


@pytest.mark.parametrize("host", ["pots.example", "127.0.0.1", "127.0.0.1:1", "localhost.pots.example:80", ""])
def test_a_request_under_another_name_is_refused(served, host):
    status, text, _ = ask(served, Host=host)

    assert (403, False) == (status, "Ž" in text)


def test_a_request_without_a_name_or_with_two_is_refused(served):
    host = f"Host: 127.0.0.1:{port_of(served)}\r\n"
    for names in ("", f"{host}Host: pots.example\r\n"):
        with socket.create_connection(("127.0.0.1", port_of(served)), timeout=10) as line:
            line.sendall(f"GET / HTTP/1.1\r\n{names}\r\n".encode())

            assert line.recv(100).startswith(b"HTTP/1.0 403")


@pytest.mark.parametrize("path", ["/index.html", "/state/", "/?a", "/../state", "/favicon.ico", "/%2e%2e/x"])
def test_no_other_address_is_answered(served, path):
    assert 404 == ask(served, path)[0]


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "HEAD", "OPTIONS"])
def test_nothing_but_get_is_answered(served, method):
    assert 501 == ask(served, method=method)[0]


def test_it_listens_on_the_loopback_address_alone(served):
    assert "127.0.0.1" == served._server.server_address[0]


def test_nothing_is_kept_nor_framed_nor_lent(served):
    headers = ask(served)[2]

    assert ("no-store", "frame-ancestors 'none'", "same-origin", None) == (
        headers["Cache-Control"],
        headers["Content-Security-Policy"],
        headers["Cross-Origin-Resource-Policy"],
        headers["Access-Control-Allow-Origin"],
    )


def test_a_browser_that_is_closed_in_the_middle_is_passed_over(served, capfd):
    served.show("x" * 5_000_000, 4, "Follows.")
    for _ in range(3):
        line = socket.create_connection(("127.0.0.1", port_of(served)), timeout=10)
        line.sendall(f"GET / HTTP/1.1\r\nHost: 127.0.0.1:{port_of(served)}\r\n\r\n".encode())
        line.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, b"\1\0\0\0\0\0\0\0")
        line.close()

    assert (200, ("", "")) == (ask(served, "/state")[0], tuple(capfd.readouterr()))


def test_each_has_a_port_of_its_own(served):
    other = Served()
    other.close()

    assert served.address != other.address
