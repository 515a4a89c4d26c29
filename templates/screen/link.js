// The tie between the reader's and the operator's window: messages that name this very script and wording.
class Link {
  constructor(role, onmessage) {
    this.role = role;
    this.peer = null;
    this.heard = null;
    window.addEventListener("message", (event) => {
      const said = event.data;
      if (said?.promptprep !== 1 || said.key !== scriptKey || said.digest !== plan.digest || said.role === role) return;
      this.peer = event.source ?? this.peer;
      this.heard = performance.now();
      onmessage(said);
    });
  }

  get open() {
    return this.peer !== null && !this.peer.closed;
  }

  say(what, values = {}) {
    if (!this.open) return false;
    this.peer.postMessage({ promptprep: 1, key: scriptKey, digest: plan.digest, role: this.role, what, ...values }, "*");
    return true;
  }

  // Opens the other window on this same file. Its name keeps it to one window a script.
  reach(fragment, name, size) {
    if (this.open) { this.peer.focus(); return true; }
    const address = `${location.href.split("#")[0]}#${fragment}`;
    const peer = window.open(address, name, size);
    if (peer) this.peer = peer;
    return Boolean(peer);
  }
}
