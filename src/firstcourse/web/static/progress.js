// Marks the steps as they begin, and shows what came of them when planning is over.
import { follow } from "/static/newer.js";

follow({
  onTold: (told) => {
    for (const step of document.querySelectorAll("#steps [data-step]"))
      step.classList.toggle("begun", told.steps.includes(step.getAttribute("data-step") ?? ""));
  },
});
