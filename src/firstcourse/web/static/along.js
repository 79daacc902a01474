// "Take it along": keeps the pages, tickets and drawings of one job on this phone, for where there is no network.
const box = /** @type {HTMLElement} */ (document.getElementById("along"));
const { job = "", plan = "" } = box.dataset;
const name = `site ${job}`, MARK = "/plan";
const [take, leave] = /** @type {HTMLButtonElement[]} */ ([...box.querySelectorAll("button")]);
const said = /** @type {HTMLElement} */ (box.querySelector("[role=status]"));

/** @param {string} key @param {string} [put] */
const tell = (key, put = "") => { said.textContent = (box.dataset[key] ?? "").replace("#", put); };

async function taken() {
  if (!(await caches.has(name))) return "";
  const mark = await (await caches.open(name)).match(MARK);
  return mark ? mark.text() : "";
}

async function takeAlong() {
  if (take) take.disabled = true;
  try {
    await navigator.serviceWorker.register("/worker.js", { scope: "/" });
    await navigator.serviceWorker.ready;
    const answer = await fetch(`/jobs/${job}/site/along`);
    if (!answer.ok || answer.redirected) throw new Error(String(answer.status));
    /** @type {string[]} */
    const all = await answer.json();
    const cache = await caches.open(name);
    let count = 0;
    for (const path of all) {
      const page = await fetch(path, { cache: "reload" });
      if (!page.ok || page.redirected) throw new Error(path);
      await cache.put(new URL(path, location.href).href, page);
      count += 1;
      tell("going", `${count}/${all.length}`);
    }
    // Only now: what was taken halfway is taken anew.
    await cache.put(MARK, new Response(plan));
  } catch {
    tell("failed");
    if (take) take.disabled = false;
    return;
  }
  await show();
}

async function show() {
  const has = await taken();
  tell(has === plan ? "taken" : has ? "older" : "bare");
  if (take) { take.disabled = false; take.hidden = has === plan; }
  if (leave) leave.hidden = !has;
  document.body.dataset.along = has === plan ? "yes" : "no";
}

box.hidden = false;
if (!("serviceWorker" in navigator) || !("caches" in self)) {
  tell("unsafe");
  for (const button of [take, leave]) button?.remove();
} else {
  take?.addEventListener("click", () => void takeAlong());
  leave?.addEventListener("click", async () => { await caches.delete(name); await show(); });
  await show();
}
