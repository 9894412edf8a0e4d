/** Fetches what a details element only links to, when it is opened; without script the link leads there. */
for (const details of document.querySelectorAll('details[data-from-link]')) {
  details.addEventListener('toggle', async () => {
    const link = details.querySelector('a[data-fragment]');
    if (!details.open || !link) return;
    const answer = await fetch(link.dataset.fragment, { headers: { Accept: 'text/html' } });
    if (!answer.ok) return;
    const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
    link.closest('p').replaceWith(...page.body.children);
  });
}
