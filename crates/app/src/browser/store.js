// What store.rs says: the talk with the browser's database, and nothing besides. A record goes to and fro as its text.

const STORES = ["pieces", "workshops"];

// What cannot be written as text is told as nothing.
function text(value, indent) {
  try {
    return JSON.stringify(value, null, indent);
  } catch {}
}

function answer(request) {
  return new Promise((done, fail) => {
    request.onsuccess = () => done(request.result);
    request.onerror = (event) => {
      // The other requests of the transaction go on.
      event.preventDefault();
      fail(request.error);
    };
  });
}

// `lost` is called when what the database held is gone, or may be: the browser closed it, or it is being deleted.
export function open(name, version, lost) {
  return new Promise((done, fail) => {
    const request = indexedDB.open(name, version);
    request.onupgradeneeded = () => {
      const database = request.result;
      for (const store of STORES) {
        if (!database.objectStoreNames.contains(store)) database.createObjectStore(store);
      }
    };
    request.onerror = () => fail(request.error);
    request.onsuccess = () => {
      const database = request.result;
      // A page of a newer version waits until this one lets go.
      database.onversionchange = ({ newVersion }) => {
        database.close();
        if (newVersion === null) lost();
      };
      database.onclose = lost;
      done(database);
    };
  });
}

// Lets go of it: nothing of it is told any more.
export function close(database) {
  database.onversionchange = database.onclose = null;
  database.close();
}

// Every record of both stores: the keys and the texts of each. Mostly all are read at once. Where that fails, as when one
// large record is damaged, each is read alone, and one that cannot be read has no text.
export async function load(database) {
  const texts = ({ keys, values }) => [keys.map(String), values.map((value) => text(value))];
  const both = (from) => Promise.all(STORES.map((name) => from(name).then(texts)));
  try {
    const reading = database.transaction(STORES);
    return await both(async (name) => {
      const store = reading.objectStore(name);
      const [keys, values] = await Promise.all([answer(store.getAllKeys()), answer(store.getAll())]);
      return { keys, values };
    });
  } catch {
    return await both(async (name) => {
      const store = () => database.transaction(name).objectStore(name);
      const keys = await answer(store().getAllKeys());
      const value = async (key) => answer(store().get(key));
      return { keys, values: await Promise.all(keys.map((key) => value(key).catch(() => undefined))) };
    });
  }
}

function put(transaction, [store, key, record]) {
  const of = transaction.objectStore(store);
  if (record === undefined) of.delete(key);
  else of.put(JSON.parse(record), key);
}

// One transaction: `begin` asks for what it needs of it. What is done counts when the transaction is complete, not when
// the requests are.
function change(database, begin) {
  return new Promise((done, fail) => {
    let fault;
    const transaction = database.transaction(STORES, "readwrite");
    const careful = (step) => {
      try {
        step();
      } catch (error) {
        fault = error;
        transaction.abort();
      }
    };
    transaction.oncomplete = done;
    transaction.onabort = () => fail(fault ?? transaction.error ?? new Error("the change was undone"));
    careful(() => begin(transaction, careful));
  });
}

// Reads the newest texts of some records, as Rust writes them, and writes what `written` makes of them, without letting anybody in between.
export function rewrite(database, keys, written) {
  return change(database, (transaction, careful) => {
    const newest = keys.map(() => undefined);
    let waits = keys.length;
    const read = (place, value) => {
      newest[place] = text(value, 2);
      waits -= 1;
      if (waits) return;
      careful(() => written(newest).forEach((record, at) => put(transaction, [...keys[at], record])));
    };
    keys.forEach(([store, key], place) => {
      const request = transaction.objectStore(store).get(key);
      request.onsuccess = () => read(place, request.result);
      request.onerror = (event) => {
        event.preventDefault();
        read(place);
      };
    });
  });
}

// Writes these records in place of all that there are.
export function replace(database, records) {
  return change(database, (transaction) => {
    for (const store of STORES) transaction.objectStore(store).clear();
    for (const record of records) put(transaction, record);
  });
}
