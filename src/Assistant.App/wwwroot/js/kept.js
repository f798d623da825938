// The phone's own store: what waits to be sent, and what was last seen of each visit.
const opened = new Promise((resolve, reject) => {
  const request = indexedDB.open("coldwalk", 2);
  request.onupgradeneeded = () => {
    const { result } = request;
    if (!result.objectStoreNames.contains("outbox")) result.createObjectStore("outbox", { keyPath: "seq", autoIncrement: true });
    if (!result.objectStoreNames.contains("kept")) result.createObjectStore("kept");
  };
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});
opened.catch(() => {});

/** Work on one of the stores, done once it is on the phone's disk. */
export async function store(name, mode, work) {
  const database = await opened;
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(name, mode);
    const request = work(transaction.objectStore(name));
    transaction.oncomplete = () => resolve(request.result);
    transaction.onabort = transaction.onerror = () => reject(transaction.error);
  });
}

/** Where the browser keeps nothing (a private window), the page works on without it. */
export const keep = (key, value) => store("kept", "readwrite", kept => kept.put(value, key)).catch(() => {});
export const recall = key => store("kept", "readonly", kept => kept.get(key)).catch(() => undefined);
