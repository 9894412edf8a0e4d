/**
 * The desk by keyboard, and its search as one types. Everything works without: rows have links and boxes, the form has a
 * button. Single keys can be switched off, for they may clash with speech input.
 */
const PAUSE_MS = 250;
const desk = document.getElementById('desk'), filter = document.getElementById('filter');
const box = document.getElementById('keys-on');
let row = -1, asked = 0, timer;

try { box.checked = localStorage.getItem('desk-keys') !== 'off'; } catch { /* no storage: keys stay on */ }
box.addEventListener('change', () => {
  try { localStorage.setItem('desk-keys', box.checked ? 'on' : 'off'); } catch { /* as above */ }
});

/** Shows what the filter's fields say now; the parts of the page are taken from the answer, the address follows. */
async function search() {
  const mine = ++asked;
  const given = new URLSearchParams([...new FormData(filter)].filter(([, value]) => value !== ''));
  const address = `${filter.action}?${given}`;
  const answer = await fetch(address, { headers: { Accept: 'text/html' } });
  const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
  if (mine !== asked) return; // a later key has overtaken this answer
  if (answer.redirected) { // the session is over: sign in, and come back to this filter
    location.assign(address);
    return;
  }
  for (const input of page.querySelectorAll('#filter [id]')) {
    const here = document.getElementById(input.id), invalid = input.getAttribute('aria-invalid');
    if (invalid) here.setAttribute('aria-invalid', invalid); else here.removeAttribute('aria-invalid');
  }
  for (const id of ['refused', 'states', 'leanings', 'found']) {
    const fresh = page.getElementById(id);
    if (fresh) document.getElementById(id).replaceWith(fresh);
  }
  history.replaceState(null, '', address);
  row = -1;
  dress();
}

filter.addEventListener('input', event => {
  if (event.target.tagName !== 'INPUT') return;
  clearTimeout(timer);
  timer = setTimeout(search, PAUSE_MS);
});
filter.addEventListener('change', event => { if (event.target.tagName === 'SELECT') search(); });

const rows = () => [...desk.querySelectorAll('.desk-lines tbody tr')];

function go(to) {
  const all = rows();
  if (!all.length) return;
  all[row]?.removeAttribute('aria-current');
  row = Math.max(0, Math.min(all.length - 1, to));
  all[row].setAttribute('aria-current', 'true');
  all[row].querySelector('a.number').focus();
}

function take() {
  const tick = rows()[row]?.querySelector('input[type=checkbox]');
  if (tick && !desk.querySelector('.desk-lines input:checked')) tick.checked = true;
  if (desk.querySelector('.desk-lines input:checked')) document.getElementById('found').requestSubmit();
}

const KEYS = {
  j: () => go(row + 1),
  k: () => go(row - 1),
  x: () => { const tick = rows()[row]?.querySelector('input[type=checkbox]'); if (tick) tick.checked = !tick.checked; },
  t: take,
  o: () => rows()[row]?.querySelector('a.number').click(),
  e: () => rows()[row]?.querySelector('a[data-part=evidence]').click(),
  n: () => desk.querySelector('a[rel=next]')?.click(),
  '/': () => document.getElementById('q').focus(),
  '?': () => { const help = document.getElementById('keys'); help.open = !help.open; help.scrollIntoView({ block: 'nearest' }); },
};

document.addEventListener('keydown', event => {
  const typing = event.target.closest('input:not([type=checkbox]), select, textarea');
  if (typing || event.ctrlKey || event.altKey || event.metaKey || !box.checked || !(event.key in KEYS)) return;
  event.preventDefault();
  KEYS[event.key]();
});
desk.addEventListener('focusin', event => {
  const at = rows().indexOf(event.target.closest('tr'));
  if (at >= 0) row = at;
});

function dress() {
  const all = document.getElementById('tick-all');
  if (!all) return;
  all.hidden = !desk.querySelector('.desk-lines input[type=checkbox]');
  all.addEventListener('click', () => desk.querySelectorAll('.desk-lines input[type=checkbox]').forEach(tick => { tick.checked = true; }));
}
dress();
