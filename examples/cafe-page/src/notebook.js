// The notebook of brews, in the browser's own database on this device.

const DATABASE = "brew-ticket";
const ENTRIES = "entries";

const opened = () =>
  new Promise((settle, fail) => {
    const request = indexedDB.open(DATABASE, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(ENTRIES, { keyPath: "id" });
    request.onsuccess = () => settle(request.result);
    request.onerror = () => fail(request.error);
  });

async function within(mode, work) {
  const database = await opened();
  try {
    return await new Promise((settle, fail) => {
      const transaction = database.transaction(ENTRIES, mode);
      const request = work(transaction.objectStore(ENTRIES));
      transaction.oncomplete = () => settle(request?.result);
      transaction.onerror = transaction.onabort = () => fail(transaction.error);
    });
  } finally {
    database.close();
  }
}

/** All entries, the newest first. */
export async function entries() {
  const all = await within("readonly", (store) => store.getAll());
  return all.sort((a, b) => (a.at < b.at ? 1 : -1));
}

/** Puts entries in, all or none. */
export const put = (list) =>
  within("readwrite", (store) => {
    for (const entry of list) store.put(entry);
  });

export const remove = (id) => within("readwrite", (store) => store.delete(id));
