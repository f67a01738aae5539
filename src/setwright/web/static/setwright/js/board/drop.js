// Where an exercise would go: the gap nearest to a point, and the line that shows it.
import { board, placeOf } from "./send.js";

const line = document.createElement("div");
line.className = "drop";

export function gapAt(x, y) {
  const days = [...board().querySelectorAll(".day")].filter((day) => day.offsetParent !== null);
  const day = days.find((one) => {
    const box = one.getBoundingClientRect();
    return x >= box.left - 4 && x <= box.right + 4;
  });
  if (!day) return null;
  const inDay = [...day.querySelectorAll(".card")];
  for (const card of inDay) {
    const box = card.getBoundingClientRect();
    const partner = inDay.some((one) => one !== card && one.parentElement === card.parentElement);
    const before = partner && y < box.bottom && y > box.top ? x < box.left + box.width / 2 : y < box.top + box.height / 2;
    if (before) return { day, session: Number(day.dataset.session), gap: placeOf(card)[1] };
  }
  return { day, session: Number(day.dataset.session), gap: inDay.length };
}

export function showGap({ day, gap }) {
  const track = day.querySelector(".track");
  const inDay = [...day.querySelectorAll(".card")];
  const top = track.getBoundingClientRect().top;
  const card = inDay[gap];
  const y = card ? card.getBoundingClientRect().top - top : inDay.at(-1).getBoundingClientRect().bottom - top;
  track.append(line);
  line.style.setProperty("top", `${y}px`);
}

export const hideGap = () => line.remove();
