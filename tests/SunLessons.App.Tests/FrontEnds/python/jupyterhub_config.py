"""JupyterHub for a test: loopback only, users named by the test, no passwords worth the name, everything in one temporary folder."""
import os

c = get_config()  # noqa: F821 (the hub gives it)
folder = os.environ["HUB_FOLDER"]
public, hub, proxy = os.environ["HUB_PORTS"].split()
# Debian's proxy looks for its parts there; another Node.js on the machine would not.
os.environ["NODE_PATH"] = "/usr/share/nodejs"

c.JupyterHub.bind_url = f"http://127.0.0.1:{public}"
c.JupyterHub.hub_bind_url = f"http://127.0.0.1:{hub}"
c.ConfigurableHTTPProxy.api_url = f"http://127.0.0.1:{proxy}"
c.ConfigurableHTTPProxy.command = ["/usr/bin/configurable-http-proxy"]
c.ConfigurableHTTPProxy.pid_file = os.path.join(folder, "proxy.pid")
c.JupyterHub.db_url = "sqlite:///" + os.path.join(folder, "hub.sqlite")
c.JupyterHub.cookie_secret_file = os.path.join(folder, "cookie_secret")

c.JupyterHub.authenticator_class = "jupyterhub.auth.DummyAuthenticator"
c.DummyAuthenticator.password = os.environ["HUB_TOKEN"]
c.JupyterHub.spawner_class = "jupyterhub.spawner.SimpleLocalProcessSpawner"
c.SimpleLocalProcessSpawner.home_dir_template = os.path.join(folder, "homes", "{username}")
c.Spawner.cmd = ["/usr/bin/python3", "-m", "jupyterhub.singleuser"]
c.Spawner.args = ["--ServerApp.allow_root=True"]
c.Spawner.default_url = "/api"
# Where the test added the kernelspec. With "sunlessons jupyter add --prefix /usr/local" nothing is needed here.
c.Spawner.environment = {"JUPYTER_PATH": os.environ["JUPYTER_PATH"]}

c.JupyterHub.services = [{"name": "test", "api_token": os.environ["HUB_TOKEN"]}]
c.JupyterHub.load_roles = [{"name": "test", "scopes": ["admin:users", "admin:servers", "tokens"], "services": ["test"]}]
