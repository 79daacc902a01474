// Ticks and blanks on site: kept on this phone first, sent when there is a network, and gone from here only when
// the server has answered that they are on its disk.
/** @typedef {{id: string, thing: string, value: string, after: string[], revision: number, plan: string, at: string}} Told */
/** @typedef {Told & {job: string, who: string, why?: string}} Waiting */

const said = /** @type {HTMLElement} */ (document.getElementById("phone"));
const { job = "", who = "", token = "", plan = "", revision = "0" } = said.dataset;
const AT_ONCE = 200, AGAIN_MS = 15000;

/** @returns {Promise<IDBDatabase>} */
function opened() {
  return new Promise((resolve, reject) => {
    const asked = indexedDB.open("firstcourse-site", 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore("waiting", { keyPath: "id" });
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
  });
}
const shelf = opened();
shelf.catch(() => undefined);

/**
 * Done when it is on the phone's own disk.
 * @param {(store: IDBObjectStore) => void} change
 */
async function write(change) {
  const database = await shelf;
  return new Promise((resolve, reject) => {
    const work = database.transaction("waiting", "readwrite", { durability: "strict" });
    work.oncomplete = resolve;
    work.onerror = work.onabort = () => reject(work.error);
    change(work.objectStore("waiting"));
  });
}

/** @returns {Promise<Waiting[]>} */
async function waiting() {
  const database = await shelf;
  return new Promise((resolve, reject) => {
    const asked = database.transaction("waiting").objectStore("waiting").getAll();
    asked.onsuccess = () => resolve(asked.result.sort((one, other) => one.at.localeCompare(other.at)));
    asked.onerror = () => reject(asked.error);
  });
}

function newId() {
  return [...crypto.getRandomValues(new Uint8Array(16))].map((one) => one.toString(16).padStart(2, "0")).join("");
}

/** @param {string} text @param {string} [put] */
const words = (text, put = "") => (said.dataset[text] ?? "").replace("#", put);

async function tell() {
  said.hidden = false;
  let all;
  try { all = await waiting(); } catch { said.textContent = words("lost"); return; }
  const own = all.filter((one) => one.job === job && one.who === who);
  const refused = own.filter((one) => one.why), others = all.filter((one) => one.who !== who).length;
  const lines = [own.length > refused.length ? words("waits", String(own.length - refused.length)) : words("kept")];
  if (others) lines.push(words("others", String(others)));
  said.replaceChildren(lines.join(" "));
  said.dataset.waiting = String(own.length);
  for (const one of refused) {
    const line = document.createElement("span"), button = document.createElement("button");
    line.className = "fault";
    line.textContent = `${one.thing}: ${one.value}. ${words("refused", one.why)}`;
    button.className = "quiet";
    button.textContent = words("leave");
    button.onclick = async () => { await write((store) => store.delete(one.id)); location.reload(); };
    said.append(line, button);
  }
}

let busy = false, more = false;
async function send() {
  if (busy) { more = true; return; }
  busy = true;
  try {
    do {
      more = false;
      const own = (await waiting()).filter((one) => one.job === job && one.who === who && !one.why);
      for (let at = 0; at < own.length; at += AT_ONCE) await sendSome(own.slice(at, at + AT_ONCE));
    } while (more);
  } catch { /* no network: they stay here and are sent later */ } finally { busy = false; }
  await tell();
}

/** @param {Waiting[]} some */
async function sendSome(some) {
  const events = some.map(({ job: _job, who: _who, why: _why, ...told }) => told);
  const answer = await fetch(`/jobs/${job}/site/events`, {
    method: "POST", headers: { "x-token": token }, body: new URLSearchParams({ events: JSON.stringify(events) }),
    redirect: "error",
  });
  if (!answer.ok) throw new Error(String(answer.status));
  /** @type {{kept: string[], refused: {id: string, why: string}[]}} */
  const told = await answer.json();
  // Pages that were taken along show from now on what was sent.
  await Promise.allSettled([location.href, `/jobs/${job}/site`].map((page) => fetch(page)));
  await write((store) => {
    for (const id of told.kept) store.delete(id);
    for (const { id, why } of told.refused) {
      const one = some.find((each) => each.id === id);
      if (one) store.put({ ...one, why });
    }
  });
}

/** @param {string} thing @param {string} value @param {string} after */
async function keep(thing, value, after) {
  const id = newId();
  /** @type {Waiting} */
  const one = {
    id, thing, value, after: after.split(" ").filter(Boolean), job, who, plan, revision: Number(revision),
    at: new Date().toISOString(),
  };
  await write((store) => store.put(one));
  return id;
}

/** @param {HTMLElement} button @param {boolean} is */
function show(button, is) {
  button.setAttribute("aria-pressed", String(is));
  /** @type {HTMLButtonElement} */ (button).value = [button.dataset.after, button.dataset.thing, is ? "" : "yes"].join("|");
}

/** @param {HTMLElement} button */
async function tick(button) {
  const is = button.getAttribute("aria-pressed") !== "true";
  button.dataset.after = await keep(button.dataset.thing ?? "", is ? "yes" : "", button.dataset.after ?? "");
  show(button, is);
  await tell();
  void send();
}

async function begin() {
  // What waits here is shown as it was entered, also where the page is older than that.
  for (const one of await waiting()) {
    if (one.job !== job || one.who !== who || one.plan !== plan || one.why) continue;
    const here = /** @type {HTMLElement | null} */ (document.querySelector(`[data-thing="${CSS.escape(one.thing)}"]`));
    if (!here) continue;
    here.dataset.after = one.id;
    if (here instanceof HTMLInputElement) here.value = one.value; else show(here, one.value === "yes");
  }
  for (const form of document.querySelectorAll("form.ticks")) {
    form.addEventListener("submit", (event) => {
      const button = /** @type {SubmitEvent} */ (event).submitter;
      if (!button?.dataset.thing) return;
      event.preventDefault();
      void tick(button);
    });
  }
  for (const form of document.querySelectorAll("form.blanks")) {
    const fields = /** @type {HTMLInputElement[]} */ ([...form.querySelectorAll("input[data-thing]")]);
    /** @param {HTMLInputElement} field */
    const note = async (field) => {
      if (field.value.trim() === field.defaultValue.trim()) return;
      field.defaultValue = field.value;
      field.dataset.after = await keep(field.dataset.thing ?? "", field.value.trim(), field.dataset.after ?? "");
      await tell();
      void send();
    };
    for (const field of fields) field.addEventListener("change", () => void note(field));
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      for (const field of fields) void note(field);
    });
  }
  addEventListener("online", () => void send());
  setInterval(() => { if (Number(said.dataset.waiting)) void send(); }, AGAIN_MS);
  await tell();
  await send();
}
// Where the phone keeps nothing the forms are sent as they stand.
begin().catch(tell);
