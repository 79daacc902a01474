"""A browser without scripts, for tests of pages."""

import re

from httpx2 import Response
from starlette.testclient import TestClient

TOKEN = re.compile(r'name="token" value="([0-9a-f]{64})"')


class Browser(TestClient):
    """Sends forms with the token of the page they stand on."""

    def post_form(
        self,
        path: str,
        page: str = "/jobs",
        *,
        files: object = None,
        follow_redirects: bool = True,
        **fields: str,
    ) -> Response:
        token = TOKEN.search(self.get(page).text)
        assert token is not None, page
        data = {"token": token[1], **fields}
        return self.post(path, data=data, files=files, follow_redirects=follow_redirects)  # type: ignore[arg-type]
