/** Copying the invitation. */

const button = document.getElementById("copy");
const message = document.getElementById("message");
const said = document.getElementById("copied");
if (button && message instanceof HTMLTextAreaElement && said && navigator.clipboard) {
  button.hidden = false;
  button.addEventListener("click", async () => {
    try {
      await navigator.clipboard.writeText(message.value);
      said.textContent = "Copied.";
    } catch {
      message.select();
      said.textContent = "Selected; copy it by hand.";
    }
  });
}
