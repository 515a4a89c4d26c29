// The reader's page: clock, picture, take and commands together.
const LIGHTS = [1, 0.75, 0.5, 0.3];
const SAY_MS = 150;
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
    listenToKeys((name) => this.ask(name), () => this.recorder.on);
    this.pointer = new Pointer((name) => this.ask(name), (pixels) => this.shift(pixels), this.stage);
    byId("bar").append(...barButtons((name) => this.ask(name)));
    byId("help").append(...helpPanel());
    this.recall();
    this.stage.setPages(plan.style === "pages" || matchMedia("(prefers-reduced-motion: reduce)").matches);
    this.address(true);
    window.addEventListener("hashchange", () => this.address(false));
    window.addEventListener("resize", () => this.refit());
    window.addEventListener("pagehide", () => { this.recorder.flush(); this.link.say("leaving"); });
    document.addEventListener("visibilitychange", () => { if (document.hidden) this.recorder.flush(); });
    this.refit();
    requestAnimationFrame((now) => this.frame(now));
    await this.store.open();
    this.takeUp(await this.recorder.load());
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
    const before = this.clock.at;
    const gap = this.clock.tick(now);
    if (this.clapLeft !== null) this.clapDown(gap);
    if (this.waitAtGuests) this.stopAtGuestEnd(before);
    this.recorder.pass(gap, this.clock.at);
    if (this.clock.going && !waitAt(this.clock.at)) this.spoken += gap;
    if (before < plan.end_s && this.clock.at >= plan.end_s) this.changed();
    this.draw(now);
    this.restFade(gap);
    if (now - this.lastSaid > SAY_MS) this.sayState(now);
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

  stopAtGuestEnd(before) {
    const wait = waitAt(before);
    if (wait?.kind !== "live" || this.clock.at < wait.end_s - 0.1 || !this.clock.going) return;
    this.clock.at = Math.min(this.clock.at, wait.end_s - 0.05);
    this.hold("guest");
  }

  // -- commands ---------------------------------------------------------------------------------------------

  ask(name, value) {
    const command = COMMANDS.find((known) => known.name === name);
    if (command) this.queue.ask(command, value);
  }

  run(name, value) {
    this.touched = true;
    if (name !== "help" && name !== "save") this.notice(null);
    this[`do_${name}`](value);
    this.changed();
  }

  do_toggle() {
    if (this.clapLeft !== null) this.clapDown(Infinity);
    else if (this.clock.going) this.hold("hand");
    else this.release();
  }

  hold(cause) {
    if (!this.clock.going) return;
    this.clock.hold();
    this.recorder.note("hold", this.recorder.now, round(this.clock.at), cause);
    this.restVoice();
    this.changed();
  }

  release() {
    if (this.cut) this.takeUpNow();
    if (this.recorder.on && !this.recorder.entered) this.recorder.clap(this.clock.at);
    this.clock.release();
    if (this.clock.going) this.recorder.note("release", this.recorder.now);
    keepAwake();
  }

  jump(at) {
    const from = this.clock.at;
    this.stage.glideFrom();
    this.clock.jump(at);
    this.recorder.jumped(from, this.clock.at);
  }

  do_forward() {
    if (!this.stage.pages) { this.do_toggle(); return; }
    const next = plan.screenfuls[screenfulAt(this.clock.at) + 1];
    if (next) this.jump(next[2]);
  }

  do_back() {
    if (!this.stage.pages) { this.do_previous(); return; }
    const page = plan.screenfuls[Math.max(screenfulAt(this.clock.at) - 1, 0)];
    if (page) this.jump(page[2]);
  }

  // To the start of the segment; from its first seconds to the one before.
  do_previous() {
    const here = segmentAt(this.clock.at);
    const back = this.clock.at - (plan.segments[here]?.at_s ?? 0) < 2 ? here - 1 : here;
    this.jump(plan.segments[Math.max(back, 0)]?.at_s ?? 0);
  }

  do_next() {
    const next = plan.segments[segmentAt(this.clock.at) + 1];
    if (next) this.jump(next.at_s);
  }

  do_segment(number) {
    if (plan.segments[number]) this.jump(plan.segments[number].at_s);
  }

  do_line_up() { this.byLines(-1); }
  do_line_down() { this.byLines(1); }

  byLines(step) {
    const line = clamp(lineAt(this.clock.at) + step, 0, plan.lines.length - 1);
    if (plan.lines.length) this.jump(plan.lines[line][0]);
  }

  // Shifts the text under a finger or the wheel: `pixels` of the picture.
  shift(pixels) {
    if (this.stage.pages || !plan.lines.length) return;
    const from = this.clock.at;
    this.clock.jump(secondAt(clamp(heightAt(from) + pixels, centreOf(0), centreOf(plan.lines.length - 1))));
    this.recorder.jumped(from, this.clock.at);
  }

  do_start() { this.jump(0); }
  do_last() { this.jump(plan.segments.at(-1)?.at_s ?? 0); }
  do_faster() { this.setPace(this.clock.factor + 0.02); }
  do_slower() { this.setPace(this.clock.factor - 0.02); }
  do_plan() { this.setPace(1); }

  setPace(factor) {
    this.clock.factor = Math.round(clamp(factor, 0.5, 2) * 100) / 100;
    this.recorder.note("pace", this.recorder.now, this.clock.factor);
    if (!this.link.open) this.notice(fill(words.pace_is, { n: Math.round(this.clock.factor * 100) }), 1500);
  }

  do_wait() {
    this.waitAtGuests = !this.waitAtGuests;
    this.notice(this.waitAtGuests ? words.guest_waits : words.guest_goes, 2500);
  }

  // -- takes ------------------------------------------------------------------------------------------------

  do_take() {
    if (this.cut) { this.takeUpNow(); this.endTake(); return; }
    if (this.recorder.on) this.endTake();
    else this.startTake();
  }

  startTake() {
    if (this.clock.at >= plan.end_s) this.clock.jump(0);
    this.clock.hold(true);
    this.recorder.start(this.clock.at);
    this.recorder.note("hold", this.recorder.now, round(this.clock.at), "clap");
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

  do_save() {
    const open = this.recorder.takes.filter((take) => !take.saved && take !== this.recorder.take);
    if (!open.length) { this.notice(words.nothing_to_save, 2500); return; }
    for (const take of open) {
      const { name, text } = takeFile(take);
      saveFile(name, text);
      this.recorder.markSaved(take);
      this.notice(fill(words.saved, { n: take.take, file: name }), 4000);
    }
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
    this.recorder.resume(this.cut, this.clock.at);
    this.cut = null;
  }

  // -- the picture ------------------------------------------------------------------------------------------

  do_flip(flip) {
    const flips = ["none", "horizontal", "vertical", "both"];
    this.stage.flip = flips.includes(flip) ? flip : flips[(flips.indexOf(this.stage.flip) + 1) % 4];
    this.stage.turn();
    this.notice(fill(words.view_flip, { flip: words[`flip_${this.stage.flip}`] }), 2000);
  }

  do_panels() {
    this.stage.panelsTurn = !this.stage.panelsTurn;
    this.stage.turn();
    this.notice(this.stage.panelsTurn ? words.panels_turn : words.panels_plain, 2500);
  }

  do_mode() {
    this.stage.setPages(!this.stage.pages);
    this.notice(this.stage.pages ? words.view_pages : words.view_flowing, 2000);
  }

  do_light() {
    const next = LIGHTS[(LIGHTS.indexOf(this.stage.light) + 1) % LIGHTS.length];
    this.stage.light = next;
    this.stage.colour();
    this.notice(fill(words.view_light, { n: Math.round(next * 100) }), 2000);
  }

  do_warm() {
    this.stage.warm = (this.stage.warm + 1) % 4;
    this.stage.colour();
    this.notice(fill(words.view_warm, { n: this.stage.warm }), 2000);
  }

  do_chart() { byId("chart").toggleAttribute("hidden"); }
  do_rest() { this.resting = !this.resting; }

  do_help() {
    const help = byId("help");
    help.hidden = !help.hidden;
    if (!help.hidden) help.focus();
  }

  do_close() {
    byId("help").hidden = true;
    byId("chart").setAttribute("hidden", "");
    document.body.classList.remove("awake");
  }

  do_full() {
    if (document.fullscreenElement) document.exitFullscreen();
    else document.documentElement.requestFullscreen?.().catch(() => {});
  }

  do_operator() {
    const reached = this.link.reach("view=operator", `promptprep-operator-${scriptKey}`, "width=1280,height=800");
    if (!reached) this.notice(words.operator_blocked);
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
    this.recorder.note("hold", this.recorder.now, round(this.clock.at), "sleep");
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

  // -- state ------------------------------------------------------------------------------------------------

  // The fragment: flip, at, hold, and of our own mode, panels, chart, help, light, warm.
  address(first) {
    const asked = new URLSearchParams(location.hash.slice(1));
    const has = (name) => asked.has(name);
    if (has("flip") && words[`flip_${asked.get("flip")}`]) this.stage.flip = asked.get("flip");
    if (has("mode")) this.stage.setPages(asked.get("mode") === "pages");
    if (has("panels")) this.stage.panelsTurn = asked.get("panels") !== "plain";
    if (has("chart")) byId("chart").toggleAttribute("hidden", asked.get("chart") !== "1");
    if (has("help")) byId("help").hidden = asked.get("help") !== "1";
    if (LIGHTS.includes(Number(asked.get("light")))) this.stage.light = Number(asked.get("light"));
    if (has("warm")) this.stage.warm = clamp(Math.trunc(Number(asked.get("warm"))) || 0, 0, 3);
    this.addressTime(asked, first);
    this.refit();
    this.changed();
  }

  addressTime(asked, first) {
    const at = Number.parseFloat(asked.get("at"));
    if (Number.isFinite(at)) {
      const from = this.clock.at;
      this.stage.glide = null;
      this.clock.jump(at);
      if (!first) this.recorder.jumped(from, this.clock.at);
    }
    if (asked.get("hold") === "1") this.clock.hold(true);
    else if (asked.has("hold") || (asked.has("at") && Number.isFinite(at))) this.clock.release();
  }

  // Settings outlive a reload, not the window.
  recall() {
    try {
      const kept = JSON.parse(sessionStorage.getItem(`promptprep-view-${scriptKey}`) ?? "null");
      if (!kept || kept.rig !== plan.rig) return;
      Object.assign(this.stage, { flip: kept.flip, light: kept.light, warm: kept.warm, panelsTurn: kept.panelsTurn });
      this.clock.factor = kept.factor;
    } catch (fault) { console.warn(fault); }
  }

  keep() {
    const { flip, light, warm, panelsTurn } = this.stage;
    const kept = { rig: plan.rig, flip, light, warm, panelsTurn, factor: this.clock.factor };
    try { sessionStorage.setItem(`promptprep-view-${scriptKey}`, JSON.stringify(kept)); } catch (fault) { console.warn(fault); }
  }

  changed() {
    if (this.touched) this.keep();
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
    if (now - (this.lastCopy ?? -Infinity) > 1000) this.sayTakes(now);
  }

  // The operator's window holds a copy of every take that is not saved, should the reader's window go.
  sayTakes(now) {
    this.lastCopy = now;
    this.link.say("takes", { takes: this.recorder.takes.filter((take) => !take.saved).map(takeFile) });
  }

  hear(said) {
    if (said.what === "do") this.run_asked(said.name, said.value);
    else if (said.what === "leaving") { this.link.peer = null; this.notice(words.operator_closed, 5000); }
    else this.changed();
  }

  run_asked(name, value) {
    if (name === "segment") { this.touched = true; this.do_segment(value); this.changed(); }
    else this.ask(name, value);
  }
}

// Keeps the screen from going to sleep while the text moves, where the browser lets us.
async function keepAwake() {
  try { await navigator.wakeLock?.request("screen"); } catch { /* the system's own settings rule */ }
}
