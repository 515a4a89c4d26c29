// Where takes are kept as they happen: small parts, only ever added. The browser's database first (it outlives a
// crash), its plain store next, this window's memory last; a change for the worse is told by `onworse`.
const STORE_NAME = "promptprep-takes";
const scriptKey = `${plan.script}.${plan.language}`;

function asked(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

class DatabaseStore {
  static async open() {
    const request = indexedDB.open(STORE_NAME, 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore("parts", { autoIncrement: true }).createIndex("script", "script");
    };
    const store = new DatabaseStore();
    store.database = await asked(request);
    return store;
  }

  add(part) {
    return new Promise((resolve, reject) => {
      const change = this.database.transaction("parts", "readwrite", { durability: "relaxed" });
      change.oncomplete = () => resolve();
      change.onabort = () => reject(change.error);
      change.onerror = (event) => reject(event.target.error);
      change.objectStore("parts").add({ script: scriptKey, ...part });
    });
  }

  all() {
    return asked(this.database.transaction("parts").objectStore("parts").index("script").getAll(scriptKey));
  }
}

class PlainStore {
  static async open() {
    localStorage.getItem(STORE_NAME);
    return new PlainStore();
  }

  constructor() {
    this.count = 0;
    this.run = Date.now().toString(36);
  }

  async add(part) {
    this.count += 1;
    const number = String(this.count).padStart(8, "0");
    localStorage.setItem(`${STORE_NAME}|${scriptKey}|${this.run}|${number}`, JSON.stringify(part));
  }

  async all() {
    const keys = Object.keys(localStorage).filter((key) => key.startsWith(`${STORE_NAME}|${scriptKey}|`)).sort();
    return keys.map((key) => JSON.parse(localStorage.getItem(key)));
  }
}

class TakeStore {
  constructor() {
    this.stores = [];
    this.memory = false;
    this.onworse = () => {};
  }

  async open() {
    for (const kind of [DatabaseStore, PlainStore]) {
      try { this.stores.push(await kind.open()); } catch (fault) { console.warn(fault); }
    }
    if (!this.stores.length) this.worse("none");
  }

  worse(why) {
    if (this.memory) return;
    this.memory = true;
    this.onworse(why);
  }

  async add(part) {
    for (const store of this.stores) {
      try { await store.add(part); return; } catch (fault) { console.warn(fault); }
    }
    this.worse(this.stores.length ? "full" : "none");
  }

  async all() {
    const found = [];
    for (const store of this.stores) {
      try { found.push(...(await store.all())); } catch (fault) { console.warn(fault); }
    }
    return found;
  }
}
