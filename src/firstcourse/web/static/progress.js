// Marks the steps as they begin, and shows what came of them when planning is over.
const standing = /** @type {HTMLElement} */ (document.getElementById("standing"));
const events = new EventSource(standing.dataset.events ?? "");
events.onmessage = (event) => {
  const told = JSON.parse(event.data);
  // The plan can be read as soon as it is verified; its papers come after.
  const fresh = told && told.state === "papers" && String(told.revision) !== standing.dataset.shown;
  if (!told || told.over || fresh) {
    events.close();
    location.reload();
    return;
  }
  for (const step of document.querySelectorAll("#steps [data-step]")) {
    step.classList.toggle("begun", told.steps.includes(step.getAttribute("data-step")));
  }
};
