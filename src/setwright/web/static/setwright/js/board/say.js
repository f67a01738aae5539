// One live region tells a screen reader what happened.
export function say(words) {
  const live = document.getElementById("live");
  live.textContent = "";
  requestAnimationFrame(() => { live.textContent = words; });
}
