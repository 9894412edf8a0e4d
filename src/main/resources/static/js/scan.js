/**
 * Fills a field marked data-scan from a code on a label, by camera or from a photo. Whatever was read is shown first: the person
 * chooses, also where there is one code alone.
 */
import { keys, shown } from './keys.js';

const dialog = document.getElementById('code-scanner');
const video = dialog.querySelector('video'), list = dialog.querySelector('.found'), status = dialog.querySelector('[role=status]');
const torch = dialog.querySelector('[data-torch]');
const camera = Boolean(navigator.mediaDevices?.getUserMedia);
let field, stream, seen;

for (const input of document.querySelectorAll('input[data-scan]')) {
  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'second scan-button';
  button.textContent = dialog.dataset.scan;
  button.setAttribute('aria-label', `${dialog.dataset.scan}: ${input.labels[0]?.textContent ?? ''}`);
  button.addEventListener('click', () => open(input));
  const row = document.createElement('div');
  row.className = 'scan-row';
  input.replaceWith(row);
  row.append(input, button);
  input.addEventListener('change', () => suggest(input));
}

async function open(input) {
  field = input;
  seen = new Map();
  list.replaceChildren();
  list.removeAttribute('aria-busy');
  status.textContent = '';
  dialog.querySelector('h2').textContent = input.labels[0]?.textContent ?? '';
  dialog.showModal();
  video.hidden = !camera;
  if (camera) await watch();
}

async function watch() {
  try {
    stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment', width: { ideal: 1920 }, height: { ideal: 1080 } } });
  } catch (refused) {
    video.hidden = true;
    if (list.hasAttribute('aria-busy')) return; // a photo is being read
    status.textContent = refused.name === 'NotAllowedError' ? dialog.dataset.denied : dialog.dataset.none;
    return;
  }
  if (!dialog.open) return stop();
  video.srcObject = stream;
  await video.play();
  torch.hidden = !stream.getVideoTracks()[0].getCapabilities?.().torch;
  status.textContent = dialog.dataset.looking;
  const { decode } = await import('./decode.js');
  for (let turn = 0; dialog.open && stream?.active; turn++) {
    show(await decode(video, turn));
    await new Promise(next => setTimeout(next, 60));
  }
}

function stop() {
  stream?.getTracks().forEach(track => track.stop());
  stream = video.srcObject = null;
}

/** Adds what is new to the list; codes that cannot be this key stay away. */
function show(codes) {
  for (const code of codes) {
    for (const offer of keys[field.dataset.scan](code.text)) {
      if (seen.has(offer.text)) continue;
      seen.set(offer.text, offer);
      list.append(choice(offer, code.format));
      status.textContent = dialog.dataset[offer.certain ? 'found' : 'doubtful'];
      navigator.vibrate?.(60);
    }
  }
}

function choice(offer, note) {
  const item = document.createElement('li'), button = document.createElement('button'), small = document.createElement('small');
  button.type = 'button';
  button.className = offer.certain ? 'second' : 'second doubtful';
  small.textContent = offer.certain ? note : `${note} · ${dialog.dataset.compare}`;
  button.append(shown(offer), small);
  button.addEventListener('click', () => take(offer.text));
  item.append(button);
  return item;
}

function take(text) {
  field.value = text;
  field.dispatchEvent(new Event('input', { bubbles: true }));
  dialog.close();
  field.focus();
}

dialog.addEventListener('close', stop);
dialog.querySelector('[data-close]').addEventListener('click', () => dialog.close());
torch.addEventListener('click', () => {
  const on = torch.toggleAttribute('aria-pressed');
  stream?.getVideoTracks()[0].applyConstraints({ advanced: [{ torch: on }] });
});
dialog.querySelector('input[type=file]').addEventListener('change', async event => {
  const file = event.target.files[0];
  if (!file) return;
  status.textContent = dialog.dataset.reading;
  list.setAttribute('aria-busy', 'true');
  const before = seen.size, { decodeStill } = await import('./decode.js');
  try {
    show(await decodeStill(await createImageBitmap(file)));
    if (seen.size === before) status.textContent = dialog.dataset.nothing;
  } catch {
    status.textContent = dialog.dataset.picture;
  }
  list.setAttribute('aria-busy', 'false');
  event.target.value = '';
});

/** Offers corrections of a typed key under its field. */
function suggest(input) {
  const place = input.closest('.field');
  place.querySelector('.offers')?.remove();
  const offers = input.dataset.scan === 'vin' ? keys.vin(input.value).filter(o => !o.certain) : [];
  if (!offers.length) return;
  field = input;
  const box = document.createElement('ul'), lead = document.createElement('li');
  box.className = 'offers found';
  box.setAttribute('role', 'status');
  lead.textContent = dialog.dataset.doubtful;
  box.append(lead, ...offers.map(o => choice(o, '')));
  box.addEventListener('click', event => { if (event.target.closest('button')) box.remove(); });
  place.append(box);
}
