"""Two users of a hub run a lesson at the same time; prints what a test asks about, as JSON.

Arguments: address of the hub, its administrator's token, the lesson's notebook.
"""
import asyncio
import json
import sys
import uuid

from tornado.httpclient import AsyncHTTPClient, HTTPRequest
from tornado.websocket import websocket_connect

root, admin, lesson = sys.argv[1:]
USERS = ("amal", "binta")
with open(lesson, encoding="utf-8") as file:
    CELLS = ["".join(cell["source"]) for cell in json.load(file)["cells"] if cell["cell_type"] == "code"]


async def ask(method, address, token, body=None):
    request = HTTPRequest(
        root + address,
        method=method,
        headers={"Authorization": f"token {token}"},
        body=json.dumps(body or {}) if method == "POST" else None,
        follow_redirects=False,
        request_timeout=60,
    )
    return await AsyncHTTPClient().fetch(request, raise_error=False)


async def server_of(user):
    """A running server of the user, and a token that is the user's own."""
    await ask("POST", f"hub/api/users/{user}", admin)
    token = json.loads((await ask("POST", f"hub/api/users/{user}/tokens", admin)).body)["token"]
    await ask("POST", f"hub/api/users/{user}/server", token)
    for _ in range(240):
        if json.loads((await ask("GET", f"hub/api/users/{user}", admin)).body)["servers"].get("", {}).get("ready"):
            return token
        await asyncio.sleep(0.5)
    raise RuntimeError(f"The server of {user} did not start.")


class Kernel:
    """A kernel of a user's server, asked over the one socket that a front end uses too."""

    async def start(self, user, token):
        made = await ask("POST", f"user/{user}/api/kernels", token, {"name": "sunlessons"})
        self.id = json.loads(made.body)["id"]
        address = root.replace("http", "ws", 1) + f"user/{user}/api/kernels/{self.id}/channels"
        self.socket = await websocket_connect(HTTPRequest(address, headers={"Authorization": f"token {token}"}))
        return self

    async def run(self, code):
        """The reply to a cell, and the kinds of its outputs."""
        number = uuid.uuid4().hex
        message = {
            "channel": "shell",
            "header": {"msg_id": number, "msg_type": "execute_request", "session": number, "username": "", "date": "", "version": "5.3"},
            "parent_header": {},
            "metadata": {},
            "content": {"code": code, "silent": False, "store_history": True, "user_expressions": {}, "allow_stdin": False, "stop_on_error": False},
            "buffers": [],
        }
        await self.socket.write_message(json.dumps(message))
        reply, kinds, idle = None, [], False
        while reply is None or not idle:
            got = json.loads(await asyncio.wait_for(self.socket.read_message(), 120))
            if got["parent_header"].get("msg_id") != number:
                continue
            kind = got["header"]["msg_type"]
            if kind == "execute_reply":
                reply = got["content"]
            elif kind == "status":
                idle = got["content"]["execution_state"] == "idle"
            else:
                kinds.append(kind)
        return reply, kinds


async def pupil(user):
    token = await server_of(user)
    kernel = await Kernel().start(user, token)
    failed, shown = [], 0
    for cell in CELLS:
        reply, kinds = await kernel.run(cell)
        shown += kinds.count("display_data")
        if reply["status"] != "ok":
            failed.append(reply.get("evalue"))
    await kernel.run(f'var nameOf{user} = "{user}";')
    return {"user": user, "token": token, "kernel": kernel, "failed": failed, "shown": shown}


async def main():
    pupils = await asyncio.gather(*(pupil(user) for user in USERS))
    for one, other in (pupils, pupils[::-1]):
        own, _ = await one["kernel"].run(f"Console.Write(nameOf{one['user']});")
        theirs, _ = await one["kernel"].run(f"Console.Write(nameOf{other['user']});")
        one["sees_own"], one["sees_theirs"] = own["status"] == "ok", theirs["status"] == "ok"
        one["kernels"] = len(json.loads((await ask("GET", f"user/{one['user']}/api/kernels", one["token"])).body))
        one["enters_theirs"] = (await ask("GET", f"user/{other['user']}/api/kernels", one["token"])).code == 200
    for one in pupils:
        await ask("DELETE", f"user/{one['user']}/api/kernels/{one.pop('kernel').id}", one["token"])
        del one["token"]
    print(json.dumps({"cells": len(CELLS), "pupils": pupils}))


asyncio.run(main())
