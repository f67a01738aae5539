// On a phone one day at a time; the tabs choose it. Without a script the days stand below each other.
let shown = 0;

export function days() {
  show(Number(new URLSearchParams(location.search).get("at")?.split(".")[0] ?? 0));
  document.body.addEventListener("click", (event) => {
    const tab = event.target.closest(".day-tabs a");
    if (!tab) return;
    event.preventDefault();
    show(Number(tab.dataset.day));
  });
  document.body.addEventListener("htmx:afterSwap", (event) => {
    if (event.detail.target.id !== "board") return;
    const at = document.getElementById("board").dataset.at;
    show(at ? Number(at.split(".")[0]) : shown);
  });
}

function show(number) {
  const all = [...document.querySelectorAll(".day")];
  if (!all.length) return;
  shown = Math.min(Math.max(number, 0), all.length - 1);
  document.querySelector(".days").classList.add("one-day");
  all.forEach((day, at) => day.classList.toggle("shown", at === shown));
  document.querySelectorAll(".day-tabs a").forEach((tab, at) =>
    at === shown ? tab.setAttribute("aria-current", "true") : tab.removeAttribute("aria-current"));
}
