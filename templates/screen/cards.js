// What stands over the text: guest card, clip and pause strip, clap line, the mark. Their light follows the clock.
const CARD_FROM_S = 3;
const CLAP_S = 4;

class Cards {
  constructor() {
    this.wait = null;
    this.ring = -1;
    this.core = document.querySelector("#mark .core");
    this.extra = 0;
  }

  draw(at) {
    const wait = waitAt(at);
    if (wait !== this.wait) this.change(wait);
    if (!wait) return;
    const light = Math.min(eased((at - wait.at_s) / FADE_S), eased((wait.end_s - at) / FADE_S));
    const card = wait.kind === "live" ? byId("guest") : byId("wait");
    const shown = wait.kind === "live" || wait.end_s - wait.at_s >= CARD_FROM_S;
    card.style.opacity = shown ? light : 0;
    write(card.querySelector(".clock"), fill(words.left, { time: clockText(wait.end_s - at) }));
  }

  change(wait) {
    this.wait = wait;
    byId("guest").style.opacity = 0;
    byId("wait").style.opacity = 0;
    byId("guest").setAttribute("aria-hidden", String(wait?.kind !== "live"));
    if (!wait) return;
    const card = wait.kind === "live" ? byId("guest") : byId("wait");
    const name = { live: words.guest, clip: words.clip, pause: words.pause }[wait.kind];
    write(card.querySelector(".what"), wait.text ? `${name}: ${wait.text}` : name);
    if (wait.kind === "live") byId("guest").querySelector(".body").replaceChildren(...guestLines(wait));
  }

  // The ring beside the line at the lens fills as the segment goes by.
  mark(at) {
    const segment = plan.segments[segmentAt(at)];
    if (!segment) return;
    const share = Math.round(100 * clamp((at - segment.at_s) / Math.max(segment.mean_s, 0.001), 0, 1));
    if (share === this.ring) return;
    this.ring = share;
    this.core.setAttribute("stroke-dasharray", `${share} 100`);
  }

  clap(take, left) {
    const card = byId("clap");
    card.style.opacity = left === null ? 0 : Math.min(eased((CLAP_S - left) / FADE_S), eased(left / FADE_S));
    if (left === null) return;
    write(card.querySelector("h2"), words.clap);
    write(card.querySelector(".names"), `${plan.title} · ${plan.language} · ${fill(words.clap_take, { n: take })}`);
    write(card.querySelector(".sayings"), fill(words.starts_in, { s: Math.ceil(left) }));
  }
}

function guestLines(wait) {
  const lines = wait.names.map((name) => make("p", { class: "names" }, name));
  for (const [text, say] of wait.sayings) lines.push(make("p", { class: "sayings" }, fill(words.said_as, { text, say })));
  if (wait.notes.length) lines.push(make("ul", {}, ...wait.notes.map((note) => make("li", {}, note))));
  return lines;
}
