"use strict";
(() => {
  const { plan, name, unit, example, format } = document.body.dataset;
  const words = document.getElementById("words").dataset;
  const key = `${format} ${plan}`;
  const LENGTH = /^(?:\d+'\s*)?(?:\d+[ -]\d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?)\s*("|in|mm|cm|m)?$|^\d+'$/;
  const state = document.getElementById("state");
  let keeps = true;

  function load() {
    try {
      const kept = JSON.parse(localStorage.getItem(key) ?? "null");
      if (kept && typeof kept.ticks === "object" && typeof kept.measured === "object") return kept;
    } catch { keeps = false; }
    return { ticks: {}, measured: {} };
  }
  const kept = load();

  function keep() {
    try { localStorage.setItem(key, JSON.stringify(kept)); } catch { keeps = false; }
    state.textContent = keeps ? words.kept : words.lost;
    state.classList.toggle("lost", !keeps);
  }
  const now = () => new Date().toISOString().replace(/\.\d+Z$/, "Z");

  function tick(id, is) {
    if (is) kept.ticks[id] ??= now(); else delete kept.ticks[id];
    keep();
  }

  // How far each part is: boxes ticked of boxes, tiles set of tiles.
  function count(part) {
    const boxes = [...part.querySelectorAll("input[data-tick]")];
    const tiles = [...part.querySelectorAll("[data-tiles]")];
    const set = boxes.filter((box) => box.checked).length;
    const out = part.querySelector("summary output");
    if (out && boxes.length) out.textContent = `${set}/${boxes.length}`;
    for (const shown of tiles) {
      const ids = shown.dataset.tiles.split("\n");
      shown.querySelector("output").textContent = `${ids.filter((id) => kept.ticks[id]).length}/${ids.length}`;
    }
  }

  function paint(part) {
    for (const box of part.querySelectorAll("input[data-part]"))
      for (const shape of part.querySelectorAll(`svg polygon[data-name="${CSS.escape(box.dataset.part)}"]`))
        shape.classList.toggle("set", box.checked);
    for (const svg of part.querySelectorAll("[data-set] svg"))
      for (const shape of svg.querySelectorAll("polygon[data-name]"))
        shape.classList.toggle("set", `tile/${shape.dataset.name}` in kept.ticks);
  }

  for (const part of document.querySelectorAll("details")) {
    for (const box of part.querySelectorAll("input[data-tick]")) {
      box.checked = box.dataset.tick in kept.ticks;
      box.addEventListener("change", () => { tick(box.dataset.tick, box.checked); count(part); paint(part); });
    }
    for (const blank of part.querySelectorAll("input[data-entry]")) {
      const id = blank.dataset.entry;
      blank.value = kept.measured[id]?.value ?? "";
      blank.addEventListener("change", () => enter(blank, id));
    }
    count(part);
    paint(part);
  }

  function enter(blank, id) {
    let value = blank.value.trim().replace(/[\u2032\u2019]/g, "'").replace(/[\u2033\u201d]|''/g, '"');
    const isLength = blank.dataset.kind === "length";
    const found = isLength && value ? LENGTH.exec(value) : null;
    const wrong = isLength && value !== "" && !found;
    const told = blank.parentElement.querySelector("[role=alert]");
    blank.setAttribute("aria-invalid", String(wrong));
    told.textContent = wrong ? words.wrong.replace("{example}", example) : "";
    if (wrong) { delete kept.measured[id]; keep(); return; }
    if (found && !found[1] && !value.endsWith("'")) value += unit;
    blank.value = value;
    if (value) kept.measured[id] = { value, at: now() }; else delete kept.measured[id];
    keep();
  }

  // One drawing at a time fills the screen; it goes back to where it was.
  const dialog = document.querySelector("dialog");
  const pan = dialog.querySelector(".pan");
  let from = null, wide = 0;
  function size(by) {
    wide = Math.min(Math.max(wide * by, innerWidth * 0.6), innerWidth * 12);
    pan.firstElementChild.style.width = `${wide}px`;
  }
  for (const button of document.querySelectorAll("button.zoom"))
    button.addEventListener("click", () => {
      from = button;
      const svg = button.querySelector("svg");
      dialog.setAttribute("aria-label", button.getAttribute("aria-label"));
      dialog.toggleAttribute("data-set", "set" in button.dataset);
      pan.append(svg);
      wide = Math.max(parseFloat(svg.getAttribute("width")) * 96 / 25.4 * 1.8, innerWidth);
      size(1);
      dialog.showModal();
    });
  dialog.addEventListener("close", () => {
    const svg = pan.firstElementChild;
    svg.style.width = "";
    from.prepend(svg);
    const part = from.closest("details");
    count(part);
    paint(part);
    from.focus();
  });
  for (const [id, by] of [["larger", 1.5], ["smaller", 1 / 1.5]])
    document.getElementById(id).addEventListener("click", () => size(by));
  document.getElementById("close").addEventListener("click", () => dialog.close());
  pan.addEventListener("click", (event) => {
    const shape = event.target.closest("polygon[data-name]");
    if (!shape || !dialog.hasAttribute("data-set")) return;
    const id = `tile/${shape.dataset.name}`;
    const part = from.closest("details");
    const ids = part.querySelector("[data-tiles]").dataset.tiles.split("\n");
    if (!ids.includes(id)) return;
    tick(id, !(id in kept.ticks));
    for (const each of pan.querySelectorAll(`polygon[data-name="${CSS.escape(shape.dataset.name)}"]`))
      each.classList.toggle("set", id in kept.ticks);
    count(part);
  });

  for (const link of document.querySelectorAll("nav a"))
    link.addEventListener("click", () => {
      const first = document.querySelector(`${link.getAttribute("href")} details`);
      if (first) first.open = true;
    });

  document.getElementById("save").addEventListener("click", () => {
    const told = document.getElementById("told");
    if (!Object.keys(kept.ticks).length && !Object.keys(kept.measured).length) { told.textContent = words.nothing; return; }
    const whole = { format, version: 1, plan, job: name, saved: now(), ticks: kept.ticks, measured: kept.measured };
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([JSON.stringify(whole, null, 1) + "\n"], { type: "application/json" }));
    link.download = `ticked-${plan.slice(0, 12)}.json`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10000);
    told.textContent = words.saved.replace("{file}", link.download);
  });
  keep();
})();
