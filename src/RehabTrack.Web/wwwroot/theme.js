// Runs before the first paint, so that a chosen light or dark page never flashes the other one.
// The choice is kept in this browser only. Any button with data-theme-switch turns the theme over.
(() => {
  const key = "rehabtrack-theme";
  const root = document.documentElement;
  let here = null; // where the browser keeps nothing, the choice lasts as long as the page
  const chosen = () => {
    try {
      return here ?? localStorage.getItem(key);
    } catch {
      return here;
    }
  };
  const apply = () => {
    const theme = chosen();
    if (theme === "light" || theme === "dark") {
      if (root.dataset.theme !== theme) {
        root.dataset.theme = theme;
      }
    } else if (root.dataset.theme) {
      delete root.dataset.theme;
    }
  };
  const isDark = () => (root.dataset.theme ? root.dataset.theme === "dark" : matchMedia("(prefers-color-scheme: dark)").matches);

  apply();
  new MutationObserver(apply).observe(root, { attributes: true, attributeFilter: ["data-theme"] });
  document.addEventListener("click", (event) => {
    if (!event.target.closest?.("[data-theme-switch]")) {
      return;
    }
    const next = isDark() ? "light" : "dark";
    const system = matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light";
    try {
      if (next === system) {
        localStorage.removeItem(key);
      } else {
        localStorage.setItem(key, next);
      }
      here = null;
    } catch {
      here = next;
    }
    apply();
  });
})();
