// A button with data-copy copies what stands in the field or the list of that id, and says so. Where the browser allows no copying (a page
// that came without encryption), the text is marked, so that a key copies it.
(() => {
  const textOf = (source) =>
    source.matches("input, textarea") ? source.value : [...source.children].map((line) => line.textContent.trim()).join("\n");

  const mark = (source) => {
    if (source.matches("input, textarea")) {
      source.focus();
      source.select();
    } else {
      getSelection().selectAllChildren(source);
    }
  };

  document.addEventListener("click", async (event) => {
    const button = event.target.closest?.("[data-copy]");
    const source = button && document.getElementById(button.dataset.copy);
    if (!source) {
      return;
    }

    const said = document.querySelector(`[data-copy-said="${CSS.escape(button.dataset.copy)}"]`);
    try {
      await navigator.clipboard.writeText(textOf(source));
      said.textContent = button.dataset.done;
    } catch {
      mark(source);
      said.textContent = button.dataset.marked;
    }
  });
})();
