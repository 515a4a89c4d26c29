// The page's state in the address fragment, and what outlives a reload.

// The fragment: flip, at, hold, and of our own mode, panels, chart, help, light, warm.
function readAddress(reader, first) {
  const asked = new URLSearchParams(location.hash.slice(1));
  const has = (name) => asked.has(name);
  if (has("flip") && words[`flip_${asked.get("flip")}`]) reader.stage.flip = asked.get("flip");
  if (has("mode")) reader.stage.setPages(asked.get("mode") === "pages");
  if (has("panels")) reader.stage.panelsTurn = asked.get("panels") !== "plain";
  if (has("chart")) byId("chart").toggleAttribute("hidden", asked.get("chart") !== "1");
  if (has("help")) byId("help").hidden = asked.get("help") !== "1";
  if (LIGHTS.includes(Number(asked.get("light")))) reader.stage.light = Number(asked.get("light"));
  if (has("warm")) reader.stage.warm = clamp(Math.trunc(Number(asked.get("warm"))) || 0, 0, 3);
  readTime(reader, asked, first);
  reader.refit();
  reader.changed();
}

function readTime(reader, asked, first) {
  const at = Number.parseFloat(asked.get("at"));
  reader.pass(performance.now());
  if (Number.isFinite(at)) {
    const from = reader.clock.due;
    reader.stage.glide = null;
    reader.clock.jump(at);
    if (!first) reader.recorder.jumped(from, reader.clock.due);
  }
  if (asked.get("hold") === "1") { reader.hold("hand"); reader.clock.hold(true); }
  else if (asked.has("hold") || Number.isFinite(at)) reader.release();
}

// Settings outlive a reload, not the window.
function recallView(reader) {
  try {
    const kept = JSON.parse(sessionStorage.getItem(`promptprep-view-${scriptKey}`) ?? "null");
    if (!kept || kept.rig !== plan.rig) return;
    Object.assign(reader.stage, { flip: kept.flip, light: kept.light, warm: kept.warm, panelsTurn: kept.panelsTurn });
    reader.clock.factor = kept.factor;
  } catch (fault) { console.warn(fault); }
}

function keepView(reader) {
  const { flip, light, warm, panelsTurn } = reader.stage;
  const kept = { rig: plan.rig, flip, light, warm, panelsTurn, factor: reader.clock.factor };
  try { sessionStorage.setItem(`promptprep-view-${scriptKey}`, JSON.stringify(kept)); } catch (fault) { console.warn(fault); }
}
