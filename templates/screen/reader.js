// The reader's page: clock, picture, take and commands together.
const SAY_MS = 150;
const COPY_MS = 3000;
const VOICE_S = 15 * 60;

class Reader {
  constructor() {
    this.clock = new Clock();
    this.stage = new Stage();
    this.cards = new Cards();
    this.store = new TakeStore();
    this.recorder = new Recorder(this.store);
    this.queue = new Queue((name, value) => this.run(name, value));
    this.link = new Link("reader", (said) => this.hear(said));
    this.pads = new Pads((name) => this.ask(name));
    this.clapLeft = null;
    this.waitAtGuests = false;
    this.dark = 0;
    this.resting = false;
    this.spoken = 0;
    this.told = 0;
    this.faults = [];
    this.cut = null;
    this.touched = false;
    this.lastSaid = 0;
    this.clock.onsleep = (gap) => this.slept(gap);
    this.store.onworse = (why) => this.storeWorse(why);
  }

  async begin() {
    listenToKeys((...asked) => this.ask(...asked), () => this.recorder.on);
    this.pointer = new Pointer((...asked) => this.ask(...asked), (pixels) => this.shift(pixels), this.stage);
    byId("bar").append(...barButtons((name) => this.ask(name)));
    byId("help").append(...helpPanel());
    recallView(this);
    this.stage.setPages(plan.style === "pages" || matchMedia("(prefers-reduced-motion: reduce)").matches);
    readAddress(this, true);
    window.addEventListener("hashchange", () => readAddress(this, false));
    window.addEventListener("resize", () => this.refit());
    window.addEventListener("pagehide", () => { this.keep(); this.sayTakes(0); this.link.say("leaving"); });
    document.addEventListener("visibilitychange", () => { if (document.hidden) this.keep(); });
    this.refit();
    requestAnimationFrame((now) => this.frame(now));
    await this.store.open();
    this.takeUp(await this.recorder.load());
    document.documentElement.classList.add("ready");
  }

  // All of the take up to now, into the store.
  keep() {
    this.pass(performance.now());
    this.recorder.flush();
  }

  refit() {
    this.stage.turn();
    this.stage.colour();
    this.stage.fit();
    this.draw(performance.now());
  }

  // -- one frame --------------------------------------------------------------------------------------------

  frame(now) {
    requestAnimationFrame((next) => this.frame(next));
    this.pads.poll();
    this.pass(now);
    this.draw(now);
    if (now - this.lastSaid > SAY_MS) this.sayState(now);
  }

  // Brings clock and take up to `now` (milliseconds): for each frame, and before anything is asked, so that a hold
  // counts from its key and not from the frame before it.
  pass(now) {
    const before = this.clock.due;
    const gap = this.clock.tick(now);
    const beyond = this.waitAtGuests ? this.stopAtGuestEnd(before) : null;
    this.recorder.pass(gap, this.clock.due, this.clock.factor);
    if (beyond !== null) this.hold("guest", beyond);
    if (this.clapLeft !== null) this.clapDown(Math.min(gap, SLOW_FRAME_S));
    if (this.clock.going && !waitAt(this.clock.due)) this.spoken += gap;
    if (before < plan.end_s && this.clock.due >= plan.end_s) this.changed();
    this.restFade(gap);
  }

  draw(now) {
    this.stage.still = this.clock.rate === 0;
    this.stage.draw(this.clock.at, now);
    this.cards.draw(this.clock.at);
    this.cards.mark(this.clock.at);
  }

  restFade(gap) {
    const wanted = this.resting ? 1 : 0;
    if (this.dark === wanted) return;
    this.dark = clamp(this.dark + (wanted ? gap : -gap) / 0.8, 0, 1);
    byId("sleep").style.opacity = eased(this.dark);
  }

  // Stands the clock at a guest part's end; gives by how many real seconds it had gone beyond, else null.
  stopAtGuestEnd(before) {
    const wait = waitAt(before);
    const stop = wait?.end_s - 0.05;
    if (wait?.kind !== "live" || before >= stop || this.clock.due < stop) return null;
    const beyond = realBetween(stop, this.clock.due, this.clock.factor);
    this.clock.jump(stop);
    this.clock.going = true;
    return beyond;
  }

  // -- commands ---------------------------------------------------------------------------------------------

  // `when` is the moment of the key or button, in the page's milliseconds: a busy page may get to it later.
  ask(name, value, when = performance.now()) {
    const command = COMMANDS.find((known) => known.name === name);
    if (!command) return;
    const { going } = this.clock;
    this.pass(Math.min(when, performance.now()));
    if (name === "toggle" && going && !this.clock.going) return; // it was held meanwhile: that is what was wanted
    this.queue.ask(command, value);
  }

  run(name, value) {
    this.touched = true;
    if (name !== "help" && name !== "save") this.notice(null);
    doings[name](this, value);
    this.changed();
  }

  // `ago` real seconds before now.
  hold(cause, ago = 0) {
    if (!this.clock.going) return;
    this.clock.hold();
    this.recorder.note("hold", round(this.recorder.elapsed - ago), round(this.clock.due), cause);
    this.restVoice();
    this.changed();
  }

  release() {
    if (this.cut) this.takeUpNow();
    if (this.recorder.on && !this.recorder.entered) this.recorder.clap(this.clock.due);
    this.clock.release();
    if (this.clock.going) this.recorder.note("release", this.recorder.now);
    keepAwake();
  }

  jump(at) {
    const from = this.clock.due;
    this.stage.glideFrom();
    this.clock.jump(at);
    this.recorder.jumped(from, this.clock.due);
  }

  byLines(step) {
    const line = clamp(lineAt(this.clock.at) + step, 0, plan.lines.length - 1);
    if (plan.lines.length) this.jump(plan.lines[line][0]);
  }

  // Shifts the text under a finger or the wheel: `pixels` of the picture.
  shift(pixels) {
    if (this.stage.pages || !plan.lines.length) return;
    this.pass(performance.now());
    const { at, due } = this.clock;
    this.clock.jump(secondAt(clamp(heightAt(at) + pixels, centreOf(0), centreOf(plan.lines.length - 1))));
    this.recorder.jumped(due, this.clock.due);
  }

  setPace(factor) {
    this.clock.factor = Math.round(clamp(factor, 0.5, 2) * 100) / 100;
    this.recorder.note("pace", this.recorder.now, this.clock.factor);
    if (!this.link.open) this.notice(fill(words.pace_is, { n: Math.round(this.clock.factor * 100) }), 1500);
  }

  startTake() {
    this.clock.jump(this.clock.due >= plan.end_s ? 0 : this.clock.at);
    this.clock.hold(true);
    this.recorder.start(this.clock.due);
    this.recorder.note("hold", this.recorder.now, round(this.clock.due), "clap");
    this.clapLeft = CLAP_S;
  }

  clapDown(gap) {
    this.clapLeft = Math.max(this.clapLeft - gap, 0);
    this.cards.clap(this.recorder.take?.take, this.clapLeft);
    if (this.clapLeft > 0) return;
    this.clapLeft = null;
    this.cards.clap(null, null);
    this.release();
    this.changed();
  }

  endTake() {
    this.clapLeft = null;
    this.cards.clap(null, null);
    this.clock.hold();
    this.recorder.end();
    this.restVoice();
  }

  takeUp(cut) {
    if (!cut) { this.changed(); return; }
    if (this.touched) return;
    this.cut = cut;
    this.clock.hold(true);
    this.clock.jump(cut.script_s);
    this.notice(fill(words.interrupted, { n: cut.take, t: clockText(cut.script_s) }));
    this.changed();
  }

  takeUpNow() {
    this.recorder.resume(this.cut, this.clock.due);
    this.cut = null;
  }

  // -- what is told -----------------------------------------------------------------------------------------

  // A word that stays until the next command, or for some time; a lasting fault comes back after it.
  notice(wanted, forMs) {
    clearTimeout(this.noticeTimer);
    const text = wanted ?? this.faults.at(-1) ?? null;
    byId("notice").hidden = !text;
    write(byId("notice"), text ?? "");
    this.noticeText = text;
    if (wanted && forMs) this.noticeTimer = setTimeout(() => this.notice(null), forMs);
  }

  slept(gap) {
    this.recorder.note("hold", this.recorder.now, round(this.clock.due), "sleep");
    this.notice(fill(words.slept, { s: Math.round(gap) }));
    this.changed();
  }

  storeWorse(why) {
    const text = why === "full" ? fill(words.store_full, { n: this.recorder.take?.take ?? "" }) : words.store_none;
    this.faults.push(text);
    this.notice(text);
    this.changed();
    window.addEventListener("beforeunload", (event) => { if (this.recorder.unsaved) event.preventDefault(); });
  }

  // At a hold after every quarter of an hour of speech: a word about rest.
  restVoice() {
    const blocks = Math.floor(this.spoken / VOICE_S);
    if (blocks <= this.told) return;
    this.told = blocks;
    this.notice(fill(words.rest_now, { m: Math.round(this.spoken / 60) }), 12000);
  }

  changed() {
    if (this.touched) keepView(this);
    this.sayState(performance.now());
  }

  sayState(now) {
    this.lastSaid = now;
    if (!this.link.open) return;
    const { at, going, rate, factor } = this.clock;
    const { flip, pages, light, warm, panelsTurn } = this.stage;
    const takes = this.recorder.takes.map(({ id, take, saved, finished, ended_s }) => ({ id, take, saved, finished, ended_s }));
    this.link.say("state", {
      at, going, rate, factor, flip, pages, light, warm, panelsTurn, takes, notice: this.noticeText ?? null, spoken: this.spoken,
      take: this.recorder.take?.take ?? this.cut?.take ?? null, take_s: this.recorder.take?.ended_s ?? null,
      take_from: this.recorder.take?.began_at_s ?? 0,
      clapLeft: this.clapLeft, faults: this.faults, waitAtGuests: this.waitAtGuests, focus: document.hasFocus(), resting: this.resting,
    });
    if (now - (this.lastCopy ?? -Infinity) > COPY_MS) this.sayTakes(now);
  }

  // The operator's window holds a copy of every take that is not saved, should the reader's window go.
  sayTakes(now) {
    this.lastCopy = now;
    this.link.say("takes", { takes: this.recorder.takes.filter((take) => !take.saved).map(takeFile) });
  }

  hear(said) {
    if (said.what === "do") this.runAsked(said.name, said.value);
    else if (said.what === "leaving") { this.link.peer = null; this.notice(words.operator_closed, 5000); }
    else this.changed();
  }

  runAsked(name, value) {
    if (name === "segment") { this.pass(performance.now()); this.touched = true; doings.segment(this, value); this.changed(); }
    else this.ask(name, value);
  }
}

// Keeps the screen from going to sleep while the text moves, where the browser lets us.
async function keepAwake() {
  try { await navigator.wakeLock?.request("screen"); } catch { /* the system's own settings rule */ }
}
