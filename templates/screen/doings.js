// What each command does to the reader's page.
const LIGHTS = [1, 0.75, 0.5, 0.3];

const doings = {
  toggle(reader) {
    if (reader.clapLeft !== null) reader.clapDown(Infinity);
    else if (reader.clock.going) reader.hold("hand");
    else reader.release();
  },

  forward(reader) {
    if (!reader.stage.pages) { this.toggle(reader); return; }
    const next = plan.screenfuls[screenfulAt(reader.clock.at) + 1];
    if (next) reader.jump(next[2]);
  },

  back(reader) {
    if (!reader.stage.pages) { this.previous(reader); return; }
    const page = plan.screenfuls[Math.max(screenfulAt(reader.clock.at) - 1, 0)];
    if (page) reader.jump(page[2]);
  },

  // To the start of the segment; from its first seconds to the one before.
  previous(reader) {
    const here = segmentAt(reader.clock.at);
    const back = reader.clock.at - (plan.segments[here]?.at_s ?? 0) < 2 ? here - 1 : here;
    reader.jump(plan.segments[Math.max(back, 0)]?.at_s ?? 0);
  },

  next(reader) {
    const next = plan.segments[segmentAt(reader.clock.at) + 1];
    if (next) reader.jump(next.at_s);
  },

  segment(reader, number) {
    if (plan.segments[number]) reader.jump(plan.segments[number].at_s);
  },

  line_up(reader) { reader.byLines(-1); },

  line_down(reader) { reader.byLines(1); },

  start(reader) { reader.jump(0); },

  last(reader) { reader.jump(plan.segments.at(-1)?.at_s ?? 0); },

  faster(reader) { reader.setPace(reader.clock.factor + 0.02); },

  slower(reader) { reader.setPace(reader.clock.factor - 0.02); },

  plan(reader) { reader.setPace(1); },

  wait(reader) {
    reader.waitAtGuests = !reader.waitAtGuests;
    reader.notice(reader.waitAtGuests ? words.guest_waits : words.guest_goes, 2500);
  },

  take(reader) {
    if (reader.cut) { reader.takeUpNow(); reader.endTake(); return; }
    if (reader.recorder.on) reader.endTake();
    else reader.startTake();
  },

  save(reader) {
    const open = reader.recorder.takes.filter((take) => !take.saved && take !== reader.recorder.take);
    if (!open.length) { reader.notice(words.nothing_to_save, 2500); return; }
    for (const take of open) {
      const { name, text } = takeFile(take);
      saveFile(name, text);
      reader.recorder.markSaved(take);
      reader.notice(fill(words.saved, { n: take.take, file: name }), 4000);
    }
  },

  flip(reader, flip) {
    const flips = ["none", "horizontal", "vertical", "both"];
    reader.stage.flip = flips.includes(flip) ? flip : flips[(flips.indexOf(reader.stage.flip) + 1) % 4];
    reader.stage.turn();
    reader.notice(fill(words.view_flip, { flip: words[`flip_${reader.stage.flip}`] }), 2000);
  },

  panels(reader) {
    reader.stage.panelsTurn = !reader.stage.panelsTurn;
    reader.stage.turn();
    reader.notice(reader.stage.panelsTurn ? words.panels_turn : words.panels_plain, 2500);
  },

  mode(reader) {
    reader.stage.setPages(!reader.stage.pages);
    reader.notice(reader.stage.pages ? words.view_pages : words.view_flowing, 2000);
  },

  light(reader) {
    const next = LIGHTS[(LIGHTS.indexOf(reader.stage.light) + 1) % LIGHTS.length];
    reader.stage.light = next;
    reader.stage.colour();
    reader.notice(fill(words.view_light, { n: Math.round(next * 100) }), 2000);
  },

  warm(reader) {
    reader.stage.warm = (reader.stage.warm + 1) % 4;
    reader.stage.colour();
    reader.notice(fill(words.view_warm, { n: reader.stage.warm }), 2000);
  },

  chart(reader) { byId("chart").toggleAttribute("hidden"); },

  rest(reader) { reader.resting = !reader.resting; },

  help(reader) {
    const help = byId("help");
    help.hidden = !help.hidden;
    if (!help.hidden) help.focus();
  },

  close(reader) {
    byId("help").hidden = true;
    byId("chart").setAttribute("hidden", "");
    document.body.classList.remove("awake");
  },

  full(reader) {
    if (document.fullscreenElement) document.exitFullscreen();
    else document.documentElement.requestFullscreen?.().catch(() => {});
  },

  operator(reader) {
    const reached = reader.link.reach("view=operator", `promptprep-operator-${scriptKey}`, "width=1280,height=800");
    if (!reached) reader.notice(words.operator_blocked);
  },
};
