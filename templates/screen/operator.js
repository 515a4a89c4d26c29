// The operator's window: shows what the reader's page says and asks it to do things; it keeps no clock of its own.
const SILENT_MS = 1500;

class Operator {
  constructor() {
    this.state = null;
    this.heardAt = 0;
    this.copies = [];
    this.sent = 0;
    this.stage = new Stage();
    this.stage.alone = false;
    this.stage.flip = "none";
    this.cards = new Cards();
    this.link = new Link("operator", (said) => this.hear(said));
    this.link.peer = window.opener;
  }

  begin() {
    document.title = `${words.operator} · ${document.title}`;
    document.documentElement.classList.add("operating");
    const board = byId("operator");
    board.hidden = false;
    board.append(...boardParts((name) => this.ask(name), (segment) => this.link.say("do", { name: "segment", value: segment })));
    byId("mark").remove();
    byId("bar").remove();
    const help = byId("help");
    help.append(...helpPanel());
    board.append(help);
    byId("o-picture").append(this.stage.glass);
    listenToKeys((name) => this.ask(name), () => this.state?.take !== null);
    window.addEventListener("resize", () => this.refit());
    window.addEventListener("pagehide", () => this.link.say("leaving"));
    window.addEventListener("blur", () => this.tell());
    window.addEventListener("focus", () => this.tell());
    this.refit();
    this.show(0);
    this.link.say("hello");
    setInterval(() => { this.link.say("hello"); this.tell(); }, 500);
    requestAnimationFrame((now) => this.frame(now));
  }

  refit() {
    const box = byId("o-picture");
    const scale = Math.min(box.clientWidth / frame.width_px, Math.max(window.innerHeight * 0.34, 90) / frame.height_px);
    this.stage.glass.style.width = `${Math.max(Math.floor(frame.width_px * scale), 1)}px`;
    this.stage.glass.style.height = `${Math.max(Math.floor(frame.height_px * scale), 1)}px`;
    this.stage.turn();
    this.stage.colour();
    this.stage.fit();
  }

  ask(name) {
    const help = byId("help");
    if (name === "help") help.hidden = !help.hidden;
    else if (name === "close") help.hidden = true;
    else if (name === "full") document.documentElement.requestFullscreen?.().catch(() => {});
    else if (this.silent && name === "save") this.saveCopies();
    else if (name !== "operator") this.link.say("do", { name });
  }

  get silent() {
    return performance.now() - this.heardAt > SILENT_MS;
  }

  hear(said) {
    if (said.what === "state") {
      this.heardAt = performance.now();
      this.look(said);
      this.state = said;
    } else if (said.what === "takes") this.copies = said.takes;
    else if (said.what === "leaving") this.heardAt = -Infinity;
  }

  // The small picture follows the reader's settings, except the flip.
  look(said) {
    const { stage } = this;
    if (stage.pages !== said.pages) stage.setPages(said.pages);
    if (stage.light === said.light && stage.warm === said.warm) return;
    Object.assign(stage, { light: said.light, warm: said.warm });
    stage.colour();
  }

  frame(now) {
    requestAnimationFrame((next) => this.frame(next));
    const at = this.now(now);
    this.stage.draw(at, now);
    this.cards.draw(at);
    if (now - this.sent > 100) { this.sent = now; this.show(at); }
  }

  // Between two words from the reader's page the time runs on at the rate it last told.
  now(now) {
    if (!this.state) return 0;
    const { at, rate, factor } = this.state;
    const since = Math.min((now - this.heardAt) / 1000, 0.5);
    return clamp(at + Math.max(since, 0) * rate * (waitAt(at) ? 1 : factor), 0, plan.end_s);
  }

  show(at) {
    const left = leftFrom(at, this.state?.factor ?? 1);
    this.figures(at, left);
    this.cue(at);
    this.rows(at);
    this.pace();
    this.takes();
    this.stateLine();
  }

  figure(id, value, range) {
    write(byId(id).querySelector(".value"), value);
    write(byId(id).querySelector(".range"), range);
  }

  figures(at, left) {
    const take = this.state?.take_s ?? null;
    const gone = take ?? at;
    const spent = take === null ? at : this.state.take_from + take;
    const between = (low, high) => `${clockText(low)} – ${clockText(high)}`;
    this.figure("o-gone", clockText(gone), this.state?.take ? fill(words.take, { n: this.state.take }) : words.rehearsal);
    this.figure("o-left", clockText(left.mean), fill(words.likely, { range: between(left.low, left.high) }));
    this.overSlot("o-over", plan.slot_s, spent, left, words.no_slot);
    const place = plan.place;
    byId("o-session").hidden = !place;
    if (place) this.overSlot("o-session", place.slot_s, place.start_s + spent, left, `${place.number} / ${place.scripts}`);
  }

  // Over or under if the rest runs as planned, with the range of the rest.
  overSlot(id, slot, gone, left, without) {
    const element = byId(id);
    if (slot === null || slot === undefined) { this.figure(id, "–", without); return; }
    const over = gone + left.mean - slot;
    element.classList.toggle("late", Math.round(over) > 0);
    const side = (seconds) => signedOver(gone + seconds - slot);
    this.figure(id, signedOver(over), `${side(left.low)} – ${side(left.high)}`);
  }

  cue(at) {
    const first = plan.cues.findIndex((cue) => cue.at_s > at - 1);
    const next = plan.cues[first];
    const later = first < 0 ? [] : plan.cues.slice(first + 1, first + 1 + LATER_CUES);
    const box = byId("o-cue");
    if (box.dataset.cue !== String(next?.number)) {
      box.dataset.cue = String(next?.number);
      write(box.querySelector(".number"), next ? String(next.number) : "–");
      box.querySelector("ul").replaceChildren(...(next?.actions ?? []).map((action) => make("li", {}, ...actionText(action))));
      box.querySelector("ol").replaceChildren(...later.map(laterRow));
    }
    const wait = next ? next.at_s - at : null;
    write(box.querySelector(".when"), wait === null ? words.no_more_cues : wait > 0.5 ? fill(words.in, { time: clockText(wait) }) : words.now);
    for (const [i, row] of [...box.querySelector("ol").children].entries()) {
      write(row.querySelector(".in"), clockText(Math.max(later[i].at_s - at, 0)));
    }
    box.classList.toggle("soon", wait !== null && wait < 10);
  }

  rows(at) {
    const here = segmentAt(at);
    if (here !== this.here) {
      this.here = here;
      byId("o-segments").querySelectorAll("li").forEach((row, i) => {
        row.classList.toggle("here", i === here);
        row.classList.toggle("done", i < here);
      });
      const [list, row] = [byId("o-list"), byId("o-segments").children[here]];
      if (row && list.scrollHeight > list.clientHeight) list.scrollTop = row.offsetTop - list.clientHeight / 3;
    }
    const segment = plan.segments[here];
    const bar = byId("o-segments").children[here]?.querySelector(".share");
    if (bar) bar.style.width = `${(100 * clamp((at - segment.at_s) / Math.max(segment.mean_s, 0.001), 0, 1)).toFixed(1)}%`;
  }

  pace() {
    const factor = this.state?.factor ?? 1;
    const box = byId("o-pace");
    box.querySelector(".now").style.left = `${clamp(50 + (factor - 1) * 50, 0, 100).toFixed(1)}%`;
    write(box.querySelector("p"), fill(words.pace_is, { n: Math.round(factor * 100) }));
  }

  takes() {
    const takes = this.state?.takes ?? [];
    const unsaved = takes.filter((take) => !take.saved).length;
    const key = JSON.stringify(takes.map((take) => [take.id, take.saved, take.finished, Math.round(take.ended_s)]));
    if (key === this.takesKey) return;
    this.takesKey = key;
    const rows = takes.slice(-12).map((take) => make("li", { class: take.saved ? "saved" : "open" },
      `${fill(words.take, { n: take.take })} · ${clockText(take.ended_s)}${take.saved ? "" : ` · ${words.not_saved}`}`));
    byId("o-takes").querySelector("ol").replaceChildren(...rows);
    write(byId("o-takes").querySelector("p"), takes.length ? (unsaved ? fill(words.unsaved, { n: unsaved }) : "") : words.no_takes);
  }

  stateLine() {
    const { state } = this;
    const doing = !state ? words.ready : state.going ? words.moving : words.held;
    const take = state?.take ? fill(words.take_on, { n: state.take }) : words.rehearsal;
    write(byId("o-state"), state ? `${take} · ${doing}` : doing);
    byId("o-state").classList.toggle("going", Boolean(state?.going));
    const look = state ? [fill(words.view_flip, { flip: words[`flip_${state.flip}`] }), state.pages ? words.view_pages : words.view_flowing] : [];
    write(byId("o-look"), look.join(" · "));
  }

  // What the operator must not miss: the reader's window is gone, the keys go elsewhere, a store is full, a rest is due.
  tell() {
    const box = byId("o-notice");
    if (this.state && this.silent) { this.tellGone(box); return; }
    const rest = this.state?.spoken > VOICE_S && !this.state.going ? fill(words.rest_now, { m: Math.round(this.state.spoken / 60) }) : null;
    const focus = document.hasFocus() || this.state?.focus ? null : words.keys_elsewhere;
    const text = this.state?.faults?.at(-1) ?? this.state?.notice ?? focus ?? rest;
    box.hidden = !text;
    write(box, text ?? "");
    this.gone = false;
  }

  tellGone(box) {
    if (this.gone) return;
    this.gone = true;
    box.hidden = false;
    box.replaceChildren(words.reader_gone, " ",
      make("button", { type: "button", onclick: () => this.saveCopies() }, words.short_save), " ",
      make("button", { type: "button", onclick: () => this.link.reach("hold=1", "", "") }, words.reader_again));
  }

  saveCopies() {
    for (const { name, text } of this.copies) saveFile(name, text);
  }
}
