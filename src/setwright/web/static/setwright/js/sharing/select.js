// What is shown once is selected whole as soon as the field is entered.
for (const field of document.querySelectorAll("input.secret")) {
  field.addEventListener("focus", () => field.select());
}
