/** The clock on the wall, as a log writes it. */

/** @param {number} value */
const two = (value) => String(value).padStart(2, "0");

/** @param {Date} moment */
export function dateOf(moment) {
  return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
}

/** @param {Date} moment date and time without a zone, to the second */
export function wallClock(moment) {
  const time = [moment.getHours(), moment.getMinutes(), moment.getSeconds()].map(two).join(":");
  return `${dateOf(moment)}T${time}`;
}

/** @param {number} seconds */
export function minutes(seconds) {
  const whole = Math.max(Math.round(seconds), 0);
  return `${Math.floor(whole / 60)}:${two(whole % 60)}`;
}

/** Tell the server what the wall shows here, so that its today is ours. */
export function tellZone() {
  const offset = new Date().getTimezoneOffset();
  document.cookie = `clock=${offset}; path=/; max-age=31536000; samesite=lax`;
}
