"""A server on the loopback address alone, for one page and what is new of it: two addresses, GET, and nothing else.

The port is one that the system picks. Requests under another host's name are refused, so that no page of the web can
reach the report through a name that it lets point here.
"""

import json
from collections.abc import Mapping
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from threading import Thread
from types import MappingProxyType
from typing import Any

HOST = "127.0.0.1"
WAIT = 10  # seconds for a request to come in whole
HEADERS = {
    "Cache-Control": "no-store",
    "X-Content-Type-Options": "nosniff",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Content-Security-Policy": "frame-ancestors 'none'",
    "Referrer-Policy": "no-referrer",
}


class Served:
    """The page that is served, and what is said of it.

    Raises
    ------
    OSError
        If the system gives no port on the loopback address.
    """

    def __init__(self) -> None:
        self._server = _Server((HOST, 0), _Handler)
        self._thread = Thread(target=self._server.serve_forever, kwargs={"poll_interval": 0.1}, daemon=True)
        self._thread.start()

    @property
    def address(self) -> str:
        """Where the page is."""
        return f"http://{HOST}:{self._server.server_port}/"

    def show(self, page: str, version: int, words: str) -> None:
        """Serve a page from now on.

        Parameters
        ----------
        page : as it is sent
        version : of the report on it
        words : what is said on the page of the last run
        """
        state = json.dumps({"version": version, "words": words}, ensure_ascii=False)
        self._server.answers = {
            "/": ("text/html; charset=utf-8", page.encode()),
            "/state": ("application/json", state.encode()),
        }

    def close(self) -> None:
        """End the server."""
        self._server.shutdown()
        self._server.server_close()
        self._thread.join()


class _Server(ThreadingHTTPServer):
    daemon_threads = True
    block_on_close = False
    answers: Mapping[str, tuple[str, bytes]] = MappingProxyType({})  # kind and content, by path

    def handle_error(self, *_: Any) -> None:
        """Pass over a browser that was closed in the middle of an answer."""


class _Handler(BaseHTTPRequestHandler):
    timeout = WAIT
    server_version, sys_version = "scorecard", ""
    server: _Server

    def do_GET(self) -> None:
        """Send the page, or what is new of it; refuse all else."""
        port = self.server.server_port
        if self.headers.get_all("Host", []) not in ([f"{HOST}:{port}"], [f"localhost:{port}"]):
            self._send(HTTPStatus.FORBIDDEN, "text/plain", b"Open the address that the watch printed.\n")
        elif self.path in self.server.answers:
            self._send(HTTPStatus.OK, *self.server.answers[self.path])
        else:
            self._send(HTTPStatus.NOT_FOUND, "text/plain", b"There is nothing here.\n")

    def _send(self, status: HTTPStatus, kind: str, content: bytes) -> None:
        self.send_response(status)
        for name, value in {"Content-Type": kind, "Content-Length": str(len(content)), **HEADERS}.items():
            self.send_header(name, value)
        self.end_headers()
        self.wfile.write(content)

    def log_message(self, *_: Any) -> None:
        """Keep requests off the terminal."""
