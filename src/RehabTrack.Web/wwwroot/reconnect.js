// Drives the dialog of ReconnectDialog.razor: the framework announces the state of the connection, this shows it.
const dialog = document.getElementById("components-reconnect-modal");

const reloadOr = async (attempt) => {
  try {
    if (!(await attempt())) {
      location.reload();
    }
  } catch {
    // The server cannot be reached: try again when the page is looked at.
    document.addEventListener("visibilitychange", tryWhenSeen);
  }
};

const reconnect = async () => {
  document.removeEventListener("visibilitychange", tryWhenSeen);
  await reloadOr(async () => (await Blazor.reconnect()) || (await Blazor.resumeCircuit()));
};

const resume = async () => {
  await reloadOr(() => Blazor.resumeCircuit());
};

const tryWhenSeen = async () => {
  if (document.visibilityState === "visible") {
    await reconnect();
  }
};

dialog.addEventListener("components-reconnect-state-changed", (event) => {
  switch (event.detail.state) {
    case "show":
      // Opened by its attribute: the methods would take the focus from the cell that is being typed in, and the keys that follow with it.
      dialog.open = true;
      break;
    case "hide":
      dialog.open = false;
      break;
    case "failed":
      document.addEventListener("visibilitychange", tryWhenSeen);
      break;
    case "rejected":
      location.reload();
      break;
  }
});
document.getElementById("components-reconnect-button").addEventListener("click", reconnect);
document.getElementById("components-resume-button").addEventListener("click", resume);
