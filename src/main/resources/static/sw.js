/**
 * Keeps pages of cases and what they need on this device for places without a connection, and takes typed tests that cannot be
 * sent there. Pages always come from the server while it answers.
 */
import { add } from './js/waiting.js';

const PAGES = 'pages', FILES = 'files';
const OFFLINE = '/offline';

self.addEventListener('install', event => {
  event.waitUntil(caches.open(PAGES).then(cache => cache.add(OFFLINE)).then(() => self.skipWaiting()));
});
self.addEventListener('activate', event => event.waitUntil(self.clients.claim()));

self.addEventListener('fetch', event => {
  const { request } = event, url = new URL(request.url);
  if (url.origin !== location.origin || url.pathname.startsWith('/api/')) return;
  if (request.method === 'POST' && request.mode === 'navigate') {
    if (/^\/(cases|returns)\/[^/]+\/tests\/[a-z-]+$/.test(url.pathname)) event.respondWith(sendOrKeep(request, url));
    if (/^\/sign-(in|out)$/.test(url.pathname)) event.waitUntil(forget());
    return;
  }
  if (request.method !== 'GET') return;
  if (request.mode === 'navigate') event.respondWith(page(request, url));
  else if (/\.(js|css|svg|wasm|json)$|\/series$/.test(url.pathname)) event.respondWith(file(request));
});

/** Another person may use the device next. What waits to be sent stays. */
async function forget() {
  await caches.delete(PAGES);
  await caches.delete(FILES);
}

async function page(request, url) {
  try {
    const answer = await fetch(request);
    if (answer.ok && !answer.redirected && /^\/(cases|offline|returns)(\/|$)/.test(url.pathname)) {
      (await caches.open(PAGES)).put(url.pathname, answer.clone());
    }
    return answer;
  } catch {
    return await caches.match(url.pathname) ?? await caches.match(OFFLINE) ?? Response.error();
  }
}

async function file(request) {
  try {
    const answer = await fetch(request);
    if (answer.ok) (await caches.open(FILES)).put(request, answer.clone());
    return answer;
  } catch {
    return await caches.match(request) ?? Response.error();
  }
}

async function sendOrKeep(request, url) {
  const copy = request.clone();
  try {
    return await fetch(request);
  } catch {
    const body = await copy.text(), user = new URLSearchParams(body).get('user');
    await add({ user, kind: 'form', path: url.pathname, name: url.pathname.split('/').pop(), body });
    return Response.redirect(`${OFFLINE}#kept`, 303);
  }
}
