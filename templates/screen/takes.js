// Takes: what really passed. A take is the sum of its parts, so that the same code keeps it, shows it and finds it
// again after a reload.
//
// A take file: { promptprep: 1, take, script, title, language, reader, digest, began, began_at_s, clap_s, ended_s, finished,
//   planned_s, segments: [{ id, planned_s, started_s, ended_s, from_s, to_s, held_s, fixed_s, rest_s, whole, text, said }],
//   lines: [{ line, planned_s, at_s }], holds: [{ at_s, script_s, length_s, cause }],
//   jumps: [{ at_s, from_s, to_s }], pace: [{ at_s, factor }], breaks: [{ at_s, length_s }] }
// All `_s` are seconds: `at_s`, `started_s`, `ended_s`, `clap_s` real ones from the take's start, the others of the
// plan. `rest_s` is what the silence after a segment's last word has beyond that at a script's own end.
const PART_MS = 200;

function newTake(id) {
  return {
    id, promptprep: 1, take: 0, script: plan.script, title: "", language: plan.language, reader: null, digest: "",
    began: "", began_at_s: 0, clap_s: 0, ended_s: 0, finished: false, saved: false, planned_s: 0, script_s: 0, wall: 0, parts: 0,
    segments: [], lines: [], holds: [], jumps: [], pace: [], breaks: [],
  };
}

const TAKE_EVENTS = {
  begin: (take, [head]) => Object.assign(take, head),
  line: (take, [line, planned, at]) => take.lines.push({ line, planned_s: planned, at_s: at }),
  enter: (take, [segment, at, from]) => take.segments.push({
    ...segment, started_s: at, ended_s: null, from_s: from, to_s: null, held_s: 0, whole: false,
  }),
  leave: (take, [at, to, whole]) => {
    if (held(take)) heldFor(take, take.holds.at(-1).at_s, at);
    Object.assign(take.segments.at(-1) ?? {}, { ended_s: at, to_s: to, whole });
  },
  hold: (take, [at, script, cause]) => take.holds.push({ at_s: at, script_s: script, length_s: null, cause }),
  release: (take, [at]) => {
    if (!held(take)) return;
    const hold = take.holds.at(-1);
    hold.length_s = round(at - hold.at_s);
    heldFor(take, hold.at_s, at);
  },
  jump: (take, [at, from, to]) => take.jumps.push({ at_s: at, from_s: from, to_s: to }),
  pace: (take, [at, factor]) => take.pace.push({ at_s: at, factor }),
  clap: (take, [at]) => { take.clap_s = at; },
  break: (take, [at, length]) => {
    take.breaks.push({ at_s: at, length_s: length });
    if (!held(take)) heldFor(take, at, at + length);
  },
  end: (take, [at]) => Object.assign(take, { ended_s: at, finished: true }),
  saved: (take) => { take.saved = true; },
};

const held = (take) => take.holds.at(-1)?.length_s === null;

// Time that the segment on hand stood still: who learns from a take leaves it out. A hold that began in a segment
// before, and was jumped out of, counts from where this one began.
function heldFor(take, from, to) {
  const segment = take.segments.at(-1);
  if (!segment || segment.ended_s !== null) return;
  segment.held_s = round(segment.held_s + Math.max(to - Math.max(from, segment.started_s), 0));
}

const round = (seconds) => Math.round(seconds * 1000) / 1000;

function addPart(take, part) {
  take.parts = part.part;
  for (const [name, ...values] of part.events) TAKE_EVENTS[name](take, values);
  if (part.until_s !== undefined) Object.assign(take, { ended_s: part.until_s, script_s: part.script_s, wall: part.wall });
}

// Takes from all parts of the store, by number.
function takesFrom(parts) {
  const takes = new Map();
  const sorted = [...parts].sort((a, b) => a.id.localeCompare(b.id) || a.part - b.part);
  for (const part of sorted) {
    if (!takes.has(part.id)) takes.set(part.id, newTake(part.id));
    try { addPart(takes.get(part.id), part); } catch (fault) { console.warn(fault); }
  }
  return [...takes.values()].sort((a, b) => a.take - b.take || a.id.localeCompare(b.id));
}

function localTime(date) {
  const shift = -date.getTimezoneOffset();
  const two = (n) => String(Math.abs(n)).padStart(2, "0");
  const local = new Date(date.getTime() + shift * 60000).toISOString().slice(0, -1);
  return `${local}${shift < 0 ? "-" : "+"}${two(Math.trunc(shift / 60))}:${two(shift % 60)}`;
}

// Keeps the take that is on. Every change goes through `note`; parts go to the store five times a second.
class Recorder {
  constructor(store) {
    this.store = store;
    this.takes = [];
    this.take = null;
    this.onchange = () => {};
  }

  get on() { return this.take !== null; }
  get unsaved() { return this.takes.filter((take) => !take.saved).length; }

  // Loads what the store has; gives the last take if it was cut off and its wording is still this one.
  async load() {
    const known = new Set(this.takes.map((take) => take.id));
    const found = takesFrom(await this.store.all()).filter((take) => !known.has(take.id));
    this.takes = [...found, ...this.takes];
    this.onchange();
    const cut = found.at(-1);
    return cut && !cut.finished && cut.digest === plan.digest && !this.on ? cut : null;
  }

  start(at) {
    const now = new Date();
    this.begin(newTake(`${now.getTime().toString(36)}-${Math.random().toString(36).slice(2, 8)}`), 0);
    const number = Math.max(0, ...this.takes.map((take) => take.take)) + 1;
    const { digest, reader, title } = plan;
    this.note("begin", { take: number, title, reader, digest, began: localTime(now), began_at_s: round(at), planned_s: plan.end_s });
    this.place = at;
    this.flush();
  }

  // The clap: from here on the text is said.
  clap(at) {
    this.note("clap", this.now);
    this.entered = true;
    this.place = at;
    this.enter(at);
  }

  // Takes up a take that was cut off: the real time that passed is a break.
  resume(take, at) {
    const gone = Math.max((Date.now() - take.wall) / 1000, 0);
    this.takes = this.takes.filter((other) => other.id !== take.id);
    const until = take.ended_s;
    this.begin(take, until + gone);
    this.place = at;
    this.segment = segmentAt(at);
    this.fromStart = false; // a reading that was cut off teaches no pace
    this.note("break", round(until), round(gone));
  }

  begin(take, elapsed) {
    this.take = take;
    this.takes.push(take);
    this.elapsed = elapsed;
    this.events = [];
    this.sinceFlush = 0;
    this.entered = take.segments.length > 0;
    this.onchange();
  }

  note(name, ...values) {
    if (!this.take) return;
    this.events.push([name, ...values]);
    TAKE_EVENTS[name](this.take, values);
    this.onchange();
  }

  get now() { return round(this.elapsed); }

  enter(at) {
    this.segment = segmentAt(at);
    this.fromStart = at <= (plan.segments[this.segment]?.at_s ?? 0) + 0.05;
    this.noteSegment(at, this.now);
    const line = lineAt(at);
    if (plan.lines.length && Math.abs(plan.lines[line][0] - at) < 0.001) this.noteLine(line, this.now);
  }

  noteSegment(from, at) {
    const segment = plan.segments[this.segment];
    if (!segment) return;
    const { id, mean_s, fixed_s, rest_s, text, said } = segment;
    this.note("enter", { id, planned_s: mean_s, fixed_s, rest_s, text, said }, at, round(from));
  }

  noteLine(line, at) {
    this.note("line", line, plan.lines[line][0], at);
  }

  leave(to, whole, at = this.now) {
    if (plan.segments.length) this.note("leave", at, round(to), whole);
  }

  // `gap` real seconds went by at the pace `factor`; now the plan stands at `at`.
  pass(gap, at, factor) {
    if (!this.take) return;
    const [place, before] = [this.place, this.elapsed];
    this.elapsed += gap;
    this.take.ended_s = this.now;
    this.take.script_s = round(at);
    if (this.entered && at > place) this.moved(at, (there) => round(before + realBetween(place, there, factor)));
    this.place = at;
    this.sinceFlush += gap * 1000;
    if (this.sinceFlush >= PART_MS) this.flush();
  }

  // `when` gives the real second at which the plan stood at a place of this stretch.
  moved(at, when) {
    const before = lastNotAfter(plan.lines, this.place, (l) => l[0]);
    const after = lastNotAfter(plan.lines, at, (l) => l[0]);
    for (let line = before + 1; line <= after; line += 1) {
      const there = plan.lines[line][0];
      this.changeSegment(there, when);
      this.noteLine(line, when(there));
    }
    this.changeSegment(at, when);
    if (at >= plan.end_s && this.place < plan.end_s) this.leave(at, this.fromStart, when(at));
  }

  // Every segment that begins up to `at`, though a long frame may pass a whole one.
  changeSegment(at, when) {
    for (const last = segmentAt(at); this.segment < last;) {
      const { at_s } = plan.segments[this.segment + 1];
      this.leave(at_s, this.fromStart, when(at_s));
      this.segment += 1;
      this.fromStart = true;
      this.noteSegment(at_s, when(at_s));
    }
  }

  jumped(from, to) {
    if (!this.take) return;
    if (this.entered && from < plan.end_s) this.leave(from, false);
    this.note("jump", this.now, round(from), round(to));
    this.place = to;
    if (this.entered) this.enter(to);
  }

  end() {
    if (!this.take) return;
    this.note("release", this.now);
    if (this.entered && this.place < plan.end_s) this.leave(this.place, false);
    this.note("end", this.now);
    this.flush();
    this.take = null;
    this.onchange();
  }

  flush() {
    if (!this.take) return;
    this.sinceFlush = 0;
    this.take.wall = Date.now();
    this.add({ until_s: this.now, script_s: this.take.script_s, wall: this.take.wall });
  }

  add(values, take = this.take) {
    const events = take === this.take ? this.events.splice(0) : [];
    take.parts += 1;
    this.store.add({ id: take.id, part: take.parts, events, ...values });
  }

  markSaved(take) {
    take.saved = true;
    this.add({ events: [["saved"]] }, take);
    this.onchange();
  }
}

function takeFile(take) {
  const { id, saved, wall, parts, script_s, ...rest } = take;
  const name = `${plan.script}.${plan.language}.take-${String(take.take).padStart(2, "0")}.json`;
  return { name, text: `${JSON.stringify(rest, null, 1)}\n` };
}

function saveFile(name, text) {
  const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = make("a", { href: address, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60000);
}
