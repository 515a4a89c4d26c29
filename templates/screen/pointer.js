// Pointer and touch on the picture: a tap holds and releases, a drag or the wheel shifts the text, any motion wakes
// the buttons and the pointer for a few seconds.
const AWAKE_MS = 3000;
const TAP_PX = 8;

class Pointer {
  constructor(ask, shift, stage) {
    this.ask = ask;
    this.shift = shift;
    this.stage = stage;
    this.from = null;
    const glass = stage.glass;
    glass.addEventListener("pointerdown", (event) => this.begin(event));
    glass.addEventListener("pointermove", (event) => this.move(event));
    glass.addEventListener("pointerup", (event) => this.end(event));
    glass.addEventListener("pointercancel", () => { this.from = null; });
    glass.addEventListener("wheel", (event) => this.wheel(event), { passive: false });
    document.body.classList.add("quiet");
  }

  own(event) {
    return !event.target.closest("#bar, #help");
  }

  // Along the text as the viewer sees it: upside down when the picture is.
  along(pixels) {
    const turned = this.stage.flip === "vertical" || this.stage.flip === "both" ? -1 : 1;
    return turned * pixels / this.stage.scale;
  }

  begin(event) {
    if (!this.own(event) || event.button !== 0) return;
    this.from = { id: event.pointerId, y: event.clientY, moved: false };
  }

  move(event) {
    this.wake();
    if (!this.from || this.from.id !== event.pointerId) return;
    const gone = event.clientY - this.from.y;
    if (!this.from.moved && Math.abs(gone) < TAP_PX) return;
    Object.assign(this.from, { moved: true, y: event.clientY });
    this.shift(-this.along(gone));
  }

  end(event) {
    const from = this.from;
    this.from = null;
    if (from && from.id === event.pointerId && !from.moved) this.ask("toggle", undefined, event.timeStamp);
  }

  wheel(event) {
    if (!this.own(event)) return;
    event.preventDefault();
    this.shift(this.along(event.deltaMode === 1 ? event.deltaY * 16 : event.deltaY));
  }

  wake() {
    document.body.classList.add("awake");
    document.body.classList.remove("quiet");
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      document.body.classList.remove("awake");
      document.body.classList.add("quiet");
    }, AWAKE_MS);
  }
}
