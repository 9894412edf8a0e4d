/**
 * Sends the chosen or dropped files one by one, with progress, and shows what the server read from each. Without script
 * the form posts them all at once.
 */
const form = document.getElementById('upload');
const list = document.getElementById('upload-list');
const status = document.getElementById('upload-status');
const input = form.querySelector('input[type=file]');
let queue = Promise.resolve();
let refused = false;

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

function take(files) {
  const note = form.elements.note.value, chosen = [...files];
  if (!chosen.length) return;
  list.hidden = false;
  status.textContent = '';
  for (const file of chosen) {
    const row = waiting(file);
    queue = queue.then(() => send(file, note, row));
  }
  const before = conclusion();
  queue = queue.then(refresh).then(() => {
    status.textContent = form.dataset.done;
    if (!refused) showResult(before);
    refused = false;
  });
  form.reset();
}

function waiting(file) {
  const row = document.createElement('li');
  const head = document.createElement('div'), name = document.createElement('span'), state = document.createElement('span');
  const bar = document.createElement('progress');
  head.className = 'file-head';
  name.className = 'file-name';
  name.textContent = file.name;
  state.className = 'dim state';
  bar.max = 1;
  bar.value = 0;
  bar.setAttribute('aria-label', file.name);
  head.append(name, state);
  row.append(head, bar);
  list.append(row);
  return row;
}

function send(file, note, row) {
  const state = row.querySelector('.state'), bar = row.querySelector('progress');
  if (file.size > +form.dataset.most) {
    fail(row, form.dataset.large);
    return Promise.resolve();
  }
  return new Promise(done => {
    const request = new XMLHttpRequest(), body = new FormData();
    body.append('_csrf', form.elements._csrf.value);
    body.append('note', note);
    body.append('file', file);
    request.open('POST', form.action);
    request.setRequestHeader('X-Requested-With', 'voltdocket');
    request.setRequestHeader('Accept', 'text/html');
    request.upload.addEventListener('progress', event => {
      if (!event.lengthComputable) return;
      bar.value = event.loaded / event.total;
      state.textContent = event.loaded < event.total ? `${form.dataset.sending} ${Math.round(100 * bar.value)} %` : form.dataset.reading;
    });
    request.addEventListener('load', () => { answer(request, row); done(); });
    request.addEventListener('error', () => { fail(row, form.dataset.lost); done(); });
    request.send(body);
  });
}

function answer(request, row) {
  const page = new DOMParser().parseFromString(request.responseText, 'text/html');
  const result = page.querySelector('ul.files > li');
  if (result) {
    refused ||= result.classList.contains('refused');
    row.replaceWith(document.adoptNode(result));
  }
  else fail(row, request.status === 413 ? form.dataset.large : detail(request) ?? form.dataset.lost);
}

/** What a problem detail (RFC 9457) says; undefined where the answer is none. */
function detail(request) {
  if (!request.getResponseHeader('Content-Type')?.includes('json')) return undefined;
  try {
    return JSON.parse(request.responseText).detail;
  } catch {
    return undefined;
  }
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
