// What a page keeps in this browser. Where the browser keeps nothing, because it is told not to or has no room left, the page holds it as
// long as it is open: nothing that is typed waits for the browser.

const here = new Map();
const probe = "rehabtrack-probe";

export function read(key) {
  try {
    return here.get(key) ?? localStorage.getItem(key);
  } catch {
    return null;
  }
}

// Whether the browser keeps it.
export function write(key, text) {
  try {
    localStorage.setItem(key, text);
    here.delete(key);
    return true;
  } catch {
    here.set(key, text);
    return false;
  }
}

export function remove(key) {
  here.delete(key);
  try {
    localStorage.removeItem(key);
  } catch {
    // Nothing was kept.
  }
}

// Whether the browser keeps anything, asked before there is something to keep.
export function keeps() {
  const does = write(probe, probe);
  remove(probe);
  return does;
}
