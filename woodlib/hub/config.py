"""How the hub is set: read by JupyterHub itself, with ``c`` in it. Everything is in the hub's own folder.

Sign-in is by a word for each student. Every student's server is a plain process of whoever started the hub, which is
why the guide says to start it under an account that holds nothing else.
"""

# mypy: ignore-errors
# It runs in the Python of the hub, where JupyterHub is; the kit's own has none.
import atexit
import json
import os
import shutil
import tempfile
from hmac import compare_digest
from pathlib import Path
from urllib.parse import quote

from jupyterhub.auth import Authenticator

from woodlib.hub.start import TOLD_IN, WORDS, read_words
from woodlib.opening import SETTINGS as QUIET
from woodlib.opening import copy_notebooks, first_notebook, notebooks_folder

TOLD = json.loads(os.environ[TOLD_IN])
HUB, KIT = Path(TOLD["folder"]), Path(TOLD["kit"])
IDLE_S = 3600
# Kernels are spoken to through files: twenty that look for free ports at the same moment take each other's. The system
# allows such a file a short path only, so they are not in the students' folders.
SPOKEN = Path(tempfile.mkdtemp(prefix="wlhub"))
atexit.register(shutil.rmtree, SPOKEN, ignore_errors=True)


class OwnWord(Authenticator):
    """A student signs in with the word from the list."""

    async def authenticate(self, handler, data):
        """The name, if the word is theirs."""
        word = read_words(HUB / WORDS).get(data["username"])
        good = word is not None and compare_digest(word.encode(), data["password"].encode())
        return data["username"] if good else None


def lessons_of(spawner) -> None:
    """Put the lessons into the student's folder; what is there already stays."""
    copy_notebooks(notebooks_folder(), HUB / "students" / spawner.user.name)


first = quote(first_notebook(notebooks_folder()).name)
c = get_config()  # noqa: F821
c.JupyterHub.bind_url = f"http://{TOLD['address']}:{TOLD['port']}"
c.JupyterHub.authenticator_class = OwnWord
c.JupyterHub.spawner_class = "simple"
c.JupyterHub.db_url = f"sqlite:///{HUB / 'hub.sqlite'}"
c.JupyterHub.cookie_secret_file = str(HUB / "cookie-secret")
c.JupyterHub.concurrent_spawn_limit = 0  # a class comes all at once: slow, and nobody is sent away
c.Authenticator.allow_all = True  # whoever has a word
c.ConfigurableHTTPProxy.command = [str(HUB / "node_modules" / ".bin" / "configurable-http-proxy")]
c.ConfigurableHTTPProxy.pid_file = str(HUB / "proxy.pid")
c.ConfigurableHTTPProxy.auth_token = os.urandom(32).hex()
c.SimpleLocalProcessSpawner.home_dir_template = str(HUB / "students" / "{username}")
c.Spawner.pre_spawn_hook = lessons_of
c.Spawner.cmd = [str(HUB / "python" / "bin" / "jupyterhub-singleuser")]
c.Spawner.default_url = f"/doc/tree/{first}"
c.Spawner.start_timeout = 300
c.Spawner.http_timeout = 300
c.Spawner.environment = {
    "JUPYTER_RUNTIME_DIR": lambda spawner: str(SPOKEN / spawner.user.name),
    # The pages and widgets of JupyterLab lie with the kit, not in the hub's own Python.
    "JUPYTER_PATH": str(KIT / "share" / "jupyter"),
    "JUPYTER_CONFIG_PATH": os.pathsep.join([str(QUIET), str(KIT / "etc" / "jupyter")]),
    "JUPYTERLAB_DIR": str(KIT / "share" / "jupyter" / "lab"),
    "OPENBLAS_NUM_THREADS": "1",  # twenty kernels on a few cores: more threads would only be in each other's way
    "JUPYTERHUB_SINGLEUSER_APP": "jupyter_server.serverapp.ServerApp",
}
c.Spawner.args = [
    "--KernelManager.transport=ipc",
    f"--MappingKernelManager.cull_idle_timeout={IDLE_S}",
    "--LabApp.check_for_updates_class=jupyterlab.NeverCheckForUpdate",
]
if os.geteuid() == 0:
    c.Spawner.args.append("--allow-root")
