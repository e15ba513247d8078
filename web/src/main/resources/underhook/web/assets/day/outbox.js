// What was tapped here and the server's news do not tell of yet. A tap is shown only after it lies here,
// written through to the device's own disk. It is sent until the server has it on its own disk, and leaves
// with the first news that know of it, so that nothing that was tapped is ever out of sight.
const open = (name) => new Promise((resolve, reject) => {
  const asked = indexedDB.open(`underhook-day-${name}`, 1);
  asked.onupgradeneeded = () => {
    asked.result.createObjectStore('outbox', { keyPath: 'seq', autoIncrement: true });
    asked.result.createObjectStore('seen');
  };
  asked.onsuccess = () => resolve(asked.result);
  asked.onerror = () => reject(asked.error);
});

export class Outbox {
  constructor(db) { this.db = db; }

  static async of(job) { return new Outbox(await open(job)); }

  #run(store, work) {
    return new Promise((resolve, reject) => {
      const transaction = this.db.transaction(store, 'readwrite', { durability: 'strict' });
      const asked = work(transaction.objectStore(store));
      transaction.oncomplete = () => resolve(asked?.result);
      transaction.onerror = transaction.onabort = () => reject(transaction.error);
    });
  }

  /** Everything in it, in the order it was tapped; what the server has carries its number in the log. */
  all() { return this.#run('outbox', (store) => store.getAll()); }

  add(tap) { return this.#run('outbox', (store) => store.add({ tap, refused: null })); }

  change(entry) { return this.#run('outbox', (store) => store.put(entry)); }

  drop(seq) { return this.#run('outbox', (store) => store.delete(seq)); }

  /** The last news of the server, to be shown when it is gone. */
  keep(name, value) { return this.#run('seen', (store) => store.put(value, name)); }

  kept(name) { return this.#run('seen', (store) => store.get(name)); }
}

/** A random id in the form of a UUID; the shorter way needs https. */
export function newId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})/, '$1-$2-$3-$4-');
}
