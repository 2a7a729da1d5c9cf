"""Writes signed_messages.csv: messages framed and signed by jupyter_client's own Session, one a row.

Run with a Python that has jupyter_client:  python3 make.py > signed_messages.csv
"""
import datetime
import sys

import jupyter_client
from jupyter_client.session import Session

KEY = b"a-key-for-tests-only"
MESSAGES = [
    ("kernel_info_request", {}, {}),
    ("execute_request", {"code": "1+1", "silent": False, "store_history": True, "user_expressions": {}, "allow_stdin": False}, {}),
    ("execute_request", {"code": "var \u03b4 = \"\u00e9\U0001F31E\";", "silent": False}, {"cellId": "noon-1"}),
    ("comm_msg", {"comm_id": "c1", "data": {"method": "update", "state": {"value": 51.5}, "buffer_paths": []}}, {}),
]

session = Session(key=KEY, signature_scheme="hmac-sha256", username="test", session="session-1")
out = sys.stdout
out.write("# made by make.py with jupyter_client %s, key %s; frames in hexadecimal\n" % (jupyter_client.__version__, KEY.decode()))
out.write("type,identity,delimiter,signature,header,parent,metadata,content\n")
for number, (kind, content, metadata) in enumerate(MESSAGES):
    header = {
        "msg_id": "m%d" % number,
        "msg_type": kind,
        "username": "test",
        "session": "session-1",
        "date": datetime.datetime(2026, 11, 25, 12, 0, number, tzinfo=datetime.timezone.utc),
        "version": "5.3",
    }
    message = {"header": header, "parent_header": {}, "metadata": metadata, "content": content}
    frames = session.serialize(message, ident=b"client")
    out.write(kind + "," + ",".join(frame.hex() for frame in frames) + "\n")
