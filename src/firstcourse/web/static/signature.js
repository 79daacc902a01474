// A signature drawn with a finger; a typed name alone is enough where none is drawn.
const pad = document.getElementById("pad");
const drawn = /** @type {SVGSVGElement | null} */ (document.querySelector("svg.pad"));
const field = /** @type {HTMLInputElement | null} */ (document.getElementById("signature"));
const MOST = 19000;
if (pad && drawn && field) {
  const path = /** @type {SVGPathElement} */ (drawn.querySelector("path"));
  let going = false;
  /** @param {PointerEvent} event @param {string} step */
  const add = (event, step) => {
    const matrix = drawn.getScreenCTM();
    if (!matrix || field.value.length > MOST) return;
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    const x = Math.round(Math.min(Math.max(at.x, 0), 600)), y = Math.round(Math.min(Math.max(at.y, 0), 200));
    field.value += `${field.value ? " " : ""}${step}${x} ${y}`;
    path.setAttribute("d", field.value);
  };
  drawn.addEventListener("pointerdown", (event) => {
    going = true;
    drawn.setPointerCapture(event.pointerId);
    add(event, "M");
    add(event, "L");
  });
  drawn.addEventListener("pointermove", (event) => { if (going) add(event, "L"); });
  for (const end of ["pointerup", "pointercancel"]) drawn.addEventListener(end, () => { going = false; });
  document.getElementById("again")?.addEventListener("click", () => { field.value = ""; path.setAttribute("d", ""); });
  pad.hidden = false;
}
