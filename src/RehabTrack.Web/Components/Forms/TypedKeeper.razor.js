// Keeps what is typed into the fields of a form in the browser until the server says that it was taken. The fields themselves are the
// server's: this script only remembers, sends again and puts back.

import * as store from "../../browser-store.js";

const keptHours = 24;
const kind = "kind";
const idleMilliseconds = 900;
const retryMilliseconds = 3000;
const reconnectBox = "components-reconnect-modal";

// Where the server keeps it too, "server" takes it and "kept" is what it has: it is there again on another device of the same person.
// Where the server takes a field only once it was left, "onlyLeft" says so: what is half typed stays here until then.
export function attach(root, key, server = null, kept = null, onlyLeft = false) {
  return new Keeper(root, `typed:${key}`, server, kept, onlyLeft);
}

class Keeper {
  constructor(root, key, server, kept, onlyLeft) {
    this.root = root;
    this.key = key;
    this.asideKey = `${key}:aside`;
    this.server = server;
    this.onlyLeft = onlyLeft;
    this.halfTyped = null;
    this.timer = 0;
    this.isLost = false;
    this.kept = {};
    this.unsent = new Set();
    this.waiting = new Map();
    this.unfolded = new Set();
    this.say(store.keeps());
    // Where the server keeps it, the browser holds only what the server never got; all else the server has, as it was last typed on any device.
    for (const [name, value] of [...Object.entries(kept ?? {}), ...Object.entries(this.read())]) {
      this.put(name, value);
    }

    if (server) {
      this.unsent = new Set(Object.keys(this.read()));
      this.later(idleMilliseconds);
    }

    this.watch = null;
    this.remember = (event) => this.remembered(event);
    this.press = (event) => this.pressed(event);
    this.state = (event) => this.connection(event.detail.state);
    this.isTelling = false;
    root.addEventListener("input", this.remember);
    root.addEventListener("change", this.remember);
    root.addEventListener("click", this.press);
    document.getElementById(reconnectBox)?.addEventListener("components-reconnect-state-changed", this.state);
    // Whoever was faster than this script has typed already: that stands, and is not put back.
    const earlier = new Map(Object.entries(this.kept));
    for (const event of root.early ?? []) {
      event.type === "click" ? this.pressed(event) : this.remembered(event);
    }

    this.left = Object.keys(this.kept).filter((name) => earlier.has(name) && earlier.get(name) === this.kept[name]);
  }

  // How many fields an earlier visit left. They are put back as the page draws them: what was chosen first, as other fields follow from it.
  restore() {
    this.waitFor(this.left);
    return this.left.length;
  }

  waitFor(names) {
    this.waiting = new Map(names.map((name) => [name, this.kept[name]]));
    if (this.waiting.size > 0) {
      this.putBack();
      this.watch?.disconnect();
      this.watch = new MutationObserver(() => this.putBack());
      this.watch.observe(this.root, { childList: true, subtree: true });
    }
  }

  forget() {
    clearTimeout(this.timer);
    this.kept = {};
    this.unsent.clear();
    this.waiting.clear();
    store.remove(this.key);
    store.remove(this.asideKey);
  }

  // What is typed makes room for a form begun afresh, and can be brought back.
  setAside() {
    const fields = { ...this.read(this.asideKey), ...this.kept };
    this.forget();
    this.writeAside(fields);
  }

  // How many fields were set aside.
  aside() {
    return Object.keys(this.read(this.asideKey)).length;
  }

  // What was typed since in the same fields is set aside instead.
  bringBack() {
    const fields = this.read(this.asideKey);
    this.writeAside(Object.fromEntries(Object.entries(this.kept).filter(([name, value]) => name in fields && fields[name] !== value)));
    for (const [name, value] of Object.entries(fields)) {
      this.keep(name, value);
    }

    this.waitFor(Object.keys(fields));
  }

  writeAside(fields) {
    if (Object.keys(fields).length === 0) {
      store.remove(this.asideKey);
    } else {
      store.write(this.asideKey, JSON.stringify({ at: Date.now(), fields }));
    }
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

  read(key = this.key) {
    try {
      const kept = JSON.parse(store.read(key) ?? "null");
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

  // What the server can have by now.
  dueFields() {
    const due = this.unsentFields();
    for (const name of this.onlyLeft ? [this.halfTyped, ...this.waiting.keys()] : []) {
      delete due[name];
    }

    return due;
  }

  later(milliseconds) {
    clearTimeout(this.timer);
    if (!this.isLost && Object.keys(this.dueFields()).length > 0) {
      this.timer = setTimeout(() => this.send(), milliseconds);
    }
  }

  async send() {
    const sent = this.dueFields();
    let isKept = false;
    try {
      isKept = (await this.server?.invokeMethodAsync("KeepFields", sent)) === true;
    } catch {
      // The line is down: the browser has it.
    }

    // An answer that comes after the line broke may be older than what was lost with it: that is told again first.
    if (!this.server || this.isLost) {
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
    const name = this.isTelling ? null : nameOf(field);
    if (name === null) {
      return;
    }

    this.waiting.delete(name);
    this.halfTyped = event.type === "input" ? name : null;
    this.keep(name, field.type === "checkbox" ? field.checked : field.value);
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
      const wanted = this.waiting.get(kind);
      this.waiting.delete(kind);
      this.choose(wanted);
    }

    for (const [name, value] of this.waiting) {
      const field = this.find(name);
      if (!field) {
        this.open(name);
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

    this.later(idleMilliseconds);
    if (this.waiting.size === 0) {
      this.watch?.disconnect();
    }
  }

  choose(wanted) {
    const button = this.root.querySelector(`button[data-kind="${CSS.escape(wanted)}"]:not([aria-pressed=true])`);
    this.tell(() => button?.click());
  }

  // A part that is folded is opened where something of it was typed.
  open(name) {
    const folded = [...this.root.querySelectorAll("button[data-unfolds][aria-expanded=false]")].find((button) => name.startsWith(button.dataset.unfolds));
    // Once: until the server has drawn it, it still looks folded.
    if (folded && !this.unfolded.has(folded.dataset.unfolds)) {
      this.unfolded.add(folded.dataset.unfolds);
      this.tell(() => folded.click());
    }
  }

  // While the line is down the server hears nothing, nor what was typed just before anybody knew: once it is back it is told what it missed.
  connection(state) {
    if (state !== "hide") {
      this.isLost = true;
      clearTimeout(this.timer);
      return;
    }

    this.isLost = false;
    if (kind in this.kept) {
      this.choose(this.kept[kind]);
    }

    for (const name of this.server ? this.unsent : Object.keys(this.kept)) {
      const field = this.find(name);
      if (field && name !== this.halfTyped && String(field.type === "checkbox" ? field.checked : field.value) === String(this.kept[name])) {
        this.tell(() => change(field));
      }
    }

    this.later(idleMilliseconds);
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
