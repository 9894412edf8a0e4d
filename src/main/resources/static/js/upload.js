/**
 * Hands the chosen or dropped files to the outbox of this device and shows what happens to each: how much is sent, what waits for
 * the connection, and what the server read. Without script the form posts them all at once.
 */
import { enqueue, waiting } from './outbox.js';

const form = document.getElementById('upload');
const list = document.getElementById('upload-list');
const status = document.getElementById('upload-status');
const input = form.querySelector('input[type=file]');
const path = form.action.replace(/\/evidence$/, '');
const place = new URL(path).pathname;
const rows = new Map();
let refused = false, before;

form.addEventListener('submit', event => {
  event.preventDefault();
  take(input.files);
});

for (const kind of ['dragenter', 'dragover']) {
  form.addEventListener(kind, event => { event.preventDefault(); form.classList.add('over'); });
}
for (const kind of ['dragleave', 'drop']) form.addEventListener(kind, () => form.classList.remove('over'));
form.addEventListener('drop', event => {
  event.preventDefault();
  take(event.dataTransfer.files);
});

async function take(files) {
  const note = form.elements.note.value, chosen = [...files];
  if (!chosen.length) return;
  form.reset();
  status.textContent = '';
  before ??= conclusion();
  for (const file of chosen) {
    if (file.size > +form.dataset.most) {
      fail(row(file.name), form.dataset.large);
      continue;
    }
    const shown = row(file.name); // the row is there before the first event of the file
    try {
      rows.set(await enqueue(place, file, note), shown);
    } catch {
      fail(shown, form.dataset.lost); // the browser keeps nothing, as in some private windows
    }
  }
}

function row(name) {
  const row = document.createElement('li'), head = document.createElement('div');
  const title = document.createElement('span'), state = document.createElement('span'), bar = document.createElement('progress');
  head.className = 'file-head';
  title.className = 'file-name';
  title.textContent = name;
  state.className = 'dim state';
  state.textContent = form.dataset.waits;
  bar.max = 1;
  bar.value = 0;
  bar.setAttribute('aria-label', name);
  head.append(title, state);
  row.append(head, bar);
  row.className = 'waits';
  list.hidden = false;
  list.append(row);
  return row;
}

document.addEventListener('outbox', async ({ detail }) => {
  if (detail.item.kind !== 'file' || detail.item.path !== place) return;
  if (!rows.has(detail.item.id)) rows.set(detail.item.id, row(detail.item.name));
  const shown = rows.get(detail.item.id), state = shown.querySelector('.state');
  before ??= conclusion();
  if (detail.state === 'received') await received(detail.html, shown);
  else if (detail.state === 'refused') fail(shown, detail.status === 413 ? form.dataset.large : form.dataset.lost);
  else if (detail.state === 'sending') {
    shown.querySelector('progress').value = detail.share;
    state.textContent = `${form.dataset.sending} ${Math.round(100 * detail.share)} %`;
  } else state.textContent = detail.state === 'reading' ? form.dataset.reading : `${form.dataset.waits}: ${form.dataset.resumes}`;
});

/** Shows what the server read, and the new result when nothing waits any more. */
async function received(html, shown) {
  const page = new DOMParser().parseFromString(html, 'text/html'), result = page.querySelector('ul.files > li');
  if (!result) return fail(shown, form.dataset.lost);
  refused ||= result.classList.contains('refused');
  shown.replaceWith(document.adoptNode(result));
  if ((await waiting()).some(item => item.path === place)) return;
  await refresh();
  status.textContent = form.dataset.done;
  if (!refused) showResult(before);
  refused = false;
  before = undefined;
}

for (const item of await waiting()) {
  if (item.kind === 'file' && item.path === place && !rows.has(item.id)) rows.set(item.id, row(item.name));
}

function fail(row, text) {
  refused = true;
  row.className = 'refused';
  row.querySelector('progress')?.remove();
  const p = document.createElement('p');
  p.setAttribute('role', 'alert');
  p.textContent = text;
  row.append(p);
}

function conclusion() {
  return document.querySelector('#part-verdict .conclusion')?.textContent;
}

/** Brings the result into view and says whether the conclusion changed. */
function showResult(before) {
  const part = document.getElementById('part-verdict'), now = conclusion();
  const line = document.createElement('p');
  line.className = 'changed small';
  line.setAttribute('role', 'status');
  line.textContent = before === now ? form.dataset.unchanged : `${form.dataset.before} ${before}`;
  part.querySelector('.conclusion').after(line);
  part.scrollIntoView({ block: 'start' });
}

/** Replaces the parts of the page that depend on evidence by those of a fresh copy. */
async function refresh() {
  const answer = await fetch(location.pathname, { headers: { Accept: 'text/html' } });
  if (!answer.ok) return;
  const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
  for (const part of page.querySelectorAll('[data-refresh]')) document.getElementById(part.id)?.replaceWith(part);
  document.dispatchEvent(new CustomEvent('parts-renewed'));
}
