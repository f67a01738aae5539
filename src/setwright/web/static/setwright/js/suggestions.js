// What is suggested to be avoided follows from whether it is an exercise, a pattern or an action.

const LISTS = { exercise: "exercises", pattern: "patterns", action: "actions" };

function follow(kind) {
  const what = kind.closest("[data-row]").querySelector("[name$='-what']");
  what.setAttribute("list", LISTS[kind.value]);
}

for (const kind of document.querySelectorAll("[name$='-kind']")) follow(kind);
document.addEventListener("change", (event) => {
  if (event.target.matches("[name$='-kind']")) follow(event.target);
});
