/** The browser's database of what waits to be sent; used by pages and by the service worker. */
const STORE = 'waiting';

const open = () => new Promise((done, fail) => {
  const request = indexedDB.open('voltdocket', 1);
  request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: 'id', autoIncrement: true });
  request.onsuccess = () => done(request.result);
  request.onerror = () => fail(request.error);
});

async function use(mode, work) {
  const database = await open();
  try {
    return await new Promise((done, fail) => {
      const transaction = database.transaction(STORE, mode), request = work(transaction.objectStore(STORE));
      transaction.oncomplete = () => done(request.result);
      transaction.onerror = transaction.onabort = () => fail(transaction.error);
    });
  } finally {
    database.close();
  }
}

export const add = item => use('readwrite', store => store.add(item));
export const put = item => use('readwrite', store => store.put(item));
export const remove = id => use('readwrite', store => store.delete(id));
export const all = () => use('readonly', store => store.getAll());
