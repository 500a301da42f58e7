// Keys and keeping for the entry of an examination: moves between cells without asking the server, and keeps what is typed in the
// browser until the server has it. The server answers every message with what it now holds; only this script writes into a cell once it
// is there, and never into one that holds something the server has not seen.

import * as store from "../../browser-store.js";

const idleMilliseconds = 900;
const retryMilliseconds = 3000;
const patienceMilliseconds = 8000;
const commands = { "+": "insert", "-": "strike", "*": "repeat", "/": "sort" };

// "saved" is what the server holds, by field: whoever was faster than this script has typed something else already.
export function attach(root, key, owner, saved) {
  return new Entry(root, key, owner, saved);
}

class Entry {
  constructor(root, key, owner, saved) {
    this.root = root;
    this.key = key;
    this.owner = owner;
    this.saved = this.texts();
    for (const field of (root.early ?? []).map((event) => event.target.dataset.field).filter(Boolean)) {
      this.saved[field] = saved[field] ?? "";
    }

    this.half = new Set();
    this.anchor = null;
    this.timer = 0;
    this.queue = Promise.resolve();
    this.gone = false;
    root.addEventListener("keydown", (event) => this.keydown(event));
    root.addEventListener("input", () => this.typed());
    root.addEventListener("paste", (event) => this.pasted(event));
    root.addEventListener("focusin", (event) => this.entered(event));
    root.addEventListener("focusout", (event) => this.left(event));
    root.addEventListener("pointerdown", () => (this.anchor = null));
    this.leave = (event) => {
      const isLost = this.root.dataset.keeps === "nothing" && Object.keys(this.differences()).length > 0;
      if (isLost || ["not-sent", "waiting"].includes(this.root.dataset.state)) {
        event.preventDefault();
      }
    };
    this.hide = () => this.send();
    window.addEventListener("beforeunload", this.leave);
    document.addEventListener("visibilitychange", this.hide);
    this.say(store.keeps());
    this.show("sent");
  }

  // What an earlier visit typed and the server never got, and what was typed before this script came: a map from field to text.
  pending() {
    try {
      return { ...JSON.parse(store.read(this.key) ?? "null"), ...this.differences() };
    } catch {
      return this.differences();
    }
  }

  // The server holds these texts now: rows were added, or another person's values were taken over. Both values were shown and one was
  // chosen when all is true; else what the server has not seen yet stays.
  confirm(texts, state, all) {
    for (const cell of this.fields()) {
      const field = cell.dataset.field;
      if (field in texts && (all || cell.value === (this.saved[field] ?? ""))) {
        cell.value = texts[field];
      }
    }

    if (state !== "kept") {
      this.saved = texts;
    }

    this.settled(state);
  }

  focus(field) {
    const cell = this.find(field);
    this.anchor = null;
    // After the page has put its focus on the heading.
    setTimeout(() => cell?.focus(), 0);
  }

  focusElement(id) {
    document.getElementById(id)?.focus();
  }

  forget() {
    store.remove(this.key);
  }

  detach() {
    this.gone = true;
    clearTimeout(this.timer);
    window.removeEventListener("beforeunload", this.leave);
    document.removeEventListener("visibilitychange", this.hide);
  }

  fields() {
    return [...this.root.querySelectorAll("[data-field]")];
  }

  find(field) {
    return this.root.querySelector(`[data-field="${CSS.escape(field)}"]`);
  }

  texts() {
    return Object.fromEntries(this.fields().map((cell) => [cell.dataset.field, cell.value]));
  }

  differences() {
    return Object.fromEntries(Object.entries(this.texts()).filter(([field, text]) => (this.saved[field] ?? "") !== text));
  }

  show(state) {
    this.root.dataset.state = state;
  }

  // Whether the browser keeps what is typed.
  say(keeps) {
    this.root.dataset.keeps = keeps ? "all" : "nothing";
  }

  keep() {
    const differences = this.differences();
    if (Object.keys(differences).length > 0) {
      this.say(store.write(this.key, JSON.stringify(differences)));
    } else {
      this.forget();
    }
  }

  typed() {
    this.keep();
    this.show("sending");
    this.later(idleMilliseconds);
  }

  // A block of cells from a spreadsheet goes to the right and down from the cell it is pasted in, where all of it finds a place. What does
  // not stays in that one cell, where it is named as wrong: half a block would be silent about the other half.
  pasted(event) {
    const cell = event.target;
    const lines = event.clipboardData.getData("text/plain").replace(/\r/g, "").replace(/\n+$/, "").split("\n").map((line) => line.split("\t"));
    if (!cell.dataset?.field?.includes("|") || (lines.length === 1 && lines[0].length === 1)) {
      return;
    }

    const [key, column] = cell.dataset.field.split("|");
    const rows = this.rows();
    const columns = this.fields()
      .filter((field) => field.dataset.field.startsWith(`${key}|`) && field.offsetParent !== null)
      .map((field) => field.dataset.field.split("|")[1]);
    const places = lines.flatMap((line, down) =>
      line.map((text, right) => ({
        text: text.trim(),
        cell: this.find(`${rows[rows.indexOf(key) + down]}|${columns[columns.indexOf(column) + right]}`),
      })),
    );
    if (places.some((place) => !place.cell || place.cell.readOnly || place.cell.dataset.skip !== undefined)) {
      return;
    }

    event.preventDefault();
    for (const place of places) {
      place.cell.value = place.text;
    }

    this.typed();
  }

  rows() {
    return [...new Set(Object.keys(this.texts()).filter((field) => field.includes("|")).map((field) => field.split("|")[0]))];
  }

  later(milliseconds) {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.send(), milliseconds);
  }

  // One message at a time, in order. The cell that is being typed into goes along half-finished, so that its words are left alone.
  send(finished = false) {
    clearTimeout(this.timer);
    this.queue = this.queue.then(() => this.sendNow(finished));
    return this.queue;
  }

  async sendNow(finished) {
    const typed = this.differences();
    const active = finished ? null : document.activeElement?.dataset?.field ?? null;
    for (const field of this.half) {
      if (field !== active && this.find(field)) {
        typed[field] = this.find(field).value;
      }
    }

    if (this.gone) {
      return;
    }

    if (Object.keys(typed).length === 0) {
      this.settled("sent");
      return;
    }

    const sent = this.texts();
    try {
      const answer = await inTime(this.owner.invokeMethodAsync("Typed", typed, active));
      this.half = new Set(active !== null && active in typed ? [active] : []);
      for (const cell of this.fields()) {
        const field = cell.dataset.field;
        if (field in answer.texts && field !== active && cell.value === sent[field]) {
          cell.value = answer.texts[field];
        }
      }

      if (answer.state === "sent") {
        this.saved = answer.texts;
      }

      this.settled(answer.state);
    } catch {
      this.settled("not-sent");
    }
  }

  settled(state) {
    if (this.gone) {
      return;
    }

    this.keep();
    if (state === "not-sent") {
      this.show("not-sent");
      this.later(retryMilliseconds);
    } else if (state === "sent" && Object.keys(this.differences()).length > 0) {
      this.show("sending");
      this.later(idleMilliseconds);
    } else {
      this.show(state);
    }
  }

  async command(name, field) {
    const [row, column] = field.split("|");
    await this.send(true);
    try {
      await this.owner.invokeMethodAsync("Command", name, row, column ?? "");
    } catch {
      this.settled("not-sent");
    }
  }

  entered(event) {
    const cell = event.target;
    if (!cell.matches?.("input[data-field]")) {
      return;
    }

    cell.select();
    this.anchor ??= cell.dataset.field.split("|")[1] ?? null;
  }

  left(event) {
    const field = event.target.dataset?.field;
    if (field && (this.half.has(field) || (this.saved[field] ?? "") !== event.target.value)) {
      setTimeout(() => this.send(), 0);
    }
  }

  keydown(event) {
    const cell = event.target;
    if (event.isComposing || event.altKey || event.metaKey || !cell.matches?.("[data-field]")) {
      return;
    }

    const field = cell.dataset.field;
    if (event.key === "Enter" && event.ctrlKey) {
      event.preventDefault();
      this.command("save", field);
      return;
    }

    if (event.ctrlKey) {
      return;
    }

    if (!field.includes("|")) {
      if (event.key === "Enter") {
        event.preventDefault();
        this.step(cell, event.shiftKey ? -1 : 1);
      }

      return;
    }

    if (event.key in commands && takesCommands(cell)) {
      event.preventDefault();
      this.command(commands[event.key], field);
      return;
    }

    const [row, column] = field.split("|");
    const moves = {
      Enter: () => this.move(row, this.anchor ?? column, event.shiftKey ? -1 : 1, true),
      ArrowDown: () => this.move(row, column, 1, false),
      ArrowUp: () => this.move(row, column, -1, false),
      ArrowLeft: () => this.step(cell, -1),
      ArrowRight: () => this.step(cell, 1),
    };
    const move = moves[event.key];
    if (!move || (event.key === "ArrowLeft" && !atEdge(cell, 0)) || (event.key === "ArrowRight" && !atEdge(cell, cell.value.length))) {
      return;
    }

    event.preventDefault();
    if (event.key !== "Enter") {
      this.anchor = null;
    }

    move();
  }

  step(cell, by) {
    const fields = this.fields().filter((field) => field.offsetParent !== null && !field.disabled);
    fields[fields.indexOf(cell) + by]?.focus();
  }

  // Up and down in one column. Enter passes over rows marked not read, and after the last row goes on to signing.
  move(row, column, by, skip) {
    const rows = this.rows();
    let at = rows.indexOf(row) + by;
    while (skip && rows[at] !== undefined && this.find(`${rows[at]}|${column}`)?.dataset.skip !== undefined) {
      at += by;
    }

    if (rows[at] !== undefined) {
      this.find(`${rows[at]}|${column}`)?.focus();
    } else if (skip && by > 0) {
      this.root.querySelector("[data-after-grid]")?.focus();
    }
  }
}

// + - * / are never part of a size, a grade or a zone; in words they are letters.
function takesCommands(cell) {
  return cell.dataset.commands !== undefined || cell.inputMode === "decimal" || cell.inputMode === "numeric";
}

// A connection that died quietly never answers: what was sent then counts as not sent, and goes again.
function inTime(answer) {
  return Promise.race([answer, new Promise((_, reject) => setTimeout(() => reject(new Error("no answer")), patienceMilliseconds))]);
}

// Left and right leave a cell only from its edge, or when all of it is chosen.
function atEdge(cell, edge) {
  const { selectionStart, selectionEnd, value } = cell;
  return (selectionStart === 0 && selectionEnd === value.length) || (selectionStart === edge && selectionEnd === edge);
}
