// Space presses a part of a picture; without this the page would scroll away under it.

export function keepStill(frame) {
  frame?.addEventListener("keydown", (event) => {
    if (event.key === " " && event.target.closest("[role=button]")) {
      event.preventDefault();
    }
  });
}
