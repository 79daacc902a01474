// Large keys for a reading: they write into the field that is next, so that one thumb is enough.
for (const tape of document.querySelectorAll(".tape")) {
  const keys = /** @type {HTMLElement} */ (tape.querySelector(".keys"));
  const fields = /** @type {HTMLInputElement[]} */ ([...tape.querySelectorAll(".whole input")]);
  let at = 0;
  keys.hidden = false;
  /** @param {number} to */
  const go = (to) => {
    at = (to + fields.length) % fields.length;
    fields.forEach((field, index) => field.classList.toggle("here", index === at));
  };
  fields.forEach((field, index) => {
    field.addEventListener("focus", () => go(index));
    // The phone's own keys would cover ours; whoever has a keyboard types all the same.
    if (matchMedia("(pointer: coarse)").matches) field.inputMode = "none";
  });
  keys.addEventListener("click", (event) => {
    const key = /** @type {HTMLElement} */ (event.target).dataset.key;
    const field = fields[at];
    if (!key || !field) return;
    if (key === "next") go(at + 1);
    else if (key === "back") field.value = field.value.slice(0, -1);
    else if (field.value.length < field.maxLength) field.value += key;
  });
  go(0);
}
