// Every command by name: its keys as `KeyboardEvent.key` gives them, how they are written on the help panel. `big`
// commands change the whole picture: they follow one another slowly enough to stay far from flashing.
const COMMANDS = [
  { name: "toggle", keys: [" ", "Enter"], shown: ["Space", "Enter"], bar: true },
  { name: "forward", keys: ["PageDown"], shown: ["Page down"], again: true },
  { name: "back", keys: ["PageUp"], shown: ["Page up"], again: true },
  { name: "previous", keys: ["ArrowLeft"], shown: ["←"], again: true, bar: true },
  { name: "next", keys: ["ArrowRight"], shown: ["→"], again: true, bar: true },
  { name: "faster", keys: ["ArrowUp"], shown: ["↑"], again: true, bar: true },
  { name: "slower", keys: ["ArrowDown"], shown: ["↓"], again: true, bar: true },
  { name: "plan", keys: ["0"], shown: ["0"] },
  { name: "line_up", keys: ["["], shown: ["["], again: true },
  { name: "line_down", keys: ["]"], shown: ["]"], again: true },
  { name: "start", keys: ["Home"], shown: ["Home"] },
  { name: "last", keys: ["End"], shown: ["End"] },
  { name: "take", keys: ["t"], shown: ["T"], bar: true },
  { name: "save", keys: ["s"], shown: ["S"], bar: true },
  { name: "wait", keys: ["g"], shown: ["G"] },
  { name: "flip", keys: ["f"], shown: ["F"], big: true, bar: true },
  { name: "panels", keys: ["m"], shown: ["M"] },
  { name: "mode", keys: ["p"], shown: ["P"], big: true, bar: true },
  { name: "chart", keys: ["c"], shown: ["C"], big: true, bar: true },
  { name: "light", keys: ["d"], shown: ["D"], big: true, bar: true },
  { name: "warm", keys: ["w"], shown: ["W"], big: true },
  { name: "rest", keys: ["b", "."], shown: ["B", "."], big: true },
  { name: "operator", keys: ["o"], shown: ["O"], bar: true },
  { name: "full", keys: ["z"], shown: ["Z"] },
  { name: "help", keys: ["h", "?"], shown: ["H", "?"], bar: true },
  { name: "close", keys: ["Escape"], shown: ["Esc"] },
];
const BIG_GAP_MS = 400;

// Runs big commands one by one, at least `BIG_GAP_MS` apart; others at once.
class Queue {
  constructor(run) {
    this.run = run;
    this.waiting = [];
    this.free = 0;
  }

  ask(command, value) {
    if (!command.big) return this.run(command.name, value);
    if (this.waiting.length < 8) this.waiting.push([command.name, value]);
    return this.pump();
  }

  pump() {
    const wait = this.free - performance.now();
    if (wait > 0) { setTimeout(() => this.pump(), wait); return; }
    const next = this.waiting.shift();
    if (!next) return;
    this.free = performance.now() + BIG_GAP_MS;
    this.run(...next);
    if (this.waiting.length) setTimeout(() => this.pump(), BIG_GAP_MS);
  }
}

// What stands on a key: named ones in the operator's language.
const keyText = (key) => words[`key_${key.toLowerCase().replace(" ", "_")}`] ?? key;

// By this mark screen and paper show that they hold the same words.
const wordingMark = () => `${words.wording} ${plan.digest}`;

function helpPanel() {
  const keys = COMMANDS.map(({ name, shown }) => make("div", {},
    make("dt", {}, ...shown.flatMap((key, i) => (i ? [" ", make("kbd", { dir: "ltr" }, keyText(key))] : [make("kbd", { dir: "ltr" }, keyText(key))]))),
    make("dd", {}, words[`do_${name}`])));
  const cautions = ["caution_voice", "caution_flash", "caution_rig"].map((name) => make("p", {}, words[name]));
  return [
    make("h2", {}, words.keys), make("p", {}, `${plan.title} · ${plan.language} · ${wordingMark()}`), make("p", {}, words.keys_hint), make("dl", {}, ...keys), make("p", {}, words.clicker),
    make("p", {}, words.pad), make("h3", {}, words.caution), ...cautions,
  ];
}

function barButtons(ask) {
  return COMMANDS.filter((command) => command.bar).map((command) => make("button", {
    type: "button", title: command.shown.map(keyText).join(" "), onclick: (event) => { event.currentTarget.blur(); ask(command.name); },
  }, words[`short_${command.name}`]));
}
