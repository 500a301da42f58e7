// Keeps what is typed into a log or a concern in the browser, and what was pressed until the practice has it. Every form has the name of its
// wish ("command"): the server carries one out once, however often it arrives, so sending again is always safe. Without this script the forms
// are plain forms. Where the browser keeps nothing, what was pressed is kept by the page, as long as it is open.
import * as store from "./browser-store.js";

const queueKey = "rehabtrack-unsent";
const typedPrefix = "rehabtrack-typed:";
const retryMilliseconds = 10000;
const patienceMilliseconds = 8000;
const oldestTyped = 24 * 3600 * 1000;
const oldestUnsent = 14 * 24 * 3600 * 1000;
const tokenField = "__RequestVerificationToken";
const commandField = "command";

let sending = Promise.resolve();

const box = () => document.querySelector("[data-unsent]");
const who = () => document.body.dataset.who ?? "";
const pageOf = () => location.pathname;
const typedKey = () => typedPrefix + who() + pageOf();

const read = (key, otherwise) => {
  try {
    return JSON.parse(store.read(key) ?? "null") ?? otherwise;
  } catch {
    return otherwise;
  }
};

const say = (keeps) => {
  const place = box();
  if (place) {
    place.dataset.keeps = keeps ? "all" : "nothing";
    document.querySelector("[data-unsent-none]").hidden = keeps;
  }
};

const write = (key, value) => say(store.write(key, JSON.stringify(value)));

const all = () => read(queueKey, []).filter((item) => Date.now() - item.at < oldestUnsent);
const mine = () => all().filter((item) => item.who === who());
const put = (item) => write(queueKey, [...all().filter((other) => other.id !== item.id), item]);
const drop = (id) => write(queueKey, all().filter((item) => item.id !== id));

// What is said of one that waits for more than the network, and where that is done.
const moreOf = (item, texts) => {
  const page = new URL(item.page);
  return {
    refused: { text: texts.refused },
    wrong: { text: texts.wrong, to: item.page },
    "signed-out": { text: texts.signIn, to: `/sign-in?returnUrl=${encodeURIComponent(page.pathname + page.search)}` },
  }[item.state];
};

const lineOf = (item, place) => {
  const line = document.createElement("li");
  line.textContent = item.name;
  const more = moreOf(item, place.dataset);
  if (more) {
    const link = document.createElement(more.to ? "a" : "span");
    link.textContent = more.text;
    if (more.to) {
      link.href = more.to;
      // What only this page holds would go with it.
      link.target = place.dataset.keeps === "nothing" ? "_blank" : "";
    }

    line.append(" ", link);
  }

  return line;
};

const show = () => {
  const place = box();
  if (!place) {
    return;
  }

  const items = mine();
  place.hidden = items.length === 0;
  place.querySelector("[data-unsent-alarm]").hidden = !items.some((item) => item.alarm || item.state === "refused");
  place.querySelector("[data-unsent-network]").hidden = !items.some((item) => item.state === "lost");
  place.querySelector("ul").replaceChildren(...items.map((item) => lineOf(item, place)));
};

const saySent = () => {
  const sent = document.querySelector("[data-unsent-sent]");
  if (sent) {
    sent.hidden = mine().length > 0;
  }
};

const isDoor = (answer) => new URL(answer.url).pathname === "/sign-in";
const isBehindLink = (item) => new URL(item.page).pathname.startsWith("/s/");

// A token for the form, as who is here now gets it on its page: nobody sends what another person wrote. Behind a link there is nobody else.
const renew = async (item) => {
  const answer = await fetch(item.page, { credentials: "same-origin", signal: AbortSignal.timeout(patienceMilliseconds) });
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  return {
    isTheirs: isBehindLink(item) || page.body.dataset.who === item.who,
    token: page.querySelector(`input[name="${tokenField}"]`)?.value,
  };
};

// What became of it: "lost" on the way, "done", "wrong" (a field has to be changed), "signed-out" (nobody is signed in, or somebody else),
// or "refused".
const post = async (item, isAgain) => {
  let answer;
  try {
    answer = await fetch(item.to, {
      method: "POST",
      body: new URLSearchParams(item.body),
      credentials: "same-origin",
      signal: AbortSignal.timeout(patienceMilliseconds),
    });
    // Behind a link every refusal looks alike: the page of the form tells whether it is the link that is dead, or the token that is old.
    if ([400, 404].includes(answer.status) && !isAgain) {
      const { isTheirs, token } = await renew(item);
      if (!isTheirs) {
        return { state: "signed-out" };
      }

      if (token) {
        const body = new URLSearchParams(item.body);
        body.set(tokenField, token);
        item.body = body.toString();
        return post(item, true);
      }
    }
  } catch {
    return { state: "lost" };
  }

  if (answer.status >= 500 || answer.status === 429) {
    return { state: "lost" };
  }

  if (isDoor(answer) || answer.status === 403) {
    return { state: "signed-out" };
  }

  if (!answer.ok) {
    return { state: "refused" };
  }

  // A tap that was refused leads back to its page, with the reason.
  const state = new URL(answer.url).searchParams.has("refused") ? "refused" : answer.redirected ? "done" : "wrong";
  return { state, url: answer.url };
};

const settle = (item, outcome) => {
  if (outcome.state === "done") {
    drop(item.id);
    if (read(typedPrefix + item.who + item.path, {}).id === item.id) {
      store.remove(typedPrefix + item.who + item.path);
    }
  } else {
    put({ ...item, state: outcome.state });
  }
};

const waiting = ["lost", "signed-out"];

const sendAll = (states = waiting) => {
  sending = sending.then(async () => {
    for (const item of mine().filter((one) => states.includes(one.state))) {
      const outcome = await post(item);
      settle(item, outcome);
      show();
      if (waiting.includes(outcome.state)) {
        return;
      }

      saySent();
    }
  });
  return sending;
};

const fieldsOf = (form) => [...new FormData(form)].filter(([name]) => !name.startsWith("_") && name !== commandField);

const keepTyped = (form) =>
  write(typedKey(), { id: new FormData(form).get(commandField), fields: fieldsOf(form), at: Date.now() });

const bringBack = (form) => {
  const typed = read(typedKey(), null);
  if (!typed || Date.now() - typed.at > oldestTyped || mine().some((item) => item.id === typed.id && waiting.includes(item.state))) {
    return;
  }

  let changed = false;
  for (const field of form.querySelectorAll("input, select, textarea")) {
    const values = typed.fields.filter(([name]) => name === field.name).map(([, value]) => value);
    if (field.type === "checkbox" || field.type === "radio") {
      const is = values.includes(field.value);
      changed ||= field.checked !== is;
      field.checked = is;
    } else if (field.type !== "hidden" && values.length > 0) {
      changed ||= field.value !== values[0];
      field.value = values[0];
    }
  }

  form.elements[commandField].value = typed.id;
  const said = document.querySelector("[data-unsent-typed]");
  if (said && changed) {
    said.hidden = false;
  }
};

const submit = async (event) => {
  const form = event.target;
  if (!form.matches?.("form[data-unsent-form]") || !box()) {
    return;
  }

  const body = new URLSearchParams(new FormData(form));
  const item = {
    id: body.get(commandField),
    who: who(),
    to: form.action,
    page: location.href.split("#")[0],
    path: pageOf(),
    name: form.dataset.unsentForm,
    alarm: "unsentConcern" in form.dataset,
    body: body.toString(),
    at: Date.now(),
    state: "lost",
  };
  put(item);
  event.preventDefault();
  event.stopPropagation();
  form.inert = true;
  const outcome = await post(item);
  settle(item, outcome);
  if (outcome.state === "done") {
    location.assign(outcome.url);
  } else if (waiting.includes(outcome.state)) {
    // The form stays shut: what was pressed may have arrived, and a second version of one wish would be taken for the first.
    show();
    box().scrollIntoView({ block: "start" });
  } else if (outcome.url) {
    // Nothing was written. The page of the answer shows why.
    drop(item.id);
    form.inert = false;
    if (outcome.state === "wrong") {
      form.submit();
    } else {
      location.assign(outcome.url);
    }
  } else {
    // Nobody took it, and no page says why: what was typed stays in sight.
    form.inert = false;
    show();
    box().scrollIntoView({ block: "start" });
  }
};

const begin = () => {
  say(store.keeps());
  show();
  document.querySelectorAll("form[data-unsent-typed-form]").forEach(bringBack);
  sendAll();
};

document.addEventListener("submit", submit, true);
document.addEventListener("input", (event) => {
  const form = event.target.closest?.("form[data-unsent-typed-form]");
  if (form) {
    keepTyped(form);
  }
});
document.addEventListener("click", (event) => {
  if (event.target.closest?.("[data-unsent-send]")) {
    sendAll();
  } else if (event.target.closest?.("[data-unsent-afresh]")) {
    store.remove(typedKey());
    location.reload();
  }
});
document.addEventListener("visibilitychange", () => sendAll());
window.addEventListener("online", () => sendAll());
// Who has to sign in is not asked for it again and again.
setInterval(() => sendAll(["lost"]), retryMilliseconds);
window.Blazor?.addEventListener?.("enhancedload", begin);
begin();
