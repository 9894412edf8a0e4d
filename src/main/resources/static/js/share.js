/** Copies the page's address; without script the address can be copied by hand. */
for (const button of document.querySelectorAll('button[data-copy]')) {
  button.hidden = !navigator.clipboard;
  button.addEventListener('click', async () => {
    await navigator.clipboard.writeText(button.dataset.copy);
    button.nextElementSibling.textContent = button.dataset.done;
  });
}
