// Moves what is open in a surface or stands on it, by hand or by keys; it is saved when it is let go.
import { follow } from "/static/newer.js";

/** @typedef {{fields: Record<string, string>, fault: string, layers?: string, foot?: [string, string, string][]}} Answer */
/** @typedef {{node: SVGGElement, number: string, box: number[], du: number, dv: number, on: string[],
 * before: {drawing: SVGSVGElement, foot: (string | null)[]}}} Move */

const drawing = /** @type {HTMLElement} */ (document.getElementById("drawing"));
const svg = /** @type {SVGSVGElement} */ (drawing.querySelector("svg"));
const told = /** @type {HTMLElement} */ (document.getElementById("told"));
const guides = /** @type {SVGGElement} */ (svg.querySelector("#guides"));
/** @param {SVGSVGElement} from @returns {[string, number, string][]} */
const snapsOf = (from) => JSON.parse(from.dataset.snaps ?? "[]");
let snaps = snapsOf(svg);
const step = Number(drawing.dataset.step);
const coarse = Number(drawing.dataset.coarse);
const top_ = Number(svg.dataset.top);
const NEAR_PX = 9;

/** @type {Move | null} */
let move = null;
/** @type {Move | null} */
let next = null;
let busy = false;

const layers = /** @type {HTMLFormElement | null} */ (document.getElementById("layers-form"));
layers?.addEventListener("change", () => layers.requestSubmit());
layers?.querySelector("button")?.setAttribute("hidden", "");

/** @param {Move} at */
const formOf = (at) =>
  /** @type {HTMLFormElement} */ (document.querySelector(`#entry-${at.number} form[action$="/opening"]`));

/** Millimetres of the surface in one pixel of the screen. */
const perPixel = () => 1 / (svg.getScreenCTM()?.a ?? 1);

/**
 * The nearest line that an edge or the middle of what is moved may stop at.
 * @param {string} axis @param {number[]} places @param {string} own the name it must not stop at
 * @returns {{by: number, name: string, at: number} | null}
 */
function nearest(axis, places, own) {
  const reach = NEAR_PX * perPixel();
  let best = null;
  for (const [along, at, name] of snaps) {
    if (along !== axis || name === own) continue;
    for (const place of places) {
      const by = at - place;
      if (Math.abs(by) <= reach && (!best || Math.abs(by) < Math.abs(best.by))) best = { by, name, at };
    }
  }
  return best;
}

/** @param {Move} at @param {number} du @param {number} dv @param {boolean} snapping */
function place(at, du, dv, snapping) {
  const [left, low, right, high] = at.box;
  const own = at.node.querySelector(".name")?.textContent ?? "";
  at.on = [];
  guides.replaceChildren();
  if (snapping) {
    const across = nearest("u", [left + du, right + du, (left + right) / 2 + du], own);
    const up = nearest("v", [low + dv, high + dv, (low + high) / 2 + dv], own);
    if (across) guide("u", across.at);
    if (up) guide("v", up.at);
    if (across) at.on.push(across.name);
    if (up) at.on.push(up.name);
    du += across?.by ?? 0;
    dv += up?.by ?? 0;
  }
  at.du = du;
  at.dv = dv;
  at.node.setAttribute("transform", `translate(${du} ${-dv})`);
  send(at);
}

/** @param {string} axis @param {number} at */
function guide(axis, at) {
  const box = svg.viewBox.baseVal;
  const line = document.createElementNS("http://www.w3.org/2000/svg", "line");
  const ends = axis === "u" ? [at, box.y, at, box.y + box.height] : [box.x, top_ - at, box.x + box.width, top_ - at];
  ["x1", "y1", "x2", "y2"].forEach((name, index) => line.setAttribute(name, String(ends[index])));
  guides.append(line);
}

/** One request at a time, the newest wins. @param {Move} at */
async function send(at) {
  next = at;
  if (busy) return;
  busy = true;
  try {
    while (next) {
      const asked = next;
      next = null;
      const began = performance.now();
      const answer = await fetch(`${drawing.dataset.job}/light`, {
        method: "POST",
        headers: { "x-token": drawing.dataset.token ?? "" },
        body: new URLSearchParams({
          surface: drawing.dataset.surface ?? "",
          base: drawing.dataset.base ?? "",
          view: drawing.dataset.view ?? "",
          number: asked.number,
          du: asked.du.toFixed(4),
          dv: asked.dv.toFixed(4),
        }),
      });
      if (answer.status === 200) show(asked, /** @type {Answer} */ (await answer.json()));
      performance.measure("redrawn", { start: began });
    }
  } finally {
    busy = false;
  }
}

/** Exchange what lies under and over what moves. @param {ParentNode | null} from */
function putLayers(from) {
  for (const id of ["#layers", "#flags"]) {
    const fresh = from?.querySelector(id);
    if (fresh) svg.querySelector(id)?.replaceWith(document.importNode(fresh, true));
  }
}

/** @param {Move} at @param {Answer} answer */
function show(at, answer) {
  if (move !== at) return;
  const form = formOf(at);
  for (const [name, value] of Object.entries(answer.fields)) {
    const field = /** @type {HTMLInputElement | null} */ (form.elements.namedItem(name));
    if (field) field.value = value;
  }
  const where = Object.values(answer.fields).join(", ");
  const on = at.on.length ? ` · ${told.dataset.on} ${at.on.join(", ")}` : "";
  told.textContent = answer.fault ? answer.fault : `${where}${on}`;
  if (answer.layers) putLayers(new DOMParser().parseFromString(answer.layers, "image/svg+xml"));
  for (const [key, , figure] of answer.foot ?? []) {
    const one = document.querySelector(`[data-figure="${key}"]`);
    if (one) one.textContent = figure;
  }
}

const foots = () => [...document.querySelectorAll("[data-figure]")];

/** @param {SVGGElement} node @returns {Move} */
const begun = (node) => ({
  node,
  before: { drawing: /** @type {SVGSVGElement} */ (svg.cloneNode(true)), foot: foots().map((one) => one.textContent) },
  number: node.dataset.number ?? "",
  box: JSON.parse(node.dataset.box ?? "[]"),
  du: 0,
  dv: 0,
  on: [],
});

/** Saves by the form that also works without scripts. @param {Move} at */
function save(at) {
  const form = formOf(at);
  for (const name of /** @type {const} */ (["du", "dv"])) {
    const field = document.createElement("input");
    field.type = "hidden";
    field.name = name;
    field.value = at[name].toFixed(4);
    form.append(field);
  }
  form.submit();
}

/** Leave everything as it was before. @param {Move} at */
function back(at) {
  at.node.removeAttribute("transform");
  at.node.classList.remove("moving");
  guides.replaceChildren();
  move = null;
  next = null;
  formOf(at).reset();
  putLayers(at.before.drawing);
  foots().forEach((one, index) => { one.textContent = at.before.foot[index] ?? ""; });
  told.textContent = told.dataset.keys ?? "";
}

for (const node of /** @type {NodeListOf<SVGGElement>} */ (svg.querySelectorAll("#things [data-number]"))) {
  /** @type {{x: number, y: number, du: number, dv: number} | null} */
  let from = null;
  node.addEventListener("pointerdown", (event) => {
    if (event.button) return;
    if (!move || move.node !== node) move = begun(node);
    from = { x: event.clientX, y: event.clientY, du: move.du, dv: move.dv };
    node.setPointerCapture(event.pointerId);
    node.classList.add("moving");
    event.preventDefault();
    node.focus();
  });
  node.addEventListener("pointermove", (event) => {
    if (!from || !move) return;
    const per = perPixel();
    place(move, from.du + (event.clientX - from.x) * per, from.dv - (event.clientY - from.y) * per, true);
  });
  node.addEventListener("pointerup", () => {
    if (!from || !move) return;
    from = null;
    if (move.du || move.dv) save(move);
    else /** @type {HTMLDetailsElement} */ (document.getElementById(`entry-${move.number}`)).open = true;
  });
  node.addEventListener("pointercancel", () => {
    if (from && move) back(move);
    from = null;
  });
  node.addEventListener("keydown", (event) => {
    const ways = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
    const way = ways[/** @type {keyof typeof ways} */ (event.key)];
    if (way) {
      event.preventDefault();
      if (!move || move.node !== node) move = begun(node);
      node.classList.add("moving");
      const far = event.shiftKey ? coarse : step;
      place(move, move.du + way[0] * far, move.dv + way[1] * far, false);
    } else if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      if (move && move.node === node && (move.du || move.dv)) save(move);
      else /** @type {HTMLDetailsElement} */ (document.getElementById(`entry-${node.dataset.number}`)).open = true;
    } else if (event.key === "Escape" && move && move.node === node) back(move);
  });
  node.addEventListener("focus", () => {
    if (!move) told.textContent = told.dataset.keys ?? "";
  });
}

// The whole plan follows by itself; it is shown when it is there and nothing is being moved.
follow({
  fits: (page) => {
    const fresh = /** @type {HTMLElement | null} */ (page.getElementById("drawing"));
    // What somebody saved meanwhile is of another document than what is typed here.
    if (move || !fresh || fresh.dataset.base !== drawing.dataset.base) return false;
    putLayers(fresh);
    snaps = snapsOf(/** @type {SVGSVGElement} */ (fresh.querySelector("svg")));
    return true;
  },
});
