// Keeps what is typed into the fields of a form in the browser until the server says that it was taken. The fields themselves are the
// server's: this script only remembers, sends again and puts back.

import * as store from "../../browser-store.js";

const keptHours = 24;
const kind = "kind";
const idleMilliseconds = 900;
const retryMilliseconds = 3000;
const reconnectBox = "components-reconnect-modal";

// Where the server keeps it too, "server" takes it and "kept" is what it has: it is there again on another device of the same person.
export function attach(root, key, onlyWhileLost, server = null, kept = null) {
  return new Keeper(root, `typed:${key}`, onlyWhileLost, server, kept);
}

class Keeper {
  constructor(root, key, onlyWhileLost, server, kept) {
    this.root = root;
    this.key = key;
    this.onlyWhileLost = onlyWhileLost;
    this.server = server;
    this.timer = 0;
    this.kept = {};
    this.unsent = new Set();
    this.say(store.keeps());
    // Where the server keeps it, the browser holds only what the server never got; all else the server has, as it was last typed on any device.
    for (const [name, value] of [...Object.entries(kept ?? {}), ...Object.entries(this.read())]) {
      this.put(name, value);
    }

    if (server) {
      this.unsent = new Set(Object.keys(this.read()));
      this.later(idleMilliseconds);
    }

    this.turned = new Set();
    this.waiting = new Map();
    this.watch = null;
    this.remember = (event) => this.remembered(event);
    this.press = (event) => this.pressed(event);
    this.state = (event) => this.connection(event.detail.state);
    this.isLost = false;
    this.isTelling = false;
    root.addEventListener("input", this.remember);
    root.addEventListener("change", this.remember);
    root.addEventListener("click", this.press);
    document.getElementById(reconnectBox)?.addEventListener("components-reconnect-state-changed", this.state);
  }

  // How many fields an earlier visit left. They are put back as the page draws them: what was chosen first, as other fields follow from it.
  restore() {
    this.waiting = new Map(Object.entries(this.kept));
    const count = this.waiting.size;
    if (count > 0) {
      this.putBack();
      this.watch = new MutationObserver(() => this.putBack());
      this.watch.observe(this.root, { childList: true, subtree: true });
    }

    return count;
  }

  forget() {
    clearTimeout(this.timer);
    this.kept = {};
    this.unsent.clear();
    this.waiting.clear();
    store.remove(this.key);
  }

  detach() {
    clearTimeout(this.timer);
    this.server = null;
    this.watch?.disconnect();
    this.root.removeEventListener("input", this.remember);
    this.root.removeEventListener("change", this.remember);
    this.root.removeEventListener("click", this.press);
    document.getElementById(reconnectBox)?.removeEventListener("components-reconnect-state-changed", this.state);
  }

  read() {
    try {
      const kept = JSON.parse(store.read(this.key) ?? "null");
      return kept && Date.now() - kept.at < keptHours * 3600000 ? kept.fields : {};
    } catch {
      return {};
    }
  }

  // The latest stands last: it is put back in the order in which it was typed. Null takes a field away.
  put(name, value) {
    delete this.kept[name];
    if (value !== null) {
      this.kept[name] = value;
    }
  }

  keep(name, value) {
    this.put(name, value);
    if (this.server) {
      this.unsent.delete(name);
      this.unsent.add(name);
    }

    this.write();
    this.later(idleMilliseconds);
  }

  write() {
    const fields = this.server ? this.unsentFields() : this.kept;
    if (Object.keys(fields).length === 0) {
      store.remove(this.key);
    } else {
      this.say(store.write(this.key, JSON.stringify({ at: Date.now(), fields })));
    }
  }

  // Whether the browser keeps what is typed.
  say(keeps) {
    this.root.dataset.keeps = keeps ? "all" : "nothing";
  }

  unsentFields() {
    return Object.fromEntries([...this.unsent].map((name) => [name, name in this.kept ? String(this.kept[name]) : null]));
  }

  later(milliseconds) {
    if (this.unsent.size > 0) {
      clearTimeout(this.timer);
      this.timer = setTimeout(() => this.send(), milliseconds);
    }
  }

  async send() {
    const sent = this.unsentFields();
    let isKept = false;
    try {
      isKept = (await this.server?.invokeMethodAsync("KeepFields", sent)) === true;
    } catch {
      // The line is down: the browser has it.
    }

    if (!this.server) {
      return;
    }

    if (isKept) {
      // What was typed on while it was under way goes next.
      const now = this.unsentFields();
      for (const name of Object.keys(sent).filter((name) => now[name] === sent[name])) {
        this.unsent.delete(name);
      }

      this.write();
    }

    this.later(isKept ? idleMilliseconds : retryMilliseconds);
  }

  remembered(event) {
    const field = event.target;
    const name = this.isTelling || (this.onlyWhileLost && !this.isLost) ? null : nameOf(field);
    if (name === null) {
      return;
    }

    this.waiting.delete(name);
    this.keep(name, field.type === "checkbox" ? field.checked : field.value);
    if (this.isLost && field.type === "checkbox" && event.type === "change") {
      this.turned.has(name) ? this.turned.delete(name) : this.turned.add(name);
    }
  }

  pressed(event) {
    const button = this.isTelling ? null : event.target.closest?.("button[data-kind]");
    if (button) {
      for (const name of (button.dataset.resets ?? "").split(" ")) {
        if (name in this.kept) {
          this.keep(name, null);
        }
      }

      this.keep(kind, button.dataset.kind);
    }
  }

  putBack() {
    if (this.waiting.has(kind)) {
      const button = this.root.querySelector(`button[data-kind="${CSS.escape(this.waiting.get(kind))}"]`);
      this.waiting.delete(kind);
      this.tell(() => button?.click());
    }

    for (const [name, value] of this.waiting) {
      const field = this.find(name);
      if (!field) {
        continue;
      }

      this.waiting.delete(name);
      if (field.type === "checkbox") {
        if (String(field.checked) !== String(value)) {
          this.tell(() => field.click());
        }
      } else if (field.value !== value) {
        field.value = value;
        this.tell(() => change(field));
      }
    }

    if (this.waiting.size === 0) {
      this.watch?.disconnect();
      if (this.onlyWhileLost) {
        this.forget();
      }
    }
  }

  // While the line is down the server hears nothing: once it is back it is told what it missed.
  connection(state) {
    if (state !== "hide") {
      this.isLost = true;
      return;
    }

    this.isLost = false;
    for (const [name, value] of Object.entries(this.kept)) {
      const field = this.find(name);
      if (field && (field.type === "checkbox" ? this.turned.has(name) : field.value === value)) {
        this.tell(() => change(field));
      }
    }

    this.turned.clear();
    if (this.onlyWhileLost) {
      this.forget();
    }
  }

  // What the script does itself is not remembered as typed.
  tell(act) {
    this.isTelling = true;
    act();
    this.isTelling = false;
  }

  find(name) {
    return [...this.root.querySelectorAll("input, select, textarea")].find((field) => nameOf(field) === name) ?? null;
  }
}

function change(field) {
  field.dispatchEvent(new Event("change", { bubbles: true }));
}

// A field by its id; a tick of a set by the words of the set and its own.
function nameOf(field) {
  if (!field.matches?.("input, select, textarea")) {
    return null;
  }

  return field.id || [field.closest("fieldset")?.querySelector("legend")?.textContent, field.closest("label")?.textContent].map((text) => text?.trim()).join("|");
}
