// Keyboard, presenter's clicker (page keys, dark key, F5), gamepad and pedal.
const AGAIN_MS = 180;

function listenToKeys(ask, busy) {
  let last = 0;
  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === "F5" && busy()) { event.preventDefault(); return; }
    if (event.target instanceof HTMLButtonElement && (event.key === " " || event.key === "Enter")) return;
    const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
    const command = COMMANDS.find(({ keys }) => keys.includes(key));
    if (!command) return;
    event.preventDefault();
    if (event.repeat && (!command.again || event.timeStamp - last < AGAIN_MS)) return;
    last = event.timeStamp;
    ask(command.name, undefined, event.timeStamp);
  });
}

const PAD_BUTTONS = ["toggle", "back", "forward", "take", "previous", "next", "slower", "faster", "help", "operator"];
const PAD_CROSS = { 12: "faster", 13: "slower", 14: "previous", 15: "next" };

// Reads gamepads once a frame; a button or a pushed stick counts once until it is let go.
class Pads {
  constructor(ask) {
    this.ask = ask;
    this.down = new Set();
    this.any = false;
    window.addEventListener("gamepadconnected", () => { this.any = true; });
  }

  poll() {
    if (!this.any) return;
    for (const pad of navigator.getGamepads()) {
      if (!pad) continue;
      pad.buttons.forEach((button, i) => this.press(`${pad.index}b${i}`, button.pressed, PAD_CROSS[i] ?? PAD_BUTTONS[i]));
      const [x = 0, y = 0] = pad.axes;
      this.press(`${pad.index}l`, x < -0.6, "previous");
      this.press(`${pad.index}r`, x > 0.6, "next");
      this.press(`${pad.index}u`, y < -0.6, "faster");
      this.press(`${pad.index}d`, y > 0.6, "slower");
    }
  }

  press(id, pressed, name) {
    const was = this.down.has(id);
    if (pressed === was) return;
    if (pressed) this.down.add(id); else this.down.delete(id);
    if (pressed && name) this.ask(name);
  }
}
