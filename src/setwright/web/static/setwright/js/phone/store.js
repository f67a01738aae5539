/** What stays on the phone: records until the server has answered for them, and the day. */

/** @typedef {import("./types.js").Kept} Kept */
/** @typedef {import("./types.js").KeptDay} KeptDay */

const NAME = "setwright-phone";

/** @returns {Promise<IDBDatabase>} */
function open() {
  return new Promise((done, failed) => {
    const asked = indexedDB.open(NAME, 1);
    asked.onupgradeneeded = () => {
      asked.result.createObjectStore("records", { keyPath: "id" });
      asked.result.createObjectStore("days", { keyPath: "person" });
    };
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => failed(asked.error);
  });
}

/**
 * One transaction; what was written is on the disk when the promise keeps.
 * @template T
 * @param {"records"|"days"} store
 * @param {IDBTransactionMode} mode
 * @param {(objects: IDBObjectStore) => IDBRequest<T>|void} act
 * @returns {Promise<T|undefined>}
 */
async function within(store, mode, act) {
  const database = await open();
  try {
    return await new Promise((done, failed) => {
      const transaction = database.transaction(store, mode, { durability: "strict" });
      const asked = act(transaction.objectStore(store));
      transaction.oncomplete = () => done(asked ? asked.result : undefined);
      transaction.onerror = transaction.onabort = () => failed(transaction.error);
    });
  } finally {
    database.close();
  }
}

/** @param {string} person @returns {Promise<Kept[]>} in the order they were made */
export async function recordsOf(person) {
  const all = (await within("records", "readonly", (objects) => objects.getAll())) ?? [];
  const own = all.filter((/** @type {Kept} */ one) => one.person === person);
  return own.sort((a, b) => a.made - b.made);
}

/** @param {Kept[]} records */
export async function keep(records) {
  await within("records", "readwrite", (objects) => {
    for (const one of records) objects.put(one);
  });
}

/** @param {string[]} ids */
export async function forget(ids) {
  await within("records", "readwrite", (objects) => {
    for (const id of ids) objects.delete(id);
  });
}

/** @param {string} person @returns {Promise<KeptDay|undefined>} */
export function dayOf(person) {
  return within("days", "readonly", (objects) => objects.get(person));
}

/** @returns {Promise<KeptDay|undefined>} of whoever was here last; there is never more than one */
export async function lastDay() {
  return (await within("days", "readonly", (objects) => objects.getAll()))?.[0];
}

/** Keep a day; another person's is gone then. @param {KeptDay} day */
export async function keepDay(day) {
  await within("days", "readwrite", (objects) => {
    objects.clear();
    objects.put(day);
  });
}

/** Leave nothing of anybody but records that no server has answered for. */
export async function forgetPeople() {
  await within("days", "readwrite", (objects) => objects.clear());
  const all = (await within("records", "readonly", (objects) => objects.getAll())) ?? [];
  await forget(all.filter((one) => one.state === "sent").map((one) => one.id));
}
