/** Adds passkeys on the account page and signs in by them on the sign-in page, by the Web Authentication API. */

const fromBase64Url = (text) => Uint8Array.from(atob(text.replace(/-/g, '+').replace(/_/g, '/')), (c) => c.charCodeAt(0));
const toBase64Url = (buffer) => btoa(String.fromCharCode(...new Uint8Array(buffer)))
  .replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '');

/** Sends JSON with the CSRF token of the element, and returns the JSON of the answer. */
async function post(element, path, body) {
  const response = await fetch(path, {
    method: 'POST',
    headers: {
      'Content-Type': 'application/json',
      'X-Requested-With': 'voltdocket',
      [element.dataset.csrfHeader]: element.dataset.csrf,
    },
    body: body === undefined ? undefined : JSON.stringify(body),
  });
  if (!response.ok) throw new Error(`${path} answered ${response.status}`);
  return response.json();
}

async function register(form, label) {
  const options = await post(form, '/account/passkeys/options');
  const made = await navigator.credentials.create({
    publicKey: {
      ...options,
      challenge: fromBase64Url(options.challenge),
      user: { ...options.user, id: fromBase64Url(options.user.id) },
      excludeCredentials: (options.excludeCredentials || []).map((one) => ({ ...one, id: fromBase64Url(one.id) })),
    },
  });
  await post(form, '/account/passkeys', {
    publicKey: {
      label,
      credential: {
        id: made.id,
        rawId: toBase64Url(made.rawId),
        type: made.type,
        response: {
          attestationObject: toBase64Url(made.response.attestationObject),
          clientDataJSON: toBase64Url(made.response.clientDataJSON),
          transports: made.response.getTransports ? made.response.getTransports() : [],
        },
        clientExtensionResults: made.getClientExtensionResults(),
        authenticatorAttachment: made.authenticatorAttachment,
      },
    },
  });
}

async function signIn(place) {
  const options = await post(place, '/sign-in/passkey/options');
  const answer = await navigator.credentials.get({
    publicKey: {
      ...options,
      challenge: fromBase64Url(options.challenge),
      allowCredentials: (options.allowCredentials || []).map((one) => ({ ...one, id: fromBase64Url(one.id) })),
    },
  });
  return post(place, '/sign-in/passkey', {
    id: answer.id,
    rawId: toBase64Url(answer.rawId),
    type: answer.type,
    response: {
      authenticatorData: toBase64Url(answer.response.authenticatorData),
      clientDataJSON: toBase64Url(answer.response.clientDataJSON),
      signature: toBase64Url(answer.response.signature),
      userHandle: answer.response.userHandle ? toBase64Url(answer.response.userHandle) : null,
    },
    clientExtensionResults: answer.getClientExtensionResults(),
    authenticatorAttachment: answer.authenticatorAttachment,
  });
}

const failed = document.getElementById('passkey-failed');
const form = document.getElementById('passkey-form');
const place = document.getElementById('passkey-sign-in');

/** Runs an action and shows the message of the page where it fails. */
async function tried(action) {
  failed.hidden = true;
  try {
    await action();
  } catch (error) {
    failed.hidden = false;
  }
}

if (window.PublicKeyCredential && form) {
  form.hidden = false;
  document.getElementById('passkey-without').hidden = true;
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    tried(async () => {
      await register(form, document.getElementById('passkey-label').value.trim());
      window.location.assign('/account#passkeys');
      window.location.reload();
    });
  });
}

if (window.PublicKeyCredential && place) {
  place.hidden = false;
  place.querySelector('button').addEventListener('click', () => tried(async () => {
    const answer = await signIn(place);
    window.location.assign(answer.redirectUrl);
  }));
}
