// The desk: choose a script, write, and see at once how long it runs, what trips the reader, how it lies on the glass.

import { ask } from "./ask.js";
import { editor } from "./editor.js";
import { drawFiles, drawFindings, drawGlass, drawRigs, drawScripts, drawStudio, drawTime, follow } from "./panels.js";

const at = (id) => document.getElementById(id);
const aside = document.querySelector("aside");
const QUIET_MS = 250; // after the last key, before the copy is looked at

let scripts = [];
let studio = null;
let chosen = null; // {name, digest, writable, saved}
let looks = 0;
let timer = 0;

const copy = editor(at("text"), at("under"), () => {
  showState();
  clearTimeout(timer);
  timer = setTimeout(look, QUIET_MS);
});

function say(text, bad = false) {
  at("said").textContent = text;
  at("said").classList.toggle("bad", bad);
}

function fault(one, of = "") {
  const where = one.line ? `${of}${of ? "line" : "Line"} ${one.line}: ` : of;
  say(`${where}${one.message}${one.hint ? ` – ${one.hint}` : ""}`, true);
}

const unsaved = () => chosen !== null && copy.text !== chosen.saved;

function showState() {
  at("save").disabled = !unsaved() && chosen?.writable !== false;
  at("save").textContent = chosen?.writable === false ? "Keep as a new script" : "Save";
  at("prepare-one").disabled = chosen === null || isStudio();
  document.title = document.title.replace(/^• /, "");
  if (unsaved()) document.title = `• ${document.title}`;
}

function drawLists() {
  drawScripts(at("scripts"), scripts, chosen?.name, choose);
  drawStudio(at("studio"), studio, chosen?.name, choose, makeStudio);
}

const stateOf = (name) => [...scripts, ...(studio ? [studio] : [])].find((one) => one.name === name)?.state;
const isStudio = () => chosen !== null && chosen.name === studio?.name;

async function list() {
  try {
    const listed = await ask("list");
    ({ scripts, studio } = listed);
    drawLists();
    if (listed.error_in_studio) fault(listed.error_in_studio, "The studio file, ");
  } catch (one) {
    fault(one);
  }
}

// Somebody may have saved a script, a studio or a lexicon meanwhile, in another program.
async function comeBack() {
  const before = stateOf(chosen?.name);
  await list();
  const after = stateOf(chosen?.name);
  if (chosen === null || before === after) return;
  if (unsaved()) await look();
  else await choose(chosen.name);
}

async function choose(name) {
  if (unsaved() && name !== chosen.name && !confirm(`${chosen.name} is not saved. Leave it?`)) return;
  try {
    const opened = await ask("open", { name });
    chosen = { name, digest: opened.digest, writable: opened.writable, saved: opened.text.replaceAll("\r\n", "\n") };
    at("empty").hidden = true;
    at("sheet").hidden = false;
    copy.put(opened.text);
    say(opened.losses.length ? `Not carried over: ${opened.losses.join("; ")}` : name);
    history.replaceState(null, "", `#${encodeURIComponent(name)}`);
    drawLists();
    showState();
    await look();
  } catch (one) {
    fault(one);
  }
}

async function look() {
  if (chosen === null) return;
  const number = ++looks;
  try {
    const view = await ask("look", { name: chosen.name, text: copy.text });
    if (number !== looks) return;
    if (at("said").classList.contains("bad")) say(chosen.name);
    aside.hidden = false;
    for (const id of ["time", "found", "glass"]) at(id).hidden = isStudio();
    at("rigs").hidden = !isStudio();
    if (isStudio()) return drawRigs(at("rigs"), view);
    copy.turn(view.direction);
    copy.mark(view.findings);
    drawTime(at("time"), view, (place) => copy.show(place, place));
    drawFindings(at("found"), view.findings, copy.show);
    drawGlass(at("glass"), view, copy.show);
    follow(at("glass"), copy.caret);
  } catch (one) {
    if (number === looks) fault(one);
  }
}

async function save() {
  if (chosen === null) return false;
  try {
    if (!chosen.writable) return await keepAsNew();
    const text = copy.text;
    const saved = await ask("save", { name: chosen.name, text, digest: chosen.digest });
    chosen = { ...chosen, digest: saved.digest, saved: text };
    say(saved.kept ? `Saved. The state before is ${saved.kept}.` : "Saved.");
    showState();
    await list();
    return true;
  } catch (one) {
    fault(one);
    return false;
  }
}

async function keepAsNew() {
  const listed = scripts.find((one) => one.name === chosen.name);
  const made = await ask("new", {
    title: listed?.show ?? chosen.name.split(".")[0], language: listed?.language ?? "en", text: copy.text,
  });
  chosen = { ...chosen, saved: copy.text };
  await list();
  await choose(made.name);
  return true;
}

async function makeStudio() {
  try {
    const made = await ask("new-studio");
    await list();
    await choose(made.name);
  } catch (one) {
    fault(one);
  }
}

async function prepare(names) {
  if (unsaved() && !(await save())) return;
  say("Preparing: a few seconds a script …");
  for (const id of ["prepare-one", "prepare-all"]) at(id).disabled = true;
  try {
    const made = await ask("prepare", { names });
    aside.hidden = false;
    drawFiles(at("files"), made, names.length ? names[0] : "all scripts");
    at("files").scrollIntoView({ block: "nearest" });
    say(`${made.files.length} files written${made.fixes ? `; ${made.fixes} findings say fix` : ""}.`);
  } catch (one) {
    fault(one);
  }
  at("prepare-all").disabled = false;
  showState();
}

at("save").addEventListener("click", save);
at("prepare-one").addEventListener("click", () => prepare([chosen.name]));
at("prepare-all").addEventListener("click", () => prepare([]));
at("new").addEventListener("submit", async (event) => {
  event.preventDefault();
  const form = new FormData(event.target);
  try {
    const made = await ask("new", { title: form.get("title"), language: form.get("language") });
    event.target.reset();
    await list();
    await choose(made.name);
  } catch (one) {
    fault(one);
  }
});
document.addEventListener("selectionchange", () => {
  if (document.activeElement === at("text")) follow(at("glass"), copy.caret);
});
document.addEventListener("keydown", (event) => {
  if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "s") {
    event.preventDefault();
    if (unsaved()) save();
  }
});
addEventListener("focus", comeBack);
addEventListener("beforeunload", (event) => {
  if (unsaved()) event.preventDefault();
});

await list();
const wanted = decodeURIComponent(location.hash.slice(1));
if (stateOf(wanted) !== undefined) await choose(wanted);
