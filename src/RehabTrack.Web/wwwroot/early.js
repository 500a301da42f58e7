// What is typed and pressed in a form before its own script has come: that script takes it over, and from then on it hears for itself.
for (const kind of ["input", "change", "click"]) {
  document.addEventListener(
    kind,
    (event) => {
      const form = event.target.closest?.(".typed-keeper, .entry");
      if (form && !form.dataset.keeps) {
        (form.early ??= []).push(event);
      }
    },
    true,
  );
}
