/**
 * A form for a test: checks numbers at their fields, keeps a draft on this device until the server has the test, sets the
 * clock of this device, and remembers the instrument. Without script the server checks the same.
 */
const form = document.querySelector('form[data-typed]');
const draft = `draft ${location.pathname}`, instrument = 'instrument';
const fields = [...form.elements].filter(e => e.name && !['_csrf', 'offset', 'user'].includes(e.name));

/** The number in a field; null if empty, NaN if it is none. Point and comma both mark decimals. */
export function parse(text) {
  const plain = text.replace(/\s/gu, '').replace('−', '-').replace(',', '.');
  if (!plain) return null;
  return /^[+-]?(\d{1,9}(\.\d{0,9})?|\.\d{1,9})$/.test(plain) ? Number(plain) : NaN;
}

function complaint(input, leaving) {
  const { low, high, unit } = input.dataset, value = parse(input.value);
  if (value === null) return leaving && 'requiredField' in input.dataset ? form.dataset.required : '';
  if (Number.isNaN(value)) return form.dataset.number;
  const say = bound => String(+bound).replace('-', '−');
  return value < +low || value > +high ? `${form.dataset.range} ${say(low)} – ${say(high)} ${unit}.` : '';
}

function check(input, leaving) {
  const text = complaint(input, leaving);
  document.getElementById(`${input.id}-error`).textContent = text;
  input.toggleAttribute('aria-invalid', false);
  if (text) input.setAttribute('aria-invalid', 'true');
  return !text;
}

function save() {
  const values = Object.fromEntries(new FormData(form));
  delete values._csrf;
  localStorage.setItem(draft, JSON.stringify(values));
}

function restore() {
  if (document.querySelector('[aria-invalid=true]')) return; // the server has just sent the values back
  for (const source of [instrument, draft]) {
    const values = JSON.parse(localStorage.getItem(source) ?? '{}');
    for (const field of fields) {
      if (!(field.name in values) || field.name === 'takenAt') continue;
      if (field.type === 'radio') field.checked = field.value === values[field.name];
      else field.value = values[field.name];
    }
  }
}

/** The server writes UTC; a technician reads the clock on the wall. */
function localClock() {
  const offset = form.elements.offset, taken = form.elements.takenAt;
  if (offset.value !== 'Z') return;
  const now = new Date(), minutes = -now.getTimezoneOffset(), two = n => String(Math.floor(n)).padStart(2, '0');
  taken.value = new Date(now.getTime() + minutes * 60_000).toISOString().slice(0, 16);
  offset.value = `${minutes < 0 ? '-' : '+'}${two(Math.abs(minutes) / 60)}:${two(Math.abs(minutes) % 60)}`;
  form.querySelector('[data-zone]').textContent = '';
}

const numbers = fields.filter(e => 'low' in e.dataset);
for (const input of numbers) {
  input.addEventListener('blur', () => check(input, false));
  input.addEventListener('input', () => { if (input.hasAttribute('aria-invalid')) check(input, false); });
}
form.addEventListener('input', save);
form.addEventListener('submit', event => {
  const wrong = numbers.filter(input => !check(input, true));
  if (wrong.length) {
    event.preventDefault();
    wrong[0].focus();
    return;
  }
  const kept = Object.fromEntries(fields.filter(e => 'keep' in e.dataset).map(e => [e.name, e.value]));
  localStorage.setItem(instrument, JSON.stringify(kept));
  localStorage.setItem('sent', draft);
});
localClock();
restore();
