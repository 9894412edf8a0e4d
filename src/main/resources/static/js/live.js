/** Reads the page again while a part of it says data-live (milliseconds), and puts the new part in its place. */
const again = part => setTimeout(async () => {
  try {
    const answer = await fetch(location.href, { headers: { Accept: 'text/html' } });
    if (!answer.ok || answer.redirected) return;
    const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
    const fresh = page.getElementById(part.id);
    if (!fresh) return;
    const focus = part.contains(document.activeElement) && document.activeElement.value;
    part.replaceWith(fresh);
    if (focus) fresh.querySelector(`button[value="${focus}"]`)?.focus();
    if (fresh.dataset.live) again(fresh);
  } catch {
    again(part); // the server is away for a moment
  }
}, Number(part.dataset.live));
document.querySelectorAll('[data-live]').forEach(again);
