// A tap on the drawing says where a photo was taken; the two sliders say the same without it.
const drawn = /** @type {SVGSVGElement & HTMLElement} */ (document.querySelector("#pinned"));
const pin = /** @type {SVGCircleElement} */ (document.querySelector("#here"));
const [across, up] = ["across", "up"].map((id) => /** @type {HTMLInputElement} */ (document.getElementById(id)));
const { width, height } = drawn.viewBox.baseVal;

function show() {
  if (!across || !up) return;
  pin.setAttribute("cx", String(Number(across.value) / 1000 * width));
  pin.setAttribute("cy", String((1 - Number(up.value) / 1000) * height));
}
drawn.addEventListener("click", (event) => {
  const matrix = drawn.getScreenCTM();
  if (!matrix || !across || !up) return;
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
  across.value = String(Math.round(at.x / width * 1000));
  up.value = String(Math.round((1 - at.y / height) * 1000));
  show();
});
for (const slider of [across, up]) slider?.addEventListener("input", show);
show();
