// Rows of a form that are added and removed in place. Without this script the server does both.

function add(name) {
  const rows = document.querySelector(`[data-rows="${name}"]`);
  const total = document.querySelector(`[name="${name}-TOTAL_FORMS"]`);
  const most = document.querySelector(`[name="${name}-MAX_NUM_FORMS"]`);
  const number = Number(total.value);
  if (number >= Number(most.value)) return;
  const template = rows.querySelector("[data-row-template]");
  const row = template.content.firstElementChild.cloneNode(true);
  for (const part of row.querySelectorAll("*")) {
    for (const attribute of [...part.attributes]) {
      if (attribute.value.includes("__prefix__")) {
        attribute.value = attribute.value.replaceAll("__prefix__", String(number));
      }
    }
  }
  template.before(row);
  total.value = String(number + 1);
  row.querySelector("input, select").focus();
}

// An emptied row counts for nothing; it stays in the form so that the numbers go on.
function remove(button) {
  const row = button.closest("[data-row]");
  for (const field of row.querySelectorAll("input, select")) {
    if (field.type === "checkbox") field.checked = false;
    else if (field.tagName === "SELECT") field.selectedIndex = 0;
    else field.value = "";
  }
  const next = row.nextElementSibling?.querySelector?.("input, select");
  row.hidden = true;
  (next ?? row.closest("[data-rows]").nextElementSibling)?.focus();
}

for (const button of document.querySelectorAll("[data-remove]")) button.hidden = false;
document.addEventListener("click", (event) => {
  const target = event.target.closest("[data-add], [data-remove]");
  if (!target) return;
  event.preventDefault();
  if (target.dataset.add) add(target.dataset.add);
  else remove(target);
});
