/**
 * What this device has to send: files and typed tests. They are kept in the browser's database until the server has them, sent in
 * parts that continue after a lost connection, and tried again when the connection is back. One page at a time sends.
 */
import { add, all, put, remove } from './waiting.js';

const PART = 512 * 1024;
const RETRY_MS = [0, 1000, 3000, 5000, 10_000];
const AGAIN_MS = 15_000;
const user = document.body.dataset.user;
const bar = document.getElementById('outbox');
let again;

/** Keeps a file for a case, and starts to send. @returns {Promise<number>} its number in this device's list */
export async function enqueue(path, file, note) {
  const id = await add({ user, kind: 'file', path, name: file.name, size: file.size, file, note });
  run();
  return id;
}

/** @returns what waits on this device for the signed-in user */
export async function waiting() {
  return (await all()).filter(item => item.user === user);
}

const tell = (item, detail) => document.dispatchEvent(new CustomEvent('outbox', { detail: { ...detail, item } }));

/** Sends everything that waits, one after the other, unless another page of this browser does. */
export function run() {
  if (!user) return;
  clearTimeout(again);
  alone(async () => {
    const tried = new Set();
    for (let items = await waiting(); ; items = await waiting()) {
      const item = items.find(i => !tried.has(i.id) && !i.refused);
      if (!item) return items.some(i => !i.refused);
      tried.add(item.id);
      await show();
      await (item.kind === 'file' ? sendFile(item) : sendForm(item));
    }
  }).catch(trouble => { console.warn(trouble); return true; }).then(async left => {
    await show();
    if (left) again = setTimeout(run, AGAIN_MS);
  });
}

let busy = false;

/** Does the work unless this or another page of the browser does it. @returns whether something may be left */
async function alone(work) {
  if (navigator.locks) return navigator.locks.request('outbox', { ifAvailable: true }, lock => lock ? work() : true);
  if (busy) return true; // without HTTPS there are no locks across pages
  busy = true;
  return work().finally(() => { busy = false; });
}

async function sendFile(item) {
  try {
    const address = await transfer(item);
    tell(item, { state: 'reading' });
    const answer = await post(`${address}/evidence`, new URLSearchParams(), { 'X-Requested-With': 'voltdocket', Accept: 'text/html' });
    if (answer.status === 404 || answer.status === 409) { // expired or damaged: from the start, at the next try
      await put({ ...item, address: null });
      throw new Error(String(answer.status));
    }
    if (answer.status >= 500) throw new Error(String(answer.status));
    await remove(item.id);
    tell(item, { state: 'received', html: await answer.text() });
  } catch (trouble) {
    const status = trouble.originalResponse?.getStatus?.();
    if (status === 413 || status === 403 || status === 429) tell(item, { state: 'refused', status });
    if (status === 413) return remove(item.id);
    tell(item, { state: 'waiting' });
  }
}

/** Sends the parts. @returns {Promise<string>} the address of the complete upload */
async function transfer(item) {
  await import('./vendor/tus-js-client/tus.min.js');
  const headers = { 'X-CSRF-TOKEN': await token(), 'X-Requested-With': 'voltdocket' };
  const metadata = { filename: item.name, note: item.note ?? '' };
  const digest = await sha256(item.file);
  if (digest) metadata.sha256 = digest;
  return new Promise((done, fail) => {
    const upload = new window.tus.Upload(item.file, {
      endpoint: `${item.path}/uploads`, uploadUrl: item.address ?? null, chunkSize: PART, retryDelays: RETRY_MS,
      storeFingerprintForResuming: false, removeFingerprintOnSuccess: true, headers, metadata,
      onUploadUrlAvailable: () => put({ ...item, address: new URL(upload.url, location.href).pathname }),
      onProgress: (sent, total) => tell(item, { state: 'sending', share: total ? sent / total : 0 }),
      onSuccess: () => done(new URL(upload.url, location.href).pathname),
      onError: fail,
    });
    tell(item, { state: 'sending', share: 0 });
    upload.start();
  });
}

async function sendForm(item) {
  try {
    const body = new URLSearchParams(item.body);
    body.set('_csrf', await token());
    const answer = await fetch(item.path, { method: 'POST', body, redirect: 'manual' });
    if (answer.status >= 500 || answer.status === 403) return tell(item, { state: 'waiting' });
    if (answer.type === 'opaqueredirect') {
      await remove(item.id);
      localStorage.removeItem(`draft ${item.path}`);
      return tell(item, { state: 'received' });
    }
    await put({ ...item, refused: true });
    tell(item, { state: 'refused', status: answer.status });
  } catch {
    tell(item, { state: 'waiting' });
  }
}

const post = async (path, body, headers) => {
  body.set('_csrf', await token());
  return fetch(path, { method: 'POST', body, headers });
};

/** A token that is valid now: this page may have come from the cache of the device. */
async function token() {
  const answer = await fetch('/account', { headers: { Accept: 'text/html' }, cache: 'no-store' });
  const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
  if (page.body.dataset.user !== user) throw new Error('signed out');
  return page.querySelector('[name=_csrf]').value;
}

async function sha256(file) {
  if (!crypto.subtle) return null;
  const digest = await crypto.subtle.digest('SHA-256', await file.arrayBuffer());
  return [...new Uint8Array(digest)].map(b => b.toString(16).padStart(2, '0')).join('');
}

/** The line that says how much waits, on every page. */
async function show() {
  const items = await waiting(), refused = items.find(i => i.refused);
  bar.hidden = items.length === 0;
  bar.querySelector('span').textContent = items.length === 1 ? bar.dataset.one : bar.dataset.many.replace('{0}', items.length);
  bar.querySelector('a').hidden = !refused;
  if (refused) bar.querySelector('a').href = refused.path;
}

if (user) {
  navigator.serviceWorker?.register('/sw.js', { type: 'module' }).catch(() => {}); // pages work without it
  addEventListener('online', run);
  document.addEventListener('visibilitychange', () => { if (!document.hidden) run(); });
  const sent = localStorage.getItem('sent'); // a form that left this device is stored once another page is shown
  if (sent && sent !== `draft ${location.pathname}` && location.pathname !== '/offline') {
    localStorage.removeItem(sent);
    localStorage.removeItem('sent');
  }
  run();
}
