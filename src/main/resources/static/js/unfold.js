/** Fetches what a details element only links to, when it is opened; without script the link leads there. */
document.addEventListener('toggle', async event => {
  const details = event.target, link = details.open && details.querySelector('a[data-fragment]');
  if (!link) return;
  const answer = await fetch(link.dataset.fragment, { headers: { Accept: 'text/html' } });
  if (!answer.ok) return;
  const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
  link.closest('p')?.replaceWith(...page.body.children);
}, true);
