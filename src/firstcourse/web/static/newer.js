// Shows what came of planning without loading the page again. Parts of the page that changed are exchanged; one that
// somebody types in, has open or touches stays as it is, and a line says that a newer plan is there.

/** @typedef {{state: string, revision: number, over: boolean, steps: string[]} | null} Told */

/** A finger or a mouse button is down: what it is about to hit must not go. */
let touching = false;
addEventListener("pointerdown", () => { touching = true; }, true);
for (const end of ["pointerup", "pointercancel"]) addEventListener(end, () => setTimeout(() => { touching = false; }), true);

/** @param {Element} one a field that holds what its page did not come with */
const typed = (one) =>
  one instanceof HTMLSelectElement
    ? [...one.options].some((option) => option.selected !== option.defaultSelected) && one.selectedIndex > 0
    : one instanceof HTMLTextAreaElement
      ? one.value !== one.defaultValue
      : one instanceof HTMLInputElement && one.type !== "hidden" && (one.value !== one.defaultValue || one.checked !== one.defaultChecked);

/** @param {Element} part */
const inUse = (part) =>
  (part.contains(document.activeElement) && document.activeElement?.matches("input, select, textarea")) ||
  part.querySelector("details[open] form") !== null ||
  [...part.querySelectorAll("input, select, textarea")].some(typed);

/** A part with nothing opened. @param {Element} part */
function asSent(part) {
  const copy = /** @type {Element} */ (part.cloneNode(true));
  for (const one of copy.querySelectorAll("details[open]")) one.removeAttribute("open");
  return copy;
}

/** Put a part in place of the one that is shown; what had the keys keeps them. @param {Element} own @param {Element} fresh */
function exchange(own, fresh) {
  const all = "a, button, summary";
  const had = [...own.querySelectorAll(all)].find((one) => one === document.activeElement)?.textContent;
  const open = new Set([...own.querySelectorAll("details[open] > summary")].map((one) => one.textContent));
  const put = document.importNode(fresh, true);
  for (const one of put.querySelectorAll("details > summary"))
    if (open.has(one.textContent)) /** @type {HTMLDetailsElement} */ (one.parentElement).open = true;
  own.replaceWith(put);
  const again = had === undefined ? null : [...put.querySelectorAll(all)].find((one) => one.textContent === had);
  /** @type {HTMLElement | null | undefined} */ (again)?.focus({ preventScroll: true });
}

/** Say that a newer plan is there, with a button that shows it. */
export function sayNewer() {
  const line = document.getElementById("newer");
  if (line) line.hidden = false;
}

/**
 * Ask for this page as it is now, and exchange what changed.
 * @param {(page: Document) => boolean} fits whether what is shown may be exchanged with parts of that page
 */
async function renew(fits) {
  let page;
  try {
    const answer = await fetch(location.href, { headers: { accept: "text/html" } });
    if (!answer.ok || answer.redirected) throw new Error(String(answer.status));
    page = new DOMParser().parseFromString(await answer.text(), "text/html");
  } catch {
    sayNewer();
    return;
  }
  while (touching) await new Promise((resolve) => setTimeout(resolve, 50));
  if (!fits(page)) {
    sayNewer();
    return;
  }
  for (const fresh of page.querySelectorAll("[data-part]")) {
    const own = document.querySelector(`[data-part="${fresh.getAttribute("data-part")}"]`);
    if (!own || asSent(own).isEqualNode(asSent(fresh))) continue;
    if (inUse(own)) sayNewer();
    else exchange(own, fresh);
  }
}

/**
 * Follow how a job is planned, as the element `standing` says, and show what came of it.
 * @param {{onTold?: (told: NonNullable<Told>) => void, fits?: (page: Document) => boolean}} how
 */
export function follow({ onTold = () => undefined, fits = () => true }) {
  const standing = document.getElementById("standing");
  if (!standing) return;
  let shown = standing.dataset.shown ?? "";
  /** One page is asked for after the other, so that an older one is never put over a newer. */
  let last = Promise.resolve();
  const events = new EventSource(standing.dataset.events ?? "");
  events.onmessage = (event) => {
    const told = /** @type {Told} */ (JSON.parse(event.data));
    const over = !told || told.over;
    if (over) events.close();
    // The plan can be read as soon as it is verified; its papers come after.
    const fresh = told?.state === "papers" && String(told.revision) !== shown;
    if (fresh) shown = String(told.revision);
    if (over || fresh) last = last.then(() => renew(fits));
    if (told) onTold(told);
  };
}
