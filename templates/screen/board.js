// The operator's board: what it is made of. Everything is shown upright, whatever the reader's flip.
function figure(id, label) {
  return make("div", { class: "figure", id }, make("span", { class: "label" }, label), make("span", { class: "value" }), make("span", { class: "range" }));
}

function segmentRow(segment, number, choose) {
  const slot = segment.slot_s === null ? "" : signedOver(segment.mean_s - segment.slot_s);
  return make("li", { "data-segment": number },
    make("button", { type: "button", onclick: (event) => { event.currentTarget.blur(); choose(number); } },
      make("span", { class: "at" }, clockText(segment.at_s)),
      make("span", { class: "name", dir: "auto" }, segment.title || "·"),
      make("span", { class: "runs" }, clockText(segment.mean_s)),
      make("span", { class: "slot" }, slot),
      make("span", { class: "share" })));
}

function signedOver(seconds) {
  return fill(seconds > 0 ? words.over : words.under, { time: clockText(Math.abs(seconds)) });
}

const LATER_CUES = 4;

const actionText = ([kind, text]) => [make("span", { class: "kind" }, words[`kind_${kind}`] ?? kind), " ", make("bdi", {}, text)];

function laterRow(cue) {
  const what = cue.actions.flatMap((action, i) => (i ? [" · ", ...actionText(action)] : actionText(action)));
  return make("li", {}, make("span", { class: "in" }), make("b", {}, String(cue.number)), make("span", {}, ...what));
}

// On long scripts the board says from the start that the voice needs rests.
function voiceCaution() {
  const spoken = plan.end_s - fixedBetween(0, plan.end_s);
  return spoken > VOICE_S ? [make("p", { id: "o-caution" }, words.caution_voice)] : [];
}

function boardParts(ask, choose) {
  const list = make("ol", { id: "o-segments" }, ...plan.segments.map((segment, i) => segmentRow(segment, i, choose)));
  const figures = [["o-gone", words.gone], ["o-left", words.to_go], ["o-over", words.slot], ["o-session", words.session]];
  return [
    make("header", {}, make("h1", { dir: "auto" }, plan.title), make("span", { class: "wording" }, wordingMark()), make("span", { id: "o-state", role: "status" }), ...voiceCaution()),
    make("section", { id: "o-figures" }, ...figures.map(([id, label]) => figure(id, label))),
    make("section", { id: "o-cue" }, make("h2", {}, words.next_cue), make("div", { class: "number" }), make("ul", {}), make("p", { class: "when" }), make("ol", {})),
    make("section", { id: "o-list" }, make("h2", {}, words.segments), list),
    make("section", { id: "o-view" }, make("h2", {}, words.reader_sees), make("div", { id: "o-picture" }), make("p", { id: "o-look" })),
    make("section", { id: "o-pace" }, make("h2", {}, words.pace), make("div", { class: "rail" }, make("span", { class: "plan" }), make("span", { class: "now" })), make("p", {})),
    make("section", { id: "o-takes" }, make("h2", {}, words.takes), make("ol", {}), make("p", {})),
    make("nav", { id: "o-bar" }, ...barButtons(ask).filter((button) => button.textContent !== words.short_operator)),
    make("div", { id: "o-notice", role: "alert", hidden: "" }),
  ];
}
