"""Makes a kernelspec for the kernel under test in a folder of its own and tells jupyter_client about it.

The command that starts the kernel comes as JSON in the environment variable SUNLESSONS_TEST_KERNEL.
"""
import json
import os
import tempfile

NAME = "sunlessons-under-test"


def install():
    folder = tempfile.mkdtemp(prefix="sunlessons-kernelspec-")
    kernel = os.path.join(folder, "kernels", NAME)
    os.makedirs(kernel)
    with open(os.path.join(kernel, "kernel.json"), "w", encoding="utf-8") as out:
        json.dump(
            {
                "argv": json.loads(os.environ["SUNLESSONS_TEST_KERNEL"]),
                "display_name": "SunLessons under test",
                "language": "C#",
                "interrupt_mode": "message",
            },
            out,
        )
    os.environ["JUPYTER_PATH"] = folder
    return NAME
